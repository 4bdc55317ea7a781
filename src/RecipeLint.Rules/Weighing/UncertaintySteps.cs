using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Weighing;

/// <summary>How the uncertainty of a weight or a volume follows, as steps of a working.</summary>
internal static class UncertaintySteps
{
    private const string Shop = "shop's settings";

    /// <summary>The standard uncertainty of one weighing, g, from repeatability, rounding and the scale's own error.</summary>
    internal static Term OfWeight(WorkingBuilder work, WeighedAmount weighed, Term mass)
    {
        var (scale, load) = (weighed.Scale, weighed.Mass);
        var step = work.Given("display step (readability)", scale.Readability.Grams, "g", Shop);
        var repeatability = scale.Repeatability is { } stated
            ? work.Given("repeatability (standard deviation)", stated.Grams, "g", Shop)
            : work.Result("repeatability, not stated: taken as 1.5 steps", "1.5 × display step", EquipmentLimits.RepeatabilitySteps.Value
                * step, "g");
        var rounding = work.Result(
            "rounding of the display, at tare and at gross", "√2 × display step / √12", Term.Root(2) * step / Term.Root(12), "g");
        var steps = EquipmentLimits.ScaleError(load, scale.Readability).Grams / scale.Readability.Grams;
        var calibration = work.Result(
            $"calibration of the scale, limits of ±{Say.Number(steps)} steps at this load (OIML R 76, twice class III)",
            "steps × display step / √3", steps * step / Term.Root(3), "g");
        return work.Result(
            "standard uncertainty of the weight",
            "root of the sum of the squares",
            Term.Root(Term.Power(repeatability, 2) + Term.Power(rounding, 2) + Term.Power(calibration, 2)),
            "g");
    }

    /// <summary>The expanded uncertainty (k = 2) of one volume, %, from the limit of its measure and its reading.</summary>
    internal static Term OfVolume(WorkingBuilder work, Pouring pouring)
    {
        var volume = work.Given("volume", pouring.Volume.Millilitres, "mL", "file");
        var from = pouring.LimitIsAssumed ? "usual for the kind and size" : Shop;
        var limit = work.Given("limit of error of one filling, ±", pouring.Limit.Millilitres, "mL", from);
        Term shared;
        if (pouring.Fillings > 1)
        {
            var fillings = work.Given("fillings", pouring.Fillings, "", "file");
            shared = work.Result("calibration, the same at every filling", "limit / √3 × fillings", limit / Term.Root(3) * fillings, "mL");
        }
        else
        {
            shared = work.Result("calibration", "limit / √3", limit / Term.Root(3), "mL");
        }

        var standard = shared;
        if (pouring.OwnError.Litres > 0)
        {
            var reading = work.Given(
                "reading or filling to the mark",
                pouring.OwnError.Millilitres,
                "mL",
                pouring.Measure.Readability is null ? "QUAM A1" : "graduation / √12, by the root of the fillings");
            standard = work.Result(
                "standard uncertainty", "root of the sum of the squares", Term.Root(Term.Power(shared, 2) + Term.Power(reading, 2)), "mL");
        }

        return work.Result(
            "expanded uncertainty (k = 2)", "100 × 2 × standard uncertainty / volume", 100 * (Term)2 * standard / volume, "%");
    }
}
