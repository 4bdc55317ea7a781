using System.Globalization;
using System.Text;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Composition;

/// <summary>One pass over one formula. The first error stops it.</summary>
internal sealed partial class FormulaReader(string text)
{
    private const int MaxDepth = 16;
    private const int MaxCount = 9999;
    private const double MaxAtoms = 1e6;

    private readonly string _text = text;
    private readonly int _end = text.AsSpan().TrimEnd().Length;
    private readonly StringBuilder _normal = new();
    private int _at = text.Length - text.AsSpan().TrimStart().Length;

    public FormulaError? Error { get; private set; }

    private char Current => _at < _end ? _text[_at] : '\0';

    public Formula? Read()
    {
        var atoms = new Dictionary<Element, double>();
        double water = 0;
        var parts = 0;
        do
        {
            if (ReadPart(parts > 0) is not { } part)
            {
                return null;
            }

            parts++;
            foreach (var (element, count) in part.Atoms)
            {
                atoms[element] = atoms.GetValueOrDefault(element) + (count * part.Multiple);
            }

            if (parts > 1 && IsWater(part.Atoms))
            {
                water += part.Multiple;
            }
        }
        while (TryReadSeparator());

        if (Error is not null || ReadCharge() is not { } charge)
        {
            return null;
        }

        if (_at < _end)
        {
            return Fail<Formula>(_at, Describe(Current));
        }

        if (atoms.Values.Sum() > MaxAtoms)
        {
            return Fail<Formula>(0, "More atoms than a formula can have");
        }

        _normal.Append(charge switch
        {
            0 =>
            string.Empty,
            1 => "+",
            -1 => "-",
            _ => charge.ToString("+0;-0", CultureInfo.InvariantCulture)
        });
        var mass = atoms.OrderBy(a => a.Key).Sum(a => a.Value * AtomicWeights.Of(a.Key));
        return new Formula(_normal.ToString(), atoms, charge, water, new MolarMass(mass));
    }

    private static bool IsWater(Dictionary<Element, double> atoms) =>
        atoms.Count == 2 && atoms.GetValueOrDefault(new("H")) == 2 && atoms.GetValueOrDefault(new("O")) == 1;

    private Part? ReadPart(bool afterSeparator)
    {
        var start = _at;
        if (afterSeparator)
        {
            SkipSpace();
            _normal.Append('·');
        }

        if (ReadMultiple() is not { } multiple)
        {
            return null;
        }

        var first = _at;
        var atoms = new Dictionary<Element, double>();
        if (!ReadGroups(atoms, depth: 0))
        {
            return null;
        }

        if (atoms.Count == 0)
        {
            return Fail<Part>(first, afterSeparator ? "Nothing follows the hydrate dot" : Describe(Current));
        }

        // "Na1.5O" read as Na·5O would be silently wrong; real second parts (water, another salt) have more than one atom.
        if (afterSeparator && multiple != 1 && _text[start - 1] == '.' && atoms.Count == 1 && atoms.Values.First() == 1)
        {
            return Fail<Part>(start - 1, "A point is read as the hydrate dot; a fraction can only stand before a whole part, as in 0.5H2O");
        }

        return new Part(multiple, atoms);
    }

    /// <summary>The number before a part: 5, 0.5, 1/2, ½; 1 when there is none.</summary>
    private double? ReadMultiple()
    {
        if (Current is 'n' or 'x')
        {
            return FailValue(_at, $"The amount of water must be a number, not '{Current}'");
        }

        if (Vulgar(Current) is { } vulgar)
        {
            _at++;
            return AppendMultiple(vulgar);
        }

        var start = _at;
        var digits = ReadDigits(allowPoint: true);
        if (digits.Length == 0)
        {
            return Current == '.' ? FailValue(_at, "Write the fraction with a leading zero, as in 0.5H2O") : 1;
        }

        if (Current == ',')
        {
            return FailValue(_at, "Write the decimal sign as a point, as in 0.5H2O");
        }

        if (!double.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) || value > MaxCount)
        {
            return FailValue(start, $"A multiple is at most {MaxCount}");
        }

        if (Current == '/')
        {
            var stroke = ++_at;
            var below = ReadDigits(allowPoint: false);
            if (!double.TryParse(below, NumberStyles.None, CultureInfo.InvariantCulture, out var divisor)
                || divisor == 0
                || divisor > MaxCount)
            {
                return FailValue(stroke, "A fraction needs a whole number after the stroke, as in 1/2H2O");
            }

            value /= divisor;
        }
        else if (Vulgar(Current) is { } rest)
        {
            _at++;
            value += rest;
        }

        if (value <= 0)
        {
            return FailValue(start, "A multiple of zero leaves nothing");
        }

        SkipSpace();
        return AppendMultiple(value);
    }

    private double AppendMultiple(double value)
    {
        if (value != 1)
        {
            _normal.Append(value.ToString(CultureInfo.InvariantCulture));
        }

        return value;
    }

    private bool ReadGroups(Dictionary<Element, double> atoms, int depth)
    {
        while (Error is null)
        {
            if (ClosingOf(Current) is { } closing)
            {
                if (!ReadBracket(atoms, closing, depth))
                {
                    return false;
                }
            }
            else if (char.IsAsciiLetterUpper(Current))
            {
                if (!ReadAtom(atoms))
                {
                    return false;
                }
            }
            else
            {
                return true;
            }
        }

        return false;
    }

    private bool ReadBracket(Dictionary<Element, double> atoms, char closing, int depth)
    {
        var open = _at;
        if (depth >= MaxDepth)
        {
            Fail<Formula>(open, $"Brackets nest at most {MaxDepth} deep");
            return false;
        }

        _at++;
        _normal.Append('(');
        var inner = new Dictionary<Element, double>();
        if (!ReadGroups(inner, depth + 1))
        {
            return false;
        }

        if (Current != closing)
        {
            Fail<Formula>(
                _at < _end ? _at : open,
                _at < _end ? $"Expected '{closing}': {Describe(Current)}" : $"The bracket is never closed with '{closing}'");
            return false;
        }

        if (inner.Count == 0)
        {
            Fail<Formula>(open, "The brackets are empty");
            return false;
        }

        _at++;
        _normal.Append(')');
        if (ReadCount(wholeIon: depth == 0 && _normal[0] == '(' && IsOneGroup()) is not { } count)
        {
            return false;
        }

        foreach (var (element, number) in inner)
        {
            atoms[element] = atoms.GetValueOrDefault(element) + (number * count);
        }

        return true;
    }

    private bool ReadAtom(Dictionary<Element, double> atoms)
    {
        var start = _at++;
        if (char.IsAsciiLetterLower(Current))
        {
            _at++;
        }

        var symbol = _text[start.._at];
        var element = new Element(symbol);
        if (!AtomicWeights.TryGet(element, out _))
        {
            Fail<Formula>(start, AtomicWeights.IsElementWithoutWeight(symbol)
                ? $"'{symbol}' has no standard atomic weight"
                : $"'{symbol}' is not the symbol of an element");
            return false;
        }

        _normal.Append(symbol);
        if (ReadCount(wholeIon: _normal.Length == symbol.Length) is not { } count)
        {
            return false;
        }

        atoms[element] = atoms.GetValueOrDefault(element) + count;
        return true;
    }

    /// <summary>True when the normal text so far is one bracketed group and nothing else.</summary>
    private bool IsOneGroup()
    {
        var depth = 0;
        for (var i = 0; i < _normal.Length; i++)
        {
            depth += _normal[i] switch { '(' => 1, ')' => -1, _ => 0 };
            if (depth == 0 && i < _normal.Length - 1)
            {
                return false;
            }
        }

        return true;
    }

    private Formula? FailNull(int position, string reason) => Fail<Formula>(position, reason);

    private double? FailValue(int position, string reason)
    {
        FailNull(position, reason);
        return null;
    }

    private T? Fail<T>(int position, string reason)
        where T : class
    {
        Error ??= new FormulaError(position, reason);
        return null;
    }

    private sealed record Part(double Multiple, Dictionary<Element, double> Atoms);
}
