using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Chelation;

/// <summary>
/// A feed whose iron is iron(II) without a chelating agent: clear when it is mixed, and without iron once the air has been at it.
/// </summary>
internal sealed class FerrousIronInFeed : RecipeRule<FerrousIronInFeed.Exposed>
{
    public const string RuleName = "ferrous-iron-in-feed";

    /// <summary>The chelate that the remedy names.</summary>
    private const string Chelate = "fe-dtpa-hna";

    public override string Name => RuleName;

    protected override IEnumerable<Exposed> Judge(RecipeFacts recipe, RuleContext context)
    {
        var limit = context.Options<FerrousIronInFeedOptions>().MostLost;
        var iron = Iron.Moles(recipe.ComponentMoles) / recipe.FinalVolume.Litres;
        var exposed = new Exposed(recipe, null, iron, 0, limit)
        {
            Checks = [Check.That("its iron comes as iron(II), no agent was put in to hold it, and its equilibrium can be computed", false)],
        };
        if (!IsFerrous(recipe) || Iron.Supplier(recipe) is not { } dose)
        {
            return [exposed];
        }

        if (SpokenOfInTheBottle(dose.Stock))
        {
            return [exposed with { Checks =
                [Check.That("the bottle it comes from keeps its iron (else unprotected-ferrous-iron speaks)", false)] }];
        }

        if (Iron.Feed(recipe) is not { IsSolved: true } state)
        {
            return [exposed];
        }

        var lost = Rounding.SixDigits(Iron.RustShare(state, iron));
        return [exposed with { State =
            state, Lost = lost, Checks = [new Check("enough to miss", Rounding.SixDigits(lost * 100), Relation.Over, limit, "%")] }];
    }

    protected override Finding Describe(Exposed verdict, RuleContext context)
    {
        var (recipe, state, iron, lost, limit) = (verdict.Recipe, verdict.State!, verdict.IronPerLitre, verdict.Lost, verdict.Limit / 100);
        var dose = Iron.Supplier(recipe)!;
        var message =
            $"'{recipe.Recipe.Name}' gets {Say.Number(iron * Iron.GramsPerMole * 1000)} mg/L iron as iron(II) and nothing that holds it: "
                + $"once the air has oxidised it, {Say.Percent(lost)} of it falls out as {Iron.RustCalled(state)} "
                    + $"{PhGuess.At(state)}. "
            + "The feed looks clear when it is mixed, the drippers brown within days, and new leaves turn yellow. "
            + Remedy(recipe, context, iron);
        return context.Find(dose.Entry.Place, message, Iron.HarmOf(lost), Odds.Certain) with
        {
            Measured = new Measured("iron that falls out", lost * 100, limit * 100, "%"),
            Values =
            [
                new NamedValue("iron", iron * Iron.GramsPerMole * 1000, "mg/L"),
                new NamedValue("iron that falls out", lost * 100, "%"),
                .. PhGuess.Values(state),
            ],
        };
    }

    protected override Working Work(Exposed verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"iron(II) of '{verdict.Recipe.Recipe.Name}' against the air");
        if (verdict.State is not { } state)
        {
            return work.Statements(verdict).Done();
        }

        var all = work.Given("iron in all", verdict.IronPerLitre * 1e6, "µmol/L", "amounts in the file");
        work.Given("pH once the iron is oxidised", state.Ph, "", "engine");
        var fallen = work.Given(
            $"iron in the {Iron.RustCalled(state)}",
            Iron.RustShare(state, verdict.IronPerLitre) * verdict.IronPerLitre * 1e6,
            "µmol/L",
            "engine");
        var lost = work.Result("iron that falls out", "100 × fallen out / iron", 100 * fallen / all, "%");
        return work.Check(verdict.Checks[0], lost, work.Option("limit", verdict.Limit)).Done(lost);
    }

    /// <summary>
    /// True where iron(II) is all the iron there is to speak of and no agent was put in for it; iron that falls out at once is a deposit.
    /// </summary>
    private static bool IsFerrous(RecipeFacts recipe)
    {
        var iron = Iron.Moles(recipe.ComponentMoles);
        return recipe.IsComplete
            && recipe.ComponentMoles.GetValueOrDefault(Iron.Ferrous) > iron / 2
            && Iron.ChelatorMoles(recipe.ComponentMoles) < Iron.IntendedShare * iron;
    }

    /// <summary>A kept stock that loses its iron to the air before it is dosed has a finding of its own.</summary>
    private static bool SpokenOfInTheBottle(StockFacts? stock) =>
        stock?.Chemistry.Aged is { IsSolved: true } aged
        && Iron.RustShare(aged, Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres) > Iron.IntendedShare;

    private static string Remedy(RecipeFacts recipe, RuleContext context, double iron)
    {
        if (context.Facts.Workspace.Catalogue.ById(Chelate) is not { } chelate
            || chelate.Dissolves.FirstOrDefault(y => y.Component == Iron.Ferric) is not { MolesPerGram: > 0 } yield)
        {
            return "Dose the iron as a chelate.";
        }

        return context.AdviceFor(recipe).Sentence(new Way(
            $"dose the iron as a chelate, for instance {Say.Grams(iron * recipe.FinalVolume.Litres / yield.MolesPerGram)} of "
                + $"{chelate.Name} in {Say.Litres(recipe.FinalVolume.Litres)}",
            Puts.Chelate));
    }

    /// <summary>The iron(II) of one final solution.</summary>
    /// <param name="State">With all iron oxidised; null where nothing is judged.</param>
    /// <param name="IronPerLitre">mol/L.</param>
    /// <param name="Lost">Share of the iron that falls out, 0 to 1, to six digits.</param>
    /// <param name="Limit">%.</param>
    internal sealed record Exposed(
        RecipeFacts Recipe, SolutionState? State, double IronPerLitre, double Lost, NumberOption Limit) : Verdict;
}
