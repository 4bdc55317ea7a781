using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.People;

/// <summary>The chlorine that bleach in a stock can set free, and whether what sets it free is there.</summary>
/// <param name="Bleach">Null where there is none.</param>
/// <param name="GramsPerLitre">Available chlorine.</param>
/// <param name="Limit">mg/L.</param>
internal sealed record Chlorine(StockFacts Stock, AdditionFacts? Bleach, double GramsPerLitre, NumberOption Limit) : Verdict
{
    /// <param name="partner">The statement that something in the stock sets it free.</param>
    internal static Chlorine Of(StockFacts stock, Check partner, NumberOption limit)
    {
        var chlorine = Reactants.ChlorineGramsPerLitre(stock);
        var bleach = stock.Additions.FirstOrDefault(a => Reactants.Brings(a, Reactants.Hypochlorite));
        return new Chlorine(stock, bleach, chlorine, limit)
        {
            Checks =
            [
                partner,
                Check.That("bleach goes in", bleach is not null),
                new Check("enough to harm", Rounding.SixDigits(chlorine * 1000), Relation.AtLeast, limit, "mg/L"),
            ],
        };
    }

    internal Working Work()
    {
        var work = new WorkingBuilder($"chlorine that the bleach of '{Stock.Stock.Name}' can set free");
        var moles = work.Given(
            "hypochlorite in the batch",
            Stock.Additions.Sum(a => a.ComponentMoles.GetValueOrDefault(Reactants.Hypochlorite)),
            "mol",
            "amounts in the file");
        var volume = work.Given("the batch", Stock.Volume.Litres, "L", "file");
        var chlorine =
            work.Result("available chlorine", "1000 × mol × 70.9 / batch", 1000 * moles * Reactants.ChlorineGramsPerMole / volume, "mg/L");
        return work.Statements(this).Check(Checks[2], chlorine, work.Option("limit", Limit)).Done(chlorine);
    }
}
