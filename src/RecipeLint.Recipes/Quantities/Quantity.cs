using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Recipes.Quantities;

/// <summary>A quantity as read, in the base unit of its dimension; ask for the type that fits the dimension.</summary>
/// <param name="Low">Lower end of a range; the value itself where no range was written.</param>
/// <param name="High">Upper end of a range.</param>
/// <param name="Unit">The unit in our spelling; empty for a plain number.</param>
public sealed record Quantity(Dimension Dimension, double Low, double High, string Unit)
{
    /// <summary>
    /// The half-width written after "±", else the one the unit has by nature (drops, teaspoons); absolute ones in the base unit.
    /// </summary>
    public Tolerance? Tolerance { get; init; }

    /// <summary>What the number counts as ("CaCO3"), when written after "as" or implied by the unit.</summary>
    public string? Basis { get; init; }

    public Mass Mass => new(Expect(Dimension.Mass));

    public Volume Volume => new(Expect(Dimension.Volume));

    public Amount Amount => new(Expect(Dimension.Amount));

    public MassConcentration MassConcentration => new(Expect(Dimension.MassConcentration));

    public AmountConcentration AmountConcentration => new(Expect(Dimension.AmountConcentration));

    public Dose Dose => new(Expect(Dimension.Dose));

    public MassFraction MassFraction => new(Expect(Dimension.MassFraction));

    public Density Density => new(Expect(Dimension.Density));

    public MolarMass MolarMass => new(Expect(Dimension.MolarMass));

    public Duration Duration => new(Expect(Dimension.Duration));

    public Conductivity Conductivity => new(Expect(Dimension.Conductivity));

    public double Number => Expect(Dimension.Number);

    public double Drops => Expect(Dimension.Drops);

    public Interval<Temperature> Temperatures => Expect(Dimension.Temperature, v => new Temperature(v));

    public Interval<Conductivity> Conductivities => Expect(Dimension.Conductivity, v => new Conductivity(v));

    public Interval<double> Numbers => Expect(Dimension.Number, v => v);

    /// <summary>For people who debug; the made one would ask for every type and throw.</summary>
    public override string ToString() => FormattableString.Invariant($"{Low:R}..{High:R} {Unit} ({Dimension})");

    private double Expect(Dimension dimension) => dimension == Dimension && Low == High
        ? Low
        : throw new InvalidOperationException($"This quantity is {Dimension.Words()}, not one value of {dimension.Words()}.");

    private Interval<T> Expect<T>(Dimension dimension, Func<double, T> build) => dimension == Dimension
        ? new Interval<T>(build(Low), build(High))
        : throw new InvalidOperationException($"This quantity is {Dimension.Words()}, not {dimension.Words()}.");
}
