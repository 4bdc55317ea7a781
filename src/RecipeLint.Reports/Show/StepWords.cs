using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Show;

/// <summary>A step in the words of the bench, without a name of our own for anything.</summary>
public static class StepWords
{
    public static string Of(Step step) => step switch
    {
        PourStep pour => $"pour {Litres(pour.Volume?.Value.Litres)} of {pour.Of?.Value.Name ?? "distilled water"}",
        AddStep add =>
            $"add {(add.Amount is { } amount ? Amount(amount.Value) : "an unread amount")} of {add.Substance?.Name ?? add.What.Value}",
        AliquotStep aliquot => $"add {(aliquot.Amount is { } amount ? Amount(amount.Value) : "an unread amount")} of {aliquot.What.Value}",
        AdjustStep adjust =>
            $"set to pH {(adjust.TargetPh is { } ph ? Say.Number(ph.Value) : "?")} with "
                + $"{adjust.Reagent?.Name ?? adjust.Using?.Value ?? "an acid or alkali"}",
        TopUpStep topUp => $"top up to {Litres(topUp.To?.Value.Litres)}",
        HandlingStep handling => $"{handling.Handling.ToString().ToLowerInvariant()}: {handling.How.Value}",
        _ => step.Id,
    };

    private static string Litres(double? litres) => litres is { } known ? Say.Litres(known) : "an unread volume";

    private static string Amount(Portion portion) => portion switch
    {
        Portion.ByMass mass => Say.Grams(mass.Mass.Grams),
        Portion.ByVolume volume => Say.Litres(volume.Volume.Litres),
        Portion.ByDrops drops => $"{Say.Number(drops.Count)} drops",
        Portion.ByAmount moles => $"{Say.Number(moles.Amount.Moles)} mol",
        Portion.PerLitreMass mass => $"{Say.Grams(mass.Concentration.GramsPerLitre)} for each litre",
        Portion.PerLitreAmount moles => $"{Say.Number(moles.Concentration.MolesPerLitre)} mol for each litre",
        Portion.PerLitreVolume volume => $"{Say.Number(volume.Dose.MillilitresPerLitre)} mL for each litre",
        _ => throw new ArgumentOutOfRangeException(nameof(portion)),
    };
}
