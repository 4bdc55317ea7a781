using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// Fuel, oil or metal powder in a strong solution of ammonium nitrate: nothing of it dissolves, and what dries or is heated under cover can
/// explode. A thin feed with a spray oil in it holds no mass that burns.
/// </summary>
internal static class OilWithNitrate
{
    /// <summary>Null where not both are there, or too little of either.</summary>
    public static Hazard? Of(Holding holding, HazardLimits limits)
    {
        if (!holding.Has(HazardRole.Ammonium) || !holding.Has(HazardRole.OxidisingSalt) || !holding.Has(HazardRole.Fuel))
        {
            return null;
        }

        var salts = holding.Items.Where(i => i.Is(HazardRole.Ammonium) && i.Is(HazardRole.OxidisingSalt)).ToList();
        var fuels = holding.Having(HazardRole.Fuel).Where(i => i.Is(HazardRole.Oil) || i.Is(HazardRole.BareMetal)).ToList();
        var nitrate = salts.Sum(s => s.Grams) / holding.Litres;
        var fuel = fuels.Sum(f => f.Grams) / holding.Litres;
        var limit = limits.Oxidiser.CombustibleFrom / 100 * nitrate;
        return Rounding.SixDigits(nitrate) >= limits.Oxidiser.NitrateWithOilFrom && Rounding.SixDigits(fuel) >= Rounding.SixDigits(limit)
            && fuels.Count > 0
            ? new Hazard(
                HazardKind.Fire, HazardGrade.Present, salts.MaxBy(s => s.Grams), fuels.MaxBy(f => f.Grams), "fuel, oil or metal powder",
                fuel, limit, "g/L")
            : null;
    }
}
