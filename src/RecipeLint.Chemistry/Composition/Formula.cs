using System.Globalization;
using System.Text;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Composition;

/// <summary>
/// A parsed chemical formula: atoms counted, charge, and the water written as hydrate.
/// Two formulas are equal when their normal spelling is: "Ca(NO3)2.4H2O" equals "Ca(NO3)2*4H2O".
/// For "same atoms, whatever the spelling" ask <see cref="HasCompositionOf"/>.
/// </summary>
/// <param name="Text">
/// The formula in our spelling: hydrate dot as "·", brackets round, digits plain, no count of 1, charge as "+", "-", "+2", "-2".
/// </param>
/// <param name="Atoms">Atoms per formula unit, hydrate water included.</param>
/// <param name="Charge">Net charge in elementary charges.</param>
/// <param name="HydrateWater">Molecules of water written after a hydrate dot.</param>
/// <param name="MolarMass">From the CIAAW abridged standard atomic weights.</param>
public sealed record Formula(string Text, IReadOnlyDictionary<Element, double> Atoms, int Charge, double HydrateWater, MolarMass MolarMass)
{
    /// <summary>
    /// The composition in Hill order (C, H, then the alphabet; the alphabet alone without carbon), charge included:
    /// one key for every spelling of the same atoms, such as CH3COOH and C2H4O2.
    /// </summary>
    public string Hill => HillText(Atoms, Charge);

    /// <summary>The Hill key of what is left when the hydrate water is taken away; <see cref="Hill"/> for an anhydrous formula.</summary>
    public string AnhydrousHill
    {
        get
        {
            if (HydrateWater == 0)
            {
                return Hill;
            }

            var atoms = new Dictionary<Element, double>(Atoms);
            foreach (var (element, perWater) in Water)
            {
                var left = atoms.GetValueOrDefault(element) - (perWater * HydrateWater);
                if (left <= 1e-9)
                {
                    atoms.Remove(element);
                }
                else
                {
                    atoms[element] = left;
                }
            }

            return HillText(atoms, Charge);
        }
    }

    private static KeyValuePair<Element, double>[] Water { get; } = [new(new("H"), 2), new(new("O"), 1)];

    /// <summary>Grams of the element per gram of the compound; 0 when absent.</summary>
    public MassFraction FractionOf(Element element) =>
        Atoms.TryGetValue(element, out var count) ? new(count * AtomicWeights.Of(element) / MolarMass.GramsPerMole) : new(0);

    /// <summary>True when both hold the same atoms and charge, however they are written.</summary>
    public bool HasCompositionOf(Formula other) => string.Equals(Hill, other.Hill, StringComparison.Ordinal);

    public bool Equals(Formula? other) => other is not null && string.Equals(Text, other.Text, StringComparison.Ordinal);

    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Text);

    public override string ToString() => Text;

    private static string HillText(IReadOnlyDictionary<Element, double> atoms, int charge)
    {
        var hasCarbon = atoms.ContainsKey(Element.C);
        var text = new StringBuilder();
        foreach (var element in atoms.Keys.OrderBy(e => Rank(e, hasCarbon)).ThenBy(e => e.Symbol, StringComparer.Ordinal))
        {
            text.Append(element.Symbol);
            var count = atoms[element];
            if (count != 1)
            {
                // Six decimals join 1/3 and 0.333333 without joining counts that anyone tells apart.
                text.Append(Math.Round(count, 6).ToString(CultureInfo.InvariantCulture));
            }

            text.Append(' ');
        }

        if (charge != 0)
        {
            text.Append(charge.ToString("+0;-0", CultureInfo.InvariantCulture));
        }

        return text.ToString().TrimEnd();
    }

    private static int Rank(Element element, bool hasCarbon) =>
        !hasCarbon ? 2 : element.Symbol == "C" ? 0 : element.Symbol == "H" ? 1 : 2;
}
