namespace RecipeLint.Recipes.Quantities;

/// <content>Half-widths behind a value, in front of its unit, or alone.</content>
internal sealed partial class QuantityCursor
{
    /// <summary>Reads a tolerance that stands alone, with or without its sign.</summary>
    public Tolerance? ReadLoneTolerance()
    {
        SkipSpace();
        _at += PeekTolerance();
        var start = _at;
        var (number, unit) = ToleranceParts();
        if (number is null)
        {
            return null;
        }

        var isPlain = unit.Length == 0 && due.Accepts.Contains(Dimension.Number);
        if (unit.Length == 0 && !isPlain)
        {
            Fail(QuantityMessages.NoUnit(due, text, _at));
            return null;
        }

        if (unit == "%")
        {
            return Relative(number.Value, start);
        }

        double? half = isPlain ? number.Value
            : Resolve(unit, _at - unit.Length) is { } known && ChooseDimension(known, unit) is { } dimension
                ? number.Value * known.FactorTo(dimension)
                : null;
        if (half is { } beyond && !NumberBounds.Hold(beyond))
        {
            Fail(QuantityMessages.OutOfRange(text));
            return null;
        }

        return half is { } width ? new Tolerance(null, Math.Abs(width)) : null;
    }

    /// <summary>"2.0 ± 0.2 mS/cm" and "150 ± 10 % mg/L".</summary>
    private Quantity? ToleranceBeforeUnit(double first, double? second)
    {
        var start = _at;
        if (!due.AllowTolerance || (second is not null && second != first))
        {
            return Fail(QuantityMessages.NoTolerance(due, text, start));
        }

        _at += PeekTolerance();
        SkipSpace();
        if (Number() is not { } half)
        {
            return null;
        }

        SkipSpace();
        var percent = Peek('%') && !text.AsSpan(_at + 1).TrimStart().StartsWith("w/", StringComparison.Ordinal);
        if (percent)
        {
            _at++;
            SkipSpace();
        }

        var unitStart = _at;
        var unit = TakeUnit();
        if (Value(first, second, unit, unitStart) is not { } quantity)
        {
            return null;
        }

        var tolerance = percent ? Relative(half, start) : Absolute(quantity, half, Value(half, null, unit, unitStart), start);
        return Fault is null ? Tail(quantity with { Tolerance = tolerance }, unit, unitStart) : null;
    }

    private Tolerance? TailTolerance(Quantity quantity, string unit, int unitStart, int start)
    {
        var (half, halfUnit) = ToleranceParts();
        if (half is null)
        {
            return null;
        }

        if (halfUnit == "%")
        {
            return Relative(half.Value, start);
        }

        var (text, at) = halfUnit.Length == 0 ? (unit, unitStart) : (halfUnit, _at - halfUnit.Length);
        return Absolute(quantity, half.Value, Value(half.Value, null, text, at), start);
    }

    private (double? Number, string Unit) ToleranceParts()
    {
        SkipSpace();
        var start = _at;
        if (Number() is not { } number)
        {
            return (null, "");
        }

        if (number < 0)
        {
            Fail(QuantityMessages.BadTolerance(text, start));
            return (null, "");
        }

        SkipSpace();
        var unit = TakeUnit();
        return (number, unit);
    }

    private Tolerance? Relative(double percent, int start)
    {
        if (percent is < 0 or > 100)
        {
            Fail(percent < 0 ? QuantityMessages.BadTolerance(text, start) : QuantityMessages.WideTolerance(text, start, percent));
            return null;
        }

        return new Tolerance(percent / 100, null);
    }

    /// <summary>
    /// Plain numbers and conductivities keep an absolute half-width; others become a share of the value, so that no unit can be mistaken.
    /// </summary>
    private Tolerance? Absolute(Quantity quantity, double written, Quantity? half, int start)
    {
        if (Fault is not null || half is null)
        {
            return null;
        }

        if (written < 0 || half.Dimension != quantity.Dimension)
        {
            Fail(QuantityMessages.BadTolerance(text, start));
            return null;
        }

        if (quantity.Dimension is Dimension.Number or Dimension.Conductivity || quantity.Low == 0)
        {
            return new Tolerance(null, half.Low);
        }

        return Relative(100 * half.Low / Math.Abs(quantity.Low), start);
    }
}
