using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using Digits = RecipeLint.Chemistry.Quantities.Rounding;

namespace RecipeLint.Rules.Documents;

/// <summary>
/// The pH against the bicarbonate beside it: acid makes carbon dioxide of it, and alkali chalk. Constants at 25 °C (L. N. Plummer and
/// E. Busenberg, Geochim. Cosmochim. Acta 46 (1982) 1011, recalled); activities are left out, which is good to a factor of three. A range
/// counts by the end that fits best.
/// </summary>
/// <param name="IsAcid">True to ask for the carbon dioxide, false for the chalk.</param>
/// <param name="Ph">The end that fits best.</param>
/// <param name="Alkalinity">meq/L, the lowest of the year.</param>
/// <param name="Calcium">mmol/L, the lowest of the year; 0 where it is not asked.</param>
internal sealed record PhOfBicarbonate(WaterDocument Water, Place Place, bool IsAcid, double Ph, double Alkalinity, double Calcium)
    : WaterComparison(Water, Place)
{
    private const double FirstAcidity = 6.35, SecondAcidity = 10.33, Calcite = -8.48;

    /// <summary>mol/L of carbon dioxide under one bar of it.</summary>
    private const double Henry = 0.034;

    /// <summary>Bar; under more a water bubbles as soon as a tap is opened (common practice, no source).</summary>
    private const double MostBar = 1;

    /// <summary>
    /// Times the product of chalk; waters that set down tufa stand some ten times over it (common practice, no source).
    /// </summary>
    private const double MostTimes = 100;

    internal override string Message => IsAcid
        ? $"At pH {Number(Ph)} no bicarbonate is left: {Number(Alkalinity)} meq/L of it would need {Number(Found)} bar of carbon "
            + "dioxide over the water." + Advice
        : $"At pH {Number(Ph)} the calcium and the bicarbonate stated come to {Number(Found)} times what stays dissolved beside chalk: "
            + "such a water would be milky." + Advice;

    internal override IReadOnlyList<NamedValue> Values =>
        [new(IsAcid ? "carbon dioxide" : "over chalk", Found, IsAcid ? "bar" : ""), new("pH", Ph, "")];

    /// <summary>All of the bicarbonate is in question where acid has taken it; chalk comes and goes with the pH.</summary>
    protected override double Off => IsAcid ? Alkalinity : 0;

    private double Found => Checks[0].Value;

    internal static IEnumerable<PhOfBicarbonate> Of(WaterDocument water)
    {
        if (water is not { Ph: { } ph, Alkalinity: { } alkalinity })
        {
            yield break;
        }

        var charge = alkalinity.Value.Low.MilliequivalentsPerLitre;
        if (charge > 0)
        {
            var bar = charge / 1000 * Math.Pow(10, FirstAcidity - ph.Value.High) / Henry;
            yield return new PhOfBicarbonate(water, ph.Place, true, ph.Value.High, charge, 0)
            {
                Checks = [new("more carbon dioxide than stays in it", Digits.SixDigits(bar), Relation.Over, MostBar, "bar")],
            };
        }

        var calcium = water.Values.Where(v => v.Component == Chemistry.Equilibrium.Component.Calcium)
            .Sum(v => v.Concentration.Low.MillimolesPerLitre);
        if (charge > 0 && calcium > 0)
        {
            var times = charge / 1000 * (calcium / 1000) * Math.Pow(10, ph.Value.Low - SecondAcidity - Calcite);
            yield return new PhOfBicarbonate(water, ph.Place, false, ph.Value.Low, charge, calcium)
            {
                Checks = [new("more than stays dissolved beside chalk", Digits.SixDigits(times), Relation.Over, MostTimes)],
            };
        }
    }

    internal override Working Work()
    {
        var work = new WorkingBuilder($"pH and bicarbonate of the water '{Water.Name}'");
        var ph = work.Given($"pH, {(IsAcid ? Highest : Lowest)}", Ph, "", From.File);
        var charge = work.Given($"alkalinity, {Lowest}", Alkalinity, Unit, From.File);
        if (IsAcid)
        {
            var bar = work.Result(
                "carbon dioxide over it", "alkalinity / 1000 × 10^(6.35 - pH) / 0.034",
                charge / 1000 * Term.Power(10, FirstAcidity - ph) / Henry, "bar");
            return work.Check(Checks[0], bar, MostBar).Done(bar);
        }

        var calcium = work.Given($"calcium, {Lowest}", Calcium, "mmol/L", From.File);
        var times = work.Result(
            "over chalk", "alkalinity / 1000 × calcium / 1000 × 10^(pH - 10.33 + 8.48)",
            charge / 1000 * (calcium / 1000) * Term.Power(10, ph - SecondAcidity - Calcite));
        return work.Check(Checks[0], times, MostTimes).Done(times);
    }
}
