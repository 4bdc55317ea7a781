using RecipeLint.Analysis.Profiles;

namespace RecipeLint.Reports.Show;

/// <summary>A value against a range as a bar of signs: the range is a third of the bar, wherever it lies.</summary>
internal static class RangeBar
{
    private const int Length = 18;

    /// <summary>"····├──●──┤····"; an arrow at the end for a value beyond it. Empty without a whole range.</summary>
    /// <param name="value">In the unit of the range.</param>
    public static string Of(double value, double? low, double? high)
    {
        if (low is not { } from || high is not { } to || !(to > from))
        {
            return "";
        }

        var (start, end) = Ends(from, to);
        var (left, right) = (Cell(from), Cell(to));
        var at = Cell(value);
        return string.Create(Length, (left, right, at), static (bar, marks) =>
        {
            for (var i = 0; i < bar.Length; i++)
            {
                bar[i] = i == marks.left ? '├' : i == marks.right ? '┤' : i > marks.left && i < marks.right ? '─' : '·';
            }

            bar[Math.Clamp(marks.at, 0, Length - 1)] = marks.at < 0 ? '◄' : marks.at >= Length ? '►' : '●';
        });

        int Cell(double x) => (int)Math.Clamp(Math.Floor((x - start) / (end - start) * Length), -1, Length);
    }

    /// <summary>Where the value lies: "inside", or how far outside on the end it passed.</summary>
    public static string Words(double value, double? low, double? high) =>
        low is null && high is null ? ""
        : low is { } from && value < from ? $"{Share(from - value, from)} under {Rules.Engine.Say.Number(from)}"
        : high is { } to && value > to ? $"{Share(value - to, to)} over {Rules.Engine.Say.Number(to)}"
        : "inside";

    /// <summary>The same for a pH, whose differences are no shares.</summary>
    public static string PhWords(double ph, double low, double high) =>
        ph < low ? $"{Rules.Engine.Say.Number(low - ph)} pH units under {Rules.Engine.Say.Number(low)}"
        : ph > high ? $"{Rules.Engine.Say.Number(ph - high)} pH units over {Rules.Engine.Say.Number(high)}"
        : "inside";

    public static string Words(double value, ElementRange range) => Words(value, range.SufficientLow, range.SufficientHigh);

    private static (double Start, double End) Ends(double from, double to) => (Math.Max(0, from - (to - from)), to + (to - from));

    private static string Share(double distance, double of) =>
        of > 0 ? Rules.Engine.Say.Percent(distance / of) : Rules.Engine.Say.Number(distance);
}
