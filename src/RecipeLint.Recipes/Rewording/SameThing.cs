using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Recipes.Rewording;

/// <summary>
/// Whether a suggested text says the very same thing as what is written, so that a tool may write it without asking. Case, spaces, hyphens,
/// subscripts and marks may differ; a slip of the pen counts only where what is written is no known thing and no other known word is as
/// near.
/// </summary>
public static class SameThing
{
    private const int ShortestWord = 5;
    private const int ShortestKey = 4;
    private const int LongWord = 10;

    /// <summary>A key of a file. Keys that name an element, an ion or an oxide are never more than respelled.</summary>
    public static bool Key(string written, string suggested)
    {
        // A remark by another name is a note, and no figure depends on it.
        if (suggested == "note")
        {
            return true;
        }

        if (KnownNames.BuiltIn.IsFormula(written))
        {
            return false;
        }

        return Fold(written) == Fold(suggested)
            || (suggested[0] is >= 'a' and <= 'z' && written.Length >= ShortestKey
                && written.All(char.IsAsciiLetter) && suggested.All(char.IsAsciiLetter)
                && !KnownNames.BuiltIn.IsWord(written) && !KnownUnits.IsKnown(written)
                && IsNear(written.ToLowerInvariant(), suggested.ToLowerInvariant()))
            || (suggested[0] is >= 'a' and <= 'z' && suggested.Contains('-', StringComparison.Ordinal) && Word(written, suggested));
    }

    /// <summary>A name of the shop or the tool: a scale, a crop, a rule, one of a few words.</summary>
    public static bool Word(string written, string suggested) =>
        IsAbout(written) == IsAbout(suggested)
        && (Fold(written) == Fold(suggested) || IsSlip(written, suggested, w => KnownNames.BuiltIn.IsWord(w) || KnownUnits.IsKnown(w), []));

    /// <summary>A quantity: the number stays to the digit, and the unit or basis is the same one.</summary>
    public static bool Quantity(string written, string suggested)
    {
        var (number, unit) = Cut(written);
        var (otherNumber, otherUnit) = Cut(suggested);
        if (IsAbout(written) != IsAbout(suggested))
        {
            return false;
        }

        if (Fold(number) != Fold(otherNumber) || Separators(number) != Separators(otherNumber))
        {
            return false;
        }

        var parts = unit.Split('/', ' ').Where(p => p.Length > 0).ToList();
        var others = otherUnit.Split('/', ' ').Where(p => p.Length > 0).ToList();
        return unit == otherUnit
            || (parts.Count == others.Count && parts.Zip(others).All(p => UnitPart(p.First, p.Second)))
            || (KnownUnits.SameLetters(unit).ToList() is [var only] && only == otherUnit);
    }

    /// <summary>A substance of the catalogue by another text than any of its names.</summary>
    /// <param name="suggested">Its id.</param>
    /// <param name="catalogue">All that can be meant.</param>
    public static bool Substance(string written, string suggested, SubstanceCatalogue catalogue)
    {
        if (KnownNames.BuiltIn.IsKnown(written) || FormulaParser.TryParse(written.Trim(), out _, out _))
        {
            return false;
        }

        var words = catalogue.Substances.SelectMany(NamesOf).SelectMany(KnownNames.WordsOf).ToHashSet(StringComparer.Ordinal);
        var known = KnownNames.BuiltIn.Words.Concat(words).ToHashSet(StringComparer.Ordinal);
        var meant = catalogue.Substances
            .Where(s => NamesOf(s).Any(n => IsSlip(written, n, known.Contains, known)))
            .Select(s => s.Id)
            .ToList();
        return meant is [var only] && only == suggested;
    }

    private static IEnumerable<string> NamesOf(Substance substance)
    {
        IEnumerable<string> names = [substance.Id, substance.Name, .. substance.Aliases];
        return substance.HydrateFamily is { } family ? names.Append(family) : names;
    }

    /// <summary>
    /// True when two texts have the same figures and the same words but for slips, where no misspelt word is a known one and none of the
    /// others
    /// is as near. Metal, hydrate, chelate and charge then agree: each of them is a known word or a figure of its own.
    /// </summary>
    private static bool IsSlip(string written, string meant, Func<string, bool> isKnown, IReadOnlyCollection<string> others)
    {
        var words = KnownNames.WordsOf(written).ToList();
        var right = KnownNames.WordsOf(meant).ToList();
        if (words.Count != right.Count || Figures(written) != Figures(meant))
        {
            return false;
        }

        var slips = words.Zip(right).Where(p => p.First != p.Second).ToList();
        return slips.Count > 0 && slips.All(p =>
            p.First.Length >= ShortestWord && !isKnown(p.First) && IsNear(p.First, p.Second) && IsNearest(p.First, p.Second, others));
    }

    /// <summary>One slip, or two in a long word; the first letter stays.</summary>
    private static bool IsNear(string written, string meant)
    {
        var limit = Math.Min(written.Length, meant.Length) >= LongWord ? 2 : 1;
        return written[0] == meant[0] && EditDistance.Of(written, meant, limit) <= limit;
    }

    private static bool IsNearest(string written, string meant, IReadOnlyCollection<string> others)
    {
        var distance = EditDistance.Of(written, meant);
        return others.All(o => o == meant || EditDistance.Of(written, o, distance) > distance);
    }

    private static bool UnitPart(string written, string suggested)
    {
        if (written == suggested)
        {
            return true;
        }

        if (KnownUnits.IsKnown(written))
        {
            return false;
        }

        if (KnownUnits.SameLetters(written).Any())
        {
            return KnownUnits.SameLetters(written).ToList() is [var only] && only == suggested;
        }

        if (Fold(written) == Fold(suggested))
        {
            return true;
        }

        var meant = written.Length >= ShortestWord && written.All(char.IsAsciiLetter)
            ? UnitTable.ByWord.Where(w => IsNear(written.ToLowerInvariant(), w.Key)).Select(w => w.Value.Symbol).Distinct().ToList()
            : [];
        return meant is [var unit] && unit == suggested
            && KnownUnits.All.Where(u => !UnitTable.ByWord.ContainsKey(u))
                .All(u => EditDistance.Of(written.ToLowerInvariant(), u.ToLowerInvariant(), 1) > 1);
    }

    /// <summary>True where a text says that its number is not exact: leaving that out says more than its writer knows.</summary>
    private static bool IsAbout(string quantity) =>
        quantity.AsSpan().IndexOfAny('~', '≈', '∼') >= 0
        || quantity.Split(' ', StringSplitOptions.RemoveEmptyEntries).Any(w => _abouts.Contains(w.TrimEnd('.').ToLowerInvariant()));

    private static readonly HashSet<string> _abouts =
        new(StringComparer.Ordinal) { "about", "approx", "approximately", "around", "ca", "circa", "roughly" };

    /// <summary>Number with its separators, then the unit with whatever follows.</summary>
    private static (string Number, string Unit) Cut(string quantity)
    {
        var text = UnitParser.Normalise(quantity).Trim();
        var at = 0;
        while (at < text.Length && !(char.IsLetter(text[at]) || text[at] is '°' or '%'))
        {
            at++;
        }

        return (text[..at].Trim(), text[at..]);
    }

    /// <summary>Letters and figures in lower case, subscripts as plain figures.</summary>
    private static string Fold(string text) =>
        string.Concat(text.Select(Plain).Where(char.IsLetterOrDigit)).ToLowerInvariant();

    private static char Plain(char c) => c is >= '₀' and <= '₉' ? (char)('0' + (c - '₀')) : c;

    /// <summary>What could change the value of a number: points and commas between figures.</summary>
    private static string Separators(string number) =>
        string.Concat(number.Replace("..", " ", StringComparison.Ordinal).Where(c => c is '.' or ',' or '\'' or '/' or '±' or '+' or ':'));

    private static string Figures(string text)
    {
        var figures = text.Select(Plain).Select(c => char.IsAsciiDigit(c) || c == '.' ? c : ' ');
        return string.Join(' ', string.Concat(figures).Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }
}
