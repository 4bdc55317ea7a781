using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Comparison;

/// <summary>What is not the same in a bottle.</summary>
internal static class StockChanges
{
    public static IEnumerable<AmountChange> Amounts(string file, StockFacts old, StockFacts now)
    {
        var before = ById(old);
        var after = ById(now);
        foreach (var id in before.Keys.Union(after.Keys, StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            var (was, becomes) = (before.GetValueOrDefault(id), after.GetValueOrDefault(id));
            if (was is not null && becomes is not null && was.Substance.Id != becomes.Substance.Id)
            {
                yield return new AmountChange(file, id, was.Substance.Name, was.Mass.Grams, null);
                yield return new AmountChange(file, id, becomes.Substance.Name, null, becomes.Mass.Grams);
            }
            else if (Differs(was?.Mass.Grams, becomes?.Mass.Grams))
            {
                yield return new AmountChange(file, id, (becomes ?? was)!.Substance.Name, was?.Mass.Grams, becomes?.Mass.Grams);
            }
        }
    }

    public static IEnumerable<FigureChange> Figures(string file, StockFacts old, StockFacts now)
    {
        var limits = (Old: DepositOptions.Of(old.Settings), New: DepositOptions.Of(now.Settings));
        var figures = new List<FigureChange>
        {
            new(file, "stock", "makes", "L", old.Volume.Litres, now.Volume.Litres),
            new(file, "stock", "dose", "mL/L", old.Stock.Dose?.Value.MillilitresPerLitre, now.Stock.Dose?.Value.MillilitresPerLitre),
            new(file, "stock", "pH", "", Ph(old), Ph(now)),
        };
        var before = NutrientKeys.Grams(old.Totals)
            .ToDictionary(g => g.Key, g => (new Mass(g.Grams) / old.Volume).GramsPerLitre, StringComparer.Ordinal);
        var after = NutrientKeys.Grams(now.Totals)
            .ToDictionary(g => g.Key, g => (new Mass(g.Grams) / now.Volume).GramsPerLitre, StringComparer.Ordinal);
        figures.AddRange(before.Keys.Union(after.Keys, StringComparer.Ordinal).Select(k => new FigureChange(
            file, "stock", k, "g/L", before.GetValueOrDefault(k), after.GetValueOrDefault(k))));
        var changed = figures.Where(IsChange).ToList();
        if (changed.Count > 0)
        {
            // A search of its own, so only where something changed at all.
            var room = new FigureChange(
                file, "stock", "room when coldest", "times the strength",
                HighestConcentration.Of(old, limits.Old).Factor, HighestConcentration.Of(now, limits.New).Factor);
            changed.AddRange(new[] { room }.Where(r => Differs(r.Old, r.New)));
        }

        return changed;
    }

    /// <summary>True for a figure that is another one, and of a pH for one that a meter tells from the other.</summary>
    internal static bool IsChange(FigureChange figure) =>
        Differs(figure.Old, figure.New) && !(figure.IsPh && PhDoubt.ReadAlike(figure.Old, figure.New));

    /// <summary>Judged to six digits, so that the last bit is no change.</summary>
    internal static bool Differs(double? old, double? now) => Rounded(old) != Rounded(now);

    private static double? Rounded(double? value) => value is { } number ? Rounding.SixDigits(number) : null;

    /// <summary>To a hundredth: no meter of a shop shows more of it.</summary>
    internal static double? ShownPh(double? ph) => ph is { } value ? Math.Round(value, 2) : null;

    private static double? Ph(StockFacts stock) => ShownPh(stock.Chemistry.Mixing is { TellsPh: true } mixing ? mixing.Ph : null);

    private static Dictionary<string, AdditionFacts> ById(StockFacts stock) =>
        stock.Additions.DistinctBy(a => a.Id, StringComparer.Ordinal).ToDictionary(a => a.Id, StringComparer.Ordinal);
}

/// <summary>What is not the same for the plants.</summary>
internal static class RecipeChanges
{
    public static IEnumerable<FigureChange> Figures(string file, Facts oldFacts, RecipeFacts old, Facts nowFacts, RecipeFacts now)
    {
        var (before, after) = (ElementUncertainty.Of(old, oldFacts.FindStock), ElementUncertainty.Of(now, nowFacts.FindStock));
        var figures = old.Elements.Keys.Union(now.Elements.Keys, StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)
            .Select(k => new FigureChange(file, "recipe", k, "mg/L", old.MilligramsPerLitre(k), now.MilligramsPerLitre(k)))
            .Append(new FigureChange(file, "recipe", "EC", "mS/cm", Ec(old), Ec(now)))
            .Append(new FigureChange(file, "recipe", "pH", "", Ph(old), Ph(now)))
            .Append(new FigureChange(file, "recipe", "final volume", "L", old.FinalVolume.Litres, now.FinalVolume.Litres))
            .Concat(before.Elements.Keys
                .Union(after.Elements.Keys, StringComparer.Ordinal)
                .Order(StringComparer.Ordinal)
                .Select(k => new FigureChange(
                    file, "recipe", $"uncertainty of {k}", "%",
                    100 * before.Elements.GetValueOrDefault(k)?.RelativeExpanded,
                    100 * after.Elements.GetValueOrDefault(k)?.RelativeExpanded))
                .Where(f => TwoDigits(f.Old) != TwoDigits(f.New)));
        return figures.Where(StockChanges.IsChange);
    }

    /// <summary>
    /// At most two significant digits of an uncertainty say anything (JCGM 100:2008, 7.2.6): what only moves a later one is no change.
    /// </summary>
    private static double? TwoDigits(double? uncertainty)
    {
        if (uncertainty is not (> 0 and var value) || !double.IsFinite(value))
        {
            return uncertainty;
        }

        var unit = Math.Pow(10, Math.Floor(Math.Log10(value)) - 1);
        return Math.Round(value / unit) * unit;
    }

    private static double? Ec(RecipeFacts recipe) => recipe.Chemistry.Final.Conductivity.At25?.MillisiemensPerCentimetre;

    private static double? Ph(RecipeFacts recipe) =>
        StockChanges.ShownPh(recipe.Chemistry.Final is { TellsPh: true } final ? final.Ph : null);
}
