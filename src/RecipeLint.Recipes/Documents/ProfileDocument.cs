using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>What a crop of this shop wants: a *.profile.json, on its own or over a built-in profile.</summary>
public sealed record ProfileDocument
{
    public required string File { get; init; }

    public Place Place => Place.Whole(File);

    /// <summary>What recipes and settings call it.</summary>
    public required string Name { get; init; }

    /// <summary>Where the name stands; the whole file where the file name gives it.</summary>
    public required Place NamePlace { get; init; }

    /// <summary>The built-in profile it is written over; null means "generic".</summary>
    public Located<string>? Extends { get; init; }

    /// <summary>Where its figures come from; values may state their own.</summary>
    public string? Source { get; init; }

    /// <summary>True unless the file says that its figures are more than the practice of the shop.</summary>
    public bool IsPractice { get; init; } = true;

    /// <summary>For any stage.</summary>
    public required ProfileBounds Any { get; init; }

    /// <summary>By stage, as written; what a stage leaves unsaid holds as for any.</summary>
    public IReadOnlyDictionary<string, ProfileBounds> Stages { get; init; } = new Dictionary<string, ProfileBounds>();

    public IReadOnlyList<ProfileRatio> Ratios { get; init; } = [];
}

/// <summary>Windows and element bounds of a profile or one of its stages.</summary>
/// <param name="Ec">mS/cm at 25 °C.</param>
public sealed record ProfileBounds(Located<Interval<double>>? Ec, Located<Interval<double>>? Ph, IReadOnlyList<ProfileElement> Elements);

/// <summary>
/// Bounds of one element in the final solution, mg/L of the element, ordered from low to high; null where none is stated.
/// </summary>
/// <param name="Key">"N", "NH4-N", "P" ...</param>
/// <param name="Range">The usual range.</param>
/// <param name="UpTo">Unusual but still run.</param>
/// <param name="Source">Null where that of the file holds.</param>
public sealed record ProfileElement(
    string Key, Place Place, double? DeficientBelow, Interval<double>? Range, double? UpTo, double? ToxicAbove, string? Source);

/// <summary>Bounds of a ratio.</summary>
/// <param name="Of">A key, or several joined by "+".</param>
/// <param name="To">As <paramref name="Of"/>.</param>
/// <param name="By">"mass", "mole" or "meq".</param>
public sealed record ProfileRatio(Place Place, string Of, string To, string By, Interval<double> Range, string? Source);
