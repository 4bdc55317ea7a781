namespace RecipeLint.Analysis.Uncertainty;

/// <summary>
/// A value with the errors it carries, each as the signed first-order effect c·u of one error source. Sums, products and quotients follow
/// the law of propagation of uncertainty (JCGM 100:2008, equations 10 and 16): effects of one source add with their signs, whatever way
/// they came, so values that share a source are correlated without anybody stating a coefficient. Immutable; the unit is the caller's.
/// </summary>
internal sealed class Uncertain
{
    /// <summary>An effect that cancels leaves this much or less of the variance behind.</summary>
    private const double Rounding = 1e-24;

    private readonly Effect[] _effects;

    private Uncertain(double value, Effect[] effects)
    {
        Value = value;
        _effects = effects;
    }

    public double Value { get; }

    /// <summary>Combined standard uncertainty u_c, in the unit of the value.</summary>
    public double Standard => Length(_effects);

    /// <summary>True where some error is left after all that cancel.</summary>
    public bool HasErrors => Array.Exists(_effects, e => e.Size != 0);

    /// <summary>u_c divided by the size of the value; null for a value of zero.</summary>
    public double? RelativeStandard => Value == 0 ? null : Standard / Math.Abs(Value);

    /// <summary>
    /// The part of the variance each source has, largest first; empty for a value without errors. The fractions sum to 1.
    /// </summary>
    public IReadOnlyList<UncertaintyShare> Shares
    {
        get
        {
            var length = Length(_effects);
            return length == 0
                ? []
                :
                [
                    .. _effects
                        .Select(e => new UncertaintyShare(e.Source, e.Size / length * (e.Size / length)))
                        .Where(s => s.Fraction > Rounding)
                        .OrderByDescending(s => s.Fraction)
                        .ThenBy(s => s.Source.Id, StringComparer.Ordinal),
                ];
        }
    }

    public static Uncertain Exactly(double value) => new(value, []);

    /// <summary>
    /// A measured value with the standard uncertainty of each of its errors, in the unit of the value; a sign tells the direction.
    /// </summary>
    public static Uncertain Measured(double value, params IEnumerable<(ErrorSource Source, double Standard)> errors)
    {
        Effect[] effects = [.. errors.Where(e => e.Standard != 0).Select(e => new Effect(e.Source, e.Standard))];
        return new(value, Merge(effects, effects.Length));
    }

    /// <summary>A measured value whose errors are known as fractions of it.</summary>
    public static Uncertain MeasuredRelative(double value, IEnumerable<RelativeError> errors) =>
        Measured(value, errors.Select(e => (e.Source, e.Standard * value)));

    /// <summary>
    /// Any function of inputs, from its value and its partial derivatives at the estimates. Inputs in another order give the same bits.
    /// </summary>
    public static Uncertain Combine(double value, params IReadOnlyList<(Uncertain Input, double Sensitivity)> terms)
    {
        if (terms.Count == 2)
        {
            return new(value, Merge(terms[0].Input._effects, terms[0].Sensitivity, terms[1].Input._effects, terms[1].Sensitivity));
        }

        var most = 0;
        for (var i = 0; i < terms.Count; i++)
        {
            most += terms[i].Input._effects.Length;
        }

        var effects = new Effect[most];
        var count = 0;
        for (var i = 0; i < terms.Count; i++)
        {
            var (input, sensitivity) = terms[i];
            foreach (var effect in input._effects)
            {
                if (effect.Size * sensitivity is not 0 and var size)
                {
                    effects[count++] = new Effect(effect.Source, size);
                }
            }
        }

        return new(value, Merge(effects, count));
    }

    /// <summary>A value times an exact factor: no source meets another.</summary>
    private static Uncertain Scaled(double factor, Uncertain value)
    {
        var effects = Array.ConvertAll(value._effects, e => e with { Size = e.Size * factor });
        return new(factor * value.Value, Array.TrueForAll(effects, e => e.Size != 0) ? effects : [.. effects.Where(e => e.Size != 0)]);
    }

    /// <summary>The sum; the order of the terms never shows in the last digits.</summary>
    public static Uncertain Sum(IEnumerable<Uncertain> terms)
    {
        var list = terms as IReadOnlyList<Uncertain> ?? [.. terms];
        if (list.Count == 1)
        {
            return list[0];
        }

        var values = new double[list.Count];
        var each = new (Uncertain, double)[list.Count];
        for (var i = 0; i < list.Count; i++)
        {
            (values[i], each[i]) = (list[i].Value, (list[i], 1));
        }

        Array.Sort(values);
        return Combine(values.Sum(), each);
    }

    public static Uncertain operator +(Uncertain left, Uncertain right) =>
        Combine(left.Value + right.Value, (left, 1), (right, 1));

    public static Uncertain operator -(Uncertain left, Uncertain right) =>
        Combine(left.Value - right.Value, (left, 1), (right, -1));

    public static Uncertain operator *(Uncertain left, Uncertain right) =>
        Combine(left.Value * right.Value, (left, right.Value), (right, left.Value));

    public static Uncertain operator *(double factor, Uncertain value) => Scaled(factor, value);

    /// <exception cref="DivideByZeroException">The divisor's value is zero.</exception>
    public static Uncertain operator /(Uncertain left, Uncertain right)
    {
        if (right.Value == 0)
        {
            throw new DivideByZeroException("A value cannot be divided by a measured zero.");
        }

        var quotient = left.Value / right.Value;
        return Combine(quotient, (left, 1 / right.Value), (right, -quotient / right.Value));
    }

    /// <summary>U = k·u_c, in the unit of the value; k = 2 covers about 95 % (JCGM 100:2008, 6.2.1 and G.6.6).</summary>
    public double Expanded(double coverageFactor = 2) => coverageFactor * Standard;

    /// <summary>Covariance with another value, from the sources both carry (JCGM 100:2008, F.1.2.3).</summary>
    public double Covariance(Uncertain other)
    {
        var theirs = other._effects.ToDictionary(e => e.Source.Id, e => e.Size, StringComparer.Ordinal);
        return _effects.Sum(e => e.Size * theirs.GetValueOrDefault(e.Source.Id));
    }

    /// <summary>Correlation coefficient, -1 to 1; null where one of the two has no uncertainty.</summary>
    public double? Correlation(Uncertain other)
    {
        var both = Standard * other.Standard;
        return both == 0 ? null : Math.Clamp(Covariance(other) / both, -1, 1);
    }

    /// <summary>One effect a source, in the order of the sources' ids; equal contributions are added in the order of their size.</summary>
    /// <param name="effects">Taken over; none of the first ones is zero.</param>
    private static Effect[] Merge(Effect[] effects, int count)
    {
        effects.AsSpan(0, count).Sort(static (a, b) =>
            InOrder(a.Source, b.Source) is not 0 and var order ? order : a.Size.CompareTo(b.Size));
        var merged = 0;
        for (var at = 0; at < count;)
        {
            var (source, sum) = (effects[at].Source, 0.0);
            for (var first = source; at < count && InOrder(effects[at].Source, first) == 0; at++)
            {
                sum += effects[at].Size;
                source = FirstPlaced(source, effects[at].Source);
            }

            effects[merged++] = new Effect(source, sum);
        }

        return merged == effects.Length ? effects : effects.AsSpan(0, merged).ToArray();
    }

    /// <summary>The same for two inputs, whose effects are in that order already.</summary>
    private static Effect[] Merge(Effect[] left, double ofLeft, Effect[] right, double ofRight)
    {
        var merged = new Effect[left.Length + right.Length];
        int count = 0, i = 0, j = 0;
        while (i < left.Length || j < right.Length)
        {
            var order = i == left.Length ? 1 : j == right.Length ? -1 : InOrder(left[i].Source, right[j].Source);
            var one = order <= 0 ? left[i++].Times(ofLeft) : default;
            var other = order >= 0 ? right[j++].Times(ofRight) : default;
            if (one.Size != 0 && other.Size != 0)
            {
                (one, other) = one.Size.CompareTo(other.Size) <= 0 ? (one, other) : (other, one);
                merged[count++] = new Effect(FirstPlaced(one.Source, other.Source), one.Size + other.Size);
            }
            else if (one.Size != 0 || other.Size != 0)
            {
                merged[count++] = one.Size != 0 ? one : other;
            }
        }

        return count == merged.Length ? merged : merged.AsSpan(0, count).ToArray();
    }

    private static int InOrder(ErrorSource one, ErrorSource other) =>
        ReferenceEquals(one, other) ? 0 : string.CompareOrdinal(one.Id, other.Id);

    /// <summary>Of the places that speak of one source the first in the files, whatever order the inputs came in.</summary>
    private static ErrorSource FirstPlaced(ErrorSource one, ErrorSource other)
    {
        if (ReferenceEquals(one, other) || ReferenceEquals(one.Place, other.Place))
        {
            return one;
        }

        var order = string.CompareOrdinal(one.Place?.File, other.Place?.File);
        return (order != 0 ? order : string.CompareOrdinal(one.Place?.Pointer.Value, other.Place?.Pointer.Value)) <= 0 ? one : other;
    }

    /// <summary>Root of the sum of squares, scaled by the largest so that very small effects do not vanish.</summary>
    private static double Length(Effect[] effects)
    {
        var largest = 0.0;
        foreach (var effect in effects)
        {
            largest = Math.Max(largest, Math.Abs(effect.Size));
        }

        if (largest == 0)
        {
            return 0;
        }

        var sum = 0.0;
        foreach (var effect in effects)
        {
            sum += effect.Size / largest * (effect.Size / largest);
        }

        return largest * Math.Sqrt(sum);
    }

    private readonly record struct Effect(ErrorSource Source, double Size)
    {
        public Effect Times(double factor) => new(Source, Size * factor);
    }
}
