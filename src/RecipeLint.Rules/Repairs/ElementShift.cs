using RecipeLint.Analysis;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>An element of a final solution that a repair moves although its finding is about something else.</summary>
/// <param name="Recipe">By its name.</param>
/// <param name="Key">"K", "NO3-N" ...</param>
/// <param name="Before">mg/L.</param>
/// <param name="After">mg/L.</param>
/// <param name="Allowed">mg/L either way: the tolerance of its target, else a twentieth.</param>
public sealed record ElementShift(string Recipe, string Key, double Before, double After, double Allowed)
{
    /// <summary>What an element may move where no target says so (common practice, no source: what a bench scale and a syringe do to it
    /// anyway).</summary>
    private const double Share = 0.05;

    /// <summary>mg/L below which a main element, and a trace element, is as good as none (common practice, no source).</summary>
    private const double LittleOfMain = 1;

    private const double LittleOfTrace = 0.01;

    private static readonly HashSet<string> _traces =
        new(StringComparer.Ordinal) { "Fe", "Mn", "Zn", "Cu", "B", "Mo", "Ni", "Co", "Se", "I" };

    /// <summary>True when most of it is lost.</summary>
    public bool IsLoss => After < 0.5 * Before;

    /// <summary>In the order of the recipes and their elements.</summary>
    public static IReadOnlyList<ElementShift> Between(Facts before, Facts after, Finding finding) =>
    [
        .. from now in after.Recipes
           let was = before.FindRecipe(now.Recipe.File)
           where was is { IsComplete: true } && now.IsComplete
           from shift in Between(was, now, finding)
           select shift,
        .. from was in before.Stocks
           where was is { IsComplete: true, Stock.Dose: not null } && !before.RecipesWith(was.Stock.File).Any()
           from shift in OfStock(was, before, after, finding)
           select shift,
    ];

    /// <summary>
    /// A stock that no recipe of the run doses: what it gives to a litre at its own dose, together with the bottles that the repair makes
    /// beside it. What it did not bring before is told as a change of the bottle: how much of that the whole feed has nobody knows.
    /// </summary>
    private static IEnumerable<ElementShift> OfStock(StockFacts was, Facts before, Facts after, Finding finding)
    {
        if (after.FindStock(was.Stock.File) is not { IsComplete: true, Stock.Dose: not null } now || ReferenceEquals(was.Stock, now.Stock))
        {
            yield break;
        }

        StockFacts[] bottles = [now, .. after.Stocks.Where(s => before.FindStock(s.Stock.File) is null)];
        foreach (var element in was.Totals.Elements.Union(bottles.SelectMany(b => b.Totals.Elements))
            .Where(e => e.Symbol is not ("H" or "O" or "C" or "Na" or "Cl"))
            .OrderBy(e => e.Symbol, StringComparer.Ordinal))
        {
            var (from, to) = (Given(was, element), bottles.Sum(b => Given(b, element)));
            var floor = _traces.Contains(element.Symbol) ? LittleOfTrace : LittleOfMain;
            if (from > floor && Math.Abs(to - from) > Math.Max(Share * from, floor) * (1 + 1e-9) && !IsAbout(finding, element.Symbol))
            {
                yield return new ElementShift(was.Stock.Name, element.Symbol, from, to, Share * from);
            }
        }
    }

    /// <summary>mg/L at its dose; 0 for a stock without one.</summary>
    private static double Given(StockFacts stock, Element element) =>
        stock.Concentration(element).MilligramsPerLitre * (stock.Stock.Dose?.Value.LitresPerLitre ?? 0);

    private static IEnumerable<ElementShift> Between(RecipeFacts was, RecipeFacts now, Finding finding)
    {
        // What a chelating agent holds feeds nobody.
        var keys = was.Elements.Keys.Union(now.Elements.Keys, StringComparer.Ordinal).Where(k => k != "organic-N");
        foreach (var key in keys.Order(StringComparer.Ordinal))
        {
            var (from, to) = (was.MilligramsPerLitre(key), now.MilligramsPerLitre(key));
            var target = was.Recipe.Targets.FirstOrDefault(t => t.Key.Value == key && t.Concentration is not null);
            var wanted = target?.Concentration?.MilligramsPerLitre;
            var allowed = wanted is { } stated ? target!.Tolerance?.HalfWidth(stated) ?? (Share * stated) : Share * from;
            var floor = _traces.Contains(key) ? LittleOfTrace : LittleOfMain;
            var isNearer = wanted is { } aim && Math.Abs(to - aim) <= Math.Abs(from - aim);
            if (Math.Abs(to - from) <= Math.Max(allowed, floor) * (1 + 1e-9) || isNearer || IsAbout(finding, key))
            {
                continue;
            }

            yield return new ElementShift(now.Recipe.Name, key, from, to, allowed);
        }
    }

    /// <summary>
    /// True when the finding names it, or the whole element it is a form of, as what it measured. The forms of nitrogen stand beside each
    /// other: a finding about one of them is about neither another nor their sum.
    /// </summary>
    private static bool IsAbout(Finding finding, string key)
    {
        var element = key.Split('-')[^1];
        var named = finding.Values.Select(v => v.Name).Append(finding.Measured?.Name ?? "").Append(finding.IdPath.Split('/')[^1]);
        return named.SelectMany(n => n.Split(' ', ':', '/', ',', '#'))
            .Any(w => w == key || w == element || (element != "N" && w.EndsWith("-" + element, StringComparison.Ordinal)));
    }
}
