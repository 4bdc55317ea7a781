namespace RecipeLint.Recipes.Quantities;

/// <summary>What a unit text turned out to be.</summary>
internal abstract record UnitReading
{
    private UnitReading()
    {
    }

    /// <summary>A unit that is understood.</summary>
    /// <param name="Symbol">In our spelling.</param>
    /// <param name="Dimensions">What it can measure, the likelier first.</param>
    /// <param name="Factor">To the base unit of the first dimension.</param>
    internal sealed record Known(string Symbol, IReadOnlyList<Dimension> Dimensions, double Factor) : UnitReading
    {
        public double Offset { get; init; }

        /// <summary>How far the unit is off by nature, as a fraction.</summary>
        public double? Uncertainty { get; init; }

        public string? Basis { get; init; }

        /// <summary>Factor to the base unit of one of the dimensions. g/L over g/mL is the only pair whose base units differ.</summary>
        public double FactorTo(Dimension dimension) =>
            dimension == Dimension.Density && Dimensions[0] == Dimension.MassConcentration ? Factor / 1000 : Factor;
    }

    /// <summary>A unit with several meanings.</summary>
    /// <param name="Advice">One sentence that names the readings and the factor.</param>
    /// <param name="Readings">Whole unit texts, one for each meaning.</param>
    internal sealed record Several(string Advice, IReadOnlyList<string> Readings, double? Factor) : UnitReading;

    /// <summary>No unit of ours.</summary>
    /// <param name="Suggestions">Nearest spellings, best first.</param>
    internal sealed record Unknown(IReadOnlyList<string> Suggestions) : UnitReading;
}
