using RecipeLint.Analysis;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>What no repair may do, whatever it mends.</summary>
internal static class RepairPolicy
{
    private const string People = "people";

    /// <summary>What a recipe is built from; sulfur, chlorine and sodium come along with it.</summary>
    private static readonly HashSet<string> _base = new(StringComparer.Ordinal) { "N", "P", "K", "Ca", "Mg" };

    /// <summary>A vessel filled to the brim by rounding is not overfilled.</summary>
    private const double Full = 1.001;

    /// <summary>Part of an element by which a repair moves it, and not rounding.</summary>
    private const double Moved = 0.002;

    public static bool Forbids(Finding finding, Repair repair, Facts before, Facts after, IReadOnlyList<ElementShift> shifts) =>
        Overfills(before, after)
        || RepairHazards.Arise(before, after)
        || (finding.Rule.Family != People && RepairHazards.Tinkers(before, after))
        || LeavesPoison(before, after)
        || (finding.Rule.Family == People && !TakesCauseAway(finding, before, after))
        || (finding.Rule.Family != People && Swaps(repair) && shifts.Any(s => s.IsLoss && _base.Contains(s.Key)));

    /// <summary>
    /// An element that the repair moves is still, or only now, above what its crop bears: no amount that harms is written.
    /// </summary>
    private static bool LeavesPoison(Facts before, Facts after) =>
        after.Recipes.Any(now => before.FindRecipe(now.Recipe.File) is { } was && now.Profile.Elements.Any(range =>
            Bound.IsOver(now.MilligramsPerLitre(range.Key), range.ToxicAbove)
            && Math.Abs(now.MilligramsPerLitre(range.Key) - was.MilligramsPerLitre(range.Key))
                > Moved * was.MilligramsPerLitre(range.Key)));

    /// <summary>More is poured than the vessel is made for, and was not before.</summary>
    private static bool Overfills(Facts before, Facts after) =>
        after.Stocks.Any(now => Volumes.Poured(now).Litres > now.Volume.Litres * Full
            && !(before.FindStock(now.Stock.File) is { } was && Volumes.Poured(was).Litres > was.Volume.Litres * Full));

    /// <summary>
    /// Of two that hurt people together one is gone from the bottle; more water or another amount only makes it look better. A finding
    /// about a
    /// single substance is about its order, its label or its place.
    /// </summary>
    private static bool TakesCauseAway(Finding finding, Facts before, Facts after)
    {
        if (before.FindStock(finding.Place.File) is not { } was || after.FindStock(finding.Place.File) is not { } now)
        {
            return true;
        }

        var reactants = finding.Related.Select(r => r.Place).Prepend(finding.Place)
            .Select(place => was.Additions.FirstOrDefault(a => Holds(a.Place, place)))
            .OfType<AdditionFacts>().Select(a => a.Substance.Id).Distinct(StringComparer.Ordinal).ToList();
        return reactants.Count < 2 || reactants.Exists(id => now.Additions.All(a => a.Substance.Id != id));
    }

    private static bool Holds(Place outer, Place inner) =>
        outer.File == inner.File
        && (outer.Pointer == inner.Pointer || inner.Pointer.Value.StartsWith(outer.Pointer.Value + "/", StringComparison.Ordinal));

    private static bool Swaps(Repair repair) => repair.Edits.OfType<JsonEdit.ReplaceValue>().Any(e => e.At.Pointer.Tokens is [.., "add"]);
}
