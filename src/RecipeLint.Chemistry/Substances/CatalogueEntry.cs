using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Chemistry.Substances;

/// <summary>What a catalogue must know of a substance to find it; the substance itself is built when someone asks for it.</summary>
internal sealed class CatalogueEntry(string id, IReadOnlyList<string> names, string? cas, string? formulaText, Func<Substance> build)
{
    private readonly Lazy<Substance> _substance = new(build);
    private readonly Lazy<Formula?> _formula = new(() => formulaText is null ? null : FormulaParser.Parse(formulaText));

    public CatalogueEntry(Substance substance)
        : this(substance.Id, NamesOf(substance), substance.Cas, substance.Formula?.Text, () => substance)
    {
    }

    public string Id { get; } = id;

    /// <summary>Id, name, aliases and family name, as written.</summary>
    public IReadOnlyList<string> Names { get; } = names;

    public string? Cas { get; } = cas;

    /// <summary>The formula in normal spelling; null for products and mixtures.</summary>
    public string? FormulaText { get; } = formulaText;

    public Formula? Formula => _formula.Value;

    public Substance Substance => _substance.Value;

    public IEnumerable<string> Keys => Names.Select(SubstanceNames.Key).Where(k => k.Length > 0).Distinct(StringComparer.Ordinal);

    private static string[] NamesOf(Substance substance) =>
        substance.HydrateFamily is { } family
            ? [substance.Id, substance.Name, .. substance.Aliases, family]
            : [substance.Id, substance.Name, .. substance.Aliases];
}
