using CsCheck;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>
/// Random solutions of the kinds people mix, with amounts inside and somewhat beyond what they use: trace stocks with and without chelates,
/// part A, part B, feeds, silicate and borax stocks, hydroxides of every metal. Half are neutralised roughly, a quarter has its pH given.
/// </summary>
public static class RealisticStocks
{
    /// <summary>A component, the decades its amount in mol/kg lies between, and how often it is there.</summary>
    private readonly record struct Part(string Name, double LowestLog, double HighestLog, double Chance = 1);

    private static readonly string[] Ligands =
        ["EDTA-4", "DTPA-5", "HEDTA-3", "EDDHA-4", "Citrate-3", "Gluconate-", "Acetate-", "Benzoate-", "Sorbate-", "Oxalate-2", "Glycinate-", "P2O7-4"];

    private static readonly Part[] Traces =
    [
        new("Fe+3", -4, -1.3, 0.6), new("Fe+2", -4, -1.3, 0.5), new("Mn+2", -4, -1.5, 0.8), new("Zn+2", -4.5, -1.5, 0.9), new("Cu+2", -5, -2, 0.9),
        new("Ni+2", -6, -3, 0.3), new("Co+2", -6, -3, 0.2), new("B(OH)3", -3, -0.3, 0.8), new("MoO4-2", -5, -3, 0.7), new("Na+", -4, -0.5, 0.8),
        new("K+", -4, -0.5, 0.4), new("SO4-2", -3, -0.5, 0.7), new("NO3-", -4, -1, 0.3), new("Cl-", -4, -1, 0.3), new("H2PO4-", -4, -0.7, 0.5),
        new("CO3-2", -5, -2, 0.2), new("Ca+2", -5, -2, 0.2), new("Mg+2", -5, -2, 0.2),
    ];

    private static readonly Part[] Feed =
    [
        new("Ca+2", -3.5, -2), new("Mg+2", -3.8, -2.3), new("K+", -3, -1.8), new("NH4+", -4, -2.5, 0.7), new("Na+", -5, -2.5, 0.8), new("NO3-", -3, -1.6),
        new("SO4-2", -3.5, -2), new("H2PO4-", -4, -2.5), new("Cl-", -5, -2.5, 0.7), new("CO3-2", -5, -2, 0.7), new("Fe+3", -6, -4), new("Fe+2", -7, -4.5, 0.2),
        new("Mn+2", -6.5, -4.7), new("Zn+2", -7, -5), new("Cu+2", -8, -5.5), new("B(OH)3", -6, -4), new("MoO4-2", -8, -6), new("H4SiO4", -5, -2.5, 0.4),
        .. Ligands.Select(l => new Part(l, -6, -3.7, 0.25)),
    ];

    private static readonly Part[] PartA =
    [
        new("Ca+2", -1.5, 0.2), new("NO3-", -1.2, 0.5), new("K+", -2, 0, 0.6), new("NH4+", -3, -0.7, 0.6), new("Mg+2", -3, -0.5, 0.3), new("Cl-", -3, -0.5, 0.3),
        new("SO4-2", -4, -0.5, 0.4), new("H2PO4-", -5, -1.5, 0.3), new("Fe+3", -4, -1.7, 0.8), new("DTPA-5", -4, -1.7, 0.6), new("EDTA-4", -4, -1.7, 0.3),
        new("EDDHA-4", -4, -2, 0.2), new("Na+", -4, -1.2, 0.8), new("CO3-2", -5, -2, 0.3),
    ];

    private static readonly Part[] PartB =
    [
        new("K+", -1.5, 0.3), new("H2PO4-", -2, 0), new("Mg+2", -2, 0), new("SO4-2", -2, 0.2), new("NH4+", -3, -0.5, 0.5), new("NO3-", -2, 0, 0.3),
        new("Mn+2", -5, -2), new("Zn+2", -5, -2.3), new("Cu+2", -6, -3), new("B(OH)3", -4, -1.5), new("MoO4-2", -6, -3.5), new("Na+", -5, -2),
        new("Fe+3", -4, -2, 0.4), new("EDTA-4", -4, -2, 0.3), new("Citrate-3", -4, -1.5, 0.3), new("Ca+2", -5, -1.5, 0.3), new("CO3-2", -5, -2, 0.2),
    ];

    private static readonly Part[] Silicate =
    [
        new("K+", -2, 0.3), new("H4SiO4", -3, 0), new("Na+", -4, -1, 0.5), new("Ca+2", -5, -2, 0.5), new("Mg+2", -5, -2, 0.5), new("CO3-2", -4, -1, 0.5),
        new("Fe+3", -6, -3, 0.4), new("EDTA-4", -5, -2.5, 0.3), new("Al+3", -6, -3, 0.3), new("B(OH)3", -4, -1, 0.3), new("H2PO4-", -4, -1.5, 0.3),
    ];

    private static readonly Part[] Borax =
    [
        new("Na+", -3, 0), new("B(OH)3", -2, 0.3), new("Cu+2", -5, -2, 0.7), new("Zn+2", -5, -2, 0.7), new("Mn+2", -5, -2, 0.7), new("SO4-2", -4, -1, 0.7),
        new("Fe+3", -5, -2, 0.4), new("EDTA-4", -4, -1.5, 0.4), new("K+", -3, -0.3, 0.4), new("MoO4-2", -5, -2.5, 0.5), new("Ca+2", -5, -2, 0.3),
        new("CO3-2", -5, -2, 0.3),
    ];

    private static readonly Part[] Hydroxides =
    [
        new("K+", -3, 0.3), new("Na+", -3, 0, 0.5),
        .. ((string[])["Fe+2", "Fe+3", "Mn+2", "Zn+2", "Cu+2", "Ni+2", "Co+2", "Al+3", "Mg+2", "Ca+2"]).Select(m => new Part(m, -5, -1, 0.6)),
        .. ((string[])["SO4-2", "Cl-", "NO3-", "H2PO4-", "CO3-2", "B(OH)3", "MoO4-2", "H4SiO4", "Citrate-3"]).Select(a => new Part(a, -5, -0.7, 0.5)),
    ];

    private static readonly (string Name, Part[] Parts)[] Kinds =
    [
        ("trace", Traces), ("chelated trace", [.. Traces, .. Ligands.Select(l => new Part(l, -4, -0.7, 0.25))]), ("feed", Feed), ("part A", PartA), ("part B", PartB),
        ("silicate", Silicate), ("borax", Borax), ("hydroxides", Hydroxides),
    ];

    /// <summary>The kind of a stock and what is in it.</summary>
    public static readonly Gen<(string Kind, SolutionInput Input)> Any = Gen.Int[0, int.MaxValue - 1].Select(seed =>
    {
        var random = new Random(seed);
        var (kind, parts) = Kinds[random.Next(Kinds.Length)];
        var totals = new Dictionary<string, double>();
        foreach (var part in parts)
            if (random.NextDouble() < part.Chance) totals[part.Name] = Math.Pow(10, part.LowestLog + (part.HighestLog - part.LowestLog) * random.NextDouble());
        double celsius = 45 * random.NextDouble();
        double? ph = null;
        if (random.Next(2) == 0)
        {
            var open = totals.Sum(t => Components.Charge(Components.Find(t.Key)) * t.Value);
            string[] closing = open > 0 ? ["NO3-", "SO4-2", "Cl-"] : ["K+", "Na+", "NH4+"];
            var ion = closing[random.Next(3)];
            totals[ion] = totals.GetValueOrDefault(ion) + Math.Abs(open / Components.Charge(Components.Find(ion))) * (0.98 + 0.04 * random.NextDouble());
        }
        else if (random.Next(2) == 0) ph = 3 + 6 * random.NextDouble();
        return (kind, new SolutionInput
        {
            Totals = new ComponentTotals(totals),
            Celsius = celsius,
            FixedPh = ph,
            CarbonDioxideAtm = kind == "feed" && ph is not null && random.Next(2) == 0 ? 4.2e-4 : null,
        });
    });
}
