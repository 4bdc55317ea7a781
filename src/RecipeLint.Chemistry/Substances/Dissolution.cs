using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Substances;

/// <summary>Turns "one mole of the compound sets free these moles" into contents and yields per gram as bought.</summary>
public static class Dissolution
{
    /// <summary>Yields per gram of a substance that holds the compound at the given strength.</summary>
    /// <param name="formula">The compound.</param>
    /// <param name="molesPerMole">Moles of each component per mole of the compound.</param>
    /// <param name="strength">Mass fraction of the compound in the substance as bought.</param>
    public static IReadOnlyList<ComponentYield> Yields(
        Formula formula, IEnumerable<KeyValuePair<string, double>> molesPerMole, MassFraction strength) =>
        [.. molesPerMole.Select(m => new ComponentYield(m.Key, m.Value * strength.Value / formula.MolarMass.GramsPerMole))];

    /// <summary>
    /// Mass fractions of the elements of a compound at a strength, nitrogen by the forms of the components it sets free.
    /// </summary>
    public static ElementContent Content(Formula formula, IEnumerable<KeyValuePair<string, double>> molesPerMole, MassFraction strength)
    {
        var elements = formula.Atoms.Keys.Order()
            .Select(e => KeyValuePair.Create(e, formula.FractionOf(e).Value * strength.Value));
        var gramsNitrogenPerMole = AtomicWeights.Of(Element.N) * strength.Value / formula.MolarMass.GramsPerMole;
        var nitrogen = new List<KeyValuePair<NitrogenForm, double>>();
        foreach (var (name, moles) in molesPerMole)
        {
            if (SolutionComponent.TryGet(name, out var component) && component is { Nitrogen: { } form, Formula: { } species })
            {
                nitrogen.Add(KeyValuePair.Create(form, moles * species.Atoms[Element.N] * gramsNitrogenPerMole));
            }
        }

        return new ElementContent(elements, nitrogen);
    }

    /// <summary>
    /// What is wrong with a list of components for a compound: a name unknown, a charge that does not cancel, atoms that do not add up
    /// (water aside). Empty when the list is right.
    /// </summary>
    public static IReadOnlyList<string> Check(Formula formula, IEnumerable<KeyValuePair<string, double>> molesPerMole)
    {
        var problems = new List<string>();
        var left = formula.Atoms.ToDictionary(a => a.Key, a => a.Value);
        double charge = -formula.Charge;
        foreach (var (name, moles) in molesPerMole)
        {
            if (!SolutionComponent.TryGet(name, out var component))
            {
                problems.Add($"'{name}' is not a component");
                continue;
            }

            charge += moles * component.Charge;
            foreach (var (element, count) in component.Formula?.Atoms ?? new Dictionary<Element, double>())
            {
                left[element] = left.GetValueOrDefault(element) - (moles * count);
            }
        }

        if (Math.Abs(charge) > 1e-9)
        {
            problems.Add(FormattableString.Invariant($"a charge of {charge:+0.###;-0.###} is left"));
        }

        var oxygen = left.GetValueOrDefault(new("O"));
        left[new("H")] = left.GetValueOrDefault(new("H")) - (2 * oxygen);
        left.Remove(new("O"));
        problems.AddRange(left.Where(l => Math.Abs(l.Value) > 1e-9).OrderBy(l => l.Key)
            .Select(l => FormattableString.Invariant($"{l.Key}: {l.Value:+0.###;-0.###} atoms are left")));
        return problems;
    }
}
