using RecipeLint.Recipes.Schema;

namespace RecipeLint.Reports.Comparison;

/// <summary>Which file of the old state is which of the new one.</summary>
internal static class FilePairs
{
    /// <summary>
    /// From this share of equal lines on, a file that lies elsewhere is the same file renamed (common practice, no source).
    /// </summary>
    private const double SameFile = 0.5;

    public static IReadOnlyList<FileChange> Of(Side old, Side now)
    {
        var before = Keyed(old);
        var after = Keyed(now);
        if (before.Count == 1 && after.Count == 1 && Kind(before.Values.Single()) == Kind(after.Values.Single()))
        {
            return [Pair(old, before.Values.Single(), now, after.Values.Single(), after.Keys.Single())];
        }

        var pairs = after.Keys.Where(before.ContainsKey).Select(k => Pair(old, before[k], now, after[k], k)).ToList();
        var gone = before.Where(b => !after.ContainsKey(b.Key)).ToList();
        var come = after.Where(a => !before.ContainsKey(a.Key)).ToList();
        var alike = come
            .SelectMany(c => gone.Where(g => Kind(g.Value) == Kind(c.Value))
                .Select(g => (Gone: g, Come: c, Share: Alike(Lines(old, g.Value), Lines(now, c.Value)))))
            .Where(p => p.Share >= SameFile)
            .OrderByDescending(p => p.Share)
            .ThenBy(p => p.Come.Key, StringComparer.Ordinal)
            .ThenBy(p => p.Gone.Key, StringComparer.Ordinal);
        foreach (var (was, becomes, _) in alike)
        {
            if (gone.Remove(was))
            {
                if (come.Remove(becomes))
                {
                    pairs.Add(new FileChange(was.Value, becomes.Value, FileChangeKind.Renamed, becomes.Key));
                }
                else
                {
                    gone.Add(was);
                }
            }
        }

        pairs.AddRange(come.Select(c => new FileChange(null, c.Value, FileChangeKind.Added, c.Key)));
        pairs.AddRange(gone.Select(g => new FileChange(g.Value, null, FileChangeKind.Removed, g.Key)));
        return [.. pairs.OrderBy(p => p.Shown, StringComparer.Ordinal)];
    }

    private static FileChange Pair(Side old, string was, Side now, string becomes, string shown)
    {
        var same =
            old.Facts.Workspace.Sources.TryGetValue(was, out var before) && now.Facts.Workspace.Sources.TryGetValue(becomes, out var after)
            && before.Bytes.SequenceEqual(after.Bytes);
        return new FileChange(was, becomes, same ? FileChangeKind.Same : FileChangeKind.Changed, shown);
    }

    private static Dictionary<string, string> Keyed(Side side) =>
        side.Facts.Workspace.Asked.DistinctBy(side.Key, StringComparer.Ordinal).ToDictionary(side.Key, f => f, StringComparer.Ordinal);

    private static DocumentKind? Kind(string file) => DocumentKinds.FromFileName(file);

    private static HashSet<string> Lines(Side side, string file) =>
        side.Facts.Workspace.Sources.TryGetValue(file, out var source)
            ? [.. Enumerable.Range(1, source.LineCount).Select(n => source.Line(n).Trim()).Where(l => l.Length > 1)]
            : [];

    private static double Alike(HashSet<string> these, HashSet<string> those)
    {
        var both = these.Count(those.Contains);
        var all = these.Count + those.Count - both;
        return all == 0 ? 1 : (double)both / all;
    }
}
