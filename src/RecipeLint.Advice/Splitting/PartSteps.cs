using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Splitting;

/// <summary>So much of an ingredient in a batch of a part, before rounding.</summary>
internal sealed record PartAmount(SplitIngredient Ingredient, Mass Mass, UnitKind Kind)
{
    public Substance Substance => Ingredient.Substance;

    /// <summary>The volume a liquid is poured as; null for what is weighed.</summary>
    public static Volume? Pouring(Substance substance, Mass mass) =>
        substance is { Form: PhysicalForm.Liquid, Density: { } density } ? mass / density.Value : null;
}

/// <summary>
/// The steps of a part: water, what keeps it, acid, chelating agent, the salts from the one that dissolves least to the one that dissolves
/// most, traces, chelates, and water to the mark.
/// </summary>
internal static class PartSteps
{
    /// <summary>Water poured first, as part of the volume: it leaves room for the salts (common practice, no source).</summary>
    private const double FirstWater = 0.75;

    /// <summary>
    /// Volume a dissolved gram of salt takes up, mL, on the high side, so that the mark is not passed (common practice, no source).
    /// </summary>
    private const double MillilitresPerGram = 0.5;

    private const double BenchCelsius = 20;

    public static IReadOnlyList<Step> Of(
        IReadOnlyList<PartAmount> amounts, Volume batch, WaterReference water, ShopSettings shop, string file)
    {
        var steps = new List<Step>();
        var root = Place.Whole(file).Child("steps");
        Place Next() => root.Child(steps.Count);
        Located<T> At<T>(T value, string key) => new(value, Next().Child(key));

        var taken = amounts.Sum(a => PartAmount.Pouring(a.Substance, a.Mass)?.Millilitres ?? (a.Mass.Grams * MillilitresPerGram));
        var room = Math.Min(FirstWater * batch.Millilitres, 0.95 * (batch.Millilitres - taken));
        var first = Volume.FromMillilitres(Math.Max(Rounding.TwoDigitsDown(room), 0));
        if (first > Volume.Zero)
        {
            steps.Add(new PourStep("pour", Next()) { Volume = At(first, "pour"), Of = At(water, "of") });
        }

        Stage? before = null;
        foreach (var amount in amounts.OrderBy(StageOf)
            .ThenBy(Solubility)
            .ThenByDescending(a => a.Mass.Grams)
            .ThenBy(a => a.Substance.Id, StringComparer.Ordinal))
        {
            var stage = StageOf(amount);
            if (before is { } earlier && stage != earlier)
            {
                steps.Add(new HandlingStep($"stir-{steps.Count}", Next(), Handling.Stir, At("until clear", "stir")));
            }

            before = stage;
            steps.Add(new AddStep(IdOf(amount, steps), Next())
            {
                What = At(amount.Substance.Id, "add"),
                Substance = amount.Substance,
                Amount = At(PortionOf(amount, shop), "amount"),
                Assay = amount.Ingredient.Assay is { } assay ? At(assay, "assay") : null,
                With = PartAmount.Pouring(amount.Substance, amount.Mass) is null && ShopWeights.ScaleFor(amount.Mass, shop) is { } scale
                    ? At(scale.Name, "with")
                    : null,
            });
        }

        steps.Add(new HandlingStep($"stir-{steps.Count}", Next(), Handling.Stir, At("until clear", "stir")));
        steps.Add(new TopUpStep("top-up", Next()) { To = At(batch, "topUp"), Of = At(water, "of") });
        return steps;
    }

    private static string IdOf(PartAmount amount, List<Step> steps)
    {
        var id = amount.Substance.Id;
        return steps.All(s => s.Id != id) ? id : $"{id}-{steps.Count}";
    }

    private static Portion PortionOf(PartAmount amount, ShopSettings shop) =>
        PartAmount.Pouring(amount.Substance, amount.Mass) is { } volume
            ? new Portion.ByVolume(ShopWeights.Round(volume))
            : new Portion.ByMass(ShopWeights.Round(amount.Mass, shop));

    private static Stage StageOf(PartAmount amount) => (amount.Substance.Kind, amount.Kind) switch
    {
        // Its acid would settle where the sour water is not yet stirred through.
        (SubstanceKind.Preservative, _) => Stage.Preservative,
        (SubstanceKind.Acid, _) => Stage.Acid,
        (SubstanceKind.Base or SubstanceKind.Silicate, _) => Stage.Alkali,
        (SubstanceKind.ChelatingAgent, _) => Stage.Agent,
        (SubstanceKind.Chelate, _) => Stage.Chelate,
        _ when amount.Substance.Iron is not null => Stage.Chelate,
        (SubstanceKind.Dye, _) => Stage.Colour,
        (_, UnitKind.Trace or UnitKind.Iron) => Stage.Trace,
        _ => Stage.Salt,
    };

    private static double Solubility(PartAmount amount) =>
        amount.Substance.Solubility?.Value.MinBy(p => Math.Abs(p.Temperature.Celsius - BenchCelsius))?.GramsPer100GramsWater
            ?? double.MaxValue;

    private enum Stage
    {
        Preservative,
        Acid,
        Alkali,
        Agent,
        Salt,
        Trace,
        Chelate,
        Colour,
    }
}
