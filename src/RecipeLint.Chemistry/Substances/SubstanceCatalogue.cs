namespace RecipeLint.Chemistry.Substances;

/// <summary>The substances a name can mean.</summary>
public sealed class SubstanceCatalogue(IReadOnlyList<Substance> substances)
{
    public static SubstanceCatalogue BuiltIn { get; } = new([]);

    public IReadOnlyList<Substance> Substances { get; } = substances;

    public SubstanceLookup Find(string text) =>
        Substances.FirstOrDefault(s => s.Id == text) is { } hit ? new SubstanceLookup.Found(hit) : new SubstanceLookup.Unknown([]);
}
