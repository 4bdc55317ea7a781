using System.Collections.Immutable;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Weighing;

/// <summary>One syringe, pipette or dropper for two stocks that cloud where they meet undiluted.</summary>
public sealed class SharedDosingSyringe : RecipeRule, IProposesRepairs
{
    /// <summary>
    /// What is dipped into the bottle and keeps a remnant behind its nozzle. A cylinder or jug is poured into and drains; it is left alone.
    /// </summary>
    internal static readonly MeasureKind[] Dipped = [MeasureKind.Syringe, MeasureKind.Pipette, MeasureKind.Dropper];

    public override string Name => "shared-dosing-syringe";

    public override IEnumerable<Finding> Judge(RecipeFacts recipe, RuleContext context)
    {
        var limit = context.Number("deposit");
        var groups = recipe.Doses
            .Where(d => d is { Stock: not null, Measure: { } measure } && Dipped.Contains(measure.Kind))
            .GroupBy(d => d.Measure!.Name, StringComparer.Ordinal);
        foreach (var group in groups)
        {
            var doses = group.ToList();
            var worst = Pairs(doses)
                .Select(p => (p.First, p.Second, Deposit: DepositWhereTheyMeet(p.First.Stock!, p.Second.Stock!)))
                .Where(p => p.Deposit.Grams >= limit)
                .OrderByDescending(p => p.Deposit.Grams)
                .ToList();
            if (worst.Count > 0)
            {
                yield return Of(worst[0].First, worst[0].Second, worst[0].Deposit.Grams, worst[0].Deposit.Names, limit, context);
            }
        }
    }

    internal static IEnumerable<(DoseFacts First, DoseFacts Second)> Pairs(List<DoseFacts> doses)
    {
        for (var i = 0; i < doses.Count; i++)
        {
            for (var j = i + 1; j < doses.Count; j++)
            {
                if (doses[i].Stock!.Stock.File != doses[j].Stock!.Stock.File)
                {
                    yield return (doses[i], doses[j]);
                }
            }
        }
    }

    private static Finding Of(DoseFacts first, DoseFacts second, double grams, string names, double limit, RuleContext context)
    {
        var (measure, one, other) = (first.Measure!, first.Stock!.Stock.Name, second.Stock!.Stock.Name);
        var kind = measure.Kind switch { MeasureKind.Syringe => "syringe", MeasureKind.Pipette => "pipette", _ => "dropper" };
        var place = second.Entry.With?.Place ?? second.Entry.Place;
        var message = $"'{measure.Name}' takes '{one}' and then '{other}': where a remnant of the one meets the other undiluted, {Say.Number(grams)} g/L of {names} falls out. "
            + $"The remnant in a {kind} is carried back into the bottle, and the crust in its nozzle makes each dose short. "
            + $"Keep a marked {kind} for each stock, or rinse it with clean water between the two.";
        return context.Find(place, message, grams < context.Number("crust") ? Level.Note : null) with
        {
            Measured = new Measured("deposit where they meet", Rounding.SixDigits(grams), limit, "g/L"),
            Values = [new NamedValue("deposit where they meet", Rounding.SixDigits(grams), "g/L")],
            Related = [new RelatedPlace(first.Entry.With?.Place ?? first.Entry.Place, $"the same {kind} takes '{one}'")],
        };
    }

    /// <summary>
    /// g/L of the solids that fall out of equal parts of two stocks at 20 °C and out of neither diluted by half on its own; zero where the
    /// chemistry gives no answer.
    /// </summary>
    internal static (double Grams, string Names) DepositWhereTheyMeet(StockFacts first, StockFacts second)
    {
        var (one, other) = (Half(first), Half(second));
        var met = Cloudings(ComponentMoles.Sum([one, other]));
        var alone = Cloudings(one).Concat(Cloudings(other)).Select(c => c.Solid).ToHashSet();
        var own = met.Where(c => c.Mass is not null && !alone.Contains(c.Solid)).OrderByDescending(c => c.Mass!.Value.GramsPerLitre).ToList();
        return (own.Sum(c => c.Mass!.Value.GramsPerLitre), Say.List(own.Take(2).Select(c => Plain(c.Solid.Name))));
    }

    /// <summary>A mineral's name inside a sentence.</summary>
    private static string Plain(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static ImmutableSortedDictionary<string, double> Half(StockFacts stock) =>
        stock.ComponentMoles.Times(0.5 / stock.Volume.Litres);

    private static IReadOnlyList<Clouding> Cloudings(ImmutableSortedDictionary<string, double> molesPerLitre) =>
        Clearness.Of(SolutionMix.Of(molesPerLitre, new Volume(1)), SolutionMix.FilledAtCelsius) is { Failure: null } clearness ? clearness.Cloudings : [];

    /// <summary>Another measure of the shop for the second stock.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Equipment.OtherMeasures(finding, context);
}
