using System.Globalization;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Shop;

/// <summary>Puts settings together: with those of the file they extend, and for one file with what holds for its path.</summary>
internal static class SettingsMerge
{
    /// <summary>Of two entries with one name the own one stays; of two values for one rule the own one goes before.</summary>
    public static ShopSettings Of(ShopSettings own, ShopSettings other) => own with
    {
        Scales = Join(own.Scales, other.Scales, s => s.Name),
        Measures = Join(own.Measures, other.Measures, m => m.Name),
        Meters = Join(own.Meters, other.Meters, m => m.Name),
        Vessels = Join(own.Vessels, other.Vessels, v => v.Name),
        Sites = Join(own.Sites, other.Sites, s => s.Name),
        Prices = Join(own.Prices, other.Prices, p => p.Substance?.Id ?? p.Of),
        Currency = own.Currency ?? other.Currency,
        Calibrations = Join(own.Calibrations, other.Calibrations, c => c.Name),
        Profile = own.Profile ?? other.Profile,
        ProfileFile = own.Profile is null ? other.ProfileFile : own.ProfileFile,
        Rules = [.. other.Rules, .. own.Rules],
        Paths = [.. other.Paths, .. own.Paths],
        Suppressions = [.. own.Suppressions, .. other.Suppressions],
        UnreadNames = own.UnreadNames.Concat(other.UnreadNames).ToHashSet(StringComparer.Ordinal),
        PinnedData = own.PinnedData ?? other.PinnedData,
        Baseline = own.Baseline ?? other.Baseline,
    };

    /// <summary>The settings with the rules of every entry of "paths" that fits a file; the same settings where none does.</summary>
    /// <param name="file">Relative to the root.</param>
    public static ShopSettings For(ShopSettings settings, string file)
    {
        var fitting = Enumerable.Range(0, settings.Paths.Count).Where(i => Fits(settings.Paths[i], file)).ToList();
        return fitting.Count == 0
            ? settings
            : settings with
            {
                Rules = [.. settings.Rules, .. fitting.SelectMany(i => settings.Paths[i].Rules)],
                Variant = string.Join(',', fitting.Select(i => i.ToString(CultureInfo.InvariantCulture))),
            };
    }

    private static bool Fits(PathRules rules, string file)
    {
        var folder = FilePaths.FolderOf(rules.Place.File);
        if (!FilePaths.IsWithin(file, folder))
        {
            return false;
        }

        var names = FilePaths.Below(file, folder).Split('/');
        var fits = false;
        foreach (var pattern in rules.Patterns.Select(IgnorePattern.Parse).OfType<IgnorePattern>())
        {
            // A folder that fits takes in everything below it.
            if (Enumerable.Range(1, names.Length)
                .Any(n => (n < names.Length || !pattern.FoldersOnly) && pattern.Matches(names.AsSpan(0, n))))
            {
                fits = !pattern.TakesBack;
            }
        }

        return fits;
    }

    private static List<T> Join<T>(IReadOnlyList<T> own, IReadOnlyList<T> other, Func<T, string> name) =>
        [.. own, .. other.Where(o => own.All(s => name(s) != name(o)))];
}
