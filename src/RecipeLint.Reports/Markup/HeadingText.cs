using System.Text.RegularExpressions;

namespace RecipeLint.Reports.Markup;

/// <summary>A heading: formulas as in prose, no line ends between a figure and its unit, and paths break at their slashes.</summary>
internal static partial class HeadingText
{
    public static Html Of(string text) =>
        PathText.Is(text) ? PathText.Of(text) : ChemicalText.Of(FigureAndUnit().Replace(text, "\u00a0"));

    [GeneratedRegex("(?<=[0-9]) (?=(?:L|mL|g|kg|mg|m³|°C|%)(?![A-Za-z]))")]
    private static partial Regex FigureAndUnit();
}
