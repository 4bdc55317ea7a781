namespace RecipeLint.Recipes.Quantities;

/// <summary>One pass over one quantity text. The first fault ends it.</summary>
internal sealed partial class QuantityCursor(string text, Due due)
{
    private int _at;

    public QuantityFault? Fault { get; private set; }

    public Quantity? Read()
    {
        SkipSpace();
        if (due.Prefix is { } prefix && !TakePrefix(prefix))
        {
            return Fail(QuantityMessages.NoPrefix(due, text));
        }

        if (Number() is not { } first)
        {
            return null;
        }

        SkipSpace();
        if (Peek(':'))
        {
            return Ratio(first);
        }

        if (LooksLikeHyphenRange(first) || LooksLikeFraction(first))
        {
            return null;
        }

        double? second = null;
        if (PeekRange())
        {
            second = RangeEnd();
            if (Fault is not null)
            {
                return null;
            }
        }

        if (PeekTolerance() is > 0)
        {
            return ToleranceBeforeUnit(first, second);
        }

        return Finish(first, second);
    }

    private Quantity? Finish(double first, double? second)
    {
        var unitStart = _at;
        var unit = TakeUnit();
        if (second is null && PeekRange())
        {
            // "4 °C..30 °C": the unit stands twice.
            return RangeWithTwoUnits(first, unit, unitStart);
        }

        if (Value(first, second, unit, unitStart) is not { } quantity)
        {
            return null;
        }

        return Tail(quantity, unit, unitStart);
    }

    private Quantity? RangeWithTwoUnits(double first, string unit, int unitStart)
    {
        if (RangeEnd() is not { } second)
        {
            return null;
        }

        SkipSpace();
        var secondStart = _at;
        var secondUnit = TakeUnit();
        if (Value(first, null, unit, unitStart) is not { } low || Value(second, null, secondUnit, secondStart) is not { } high)
        {
            return null;
        }

        if (low.Dimension != high.Dimension)
        {
            return Fail(QuantityMessages.NotAQuantity(due, text.Trim(), 0, text.Length));
        }

        return Ordered(low with { High = high.Low }) is { } range ? Tail(range, secondUnit, secondStart) : null;
    }

    private Quantity? Ratio(double first)
    {
        _at++;
        SkipSpace();
        if (Number() is not { } second)
        {
            return null;
        }

        var dose = first / second;
        if (first <= 0 || second <= 0 || !NumberBounds.Hold(dose))
        {
            return Fail(QuantityMessages.NotAQuantity(due, text.Trim(), 0, text.Length));
        }

        if (!due.Accepts.Contains(Dimension.Dose))
        {
            return Fail(QuantityMessages.WrongDimension(due, text, "", [Dimension.Dose]));
        }

        SkipSpace();
        var start = _at;
        var unit = TakeUnit();
        return unit.Length > 0
            ? Fail(QuantityMessages.Trailing(text, start, text[..start].Trim(), unit))
            : Tail(new Quantity(Dimension.Dose, dose, dose, "L/L"), "", _at);
    }

    /// <summary>What may follow a value: a tolerance, a basis, in either order.</summary>
    private Quantity? Tail(Quantity quantity, string unit, int unitStart)
    {
        while (_at < text.Length)
        {
            var start = _at;
            if (PeekTolerance() is > 0 and var width)
            {
                if (!due.AllowTolerance || quantity.Low != quantity.High)
                {
                    return Fail(QuantityMessages.NoTolerance(due, text, start));
                }

                _at += width;
                if (TailTolerance(quantity, unit, unitStart, start) is not { } tolerance)
                {
                    return null;
                }

                quantity = quantity with { Tolerance = tolerance };
            }
            else if (PeekAs())
            {
                _at += 3;
                SkipSpace();
                var basisStart = _at;
                var basis = TakeWord();
                if (!due.Bases.Contains(basis))
                {
                    return Fail(QuantityMessages.BadBasis(due, text, basisStart, basis));
                }

                quantity = quantity with { Basis = basis };
                SkipSpace();
            }
            else
            {
                return Fail(BasisWithoutAs(start) ?? QuantityMessages.Trailing(text, start, text[..start].Trim(), text[start..].TrimEnd()));
            }
        }

        return quantity;
    }

    private Quantity? Value(double first, double? second, string unit, int unitStart)
    {
        if (unit.Length == 0)
        {
            if (!NumberBounds.Hold(first) || !NumberBounds.Hold(second ?? first))
            {
                return Fail(QuantityMessages.OutOfRange(text));
            }

            return due.Accepts.Contains(Dimension.Number)
                ? Ordered(new Quantity(Dimension.Number, first, second ?? first, ""))
                : Fail(QuantityMessages.NoUnit(due, text, _at));
        }

        if (Resolve(unit, unitStart) is not { } known || ChooseDimension(known, unit) is not { } dimension)
        {
            return null;
        }

        if (known.Basis is { } implied && due.Bases.Count > 0 && !due.Bases.Contains(implied))
        {
            return Fail(QuantityMessages.ImpliedBasis(due, unit, unitStart, implied));
        }

        var factor = known.FactorTo(dimension);
        var low = (first * factor) + known.Offset;
        var high = ((second ?? first) * factor) + known.Offset;
        if (!NumberBounds.Hold(low) || !NumberBounds.Hold(high))
        {
            return Fail(QuantityMessages.OutOfRange(text));
        }

        var nature = known.Uncertainty is { } share && dimension != Dimension.Drops ? new Tolerance(share, null) : (Tolerance?)null;
        return Ordered(new Quantity(dimension, low, high, known.Symbol) { Tolerance = nature, Basis = known.Basis });
    }

    private Quantity? Ordered(Quantity quantity)
    {
        if (quantity.Low > quantity.High)
        {
            return Fail(QuantityMessages.BackwardRange(text));
        }

        return quantity.Low < quantity.High && !due.AllowRange ? Fail(QuantityMessages.NoRange(due, text)) : quantity;
    }

    private UnitReading.Known? Resolve(string unit, int start)
    {
        switch (ContextualUnits.Read(unit, due) ?? UnitParser.Parse(unit))
        {
            case UnitReading.Known known:
                return known;
            case UnitReading.Several { Readings.Count: 0 } scale:
                Fail(QuantityMessages.ConductivityInPpm(text, start, unit, scale));
                return null;
            case UnitReading.Several several:
                Fail(QuantityMessages.AmbiguousUnit(text, start, unit, several));
                return null;
            case UnitReading.Unknown unknown:
                Fail(TrailingWords(unit, start) ?? QuantityMessages.UnknownUnit(due, text, start, unit, unknown.Suggestions));
                return null;
            default:
                return null;
        }
    }

    /// <summary>"24 g roughly": a unit that is known, then words that are not part of it.</summary>
    private QuantityFault? TrailingWords(string unit, int start)
    {
        for (var cut = unit.LastIndexOf(' '); cut > 0; cut = unit.LastIndexOf(' ', cut - 1))
        {
            if ((ContextualUnits.Read(unit[..cut], due) ?? UnitParser.Parse(unit[..cut])) is UnitReading.Known)
            {
                return BasisWithoutAs(start + cut + 1) ?? TwoUnits(start + cut + 1)
                    ?? QuantityMessages.Trailing(text, start + cut + 1, text[..(start + cut)].Trim(), unit[(cut + 1)..]);
            }
        }

        return null;
    }

    /// <summary>Null where what stands behind the value is no basis that may stand here.</summary>
    private QuantityFault? BasisWithoutAs(int start)
    {
        var rest = text[start..].Trim();
        var word = rest.StartsWith("of ", StringComparison.OrdinalIgnoreCase) ? rest[3..].Trim() : rest.Trim('(', ')');
        return due.Bases.FirstOrDefault(b => b.Equals(word, StringComparison.OrdinalIgnoreCase)) is { } basis
            ? QuantityMessages.BasisWithoutAs(text, start, text[..start].Trim(), rest, basis)
            : null;
    }

    /// <summary>Null where it is not a second, smaller amount of the same kind.</summary>
    private QuantityFault? TwoUnits(int start)
    {
        var plain = due with { AllowTolerance = false, AllowRange = false, Bases = [] };
        if (!QuantityReader.TryRead(
            text[..start], plain, out var first, out _) || !QuantityReader.TryRead(text[start..], plain, out var second, out _)
            || first.Dimension != second.Dimension || first.Dimension == Dimension.Temperature || second.Low >= first.Low
            || AmountText.NumberOf(text[..start]) is not { } number)
        {
            return null;
        }

        var sum = number * ((first.Low + second.Low) / first.Low);
        return AmountText.With(text[..start].TrimEnd(), sum) is { } repaired ? QuantityMessages.TwoUnits(text, repaired) : null;
    }

    private Dimension? ChooseDimension(UnitReading.Known known, string unit)
    {
        foreach (var dimension in known.Dimensions)
        {
            if (due.Accepts.Contains(dimension))
            {
                return dimension;
            }
        }

        Fail(QuantityMessages.WrongDimension(due, text, unit, known.Dimensions));
        return null;
    }

    private double? RangeEnd()
    {
        _at += 2;
        SkipSpace();
        var number = Number();
        SkipSpace();
        return number;
    }

    private Quantity? Fail(QuantityFault fault)
    {
        Fault ??= fault;
        return null;
    }
}
