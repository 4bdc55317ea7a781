namespace RecipeLint.Analysis.Observations;

/// <summary>What a sign speaks of.</summary>
public enum SignKind
{
    Colour,
    Form,
    Feel,
    Place,
    Time,
    Smell,
    Gas,
    Liquid,

    /// <summary>What a quick bench test did.</summary>
    Test,
}

/// <summary>One word of the controlled vocabulary.</summary>
/// <param name="Id">Stable word for machines ("needles", "warm-dissolves").</param>
/// <param name="Say">How it reads in a list ("needles", "dissolves on warming").</param>
/// <param name="SayNot">How its absence reads.</param>
/// <param name="Kin">Signs that people easily call by this one's name.</param>
public sealed record Sign(string Id, SignKind Kind, string Say, string SayNot, IReadOnlyList<string> Kin);

/// <summary>A sign that was seen, or looked for and not found.</summary>
public readonly record struct Seen(Sign Sign, bool Present)
{
    public string Say => Present ? Sign.Say : Sign.SayNot;
}
