using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>A repair in sentences: what to do, what goes, what comes, and the figures before and after.</summary>
public static class RepairText
{
    /// <summary>
    /// The title first, then one line for each kind of consequence; nothing is wrapped and nothing made safe for a terminal.
    /// </summary>
    public static IReadOnlyList<string> Lines(VerifiedRepair repair)
    {
        var lines = new List<string> { repair.Repair.Title };
        if (repair.Shifts.Count > 0)
        {
            lines.Add($"Makes another recipe of it: {string.Join(", ", repair.Shifts.Select(Shift))}.");
        }

        if (repair.AlsoRemoved.Count > 0)
        {
            lines.Add($"Removes as well: {Findings(repair.AlsoRemoved)}.");
        }

        if (repair.Brings.Count > 0)
        {
            lines.Add($"Brings: {Findings(repair.Brings)}.");
        }

        if (repair.Reveals.Count > 0)
        {
            lines.Add($"Lets these be seen, which could not be judged before: {Findings(repair.Reveals)}.");
        }

        if (repair.Worsens.Count > 0)
        {
            lines.Add($"Makes worse: {Findings(repair.Worsens)}.");
        }

        lines.AddRange(repair.Changes.Where(c => c.Figures.Count > 0).Select(Line));
        if (repair.Changes.Any(c => !c.IsStock) && repair.Changes.All(c => c.IsStock || c.Figures.Count == 0))
        {
            lines.Add(repair.Changes.Count(c => !c.IsStock) == 1
                ? "The final solution stays the same."
                : "The final solutions stay the same.");
        }
        else if (repair.Changes.Count > 0 && repair.Changes.All(c => c.Figures.Count == 0))
        {
            lines.Add("What is in the bottle stays the same.");
        }

        return lines;
    }

    private static string Line(SolutionChange change)
    {
        var start = change.IsStock ? $"Stock '{change.Name}'" : $"Final solution '{change.Name}'";
        return $"{start}: {string.Join(", ", change.Figures.Select(Figure))}.";
    }

    private static string Shift(ElementShift shift) =>
        $"{shift.Key} in '{shift.Recipe}' {Say.Number(shift.Before)} -> {Say.Number(shift.After)} mg/L "
        + $"where {(shift.Allowed > 0 ? "±" + Say.Number(shift.Allowed) : "none")} is allowed";

    private static string Figure(FigureChange figure)
    {
        var unit = figure.Unit.Length == 0 ? "" : " " + figure.Unit;
        return $"{figure.Name} {Number(figure, figure.Before)} -> {Number(figure, figure.After)}{unit}";
    }

    private static string Number(FigureChange figure, double? value) => value switch
    {
        null => "unknown",
        { } number when figure.Name == "pH" => Say.Ph(Math.Round(number, 2)),
        { } number => Say.Number(number),
    };

    private static string Findings(IReadOnlyList<Finding> findings) => string.Join(
        ", ",
        findings.GroupBy(f => (f.Rule.Id, f.Level)).Select(g =>
            $"{Words.Of(g.Key.Level)} {g.Key.Id} {g.First().Rule.Name}{Times(g.Count())}"));

    private static string Times(int count) => count > 1 ? FormattableString.Invariant($" ({count} times)") : "";
}
