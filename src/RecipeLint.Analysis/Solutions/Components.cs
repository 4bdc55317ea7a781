using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Solutions;

/// <summary>What the names of solution components say about them.</summary>
public static class Components
{
    /// <summary>Hydrogen ions put in (or, negative, taken up) beside the other components.</summary>
    public const string Hydrogen = "H+";

    public const string Carbonate = "CO3-2";

    /// <summary>
    /// Charge of the form that prevails near pH 5.8, where it is not the charge in the name: dihydrogen phosphate, hydrogen carbonate,
    /// H2EDTA2-, H2DTPA3-, HHEDTA2-, neutral H4EDDHA, hydrogen citrate, H2P2O7 2-, hydrogen phthalate, zwitterionic glycine.
    /// The acidity constants behind it (25 °C, rounded; R. M. Smith and A. E. Martell, Critical Stability Constants; recalled): EDTA 2.7 and 6.2;
    /// DTPA 4.3 and 8.6; HEDTA 5.4 and 9.9; EDDHA 6.3; citric acid 4.8 and 6.4; diphosphoric acid 2.1 and 6.7; phthalic acid 2.9 and 5.4.
    /// </summary>
    private static readonly Dictionary<string, int> FeedCharges = new(StringComparer.Ordinal)
    {
        ["PO4-3"] = -1,
        ["HPO4-2"] = -1,
        [Carbonate] = -1,
        ["EDTA-4"] = -2,
        ["DTPA-5"] = -3,
        ["HEDTA-3"] = -2,
        ["EDDHA-4"] = 0,
        ["Citrate-3"] = -2,
        ["P2O7-4"] = -2,
        ["Phthalate-2"] = -2,
        ["Glycinate-"] = 0,
    };

    /// <summary>The charge of a component: -2 for "SO4-2", 0 for "B(OH)3" and for a name that is none.</summary>
    public static int Charge(string component) => SolutionComponent.TryParse(component, out var known) ? known.Charge : 0;

    /// <summary>The charge a component is counted with in a charge balance of a feed near pH 5.8.</summary>
    public static int ChargeInFeed(string component) => FeedCharges.GetValueOrDefault(component, Charge(component));

    /// <summary>Element masses of so many moles of a component; empty where its atoms are not known.</summary>
    public static ElementTotals ElementsOf(string component, double moles)
    {
        if (!SolutionComponent.TryGet(component, out var known) || known.Formula is not { } formula)
        {
            return ElementTotals.Empty;
        }

        var grams = formula.Atoms.ToDictionary(a => a.Key, a => a.Value * AtomicWeights.Of(a.Key) * moles);
        return ElementTotals.OfGrams(
            grams,
            known.Nitrogen is { } form && grams.TryGetValue(Element.N, out var nitrogen) ? [KeyValuePair.Create(form, nitrogen)] : []);
    }
}
