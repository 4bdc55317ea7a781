using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Weighing;

/// <summary>Other scales, measures and vessels of the shop.</summary>
internal static class Equipment
{
    /// <summary>Ways round a weight that is too small: a finer scale, a pre-stock, more of it at once, a stronger stock.</summary>
    public static IEnumerable<RepairProposal> ForWeight(Finding finding, RepairContext context)
    {
        foreach (var scale in OtherScales(finding, context))
        {
            yield return scale;
        }

        if (context.StockOf(finding) is { } stock)
        {
            if (context.AdditionAt(stock, finding.Place) is { } small && TinyWeight.ThroughPreStock(context, stock, small) is { } preStock)
            {
                yield return preStock;
            }

            yield return BatchSize.Larger(context, stock);
            if (Strength.Stronger(context, stock) is { } stronger)
            {
                yield return stronger;
            }
        }
    }

    /// <summary>The coarsest other scale that will do.</summary>
    public static IEnumerable<RepairProposal> OtherScales(Finding finding, RepairContext context)
    {
        var scales = context.Workspace.SettingsFor(finding.Place.File).Scales
            .OrderByDescending(s => s.Readability)
            .ThenBy(s => s.Name, StringComparer.Ordinal);
        return HolderOf(finding, context) is { } holder
            ? [new RepairProposal.Ladder(scales.Select(s => Named(context, holder, "with", s.Name, "scale")).OfType<Repair>())]
            : [];
    }

    /// <summary>The smallest other measure that will do.</summary>
    public static IEnumerable<RepairProposal> OtherMeasures(Finding finding, RepairContext context)
    {
        var measures = context.Workspace.SettingsFor(finding.Place.File).Measures
            .OrderBy(m => m.Capacity?.Litres ?? double.MaxValue)
            .ThenBy(m => m.Name, StringComparer.Ordinal);
        return HolderOf(finding, context) is { } holder
            ? [new RepairProposal.Ladder(measures.Select(m => Named(context, holder, "with", m.Name, "measure")).OfType<Repair>())]
            : [];
    }

    /// <summary>The smallest other vessel, or flask or cylinder as a vessel, that will do.</summary>
    public static IEnumerable<RepairProposal> OtherVessels(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            return [];
        }

        var names = stock.Settings.Vessels.Select(v => (v.Name, v.Capacity)).Concat(stock.Settings.Measures
            .Where(m => m.Kind is MeasureKind.Flask or MeasureKind.Cylinder)
            .Select(m => (m.Name, m.Capacity)))
            .OrderBy(v => v.Capacity?.Litres ?? double.MaxValue).ThenBy(v => v.Name, StringComparer.Ordinal);
        return [new RepairProposal.Ladder(names.Select(v => Named(context, stock.Stock.Place, "vessel", v.Name, "vessel"))
            .OfType<Repair>())];
    }

    /// <summary>The step or dose a finding stands in.</summary>
    private static Place? HolderOf(Finding finding, RepairContext context) =>
        context.StockOf(finding) is { } stock && RepairContext.StepAt(stock, finding.Place) is { } step ? step.Place
        : context.RecipeOf(finding)?.Recipe.Doses.FirstOrDefault(d => finding.Place.Pointer == d.Place.Pointer
            || finding.Place.Pointer.Value.StartsWith(d.Place.Pointer.Value + "/", StringComparison.Ordinal)) is { } dose ? dose.Place
        : null;

    private static Repair? Named(RepairContext context, Place holder, string key, string name, string what) =>
        context.Item(holder)?[key]?.Text == name
            ? null
            : Repair.Chemistry($"other-{what}", $"Use '{name}' for it.", Steps.Set(context, holder, key, name));
}
