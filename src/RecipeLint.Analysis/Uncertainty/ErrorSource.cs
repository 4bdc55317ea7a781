using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>
/// Where an error comes from. Two values that carry the same source are wrong together (JCGM 100:2008, 5.2.2): the calibration of one scale
/// in every weighing on it, one flask in every volume taken with it.
/// </summary>
/// <param name="Id">Unique; decides what is one source and orders ties.</param>
/// <param name="Name">How to call it in a sentence: "the weight of sodium molybdate dihydrate on 'pocket-scale'".</param>
/// <param name="Place">The step, dose or piece of equipment; null where it stands in no file.</param>
public sealed record ErrorSource(string Id, string Name, Place? Place = null);

/// <summary>What share of the variance of a result one source has.</summary>
/// <param name="Fraction">0 to 1; the shares of a result sum to 1.</param>
public sealed record UncertaintyShare(ErrorSource Source, double Fraction);

/// <summary>The shape an error is taken to have; only its standard deviation enters a first-order result.</summary>
internal enum ErrorShape
{
    Normal,
    Rectangular,
    Triangular,
}

/// <summary>One error of a measured quantity.</summary>
/// <param name="Standard">Standard uncertainty as a fraction of the measured value.</param>
internal sealed record RelativeError(ErrorSource Source, double Standard, ErrorShape Shape);

/// <summary>Standard uncertainties from what is stated, in the unit of the argument.</summary>
public static class StandardUncertainty
{
    /// <summary>Limits ± <paramref name="halfWidth"/> and nothing else known: JCGM 100:2008, 4.3.7.</summary>
    public static double Rectangular(double halfWidth) => halfWidth / Math.Sqrt(3);

    /// <summary>Limits ± <paramref name="halfWidth"/> with values near the middle likelier: JCGM 100:2008, 4.3.9.</summary>
    public static double Triangular(double halfWidth) => halfWidth / Math.Sqrt(6);

    /// <summary>A display or scale read to whole steps: JCGM 100:2008, F.2.2.1.</summary>
    public static double Resolution(double step) => step / Math.Sqrt(12);

    /// <summary>An expanded uncertainty quoted with its coverage factor: JCGM 100:2008, 4.3.3.</summary>
    public static double Quoted(double expanded, double coverageFactor = 2) => expanded / coverageFactor;
}
