using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Plant;

/// <summary>Hydrogen carbonate of the water that neither the salts nor the pH reagent use up.</summary>
internal sealed class AlkalinityNotNeutralised : RecipeRule<AlkalinityLeft>, IProposesRepairs
{
    public const string RuleName = "alkalinity-not-neutralised";

    private const double AimedPh = 5.8;

    private const double BenchCelsius = 20;

    public override string Name => RuleName;

    protected override bool OnlyForRoots => true;

    protected override IEnumerable<AlkalinityLeft> Judge(RecipeFacts recipe, RuleContext context)
    {
        if (FeedAlkalinity.Left(recipe) is not { } left)
        {
            yield return new AlkalinityLeft(recipe, null) { Checks = [Check.That("its equilibrium can be computed", false)] };
            yield break;
        }

        var check = new Check("more than a feed should keep", left, Relation.Over,
            context.Options<AlkalinityNotNeutralisedOptions>().Residual, "meq/L");
        yield return new AlkalinityLeft(recipe, check)
        {
            Checks = RootsPh.AsMixed(recipe) is { } mixed && RootsPh.Kills(mixed)
                ? [check, Check.That("it is no lye that kills roots (the rule on the pH speaks of that)", false)]
                : [check],
        };
    }

    protected override Finding Describe(AlkalinityLeft verdict, RuleContext context)
    {
        var (recipe, left) = (verdict.Recipe, verdict.Left!);
        var guess = GuessedPh.Of(recipe);
        var demand = Demand(recipe, context);
        var remedy = demand is { Volume: { } volume, ComponentMoles: var moles }
            ? $"about {Say.Number(moles.GetValueOrDefault(Component.Nitrate) * 1000 / recipe.FinalVolume.Litres)} meq/L of acid bring it "
                + "to pH "
                + $"{Say.Number(AimedPh)}, "
                + $"for instance {Say.Litres(volume.Litres)} of {demand.Reagent.Name} in {Say.Litres(recipe.FinalVolume.Litres)}: "
                + "write it as 'adjust'"
            : "write an 'adjust' with the acid that is used, so that what it brings is counted";
        var place = recipe.Adjustment?.Place ?? recipe.Recipe.Water?.Place ?? RecipePlaces.Doses(recipe);
        return context.Find(
            place,
            $"{Say.Number(left.Value)} meq/L of alkalinity stay in the final solution "
                + $"({Say.Number(left.Value * FeedAlkalinity.CaCO3MilligramsPerMilliequivalent)} mg/L as CaCO3), and it comes to rest "
                + $"with the air {PhGuess.At(recipe.Chemistry.Final, 1)}. {PhGuess.Sentence(guess)}"
            + "The pH climbs in the tank and at the root, and iron, manganese and phosphate go out of reach. "
            + context.AdviceFor(recipe).Sentence(new Way(remedy, Puts.Acid, AimedPh)),
            Harm.Damage,
            PhGuess.Weaken(Odds.Certain, guess),
            Certainty.Practice) with
        {
            Measured = new Measured("alkalinity", left.Value, left.Limit, "meq/L"),
            Values = [new NamedValue("alkalinity", left.Value, "meq/L"), new NamedValue("limit", left.Limit, "meq/L"),
                .. PhGuess.Values(recipe.Chemistry.Final)],
            Related = recipe.Water?.Water is { Alkalinity: { } alkalinity }
                ? [new RelatedPlace(alkalinity.Place, "alkalinity of the source water")] : [],
        };
    }

    protected override Working Work(AlkalinityLeft verdict, RuleContext context)
    {
        var recipe = verdict.Recipe;
        var work = new WorkingBuilder($"alkalinity left in '{recipe.Recipe.Name}'");
        if (verdict.Left is not { } check)
        {
            return work.Statements(verdict).Done();
        }

        var state = recipe.Chemistry.TankAdjusted ?? recipe.Chemistry.Tank;
        var solution = state.Solution!;
        if (recipe.Water?.Water is { Alkalinity: { } stated } water)
        {
            work.Given($"alkalinity of '{water.Name}'",
                (stated.Value.Low.MilliequivalentsPerLitre + stated.Value.High.MilliequivalentsPerLitre) / 2, "meq/L", "water analysis");
        }

        work.Given("pH", state.Ph, "", From.Engine);
        var bicarbonate = work.Given("hydrogen carbonate that is free", solution.Molality("HCO3-") * 1000, "mmol/kg", From.Engine);
        var carbonate = work.Given("carbonate that is free", solution.Molality(Component.Carbonate) * 1000, "mmol/kg", From.Engine);
        var hydroxide = work.Given("hydroxide", solution.Molality("OH-") * 1000, "mmol/kg", From.Engine);
        var hydrogen = work.Given("hydrogen ions", solution.Molality(Component.Hydrogen) * 1000, "mmol/kg", From.Engine);
        var free = work.Result("alkalinity of these", "HCO3- + 2 × CO3-2 + OH- - H+",
            bicarbonate + (2 * carbonate) + hydroxide - hydrogen, "meq/kg");
        var freeExact = 1000 * (solution.Molality("HCO3-") + (2 * solution.Molality(Component.Carbonate)) + solution.Molality("OH-")
            - solution.Molality(Component.Hydrogen));
        var paired = work.Given(
            "what is paired with calcium, magnesium and other metals", (check.Value / state.KilogramsWaterPerLitre) - freeExact,
                "meq/kg", From.Engine);
        var perLitre = work.Given("water in a litre", state.KilogramsWaterPerLitre, "kg/L", From.Engine);
        var left = work.Result("alkalinity left", "(free + paired) × water in a litre", (free + paired) * perLitre, "meq/L");
        work.Result("the same as CaCO3", "meq/L × 50.04", left * FeedAlkalinity.CaCO3MilligramsPerMilliequivalent, "mg/L");
        return work.Check(check, left, work.Option("limit", context.Options<AlkalinityNotNeutralisedOptions>().Residual))
            .Statements(verdict).Done(left);
    }

    /// <summary>An acid against it, or purer water.</summary>
    protected override IEnumerable<RepairProposal> Repair(AlkalinityLeft verdict, Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is not { } recipe)
        {
            yield break;
        }

        foreach (var acid in new[] { recipe.Adjustment?.Reagent?.Id, "nitric-38", "phosphoric-59",
            "sulfuric-37" }.OfType<string>().Distinct(StringComparer.Ordinal))
        {
            yield return Waters.Adjust(context, recipe, AimedPh, acid);
        }

        foreach (var pure in Waters.Purer(recipe))
        {
            yield return pure;
        }
    }

    private static ReagentDemand? Demand(RecipeFacts recipe, RuleContext context) =>
        context.Facts.Workspace.Catalogue.ById("nitric-38") is { } nitric
            ? PhDemand.Find(
                recipe.ComponentMoles,
                new Mass(1000 * recipe.Chemistry.Mix.KilogramsWaterPerLitre * recipe.FinalVolume.Litres),
                nitric,
                AimedPh,
                new Temperature(BenchCelsius),
                openToAir: true)
            : null;
}

/// <summary>The alkalinity of a final solution.</summary>
/// <param name="Left">meq/L; null where it cannot be computed.</param>
internal sealed record AlkalinityLeft(RecipeFacts Recipe, Check? Left) : Verdict;
