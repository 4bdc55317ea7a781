namespace RecipeLint.Analysis.Hazards;

/// <summary>Burnt lime that meets the water of a vessel.</summary>
internal static class Slaking
{
    /// <summary>
    /// g/L from which a lump boils the water in its pores however much stands around it (common practice, no source); the whole vessel is
    /// another matter, and <see cref="HazardKind.Heat"/> says that.
    /// </summary>
    private const double SpitsFrom = 1;

    /// <summary>Null without burnt lime.</summary>
    public static Hazard? Of(Holding holding)
    {
        var lime = holding.Having(HazardRole.Quicklime).ToList();
        var grams = lime.Sum(l => l.Grams) / holding.Litres;
        return lime.Count > 0 && grams >= SpitsFrom
            ? new Hazard(HazardKind.Slaking, HazardGrade.Present, lime[0], null, "burnt lime", grams, SpitsFrom, "g/L")
            : null;
    }
}
