using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>A finding that was there when the baseline was written.</summary>
/// <param name="Rule">Id.</param>
/// <param name="File">Relative to the root.</param>
/// <param name="At">Ids inside the file; empty for the whole file.</param>
/// <param name="Value">The number it turned on, to six digits; null where it has none.</param>
public sealed record BaselineEntry(string Rule, string File, string At, double? Value)
{
    private const int Digits = 6;

    public static BaselineEntry Of(Finding finding) =>
        new(finding.Rule.Id, finding.Place.File, finding.IdPath, finding.Measured is { } measured ? Rounded(measured) : null);

    /// <summary>The same thing at the same place, lines moved or not, and no worse than it was.</summary>
    public bool Covers(Finding finding) =>
        Rule == finding.Rule.Id && File == finding.Place.File && At == finding.IdPath
        && (finding.Measured is not { } measured || Value is not { } accepted || !measured.IsWorseThan(accepted));

    /// <summary>Away from the limit, so that the value itself is never worse than what was written down.</summary>
    private static double Rounded(Measured measured)
    {
        var value = measured.Value;
        if (value == 0)
        {
            return 0;
        }

        var step = Math.Pow(10, Math.Floor(Math.Log10(Math.Abs(value))) - (Digits - 1));
        var steps = value / step;
        var rounded = (value >= measured.Limit ? Math.Ceiling(steps) : Math.Floor(steps)) * step;
        var decimals = Digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return decimals is >= 0 and <= 15 ? Math.Round(rounded, decimals) : rounded;
    }
}

/// <summary>Findings that a shop knew of when it began to check: they stay out of reports until they get worse.</summary>
/// <param name="File">Where it stands, relative to the root.</param>
public sealed record Baseline(string File, IReadOnlyList<BaselineEntry> Entries)
{
    /// <summary>The name of the data it was written with; empty where it does not say.</summary>
    public string Data { get; init; } = "";

    /// <summary>What stays out goes with the suppressed ones. Each entry covers one finding, so a second one of a kind is new.</summary>
    /// <param name="unused">Entries that cover nothing any more; those of files that were not read are not among them.</param>
    public LintResult Apply(LintResult result, IReadOnlySet<string> read, out IReadOnlyList<BaselineEntry> unused)
    {
        // The entries of each place, so that thousands of them cost no search each.
        var free = Entries.GroupBy(e => (e.Rule, e.File, e.At)).ToDictionary(g => g.Key, g => g.ToList());
        var used = new HashSet<BaselineEntry>(ReferenceEqualityComparer.Instance);
        var kept = new List<Finding>();
        var covered = new List<SuppressedFinding>();
        foreach (var finding in result.Findings)
        {
            if (!free.TryGetValue((finding.Rule.Id, finding.Place.File, finding.IdPath), out var here)
                || here.FindIndex(e => e.Covers(finding)) is not (>= 0 and var index))
            {
                kept.Add(finding);
                continue;
            }

            var entry = here[index];
            here.RemoveAt(index);
            used.Add(entry);
            var because = new Suppression(
                Place.Whole(File), entry.Rule, entry.File, entry.At, $"Was there when '{File}' was written.", entry.Value, null);
            covered.Add(new SuppressedFinding(finding, because));
        }

        unused = [.. Entries.Where(e => !used.Contains(e) && read.Contains(e.File))];
        var suppressed = result.Suppressed.Concat(covered).ToList();
        suppressed.Sort((a, b) => FindingOrder.Instance.Compare(a.Finding, b.Finding));
        return result with { Findings = kept, Suppressed = suppressed };
    }
}
