namespace RecipeLint.Rules.Engine;

/// <summary>What a way out puts into a vessel or does to it; nothing for less, apart, weaker or sooner.</summary>
public enum Puts
{
    Nothing,
    Acid,
    Alkali,
    Organic,
    Preservative,
    Chelate,
    Warmth,

    /// <summary>The bottle stands as it is, for longer or in another place.</summary>
    Keeping,
}

/// <summary>One way out of what a finding says, as it stands in "A, B, or C".</summary>
/// <param name="Text">Begins with a small letter, ends without a full stop.</param>
/// <param name="ToPh">The pH to which an acid or alkali takes the vessel; null where nobody says.</param>
public sealed record Way(string Text, Puts Puts = Puts.Nothing, double? ToPh = null)
{
    /// <summary>True where it takes the place of what is in the vessel already, at the same pH, and was tried as such.</summary>
    public bool Replaces { get; init; }
}
