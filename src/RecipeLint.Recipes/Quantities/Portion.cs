using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Recipes.Quantities;

/// <summary>How much of something is added, in the dimension the writer chose.</summary>
public abstract record Portion
{
    private Portion()
    {
    }

    public sealed record ByMass(Mass Mass) : Portion;

    public sealed record ByVolume(Volume Volume) : Portion;

    /// <summary>Drops are counted; a drop is 0.05 mL give or take 20 % (common practice, no source).</summary>
    public sealed record ByDrops(double Count) : Portion;

    public sealed record ByAmount(Amount Amount) : Portion;

    /// <summary>Per litre of what the file makes.</summary>
    public sealed record PerLitreMass(MassConcentration Concentration) : Portion;

    /// <summary>Per litre of what the file makes.</summary>
    public sealed record PerLitreAmount(AmountConcentration Concentration) : Portion;

    /// <summary>Per litre of what the file makes.</summary>
    public sealed record PerLitreVolume(Dose Dose) : Portion;
}

/// <summary>A half-width around a stated value.</summary>
/// <param name="Relative">As a fraction of the value; null when absolute.</param>
/// <param name="Absolute">In the unit of the value it belongs to; null when relative.</param>
public readonly record struct Tolerance(double? Relative, double? Absolute)
{
    /// <summary>Half-width in the unit of the value.</summary>
    public double HalfWidth(double value) => Absolute ?? (Math.Abs(value) * (Relative ?? 0));
}

/// <summary>A stated number with its tolerance, if one was given.</summary>
internal readonly record struct Toleranced<T>(T Value, Tolerance? Tolerance);

/// <summary>A closed interval; a single stated value has both ends equal.</summary>
public readonly record struct Interval<T>(T Low, T High);
