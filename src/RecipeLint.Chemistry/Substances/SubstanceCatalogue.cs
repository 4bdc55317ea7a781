using System.Collections.Frozen;
using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Chemistry.Substances;

/// <summary>A substance of an addition whose id, or a name that is also its id, is already taken.</summary>
/// <param name="Added">The substance of the addition.</param>
/// <param name="Existing">What already answers to that id.</param>
/// <param name="SameId">
/// True when both have one id: the added one is left out. False when the added id is only a name or alias of the existing one:
/// it is kept, and the text is ambiguous from then on.
/// </param>
public sealed record IdClash(Substance Added, Substance Existing, bool SameId);

/// <summary>A catalogue with more substances in it, and what did not fit.</summary>
public sealed record CatalogueAddition(SubstanceCatalogue Catalogue, IReadOnlyList<IdClash> Clashes);

/// <summary>
/// Substances by id, name, alias, formula and CAS number. Immutable; a text that fits several substances is never decided here.
/// </summary>
public sealed class SubstanceCatalogue
{
    /// <summary>Longer texts are answered with <see cref="SubstanceLookup.Unknown"/> and no suggestion.</summary>
    public const int MaxTextLength = 120;

    private const int MaxSuggestions = 5;

    private static readonly Lazy<SubstanceCatalogue> LazyBuiltIn = new(() => new SubstanceCatalogue(BuiltInSubstances.Load()));

    private readonly FrozenDictionary<string, Substance> _byId;
    private readonly FrozenDictionary<string, Substance[]> _byKey;
    private readonly Lazy<ILookup<string, Substance>> _byHill;
    private readonly Lazy<ILookup<string, Substance>> _byAnhydrousHill;

    private SubstanceCatalogue(IEnumerable<Substance> substances)
    {
        All = [.. substances.OrderBy(s => s.Id, StringComparer.Ordinal)];
        _byId = All.ToFrozenDictionary(s => s.Id, StringComparer.Ordinal);
        _byKey = All.SelectMany(s => Keys(s).Select(key => (key, s)))
            .GroupBy(p => p.key, p => p.s, StringComparer.Ordinal)
            .ToFrozenDictionary(g => g.Key, g => g.ToArray(), StringComparer.Ordinal);
        _byHill = new(() => All.Where(s => s.Formula is not null).ToLookup(s => s.Formula!.Hill, StringComparer.Ordinal));
        _byAnhydrousHill = new(() => All.Where(s => s.Formula is not null).ToLookup(s => s.Formula!.AnhydrousHill, StringComparer.Ordinal));
    }

    /// <summary>The catalogue that comes with the tool; read on first use.</summary>
    public static SubstanceCatalogue BuiltIn => LazyBuiltIn.Value;

    public static SubstanceCatalogue Empty { get; } = new([]);

    /// <summary>Every substance, in the order of their ids.</summary>
    public IReadOnlyList<Substance> All { get; }

    /// <summary>The substance with exactly this id; null when there is none.</summary>
    public Substance? ById(string id) => _byId.GetValueOrDefault(id);

    /// <summary>
    /// This catalogue and more substances. Nothing is shadowed: of two substances with one id the one already here stays,
    /// and the clash is reported.
    /// </summary>
    public CatalogueAddition With(IEnumerable<Substance> substances)
    {
        var clashes = new List<IdClash>();
        var all = All.ToDictionary(s => s.Id, StringComparer.Ordinal);
        foreach (var added in substances)
        {
            if (!all.TryAdd(added.Id, added))
            {
                clashes.Add(new IdClash(added, all[added.Id], SameId: true));
            }
            else if (_byKey.TryGetValue(SubstanceNames.Key(added.Id), out var named))
            {
                clashes.Add(new IdClash(added, named[0], SameId: false));
            }
        }

        return new CatalogueAddition(new SubstanceCatalogue(all.Values), clashes);
    }

    /// <summary>
    /// What a text on a recipe means: an id, name, alias or family name (case, spaces and hyphens do not matter), a formula in any
    /// spelling, or a CAS number.
    /// </summary>
    /// <remarks>
    /// A name or formula that fits several substances is ambiguous: "magnesium sulfate" fits three hydrates, "HNO3" every strength of
    /// the acid. A formula without water fits the anhydrous salt only; when that is not here but several hydrates of it are,
    /// the answer is ambiguous over these, and unknown with a suggestion when there is one.
    /// </remarks>
    public SubstanceLookup Find(string text)
    {
        if (string.IsNullOrWhiteSpace(text) || text.Length > MaxTextLength)
        {
            return new SubstanceLookup.Unknown([]);
        }

        var trimmed = text.Trim();
        if (_byKey.TryGetValue(SubstanceNames.Key(trimmed), out var named))
        {
            return Answer(named);
        }

        if (CasNumber.HasShape(trimmed))
        {
            var listed = All.Where(s => string.Equals(s.Cas, trimmed, StringComparison.Ordinal)).ToArray();
            return listed.Length > 0 ? Answer(PureFirst(listed)) : new SubstanceLookup.Unknown([]);
        }

        return FormulaParser.TryParse(trimmed, out var formula, out _)
            ? FindFormula(formula, trimmed)
            : new SubstanceLookup.Unknown(Suggest(trimmed));
    }

    private static SubstanceLookup Answer(Substance[] candidates) =>
        candidates.Length == 1 ? new SubstanceLookup.Found(candidates[0]) : new SubstanceLookup.Ambiguous(candidates);

    /// <summary>A formula or CAS number names the compound: the compound itself goes before its solutions.</summary>
    private static Substance[] PureFirst(Substance[] candidates)
    {
        var pure = candidates.Where(s => s.Strength.Value >= 1 && s.Kind != SubstanceKind.Product).ToArray();
        return pure.Length > 0 ? pure : candidates;
    }

    private static IEnumerable<string> Keys(Substance substance)
    {
        string[] names = [substance.Id, substance.Name, .. substance.Aliases];
        IEnumerable<string> all = substance.HydrateFamily is { } family ? names.Append(family) : names;
        return all.Select(SubstanceNames.Key).Where(k => k.Length > 0).Distinct(StringComparer.Ordinal);
    }

    private SubstanceLookup FindFormula(Formula formula, string text)
    {
        var exact = _byHill.Value[formula.Hill].ToArray();
        if (exact.Length > 0)
        {
            return Answer(PureFirst(exact));
        }

        var family = _byAnhydrousHill.Value[formula.AnhydrousHill].ToArray();
        if (family.Length == 0)
        {
            return new SubstanceLookup.Unknown(Suggest(text));
        }

        return formula.HydrateWater == 0 && family.Length > 1
            ? new SubstanceLookup.Ambiguous(family)
            : new SubstanceLookup.Unknown([.. family.Take(MaxSuggestions).Select(s => s.Id)]);
    }

    private IReadOnlyList<string> Suggest(string text)
    {
        var key = SubstanceNames.Key(text);
        var cap = Math.Max(2, key.Length / 3);
        var best = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (name, substances) in _byKey)
        {
            // A word inside a longer name is as near as two slips: "gluconate" suggests the gluconates.
            var distance = SubstanceNames.Distance(key, name, cap);
            if (distance > 2 && key.Length >= 4 && name.Contains(key, StringComparison.Ordinal))
            {
                distance = 2;
            }

            if (distance > cap)
            {
                continue;
            }

            foreach (var substance in substances)
            {
                if (!best.TryGetValue(substance.Id, out var known) || distance < known)
                {
                    best[substance.Id] = distance;
                }
            }
        }

        return [.. best.OrderBy(b => b.Value).ThenBy(b => b.Key, StringComparer.Ordinal).Take(MaxSuggestions).Select(b => b.Key)];
    }
}
