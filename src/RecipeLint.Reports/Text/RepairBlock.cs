using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Reports;

/// <summary>The repairs of one finding as text, each with the name it is applied by and the figures before and after.</summary>
public static class RepairBlock
{
    private const int Indent = 4;

    /// <summary>One line a paragraph, wrapped; for whoever shows repairs beside a text of their own.</summary>
    /// <param name="width">Columns.</param>
    public static IReadOnlyList<string> Lines(IReadOnlyList<VerifiedRepair> repairs, int width)
    {
        var lines = new List<string>();
        foreach (var (repair, isFirst) in repairs.Select((r, i) => (r, r.Shifts.Count > 0 && (i == 0 || repairs[i - 1].Shifts.Count == 0))))
        {
            if (isFirst)
            {
                lines.Add("  These give the plants something else, and are applied by their full name only:");
            }

            var how = repair.Repair.Kind == RepairKind.Safe ? $"--fix or --apply {repair.Name}" : $"--apply {repair.Name}";
            lines.Add($"  repair {Printable.Show(repair.Name)} ({Kind(repair)}; {Printable.Show(how)}):");
            lines.AddRange(RepairText.Lines(repair).SelectMany(paragraph => TextWrap.Wrap(Printable.Show(paragraph), width - Indent)
                .Select(l => new string(' ', Indent) + l)));
        }

        return lines;
    }

    internal static void Write(StyledLines lines, IReadOnlyList<VerifiedRepair> repairs, int width)
    {
        foreach (var line in Lines(repairs, width))
        {
            var isHead = line.StartsWith("  repair ", StringComparison.Ordinal) || line.StartsWith("  These ", StringComparison.Ordinal);
            lines.Line((line, isHead ? Style.Related : Style.Plain));
        }

        if (repairs.Count > 0)
        {
            lines.Blank();
        }
    }

    private static string Kind(VerifiedRepair repair) => repair.Repair.Kind == RepairKind.Safe ? "safe" : "changes the chemistry";
}
