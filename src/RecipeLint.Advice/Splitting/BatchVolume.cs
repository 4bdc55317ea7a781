using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Splitting;

/// <summary>How much of a part is made at once.</summary>
internal static class BatchVolume
{
    /// <summary>Bottles, canisters and tanks as they are sold, L (common practice, no source).</summary>
    private static readonly double[] UsualLitres =
    [
        1, 2, 3, 5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250, 300, 400, 500, 600, 800, 1000,
    ];

    /// <summary>Usual volumes from what so much final solution takes up, the smallest first.</summary>
    public static IEnumerable<Volume> From(Volume final, double dilution)
    {
        var least = final.Litres / dilution * (1 - 1e-9);
        var usual = UsualLitres.Where(l => l >= least).Select(l => new Volume(l)).ToList();
        return usual.Count > 0 ? usual : [new Volume(Math.Ceiling(least / 100) * 100)];
    }
}
