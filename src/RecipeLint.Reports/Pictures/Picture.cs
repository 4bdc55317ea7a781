using RecipeLint.Reports.Tables;

namespace RecipeLint.Reports.Pictures;

/// <summary>What a stroke or surface stands for; the page's style sheet turns it into a colour for light, dark and paper.</summary>
public enum Ink
{
    Text,
    Grid,
    Usual,
    Limit,
    First,
    Second,
    Third,
    Fourth,
    Fifth,
    Sixth,
}

/// <summary>An axis with its unit in the title.</summary>
/// <param name="Labels">Names of whole numbers from 0 on; null for a scale.</param>
public sealed record Axis(string Title, double Least, double Most, bool IsLog = false, IReadOnlyList<string>? Labels = null);

/// <summary>One computed point.</summary>
/// <param name="Doubt">Half-width of its uncertainty along the horizontal axis; 0 for none.</param>
/// <param name="DoubtUp">Half-width of its uncertainty along the upright axis; 0 for none.</param>
public readonly record struct Dot(double X, double Y, double Doubt = 0, double DoubtUp = 0);

/// <summary>Points that belong together, told apart by colour, by stroke and by sign.</summary>
public sealed record Curve(string Name, Ink Ink, IReadOnlyList<Dot> Dots, bool IsJoined = true)
{
    /// <summary>How far the curve may be off, drawn as a band around it; empty for none.</summary>
    public IReadOnlyList<Reach> Band { get; init; } = [];
}

/// <summary>From where to where a curve may run at one place.</summary>
public readonly record struct Reach(double X, double Low, double High);

/// <summary>A surface with a word in it where it is wide enough.</summary>
public sealed record Box(double Left, double Right, double Bottom, double Top, Ink Ink, string Text = "");

/// <summary>A line across the picture with its meaning.</summary>
public sealed record Mark(double At, bool IsVertical, string Text);

/// <summary>A picture as computed, before anybody draws it; its table says the same in figures.</summary>
/// <param name="Key">Unique on a page; of lower-case letters, digits and hyphens.</param>
/// <param name="Says">What it shows, in a sentence or two, for who cannot see it and for the caption.</param>
public sealed record Picture(string Key, string Title, string Says, Axis Across, Axis Up, Table Table)
{
    public IReadOnlyList<Curve> Curves { get; init; } = [];

    public IReadOnlyList<Box> Boxes { get; init; } = [];

    public IReadOnlyList<Mark> Marks { get; init; } = [];
}
