using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Solutions;

/// <summary>What the names of solution components say about them.</summary>
public static class IonFacts
{
    /// <summary>The charge of a component: -2 for "SO4-2", 0 for "B(OH)3" and for a name that is none.</summary>
    public static int Charge(string component) => SolutionComponent.TryParse(component, out var known) ? known.Charge : 0;

    /// <summary>The charge a component is counted with in a charge balance of a feed near pH 5.8.</summary>
    public static int ChargeInFeed(string component) => component switch
    {
        // Forms of a water analysis that the constants write otherwise: dihydrogen phosphate prevails.
        "PO4-3" or "HPO4-2" => -1,
        _ => Components.Row(component)?.FeedCharge ?? Charge(component),
    };

    /// <summary>Element masses of so many moles of a component; empty where its atoms are not known.</summary>
    public static ElementTotals ElementsOf(string component, double moles)
    {
        if (!SolutionComponent.TryGet(component, out var known) || known.Formula is not { } formula)
        {
            return ElementTotals.Empty;
        }

        var grams = new List<KeyValuePair<Element, double>>(formula.Atoms.Count);
        KeyValuePair<NitrogenForm, double>[] nitrogen = [];
        foreach (var (element, count) in formula.Atoms)
        {
            var mass = count * AtomicWeights.Of(element) * moles;
            grams.Add(KeyValuePair.Create(element, mass));
            if (element == Element.N && known.Nitrogen is { } form)
            {
                nitrogen = [KeyValuePair.Create(form, mass)];
            }
        }

        return ElementTotals.OfGrams(grams, nitrogen);
    }
}
