using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Chelation;

/// <summary>Iron of which the label calls only a part ortho-ortho, in a feed in which the rest does not last.</summary>
internal sealed class IronPartlyUnstable : RecipeRule<IronPartlyUnstable.Isomers>
{
    public const string RuleName = "iron-partly-unstable";

    private const string File = "amounts in the file";

    public override string Name => RuleName;

    protected override IEnumerable<Isomers> Judge(RecipeFacts recipe, RuleContext context)
    {
        var options = context.Options<IronPartlyUnstableOptions>();
        var iron = recipe.MilligramsPerLitre("Fe");
        var unstable = Unstable(recipe);
        var state = recipe.Chemistry.Final;
        if (iron <= 0 || unstable.Sum(u => u.MilligramsPerLitre) is not (> 0 and var lost) || Wanted(recipe) is not { } wanted)
        {
            yield break;
        }

        var percent = Rounding.SixDigits(100 * lost / iron);
        var lasts = Rounding.SixDigits(iron - lost);
        var ph = Rounding.SixDigits(state.Ph);
        var readable = recipe.IsComplete && state.TellsPh;
        List<Check> checks =
        [
            new("enough of it in other isomers", percent, Relation.AtLeast, options.LeastUnstable, "%"),
            new("less lasts than is counted on", lasts, Relation.Under, wanted.Least, "mg/L"),
            new("a pH at which they lose it", readable ? ph : 0, Relation.AtLeast, options.FromPh) { Meter = Meter.TankPh },
        ];
        if (!readable)
        {
            checks.Add(Check.That("the recipe could be read whole and its pH computed", false));
        }

        yield return new Isomers(recipe, unstable[0].Dose, iron, lost, percent, lasts, readable ? ph : 0, wanted) { Checks = checks };
    }

    protected override Finding Describe(Isomers verdict, RuleContext context)
    {
        var more = verdict.Lost < verdict.Iron ? verdict.Iron / (verdict.Iron - verdict.Lost) : 0;
        var cure = context.AdviceFor(verdict.Recipe).Sentence(
            more > 0
                ? new Way(
                    $"weigh it by the ortho-ortho share ({Say.Number(more)} times as much gives {Say.Number(verdict.Iron)} mg/L that last)",
                    Puts.Chelate)
                : new Way("use a product that states an ortho-ortho share", Puts.Chelate),
            new Way($"bring the feed below pH {Say.Number(verdict.Checks[2].Limit)}", Puts.Acid, verdict.Checks[2].Limit));
        var message =
            $"{Say.Number(verdict.Lost)} of the {Say.Number(verdict.Iron)} mg/L iron is not the ortho-ortho isomer: "
                + $"{Say.Number(verdict.Lasts)} mg/L lasts at pH {Say.Ph(Math.Round(verdict.Ph, 2))}, "
            + $"where {Say.Number(verdict.Wanted.Least)} mg/L is {verdict.Wanted.Called}. The other isomers lose their iron there within "
                + $"days, and new leaves turn yellow. {cure}";
        return context.Find(verdict.Dose.Entry.Place, message, Harm.Damage, Odds.Certain) with
        {
            Measured = new Measured("iron that lasts", verdict.Lasts, verdict.Wanted.Least, "mg/L"),
            Values = [new NamedValue("iron", verdict.Iron, "mg/L"), new NamedValue(
                "in other isomers", verdict.Percent, "%"), new NamedValue("pH", verdict.Ph, "")],
        };
    }

    protected override Working Work(Isomers verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"iron that lasts in '{verdict.Recipe.Recipe.Name}'");
        var iron = work.Given("iron in all", verdict.Iron, "mg/L", File);
        var lost = work.Given("of it not ortho-ortho", verdict.Lost, "mg/L", "labels");
        var share = work.Result("share of other isomers", "100 × not ortho-ortho / iron", 100 * lost / iron, "%");
        work.Check(verdict.Checks[0], share, work.Option("from", context.Options<IronPartlyUnstableOptions>().LeastUnstable));
        var lasts = work.Result("iron that lasts", "iron - not ortho-ortho", iron - lost, "mg/L");
        work.Check(verdict.Checks[1], lasts, work.Given(verdict.Wanted.Called, verdict.Wanted.Least, "mg/L", verdict.Wanted.From));
        work.Check(
            verdict.Checks[2],
            work.Given("pH of the feed", verdict.Ph, "", "engine"),
            work.Option("from", context.Options<IronPartlyUnstableOptions>().FromPh));
        return work.Statements(verdict).Done(lasts);
    }

    /// <summary>Iron of the labels that is not ortho-ortho, mg/L by dose, the largest first.</summary>
    private static List<(DoseFacts Dose, double MilligramsPerLitre)> Unstable(RecipeFacts recipe) =>
    [
        .. recipe.Doses
            .Select(d => (Dose: d, MilligramsPerLitre: 1000 * Grams(d) / recipe.FinalVolume.Litres))
            .Where(d => d.MilligramsPerLitre > 0)
            .OrderByDescending(d => d.MilligramsPerLitre)
            .ThenBy(d => d.Dose.Id, StringComparer.Ordinal),
    ];

    private static double Grams(DoseFacts dose) => dose switch
    {
        { Direct: { } direct } => Grams(direct),
        { Stock: { } stock } => stock.Additions.Sum(Grams) * dose.Volume.Litres / stock.Volume.Litres,
        _ => 0,
    };

    private static double Grams(AdditionFacts addition) =>
        addition.Substance.Iron is { OrthoOrtho: { } lasting, Total.Value: > 0 } iron
            ? addition.Elements[Element.Fe].Grams * Math.Max(0, 1 - (lasting.Value / iron.Total.Value))
            : 0;

    /// <summary>The least iron that is counted on: the target less its tolerance, else the lower end of the profile's range.</summary>
    private static Need? Wanted(RecipeFacts recipe)
    {
        if (recipe.Recipe.Targets.FirstOrDefault(t => t.Key.Value == "Fe") is { Concentration: { } target } stated)
        {
            var least = target.MilligramsPerLitre - (stated.Tolerance?.HalfWidth(target.MilligramsPerLitre) ?? 0);
            return new Need(Rounding.SixDigits(least), "the least the target allows", "file");
        }

        return recipe.Profile.Find("Fe")?.SufficientLow is { } low
            ? new Need(low, $"the least of the '{recipe.Profile.Name}' profile", "profile")
            : null;
    }

    /// <summary>Iron that has to be there.</summary>
    /// <param name="Least">mg/L.</param>
    internal sealed record Need(double Least, string Called, string From);

    /// <summary>Iron by what becomes of it, mg/L.</summary>
    internal sealed record Isomers(
        RecipeFacts Recipe, DoseFacts Dose, double Iron, double Lost, double Percent, double Lasts, double Ph, Need Wanted) : Verdict;
}
