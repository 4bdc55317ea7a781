using System.Collections.Frozen;
using System.Globalization;
using System.Text;
using RecipeLint.Chemistry.Data;

namespace RecipeLint.Chemistry.Substances;

/// <summary>
/// Names and formulas of chemicals and growers' materials beside the catalogue, so that nobody takes one for a misspelling of another.
/// Sources stand in the data file; the salts are derived from ions by balancing charges.
/// </summary>
public sealed class KnownNames
{
    private const string Resource = "RecipeLint.Chemistry.Data.names.names.json";

    private static readonly Lazy<KnownNames> LazyBuiltIn = new(Load);

    private readonly FrozenSet<string> _keys;
    private readonly FrozenSet<string> _formulas;
    private readonly FrozenSet<string> _words;
    private readonly FrozenSet<string> _symbols;

    private KnownNames(
        IReadOnlyCollection<string> names, IEnumerable<string> formulas, IEnumerable<string> symbols, IEnumerable<string> madeWords)
    {
        Names = [.. names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        _keys = Names.Select(SubstanceNames.Key).ToFrozenSet(StringComparer.Ordinal);
        _formulas = formulas.ToFrozenSet(StringComparer.Ordinal);
        _symbols = symbols.ToFrozenSet(StringComparer.Ordinal);
        _words = Names.SelectMany(WordsOf).Concat(madeWords).ToFrozenSet(StringComparer.Ordinal);
    }

    /// <summary>Those that come with the tool; read on first use.</summary>
    public static KnownNames BuiltIn => LazyBuiltIn.Value;

    /// <summary>Every name, in ordinal order; formulas and symbols apart.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Every single word of the names, in lower case.</summary>
    public IEnumerable<string> Words => _words;

    /// <summary>True for a name in any case and spacing, for a formula and for the symbol of an element as they are spelled.</summary>
    public bool IsKnown(string text) => IsFormula(text) || _keys.Contains(SubstanceNames.Key(text));

    /// <summary>True for the formula of a compound here and for the symbol of an element; upper and lower case count.</summary>
    public bool IsFormula(string text) => _symbols.Contains(text) || _formulas.Contains(text);

    /// <summary>True for a single word of any name.</summary>
    public bool IsWord(string word) => _words.Contains(Fold(word));

    /// <summary>The words of a name in lower case and one spelling; figures and marks are left out.</summary>
    public static IEnumerable<string> WordsOf(string name)
    {
        var word = new StringBuilder();
        foreach (var c in Fold(name) + " ")
        {
            if (char.IsLetter(c))
            {
                word.Append(c);
            }
            else if (word.Length > 0)
            {
                yield return word.ToString();
                word.Clear();
            }
        }
    }

    private static string Fold(string text) => text.ToLowerInvariant().Replace("sulph", "sulf", StringComparison.Ordinal);

    private static KnownNames Load()
    {
        using var document = EmbeddedJson.Open(typeof(KnownNames).Assembly, Resource);
        string[] Texts(string key) => [.. document.RootElement.GetProperty(key).EnumerateArray().Select(e => e.GetString()!)];
        var elements = Texts("elements").Select(Cut).ToList();
        var compounds = Texts("compounds").Select(Cut).ToList();
        var cations = Texts("cations").Select(Ion.Parse).ToList();
        var anions = Texts("anions").Select(Ion.Parse).ToList();
        var salts = cations.SelectMany(c => anions.Select(a => (Cation: c, Anion: a))).ToList();
        return new KnownNames(
            [
                .. elements.Select(e => e.Tail), .. compounds.Select(c => c.Tail), .. Texts("organics"), .. Texts("materials"),
                .. salts.SelectMany(s => s.Cation.Names.SelectMany(c => s.Anion.Names.Select(a => $"{c} {a}"))),
            ],
            [.. compounds.Select(c => c.First), .. salts.Select(s => Salt(s.Cation, s.Anion)), .. anions.Select(a => a.Formula)],
            elements.Select(e => e.First),
            Texts("prefixes").SelectMany(p => Texts("stems").Select(s => p + s)));
    }

    private static (string First, string Tail) Cut(string text)
    {
        var space = text.IndexOf(' ', StringComparison.Ordinal);
        return (text[..space], text[(space + 1)..]);
    }

    /// <summary>"Fe2(SO4)3": as many of each ion as their charges ask for.</summary>
    private static string Salt(Ion cation, Ion anion)
    {
        var common = Gcd(cation.Charge, anion.Charge);
        return Times(cation, anion.Charge / common) + Times(anion, cation.Charge / common);
    }

    private static int Gcd(int a, int b) => b == 0 ? a : Gcd(b, a % b);

    private static string Times(Ion ion, int count)
    {
        var number = count == 1 ? "" : count.ToString(CultureInfo.InvariantCulture);
        var isSimple = ion.Formula.Skip(1).All(char.IsAsciiLetterLower);
        return count == 1 || isSimple ? ion.Formula + number : $"({ion.Formula}){number}";
    }

    /// <summary>"2 SO4 sulfate": charge, formula, names.</summary>
    private sealed record Ion(int Charge, string Formula, string[] Names)
    {
        public static Ion Parse(string text)
        {
            var parts = text.Split(' ', 3);
            return new Ion(int.Parse(parts[0], CultureInfo.InvariantCulture), parts[1], parts[2].Split(','));
        }
    }
}
