using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Feeds;

/// <summary>Counts the charge of a final solution by the convention of the trade: each component in the form it has near pH 5.8.</summary>
internal static class ChargeBook
{
    /// <summary>
    /// Chelating agents and trace metals in the order in which they find each other: the strongest ligand takes the most firmly held metal
    /// first.
    /// </summary>
    private static readonly string[] Ligands = [.. Components.Chelators];

    private static readonly string[] Metals = [.. Components.TraceMetals];

    /// <summary>The ions of a solution, by name, and their balance.</summary>
    /// <param name="moles">Components in the whole volume; hydrogen ions are not counted as cations.</param>
    public static (IReadOnlyList<IonFact> Ions, ChargeBalance Balance) Of(ComponentMoles moles, Volume volume)
    {
        var free = moles.Where(m => m.Key != Component.Hydrogen && m.Value > 0).ToDictionary(m => m.Key, m => m.Value);
        var ions = new List<IonFact>();
        foreach (var ligand in Ligands)
        {
            foreach (var metal in Metals)
            {
                var bound = Math.Min(free.GetValueOrDefault(ligand), free.GetValueOrDefault(metal));
                if (bound > 0)
                {
                    free[ligand] -= bound;
                    free[metal] -= bound;
                    ions.Add(new IonFact(
                        $"{metal}·{ligand}", IonFacts.Charge(metal) + IonFacts.Charge(ligand), new Amount(bound) / volume));
                }
            }
        }

        ions.AddRange(free.Where(f => f.Value > 0)
            .Select(f => new IonFact(f.Key, IonFacts.ChargeInFeed(f.Key), new Amount(f.Value) / volume)));
        ions.Sort((a, b) => string.CompareOrdinal(a.Name, b.Name));

        var cations = ions.Select(i => i.ChargeConcentration.EquivalentsPerLitre).Where(q => q > 0).Order().Sum();
        var anions = -ions.Select(i => i.ChargeConcentration.EquivalentsPerLitre).Where(q => q < 0).Order().Sum();
        var all = moles.Select(m => IonFacts.Charge(m.Key) * m.Value).OrderBy(Math.Abs).Sum() / volume.Litres;
        var balance =
            new ChargeBalance(new ChargeConcentration(cations), new ChargeConcentration(anions), new ChargeConcentration(cations - anions))
            {
                Unexplained = new ChargeConcentration(all),
            };
        return (ions, balance);
    }
}
