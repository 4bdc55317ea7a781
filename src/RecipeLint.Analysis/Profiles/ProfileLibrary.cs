using System.Collections.Frozen;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Profiles;

/// <summary>The built-in crop profiles. Read from data when first asked for.</summary>
public static class ProfileLibrary
{
    public const string GenericName = "generic";

    private static readonly Lazy<IReadOnlyList<ProfileData>> Data = new(ProfileReader.ReadAll);

    private static readonly Lazy<FrozenDictionary<string, ProfileData>> ByName = new(() =>
        Data.Value
            .SelectMany(p => p.Aliases.Append(p.Name).Select(n => KeyValuePair.Create(Plain(n), p)))
            .ToFrozenDictionary(StringComparer.Ordinal));

    /// <summary>Of each key the highest level that any crop here is known to be harmed above: the hardiest of them.</summary>
    private static readonly Lazy<FrozenDictionary<string, Bound>> Harmful = new(() => Data.Value
        .SelectMany(p => p.Rows)
        .Select(r => (r.Key, Bound: r.Bounds.GetValueOrDefault(BoundNames.ToxicAbove)))
        .Where(r => r.Bound is not null)
        .GroupBy(r => r.Key, StringComparer.Ordinal)
        .ToFrozenDictionary(g => g.Key, g => g.MaxBy(r => r.Bound!.Value.Value).Bound!, StringComparer.Ordinal));

    /// <summary>Profile names, ordered.</summary>
    public static IReadOnlyList<string> Names => [.. Data.Value.Select(p => p.Name).Order(StringComparer.Ordinal)];

    /// <summary>Profile names and their aliases ("lettuce" for "leafy-greens"), ordered.</summary>
    public static IReadOnlyList<string> AllNames =>
        [.. Data.Value.SelectMany(p => p.Aliases.Append(p.Name)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The ranges used where no crop is known.</summary>
    public static CropProfile Generic => Data.Value.First(p => p.Name == GenericName).For(null);

    /// <summary>
    /// The profile of a crop, by name or alias ("lettuce" is "leafy-greens"), whatever the case, spaces or hyphens; null when there is
    /// none. A stage the profile does not know gives the ranges for any stage.
    /// </summary>
    public static CropProfile? Find(string name, string? stage = null) => ByName.Value.GetValueOrDefault(Plain(name))?.For(stage);

    /// <summary>
    /// A built-in profile by name or alias, for one that is written over it; the generic one where there is none of that name.
    /// </summary>
    internal static ProfileData DataOf(string name) => ByName.Value.GetValueOrDefault(Plain(name)) ?? ByName.Value[GenericName];

    /// <summary>
    /// The range with what harms the hardiest other crop where nobody has found what harms this one: that a crop stands more than most does
    /// not say that it stands any amount. Below what is still run of it nothing is taken over.
    /// </summary>
    internal static ElementRange WithGeneralLimit(ElementRange range) =>
        range.ToxicAbove is null && Harmful.Value.TryGetValue(range.Key, out var bound)
            && bound.Value.Value > Math.Max(range.Upper ?? 0, range.SufficientHigh ?? 0)
            ? range with
            {
                ToxicAbove = bound.Value.Value,
                IsToxicToOthers = true,
                Source = $"{range.Source}; {bound.Value.Source}",
                Bounds = new Dictionary<string, Sourced<double>>(range.Bounds) { [BoundNames.ToxicAbove] = bound.Value },
            }
            : range;

    /// <summary>Stages a profile tells apart besides "any"; empty for an unknown profile.</summary>
    public static IReadOnlyList<string> Stages(string name) => ByName.Value.GetValueOrDefault(Plain(name))?.StageNames ?? [];

    /// <summary>The known names and aliases nearest by spelling, best first, at most three; empty when nothing is near.</summary>
    public static IReadOnlyList<string> Suggest(string name) => Spelling.Nearest(name, AllNames);

    private static string Plain(string name) =>
        name.Trim().ToLowerInvariant().Replace(' ', '-').Replace('_', '-');
}
