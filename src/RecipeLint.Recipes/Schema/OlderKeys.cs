namespace RecipeLint.Recipes.Schema;

/// <summary>A key that an earlier version of a file format had. It is still read; the schema marks it as deprecated.</summary>
/// <param name="Kind">The files it stands in, at the top.</param>
public sealed record OlderKey(DocumentKind Kind, string Old, string Now);

/// <summary>Every key that has been renamed since files were first written.</summary>
public static class OlderKeys
{
    public static IReadOnlyList<OlderKey> All { get; } = [new(DocumentKind.Water, "ec", "EC")];
}
