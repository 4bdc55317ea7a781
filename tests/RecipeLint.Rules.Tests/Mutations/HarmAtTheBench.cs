using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Mutations;

/// <summary>The part of the criterion that looks at the mixing: what stands in the vessel after each step, and on the scale.</summary>
internal sealed class HarmAtTheBench(Facts clean)
{
    /// <summary>How far the vessel may end from the volume of the batch.</summary>
    private const double VolumeError = 0.02;

    internal string? Of(Facts facts)
    {
        foreach (var (before, after) in clean.Stocks.Zip(facts.Stocks))
        {
            var (old, now) = (before.Mixing.Steps, after.Mixing.Steps);
            if ((Instruments(after) ?? Steps(now, after) ?? (SameSteps(old, now) ? null : Solids(old, now))) is { } reason)
            {
                return $"{after.Stock.Name}: {reason}";
            }
        }

        return null;
    }

    private static string? Instruments(StockFacts stock)
    {
        var overloaded = stock.Additions.FirstOrDefault(a => !a.ThroughAliquot && a.Scale is { Capacity: { } capacity } && a.Mass.Grams > capacity.Grams);
        var vessel = stock.Settings.Vessels.FirstOrDefault(v => v.Name == stock.Stock.Vessel?.Value);
        return overloaded is not null ? $"{overloaded.Substance.Name} is more than '{overloaded.Scale!.Name}' carries"
            : vessel is { Capacity: { } room } && stock.Volume.Litres > room.Litres ? $"'{vessel.Name}' is too small"
            : null;
    }

    private static string? Steps(IReadOnlyList<MixingStep> moments, StockFacts stock)
    {
        var end = moments[^1].After.Litres;
        if (Math.Abs((end / stock.Volume.Litres) - 1) > VolumeError)
        {
            return $"{Say.Litres(end)} in the vessel for {Say.Litres(stock.Volume.Litres)}";
        }

        if (moments.FirstOrDefault(m => m.Step is TopUpStep) is not { } mark)
        {
            return "never brought to its volume";
        }

        foreach (var moment in moments.Where(m => m.Index < mark.Index))
        {
            foreach (var solid in moment.Added.Where(a => a.Substance.Form == PhysicalForm.Solid && !a.ThroughAliquot))
            {
                var water = mark.Before.FreeWaterGrams;
                if (water <= 0 || (HandbookSolubility.GramsPer100GramsWater(solid.Substance, VesselContents.BenchCelsius) is { } solubility && VesselContents.PureGrams(solid) > solubility * water / 100))
                {
                    return $"{solid.Substance.Name} finds too little water";
                }
            }
        }

        return null;
    }

    /// <summary>Additions and water in the same order with the same masses: nothing new can happen in the vessel.</summary>
    private static bool SameSteps(IReadOnlyList<MixingStep> before, IReadOnlyList<MixingStep> after) =>
        before.Count == after.Count
        && before.Zip(after).All(p => p.First.Step.Id == p.Second.Step.Id && Math.Abs(p.First.After.Grams - p.Second.After.Grams) < 1e-9);

    /// <summary>Solids that fall out on the way, and do not in the clean order.</summary>
    private static string? Solids(IReadOnlyList<MixingStep> before, IReadOnlyList<MixingStep> after)
    {
        var old = Nearest(before).ToDictionary(s => s.Solid.Name, s => s.Index);
        foreach (var (solid, index, contents) in Nearest(after).Where(s => s.Index > 0 && s.Index > old.GetValueOrDefault(s.Solid.Name, double.NegativeInfinity) + HarmInSolution.Nearer))
        {
            var grams = (MixingState.AtRest(contents).Find(solid.Name)?.Mass.Grams ?? 0) / contents.Litres;
            if (grams >= SolidDeposit.VisibleGramsPerLitre)
            {
                return $"while mixing {Say.Number(grams)} g/L {solid.Name} falls out (index {Say.Number(Math.Round(index, 2))})";
            }
        }

        return null;
    }

    private static IEnumerable<(Solid Solid, double Index, VesselContents Contents)> Nearest(IReadOnlyList<MixingStep> moments) =>
        moments.Where(m => m.Added.Count > 0 && m.After.FreeWaterGrams > 0)
            .SelectMany(m => (MixingState.AtRest(m.After).Clear?.Solids ?? []).Where(s => s.Solid.Role == SolidRole.FormsReadily).Select(s => (s.Solid, s.Index, Contents: m.After)))
            .GroupBy(s => s.Solid.Name)
            .Select(g => g.MaxBy(s => s.Index));
}
