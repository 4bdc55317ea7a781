using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Hazards;

/// <summary>Where a strong reagent meets its partner.</summary>
public enum MeetingPoint
{
    /// <summary>The reagent is poured, and meets undiluted what stands in the vessel.</summary>
    Stream,

    /// <summary>The partner is poured into the reagent as it stands in the vessel.</summary>
    Standing,

    /// <summary>Both are mixed through.</summary>
    Mixed,
}

/// <summary>A strong reagent and its partner in one pouring, at the place where the reagent is strongest; dangerous or not.</summary>
/// <param name="Reagent">The acid or oxidiser that went in last.</param>
/// <param name="Partner">What it meets; the reagent itself where its partner is water.</param>
/// <param name="PureGrams">Of the reagent where they meet, counted as pure compound.</param>
/// <param name="Grams">Of everything there.</param>
/// <param name="PartnerPercent">Of the partner in what stood there before; 0 where it does not count.</param>
/// <param name="Limit">Per cent of the reagent from which it is dangerous.</param>
public sealed record StrongMeeting(
    MeetingPoint Point, Held Reagent, Held Partner, double PureGrams, double Grams, double PartnerPercent, double Limit)
{
    /// <summary>Per cent of the reagent where they meet.</summary>
    public double Percent => Grams > 0 ? 100 * PureGrams / Grams : 0;

    /// <summary>
    /// Kelvin that it warms by where it meets water, from which that is dangerous and from which it is worth a word; null where heat does
    /// not decide.
    /// </summary>
    public (double Kelvin, double From, double Noticed)? Warms { get; init; }

    public bool IsDangerous => Rounding.SixDigits(Percent) >= Limit
        && (Warms is not { } warms || Rounding.SixDigits(warms.Kelvin) >= warms.From);
}

/// <summary>Oxidising solids and organic matter in a vessel into which no water has come yet.</summary>
/// <param name="Limit">Per cent of organic matter over which it can burn.</param>
public sealed record DryMeeting(IReadOnlyList<Held> Oxidisers, IReadOnlyList<Held> Fuels, double Limit)
{
    /// <summary>g of organic matter.</summary>
    public double FuelGrams => Fuels.Sum(f => f.Grams);

    /// <summary>g of oxidising salts.</summary>
    public double OxidiserGrams => Oxidisers.Sum(o => o.Grams);

    /// <summary>Per cent of organic matter in the mixture of the two.</summary>
    public double Percent => 100 * FuelGrams / (FuelGrams + OxidiserGrams);

    public bool IsDangerous => Rounding.SixDigits(Percent) > Limit;
}
