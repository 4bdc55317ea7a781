using System.Globalization;

namespace RecipeLint.Rules.Tests.Workings;

/// <summary>
/// Evaluates a printed line of a working the way a person with a pocket calculator does: from the text alone, knowing nothing of how it was made.
/// Sums, products, powers, brackets, √, log10, exp, abs, min and max.
/// </summary>
internal sealed class PocketCalculator
{
    private readonly string _text;
    private int _at;

    private PocketCalculator(string text) => _text = text.Replace(" ", "", StringComparison.Ordinal);

    public static double Evaluate(string text)
    {
        var calculator = new PocketCalculator(text);
        var value = calculator.Sum();
        return calculator._at == calculator._text.Length ? value : throw new FormatException($"'{text}' is not arithmetic from character {calculator._at} on");
    }

    private double Sum()
    {
        var value = Product();
        while (_at < _text.Length && _text[_at] is '+' or '-')
        {
            value = _text[_at++] == '+' ? value + Product() : value - Product();
        }

        return value;
    }

    private double Product()
    {
        var value = Power();
        while (_at < _text.Length && _text[_at] is '×' or '/')
        {
            value = _text[_at++] == '×' ? value * Power() : value / Power();
        }

        return value;
    }

    private double Power()
    {
        var value = Signed();
        if (_at < _text.Length && _text[_at] == '^')
        {
            _at++;
            value = Math.Pow(value, Signed());
        }

        return value;
    }

    private double Signed()
    {
        if (_text[_at] == '-')
        {
            _at++;
            return -Signed();
        }

        return Atom();
    }

    private double Atom()
    {
        foreach (var name in new[] { "√", "log10", "exp", "abs", "min", "max" })
        {
            if (string.CompareOrdinal(_text, _at, name, 0, name.Length) == 0)
            {
                _at += name.Length;
                var arguments = Bracket();
                return name switch
                {
                    "√" => Math.Sqrt(arguments.Single()),
                    "log10" => Math.Log10(arguments.Single()),
                    "exp" => Math.Exp(arguments.Single()),
                    "abs" => Math.Abs(arguments.Single()),
                    "min" => arguments.Min(),
                    _ => arguments.Max(),
                };
            }
        }

        if (_text[_at] == '(')
        {
            return Bracket().Single();
        }

        var start = _at;
        while (_at < _text.Length && (char.IsAsciiDigit(_text[_at]) || _text[_at] == '.'))
        {
            _at++;
        }

        return double.Parse(_text.AsSpan(start, _at - start), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
    }

    private List<double> Bracket()
    {
        var values = new List<double>();
        do
        {
            _at++;
            values.Add(Sum());
        }
        while (_text[_at] == ',');
        _at++;
        return values;
    }
}
