using RecipeLint.Chemistry.Data;

namespace RecipeLint.Chemistry.Composition;

/// <summary>A standard atomic weight with the uncertainty its table states (same scale, dimensionless or g/mol).</summary>
public readonly record struct AtomicWeight(double Value, double Uncertainty);

/// <summary>
/// CIAAW abridged standard atomic weights 2021 (T. Prohaska et al., Pure Appl. Chem. 94 (2022) 573, doi:10.1515/pac-2019-0603).
/// Elements without a standard atomic weight (technetium, radium ...) are not in the table.
/// </summary>
public static class AtomicWeights
{
    private const string Resource = "RecipeLint.Chemistry.Data.elements.atomic-weights.json";

    private static readonly Lazy<Dictionary<string, AtomicWeight>> Table = new(Load);

    private static readonly string[] Unweighted =
    [
        "Tc", "Pm", "Po", "At", "Rn", "Fr", "Ra", "Ac", "Np", "Pu", "Am", "Cm", "Bk", "Cf", "Es", "Fm", "Md", "No", "Lr",
        "Rf", "Db", "Sg", "Bh", "Hs", "Mt", "Ds", "Rg", "Cn", "Nh", "Fl", "Mc", "Lv", "Ts", "Og",
    ];

    /// <summary>The elements of the table in the order of their symbols.</summary>
    public static IEnumerable<Element> Elements => Table.Value.Keys.Order(StringComparer.Ordinal).Select(s => new Element(s));

    /// <summary>The weight of an element of the table; false for anything else.</summary>
    public static bool TryGet(Element element, out AtomicWeight weight) => Table.Value.TryGetValue(element.Symbol, out weight);

    /// <summary>The weight of an element of the table.</summary>
    /// <exception cref="ArgumentException">The element has no standard atomic weight.</exception>
    public static double Of(Element element) =>
        TryGet(element, out var weight)
            ? weight.Value
            : throw new ArgumentException($"'{element.Symbol}' has no standard atomic weight.", nameof(element));

    /// <summary>True for an element that exists but has no standard atomic weight, such as technetium.</summary>
    internal static bool IsElementWithoutWeight(string symbol) => Array.IndexOf(Unweighted, symbol) >= 0;

    private static Dictionary<string, AtomicWeight> Load()
    {
        using var document = EmbeddedJson.Open(typeof(AtomicWeights).Assembly, Resource);
        var table = new Dictionary<string, AtomicWeight>(StringComparer.Ordinal);
        foreach (var row in document.RootElement.GetProperty("weights").EnumerateObject())
        {
            table.Add(row.Name, new AtomicWeight(row.Value[0].GetDouble(), row.Value[1].GetDouble()));
        }

        return table;
    }
}
