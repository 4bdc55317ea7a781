using System.Text.RegularExpressions;
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
public sealed partial class SubstanceCatalogue
{
    /// <summary>Longer texts are answered with <see cref="SubstanceLookup.Unknown"/> and no suggestion.</summary>
    public const int MaxTextLength = 120;

    private const int MaxSuggestions = 5;

    private const int ShortestIon = 6;

    private static readonly string[] _ionEnds = ["ate", "ite", "ide"];

    private static readonly string[] _noIons = ["hydrate", "chelate", "concentrate"];

    private static readonly Lazy<SubstanceCatalogue> LazyBuiltIn = new(() => new SubstanceCatalogue(BuiltInSubstances.Load()));

    private readonly Dictionary<string, CatalogueEntry> _byId;
    private readonly Dictionary<string, List<CatalogueEntry>> _byKey;
    private readonly Lazy<ILookup<string, CatalogueEntry>> _byHill;
    private readonly Lazy<ILookup<string, CatalogueEntry>> _byAnhydrousHill;
    private readonly CatalogueEntry[] _entries;
    private readonly Lazy<IReadOnlyList<Substance>> _all;

    private SubstanceCatalogue(IEnumerable<CatalogueEntry> entries)
    {
        _entries = [.. entries.OrderBy(e => e.Id, StringComparer.Ordinal)];
        _byId = _entries.ToDictionary(e => e.Id, StringComparer.Ordinal);
        _byKey = new(StringComparer.Ordinal);
        foreach (var entry in _entries)
        {
            foreach (var key in entry.Keys)
            {
                if (!_byKey.TryGetValue(key, out var list))
                {
                    _byKey.Add(key, list = []);
                }

                list.Add(entry);
            }
        }

        _all = new(() => [.. _entries.Select(e => e.Substance)]);
        _byHill = new(() => _entries.Where(e => e.Formula is not null).ToLookup(e => e.Formula!.Hill, StringComparer.Ordinal));
        _byAnhydrousHill =
            new(() => _entries.Where(e => e.Formula is not null).ToLookup(e => e.Formula!.AnhydrousHill, StringComparer.Ordinal));
    }

    /// <summary>The catalogue that comes with the tool; read on first use, each substance built when it is asked for.</summary>
    public static SubstanceCatalogue BuiltIn => LazyBuiltIn.Value;

    public static SubstanceCatalogue Empty { get; } = new([]);

    /// <summary>Every substance, in the order of their ids.</summary>
    public IReadOnlyList<Substance> Substances => _all.Value;

    /// <summary>Every id, in ordinal order.</summary>
    public IEnumerable<string> Ids => _entries.Select(e => e.Id);

    /// <summary>
    /// Grams of <paramref name="a"/> that hold as much of the main salt as one gram of <paramref name="b"/>: 2.05 for
    /// magnesium sulfate heptahydrate against the anhydrous salt, 1.58 for nitric acid 38 % against 60 %.
    /// </summary>
    /// <returns>Null when they are not the same compound apart from water and strength, or a formula is missing.</returns>
    public static double? HydrateFactor(Substance a, Substance b)
    {
        if (a.Formula is not { } fa || b.Formula is not { } fb || a.Strength.Value <= 0 || b.Strength.Value <= 0
            || !string.Equals(fa.AnhydrousHill, fb.AnhydrousHill, StringComparison.Ordinal))
        {
            return null;
        }

        return fa.MolarMass.GramsPerMole / a.Strength.Value / (fb.MolarMass.GramsPerMole / b.Strength.Value);
    }

    /// <summary>The substance with exactly this id; null when there is none.</summary>
    public Substance? ById(string id) => _byId.GetValueOrDefault(id)?.Substance;

    /// <summary>
    /// This catalogue and more substances. Nothing is shadowed: of two substances with one id the one already here stays,
    /// and the clash is reported.
    /// </summary>
    public CatalogueAddition With(IEnumerable<Substance> substances)
    {
        var clashes = new List<IdClash>();
        var all = new Dictionary<string, CatalogueEntry>(_byId, StringComparer.Ordinal);
        foreach (var added in substances)
        {
            if (!all.TryAdd(added.Id, new CatalogueEntry(added)))
            {
                clashes.Add(new IdClash(added, all[added.Id].Substance, SameId: true));
            }
            else if (_byKey.TryGetValue(SubstanceNames.Key(added.Id), out var named))
            {
                clashes.Add(new IdClash(added, named[0].Substance, SameId: false));
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
    /// the acid. A formula without water that hydrates of the catalogue share is ambiguous over these and the anhydrous salt, because
    /// people
    /// write it for either. A formula in the wrong case ("mgso4.7h2o")
    /// is compared letter by letter with the formulas here.
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

        if (OfSomeWater(trimmed) is { Count: > 0 } forms)
        {
            return Answer(forms);
        }

        if (CasNumber.HasShape(trimmed))
        {
            var listed = _entries.Where(e => string.Equals(e.Cas, trimmed, StringComparison.Ordinal)).ToArray();
            return listed.Length > 0 ? Answer(PureFirst(listed)) : new SubstanceLookup.Unknown([]);
        }

        if (!FormulaParser.TryParse(trimmed, out var formula, out _))
        {
            return FindFolded(trimmed);
        }

        // "MgSO4" on a bench mostly means a hydrate: with both here the writer is asked.
        var hydrates = formula.HydrateWater > 0
            ? []
            : _entries.Where(e => e.FormulaText?.StartsWith(formula.Text + "·", StringComparison.Ordinal) == true).ToArray();
        CatalogueEntry[] family =
        [
            .. _entries.Where(e => string.Equals(e.FormulaText, formula.Text, StringComparison.Ordinal)), .. hydrates,
        ];
        if (hydrates.Length > 0 && family.Length > 1)
        {
            return Answer(family);
        }

        // The usual spelling is found by its text; counting the atoms of the whole catalogue waits until that fails.
        var spelt = _entries.Where(e => string.Equals(e.FormulaText, formula.Text, StringComparison.Ordinal)).ToArray();
        return spelt.Length == 1
            ? Answer(spelt)
            : FindFormula(_byHill.Value[formula.Hill], _byAnhydrousHill.Value[formula.AnhydrousHill], formula.HydrateWater > 0, trimmed);
    }

    /// <summary>Substances whose formula is this one apart from water, pure ones first.</summary>
    internal IEnumerable<Substance> WithSameSalt(Formula formula) =>
        _byAnhydrousHill.Value[formula.AnhydrousHill].Select(e => e.Substance).OrderByDescending(s => s.Strength.Value);

    private static SubstanceLookup Answer(IReadOnlyCollection<CatalogueEntry> candidates) =>
        candidates.Count == 1
            ? new SubstanceLookup.Found(candidates.First().Substance)
            : new SubstanceLookup.Ambiguous([.. candidates.Select(c => c.Substance)]);

    /// <summary>
    /// An id whose water is left out where several forms have one ("fe-edta-na"), which is asked, or one that counts a single water
    /// ("-1h2o"), which ids leave uncounted.
    /// </summary>
    private List<CatalogueEntry> OfSomeWater(string text)
    {
        var key = SubstanceNames.Key(text);
        if (OneWater().IsMatch(key) && _byKey.TryGetValue(OneWater().Replace(key, "$1h2o"), out var monohydrate))
        {
            return [.. monohydrate];
        }

        var forms = key.Length == 0 ? []
            : _entries.Where(e => SubstanceNames.Key(e.Id) is var id && id.StartsWith(key, StringComparison.Ordinal)
                && Water().IsMatch(id[key.Length..])).OrderBy(e => e.Id, StringComparer.Ordinal).ToList();
        return forms.Count > 1 ? forms : [];
    }

    /// <summary>A formula or CAS number names the compound: the compound itself goes before its solutions.</summary>
    private static CatalogueEntry[] PureFirst(CatalogueEntry[] candidates)
    {
        var pure = candidates.Where(e => e.Substance.Strength.Value >= 1).ToArray();
        return pure.Length > 0 ? pure : candidates;
    }

    private SubstanceLookup FindFormula(
        IEnumerable<CatalogueEntry> same, IEnumerable<CatalogueEntry> sameButWater, bool hasWater, string text)
    {
        var exact = same.ToArray();
        if (exact.Length > 0)
        {
            return Answer(PureFirst(exact));
        }

        var family = sameButWater.ToArray();
        if (family.Length == 0)
        {
            return new SubstanceLookup.Unknown(Suggest(text));
        }

        return !hasWater && family.Length > 1
            ? Answer(family)
            : new SubstanceLookup.Unknown([.. family.Take(MaxSuggestions).Select(e => e.Id)]);
    }

    private SubstanceLookup FindFolded(string text)
    {
        var folded = SubstanceNames.Fold(text);
        bool IsFolded(
            string? formula) => formula is not null && string.Equals(SubstanceNames.Fold(formula), folded, StringComparison.Ordinal);
        CatalogueEntry[] family = [.. _entries.Where(e => IsFolded(e.FormulaText?.Split('·')[0]))];
        if (family.Length > 1 && family.Any(e => e.FormulaText!.Contains('·', StringComparison.Ordinal)))
        {
            return Answer([.. family.OrderBy(e => e.FormulaText!.Contains('·', StringComparison.Ordinal))]);
        }

        return FindFormula(
            _entries.Where(e => IsFolded(e.FormulaText)),
            family,
            hasWater: false,
            text);
    }

    private IReadOnlyList<string> Suggest(string text)
    {
        var key = SubstanceNames.Key(text);

        // A known thing is no slip for another, however near: hydrofluoric acid for hydrochloric acid, glycerine for glycine.
        var cap = KnownNames.BuiltIn.IsKnown(text) ? 0 : key.Length < 4 ? 1 : Math.Max(2, key.Length / 3);
        var best = MistypedFormulas(text, key);
        foreach (var (name, entries) in _byKey)
        {
            // A word inside a longer name is as near as two slips: "gluconate" suggests the gluconates.
            var distance = EditDistance.Of(key, name, cap);
            var isWithin = key.Length >= 4 && name.Contains(key, StringComparison.Ordinal);
            distance = isWithin ? Math.Min(distance, 2) : distance;
            if (distance > cap && !isWithin)
            {
                continue;
            }

            foreach (var entry in entries.Where(e => !IsOther(text, e)))
            {
                if (!best.TryGetValue(entry.Id, out var known) || distance < known)
                {
                    best[entry.Id] = distance;
                }
            }
        }

        // What is much further off than the nearest is noise.
        var nearest = best.Count == 0 ? 0 : best.Values.Min();
        return [.. best.Where(b => b.Value <= nearest + 2)
            .OrderBy(b => b.Value)
            .ThenBy(b => b.Key, StringComparer.Ordinal)
            .Take(MaxSuggestions)
            .Select(b => b.Key)];
    }

    /// <summary>
    /// True where the text names an ion that the substance has not: sulfide is no slip for sulfate, phosphite none for phosphate, chlorate
    /// none for chloride.
    /// </summary>
    private static bool IsOther(string text, CatalogueEntry entry)
    {
        var names = entry.Substance.Aliases.Append(entry.Substance.Name).Append(entry.Id);
        var there = names.SelectMany(KnownNames.WordsOf).ToHashSet(StringComparer.Ordinal);
        return KnownNames.WordsOf(text).Any(w => IsIon(w) && KnownNames.BuiltIn.IsWord(w) && !there.Contains(w))
            || (AgentOf(text) is { } agent
                && names.Select(AgentOf).OfType<string>().ToList() is { Count: > 0 } agents && !agents.Contains(agent));
    }

    /// <summary>
    /// The chelating agent that a name names: one is no slip for another. Null where it names none. An agent is one word, or the end of
    /// one: the "edta" of "fe-dtap" is none.
    /// </summary>
    private static string? AgentOf(string name)
    {
        List<string> words = [.. KnownNames.WordsOf(name).Select(SubstanceNames.Key)];
        return Array.Find(_agents, a => words.Exists(w => w.Contains(a, StringComparison.Ordinal)));
    }

    /// <summary>A word that ends as ions do.</summary>
    private static bool IsIon(string word) =>
        (word.Length >= ShortestIon || word == "oxide") && Array.Exists(_ionEnds, e => word.EndsWith(e, StringComparison.Ordinal))
        && !Array.Exists(_noIons, e => word.EndsWith(e, StringComparison.Ordinal));

    /// <summary>
    /// Substances whose formula a text misses by one letter or figure ("KN03"). What is a formula itself is another compound: nitrite is no
    /// slip for nitrate, so only its spaces and marks may differ. Nobody begins a figure with 0: that is the letter O.
    /// </summary>
    private Dictionary<string, int> MistypedFormulas(string text, string key)
    {
        var zeroForO = text.Where((c, i) => c == '0' && (i == 0 || !char.IsAsciiDigit(text[i - 1]))).Any();
        var cap = key.Length < 3 || (!zeroForO && FormulaParser.TryParse(text, out _, out _)) ? 0 : 1;
        var salt = text.Split('·', '.', '*')[0].Trim();
        var uncounted = Uncounted(salt) == salt;
        return _entries.Where(e => e.FormulaText is not null)
            .Select(e => (e.Id, Distance: uncounted && Uncounted(e.FormulaText!) == salt
                ? 0
                : EditDistance.Of(key, SubstanceNames.Key(e.FormulaText!), cap)))
            .Where(e => e.Distance <= cap)
            .ToDictionary(e => e.Id, e => e.Distance, StringComparer.Ordinal);
    }

    /// <summary>
    /// A salt's formula as who does not count its ions writes it, without its water: "CaNO3" for Ca(NO3)2·4H2O, "CaCl" for CaCl2.
    /// </summary>
    private static string Uncounted(string formula) =>
        HalideCount().Replace(FirstCount().Replace(GroupCount().Replace(formula.Split('·')[0], "$1"), "$1"), "$1");

    /// <summary>The longer before those that they hold.</summary>
    private static readonly string[] _agents = ["heedta", "hedta", "eddha", "hbed", "idha", "dtpa", "edta"];

    [GeneratedRegex("^(anhydrous|[0-9]*h2o)$")]
    private static partial Regex Water();

    [GeneratedRegex("([^0-9])1h2o$")]
    private static partial Regex OneWater();

    [GeneratedRegex(@"\(([A-Za-z0-9]+)\)[0-9]*")]
    private static partial Regex GroupCount();

    [GeneratedRegex("^([A-Z][a-z]?)[0-9]+(?=[A-Z])")]
    private static partial Regex FirstCount();

    [GeneratedRegex("(Cl|Br|I|F)[0-9]+$")]
    private static partial Regex HalideCount();
}
