using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Analysis;

/// <summary>Elements as fertiliser labels declare them: P2O5, K2O, CaO, MgO, SO3, SiO2.</summary>
public static class Oxides
{
    private static readonly (Element Element, string Oxide, double Factor)[] Table =
    [
        Row(Element.P, "P2O5"),
        Row(Element.K, "K2O"),
        Row(Element.Ca, "CaO"),
        Row(Element.Mg, "MgO"),
        Row(Element.S, "SO3"),
        Row(Element.Si, "SiO2"),
    ];

    /// <summary>The oxide a label uses for an element ("P2O5" for P); null where labels state the element.</summary>
    public static string? NameFor(Element element) => Array.Find(Table, r => r.Element == element).Oxide;

    /// <summary>Grams of oxide that hold one gram of the element (P to P2O5 is 2.2914); null where labels state the element.</summary>
    public static double? GramsPerGram(Element element)
    {
        var row = Array.Find(Table, r => r.Element == element);
        return row.Oxide is null ? null : row.Factor;
    }

    private static (Element Element, string Oxide, double Factor) Row(Element element, string oxide)
    {
        var formula = FormulaParser.Parse(oxide);
        return (element, oxide, formula.MolarMass.GramsPerMole / (formula.Atoms[element] * AtomicWeights.Of(element)));
    }
}
