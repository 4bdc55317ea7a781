using System.Globalization;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// A number of a working in the digits that are printed, or arithmetic on such numbers. Whoever follows the working has these digits and no
/// others, so the arithmetic goes on with them: every line gives on a pocket calculator what stands behind its equals sign.
/// </summary>
public sealed class Term
{
    /// <summary>Significant digits of a result: enough that five roundings in a row stay below a tenth of a per cent.</summary>
    private const int UsualDigits = 5;

    /// <summary>Digits of a constant written into the program, such as 100 or 50.04.</summary>
    private const int ConstantDigits = 12;

    private readonly Binding _binding;

    private Term(string text, double value, double exact, Binding binding)
    {
        Text = text;
        Value = value;
        Exact = exact;
        _binding = binding;
    }

    private enum Binding
    {
        Sum,
        Product,
        Power,
        Atom,
    }

    /// <summary>As printed: "0.314 × 0.173", "1.6 × 10^-7".</summary>
    public string Text { get; }

    /// <summary>What the printed text comes to.</summary>
    public double Value { get; }

    /// <summary>The same arithmetic on numbers that nobody rounded: what the rule itself has to come to.</summary>
    public double Exact { get; }

    /// <summary>A value rounded to five significant digits.</summary>
    public static Term Of(double value) => Number(value, value, UsualDigits);

    /// <summary>A result rounded to five significant digits.</summary>
    public static Term Of(Term result) => Number(result.Value, result.Exact, UsualDigits);

    public static implicit operator Term(double constant) => Number(constant, constant, ConstantDigits);

    public static Term operator +(Term left, Term right) =>
        new(
            $"{left.Text} + {(right.StartsWithSign ? $"({right.Text})" : right.Text)}",
            left.Value + right.Value,
            left.Exact + right.Exact,
            Binding.Sum);

    public static Term operator -(Term left, Term right) =>
        new($"{left.Text} - {right.In(Binding.Product)}", left.Value - right.Value, left.Exact - right.Exact, Binding.Sum);

    /// <summary>The number with the other sign.</summary>
    public static Term operator -(Term number) => new($"-{number.In(Binding.Atom)}", -number.Value, -number.Exact, Binding.Sum);

    public static Term operator *(Term left, Term right) =>
        new(
            $"{left.In(Binding.Product)} × {right.In(Binding.Product)}",
            left.Value * right.Value,
            left.Exact * right.Exact,
            Binding.Product);

    public static Term operator /(Term left, Term right) =>
        new($"{left.In(Binding.Product)} / {right.In(Binding.Power)}", left.Value / right.Value, left.Exact / right.Exact, Binding.Product);

    public static Term Sum(IEnumerable<Term> terms) => terms.Aggregate((sum, next) => sum + next);

    public static Term Product(IEnumerable<Term> factors) => factors.Aggregate((product, next) => product * next);

    public static Term Power(Term number, Term exponent) =>
        new(
            $"{number.In(Binding.Atom)}^{exponent.In(Binding.Atom)}",
            Math.Pow(number.Value, exponent.Value),
            Math.Pow(number.Exact, exponent.Exact),
            Binding.Power);

    /// <summary>10^x.</summary>
    public static Term TenTo(Term exponent) => Power(10, exponent);

    /// <summary>e^x.</summary>
    public static Term Exp(Term exponent) => Function("exp", Math.Exp, exponent);

    public static Term Log10(Term number) => Function("log10", Math.Log10, number);

    public static Term Root(Term number) => Function("√", Math.Sqrt, number);

    /// <summary>The size of a number without its sign.</summary>
    public static Term Size(Term number) => Function("abs", Math.Abs, number);

    public static Term Smaller(Term one, Term other) => Function("min", Math.Min, one, other);

    public static Term Larger(Term one, Term other) => Function("max", Math.Max, one, other);

    public override string ToString() => Text;

    private static Term Function(string name, Func<double, double> of, Term argument) =>
        new($"{name}({argument.Text})", of(argument.Value), of(argument.Exact), Binding.Atom);

    private static Term Function(string name, Func<double, double, double> of, Term one, Term other) =>
        new($"{name}({one.Text}, {other.Text})", of(one.Value, other.Value), of(one.Exact, other.Exact), Binding.Atom);

    private static Term Number(double value, double exact, int digits)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return new Term(value == 0 ? "0" : value.ToString(CultureInfo.InvariantCulture), value, exact, Binding.Atom);
        }

        var scientific = value.ToString("E" + (digits - 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Split('E');
        var exponent = int.Parse(scientific[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        var rounded = double.Parse(string.Join('E', scientific), NumberStyles.Float, CultureInfo.InvariantCulture);
        if (exponent is >= -4 and < 7)
        {
            var decimals = Math.Max(0, digits - 1 - exponent);
            var plain = decimals == 0
                ? rounded.ToString("0", CultureInfo.InvariantCulture)
                : rounded.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
            return new Term(plain, rounded, exact, value < 0 ? Binding.Sum : Binding.Atom);
        }

        var mantissa = decimal.Parse(scientific[0], NumberStyles.Float, CultureInfo.InvariantCulture);
        return new Term(
            string.Create(CultureInfo.InvariantCulture, $"{mantissa:0.############} × 10^{exponent}"),
            rounded,
            exact,
            value < 0 ? Binding.Sum : Binding.Product);
    }

    private bool StartsWithSign => Text.StartsWith('-');

    /// <summary>The text inside an operation that binds at least this tightly.</summary>
    private string In(Binding least) => _binding < least || (StartsWithSign && _binding != Binding.Atom) ? $"({Text})" : Text;
}
