namespace RecipeLint.Recipes.Quantities;

/// <summary>A unit people write, with the factor to the base unit of its dimension.</summary>
/// <param name="Symbol">As messages and repairs spell it.</param>
/// <param name="Factor">Base units in one of this unit.</param>
/// <param name="Source">Where the factor comes from.</param>
/// <param name="Symbols">Other symbols; upper and lower case are told apart, because mL and ML are not the same.</param>
/// <param name="Words">Spelled-out names; upper and lower case are alike.</param>
internal sealed record Unit(
    string Symbol,
    Dimension Dimension,
    double Factor,
    string Source,
    IReadOnlyList<string>? Symbols = null,
    IReadOnlyList<string>? Words = null)
{
    /// <summary>What is added after the factor; only temperatures have one.</summary>
    public double Offset { get; init; }

    /// <summary>A second dimension the same unit is used for.</summary>
    public Dimension? Also { get; init; }

    /// <summary>How far one such unit is off by nature, as a fraction; null for units that are exact.</summary>
    public double? Uncertainty { get; init; }

    /// <summary>The substance the unit counts as, where the unit implies it ("CaCO3").</summary>
    public string? Basis { get; init; }
}

/// <summary>A unit that means different things to different people; never decided for the writer.</summary>
/// <param name="Spelling">As people write it; upper and lower case are alike.</param>
/// <param name="Readings">The units it can be, by their symbols in the table.</param>
/// <param name="Advice">What the readings are and the factor between them, one sentence.</param>
/// <param name="Factor">Larger reading over smaller; null where it depends on the liquid.</param>
internal sealed record AmbiguousUnit(string Spelling, IReadOnlyList<string> Readings, string Advice, double? Factor);
