using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Rules.Plant;

/// <summary>A published limit for a contaminant.</summary>
/// <param name="Per">What the milligrams are counted per ("kg of product").</param>
internal sealed record ContaminantLimit(string Element, double Milligrams, string Per, bool Recalled = false);

/// <summary>
/// Contaminant limits for fertilisers and for irrigation water. Fertilisers: Swiss ChemRRV (Ordinance on the Reduction of Risks relating to
/// Chemical Products) annex 2.6 no. 2.2.1.3 and 2.2.1.4, which take over the categories PFC 1(C)(I) and (II) of Regulation (EU) 2019/1009;
/// cadmium per kg of P2O5 as recalled from that regulation. Water: FAO Irrigation and Drainage Paper 29 rev. 1, table of trace elements;
/// Co, Cr and the others read there, lead and vanadium recalled. They help to read a certificate and are no legal advice.
/// </summary>
internal static class ContaminantLimits
{
    /// <summary>
    /// Share of trace nutrients from which a product counts as a trace-nutrient fertiliser: the least a chelate of one may hold.
    /// </summary>
    private const double TraceShare = 0.05;

    /// <summary>Share of P2O5 from which cadmium is counted per kg of it.</summary>
    private const double PhosphateShare = 0.05;

    private const double P2O5PerP = 2.29137;

    private static readonly string[] Traces = ["B", "Co", "Cu", "Fe", "Mn", "Mo", "Zn"];

    private static readonly ContaminantLimit[] Main =
    [
        new("As", 40, "kg of product"), new("Hg", 1, "kg of product"), new("Ni", 100, "kg of product"), new("Pb", 120, "kg of product"),
    ];

    private static readonly ContaminantLimit[] Trace =
    [
        new("As", 1000, "kg of trace nutrients"), new("Cd", 200, "kg of trace nutrients"), new("Hg", 100, "kg of trace nutrients"),
        new("Ni", 2000, "kg of trace nutrients"), new("Pb", 600, "kg of trace nutrients"),
    ];

    /// <summary>mg/L in water that is applied for years.</summary>
    public static IReadOnlyList<ContaminantLimit> InWater { get; } =
    [
        new("As", 0.1, "L"), new("Be", 0.1, "L"), new("Cd", 0.01, "L"), new("Co", 0.05, "L"), new("Cr", 0.1, "L"),
        new("Ni", 0.2, "L"), new("Pb", 5.0, "L", true), new("Se", 0.02, "L"), new("V", 0.1, "L", true),
    ];

    /// <summary>The limits of a product with what one kg of it counts as (kg of product, of P2O5 or of trace nutrients).</summary>
    public static IEnumerable<(ContaminantLimit Limit, double KilogramsPerKilogram)> For(Substance product)
    {
        var traces = Traces.Sum(t => product.Content[new Element(t)]);
        if (traces >= TraceShare)
        {
            return Trace.Select(l => (l, traces));
        }

        var phosphate = product.Content[Element.P] * P2O5PerP;
        var cadmium = phosphate >= PhosphateShare
            ? (new ContaminantLimit("Cd", 60, "kg of P2O5", true), phosphate)
            : (new ContaminantLimit("Cd", 3, "kg of product"), 1.0);
        return Main.Select(l => (l, 1.0)).Append(cadmium);
    }
}
