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
        amount is null ? null : new Located<Portion>(Scaled(amount.Value, factor), amount.Place);

    private static Portion Scaled(Portion portion, double factor) => portion switch
    {
        Portion.ByMass(var mass) => new Portion.ByMass(mass * factor),
        Portion.ByVolume(var volume) => new Portion.ByVolume(volume * factor),
        Portion.ByDrops(var count) => new Portion.ByDrops(count * factor),
        Portion.ByAmount(var amount) => new Portion.ByAmount(new Amount(amount.Moles * factor)),
        Portion.PerLitreMass(var mass) => new Portion.PerLitreMass(new MassConcentration(mass.GramsPerLitre * factor)),
        Portion.PerLitreAmount(var amount) => new Portion.PerLitreAmount(new AmountConcentration(amount.MolesPerLitre * factor)),
        Portion.PerLitreVolume(var dose) => new Portion.PerLitreVolume(new Dose(dose.LitresPerLitre * factor)),
        _ => portion,
    };
}
