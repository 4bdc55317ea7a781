using System.Globalization;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Reports.Labels;

/// <summary>Width and height of a label, mm.</summary>
public readonly record struct LabelSize(int Width, int Height)
{
    /// <summary>
    /// The common sizes: those that the CLP regulation asks for by the content of the package (Regulation (EC) No 1272/2008, Annex I, table
    /// 1.3, recalled), which are A8, A7, A6 and A5 laid flat, and two of the trade (common practice, no source).
    /// </summary>
    public static IReadOnlyList<LabelSize> Common { get; } =
    [
        new(74, 52), new(100, 70), new(105, 74), new(148, 105), new(199, 143), new(210, 148),
    ];

    /// <summary>
    /// The least that the regulation asks for: 52 × 74 mm up to 3 L, 74 × 105 up to 50 L, 105 × 148 up to 500 L, 148 × 210 above.
    /// </summary>
    public static LabelSize For(Volume content) => content.Litres switch
    {
        <= 3 => new(74, 52),
        <= 50 => new(105, 74),
        <= 500 => new(148, 105),
        _ => new(210, 148),
    };

    /// <summary>Paper sizes laid flat, mm (ISO 216:2007, table 1).</summary>
    private static readonly Dictionary<string, LabelSize> _paper = new(StringComparer.OrdinalIgnoreCase)
    {
        ["A5"] = new(210, 148),
        ["A6"] = new(148, 105),
        ["A7"] = new(105, 74),
        ["A8"] = new(74, 52),
    };

    /// <summary>"105x74" or "A7"; null for anything else, and for less than 40 × 30 or more than 400 mm.</summary>
    public static LabelSize? Read(string text)
    {
        if (_paper.TryGetValue(text.Trim(), out var paper))
        {
            return paper;
        }

        var parts = text.ToLowerInvariant().Replace("mm", "", StringComparison.Ordinal).Split('x', '×');
        return parts.Length == 2
            && int.TryParse(parts[0].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var width)
            && int.TryParse(parts[1].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var height)
            && width is >= 40 and <= 400 && height is >= 30 and <= 400
            ? new LabelSize(width, height)
            : null;
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Width}x{Height}");
}
