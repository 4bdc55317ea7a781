using RecipeLint.Advice.Slips;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Stretching;

/// <summary>A stock made stronger or weaker in thought: every amount scaled, the dose the other way, the final solution the same.</summary>
internal static class StretchedStock
{
    /// <param name="factor">On the present strength, above 0: 2 is twice as strong and dosed at half.</param>
    public static StockDocument Of(StockDocument stock, double factor) => stock with
    {
        Dose = stock.Dose is { } dose ? new Located<Dose>(new Dose(dose.Value.LitresPerLitre / factor), dose.Place) : null,
        Steps =
        [
            .. stock.Steps.Select(s => s switch
            {
                AddStep add => add with { Amount = Scaled(add.Amount, factor) },
                AliquotStep aliquot => aliquot with { Amount = Scaled(aliquot.Amount, factor) },
                _ => s,
            }),
        ],
    };

    private static Located<Portion>? Scaled(Located<Portion>? amount, double factor) =>
        amount is null ? null : new Located<Portion>(amount.Value.Times(factor), amount.Place);
}
