using System.Diagnostics.CodeAnalysis;

namespace RecipeLint.Chemistry.Composition;

/// <summary>
/// What a fertiliser label writes for an element: "P2O5" for phosphorus, "K2O" for potassium, "NO3" for nitrogen.
/// Every factor is computed from the standard atomic weights, none is stored.
/// </summary>
public static class OxideBasis
{
    private static readonly Dictionary<string, Element> Written = new(StringComparer.Ordinal)
    {
        ["P2O5"] = Element.P,
        ["PO4"] = Element.P,
        ["K2O"] = Element.K,
        ["CaO"] = Element.Ca,
        ["CaCO3"] = Element.Ca,
        ["MgO"] = Element.Mg,
        ["Na2O"] = Element.Na,
        ["SO3"] = Element.S,
        ["SO4"] = Element.S,
        ["SiO2"] = Element.Si,
        ["B2O3"] = Element.B,
        ["FeO"] = Element.Fe,
        ["Fe2O3"] = Element.Fe,
        ["MnO"] = Element.Mn,
        ["MnO2"] = Element.Mn,
        ["ZnO"] = Element.Zn,
        ["CuO"] = Element.Cu,
        ["MoO3"] = Element.Mo,
        ["CoO"] = new("Co"),
        ["NiO"] = new("Ni"),
        ["NO3"] = Element.N,
        ["NH4"] = Element.N,
        ["NH3"] = Element.N,
    };

    private static readonly Dictionary<Element, string> Usual = new()
    {
        [Element.P] = "P2O5",
        [Element.K] = "K2O",
        [Element.Ca] = "CaO",
        [Element.Mg] = "MgO",
        [Element.Na] = "Na2O",
        [Element.S] = "SO3",
        [Element.Si] = "SiO2",
        [Element.B] = "B2O3",
        [Element.Fe] = "Fe2O3",
        [Element.Mn] = "MnO",
        [Element.Zn] = "ZnO",
        [Element.Cu] = "CuO",
        [Element.Mo] = "MoO3",
    };

    /// <summary>The forms known, in ordinal order.</summary>
    public static IEnumerable<string> Forms => Written.Keys.Order(StringComparer.Ordinal);

    /// <summary>
    /// Reads what a label wrote: a form of the table ("P2O5") or an element by its symbol ("P").
    /// </summary>
    /// <param name="form">As on the label, case as in the formula.</param>
    /// <param name="element">The element meant.</param>
    /// <param name="gramsPerGram">Grams of the element in one gram of the form: 0.4364 for P2O5, 1 for "P".</param>
    public static bool TryRead(string form, out Element element, out double gramsPerGram)
    {
        if (Written.TryGetValue(form, out element))
        {
            gramsPerGram = FormulaParser.Parse(form).FractionOf(element).Value;
            return true;
        }

        element = new Element(form);
        gramsPerGram = 1;
        return AtomicWeights.TryGet(element, out _);
    }

    /// <summary>Grams of the element in one gram of the form; see <see cref="TryRead"/>.</summary>
    /// <exception cref="ArgumentException">The form is neither in the table nor an element.</exception>
    public static double GramsElementPerGram(string form) =>
        TryRead(form, out _, out var factor)
            ? factor
            : throw new ArgumentException($"'{form}' is not a form this table knows.", nameof(form));

    /// <summary>The oxide that labels usually print for the element ("P2O5" for P); false where labels print the element.</summary>
    public static bool TryUsualForm(Element element, [NotNullWhen(true)] out string? form) => Usual.TryGetValue(element, out form);
}
