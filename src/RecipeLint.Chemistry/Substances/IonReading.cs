using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using RecipeLint.Chemistry.Composition;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Chemistry.Substances;

/// <summary>
/// Reads from a formula which ions it sets free, for substances that a shop adds by formula: "K2HPO4" gives K+ 2, H2PO4- 1, H+ -1.
/// </summary>
public static class IonReading
{
    /// <summary>Longest first, so that HPO4 is not read as H and PO4.</summary>
    private static readonly (string Group, (string Component, double Moles)[] Ions)[] Groups =
    [
        ("CH3COO", [(Component.Acetate, 1)]),
        ("C6H5O7", [(Component.Citrate, 1)]),
        ("C6H11O7", [(Component.Gluconate, 1)]),
        ("C3H5O3", [(Component.Lactate, 1)]),
        ("C4H4O5", [(Component.Malate, 1)]),
        ("C7H5O2", [(Component.Benzoate, 1)]),
        ("C6H7O2", [(Component.Sorbate, 1)]),
        ("H2PO4", [(Component.Phosphate, 1)]),
        ("HPO4", [(Component.Phosphate, 1), (Component.Hydrogen, -1)]),
        ("P2O7", [(Component.Pyrophosphate, 1)]),
        ("PO4", [(Component.Phosphate, 1), (Component.Hydrogen, -2)]),
        ("HCO3", [(Component.Carbonate, 1), (Component.Hydrogen, 1)]),
        ("C2O4", [(Component.Oxalate, 1)]),
        ("CO3", [(Component.Carbonate, 1)]),
        ("HSO4", [(Component.Sulfate, 1), (Component.Hydrogen, 1)]),
        ("SO4", [(Component.Sulfate, 1)]),
        ("NO3", [(Component.Nitrate, 1)]),
        ("NH4", [(Component.Ammonium, 1)]),
        ("MoO4", [(Component.Molybdate, 1)]),
        ("SeO4", [("inert:SeO4-2", 1)]),
        ("SiO3", [(Component.Silicate, 1), (Component.Hydrogen, -2)]),
        ("B4O7", [(Component.Boron, 4), (Component.Hydrogen, -2)]),
        ("H2O", []),
        ("OH", [(Component.Hydrogen, -1)]),
        ("Cl", [(Component.Chloride, 1)]),
        ("Na", [(Component.Sodium, 1)]),
        ("Mg", [(Component.Magnesium, 1)]),
        ("Ca", [(Component.Calcium, 1)]),
        ("Fe", [(Component.FerrousIron, 1)]),
        ("Mn", [(Component.Manganese, 1)]),
        ("Zn", [(Component.Zinc, 1)]),
        ("Cu", [(Component.Copper, 1)]),
        ("Ni", [(Component.Nickel, 1)]),
        ("Co", [(Component.Cobalt, 1)]),
        ("Al", [(Component.Aluminium, 1)]),
        ("K", [(Component.Potassium, 1)]),
        ("I", [("inert:I-1", 1)]),
        ("H", [(Component.Hydrogen, 1)]),
    ];

    /// <summary>
    /// Moles of each component per mole of the formula: from a substance of the catalogue that is the same apart from water,
    /// else from the groups the formula is written in. Iron is Fe+3 where only that closes the charge.
    /// </summary>
    /// <returns>False when the ions cannot be told, or charge and atoms do not close.</returns>
    public static bool TryRead(
        Formula formula, SubstanceCatalogue catalogue, [NotNullWhen(true)] out IReadOnlyDictionary<string, double>? molesPerMole)
    {
        molesPerMole = FromCatalogue(formula, catalogue) ?? FromGroups(formula);
        return molesPerMole is not null;
    }

    private static Dictionary<string, double>? FromCatalogue(Formula formula, SubstanceCatalogue catalogue)
    {
        foreach (var known in catalogue.WithSameSalt(formula))
        {
            // The yields are moles per gram as bought; whole and half numbers come back exactly.
            var perMole = known.Formula!.MolarMass.GramsPerMole / known.Strength.Value;
            var moles =
                known.Dissolves.ToDictionary(d => d.Component, d => Math.Round(d.MolesPerGram * perMole, 9), StringComparer.Ordinal);
            if (moles.Count > 0 && Dissolution.Check(formula, moles).Count == 0)
            {
                return moles;
            }
        }

        return null;
    }

    private static Dictionary<string, double>? FromGroups(Formula formula)
    {
        var moles = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var part in formula.Text.Split('·'))
        {
            var at = 0;
            var multiple = ReadNumber(part, ref at, allowPoint: true);
            if (!ReadGroups(part, ref at, multiple, moles) || at < part.Length)
            {
                return null;
            }
        }

        if (moles.Remove(Component.FerrousIron, out var iron))
        {
            moles[Component.FerrousIron] = iron;
            if (Dissolution.Check(formula, moles).Count > 0)
            {
                moles.Remove(Component.FerrousIron);
                moles[Component.FerricIron] = iron;
            }
        }

        foreach (var none in moles.Where(m => m.Value == 0).Select(m => m.Key).ToArray())
        {
            moles.Remove(none);
        }

        return moles.Count > 0 && Dissolution.Check(formula, moles).Count == 0 ? moles : null;
    }

    private static bool ReadGroups(string part, ref int at, double multiple, Dictionary<string, double> moles)
    {
        while (at < part.Length && part[at] != ')')
        {
            if (part[at] == '(')
            {
                var inner = new Dictionary<string, double>(StringComparer.Ordinal);
                at++;
                if (!ReadGroups(part, ref at, 1, inner) || at >= part.Length)
                {
                    return false;
                }

                at++;
                var count = ReadNumber(part, ref at, allowPoint: false) * multiple;
                foreach (var (component, number) in inner)
                {
                    moles[component] = moles.GetValueOrDefault(component) + (number * count);
                }

                continue;
            }

            if (!ReadGroup(part, ref at, multiple, moles))
            {
                return false;
            }
        }

        return true;
    }

    private static bool ReadGroup(string part, ref int at, double multiple, Dictionary<string, double> moles)
    {
        foreach (var (group, ions) in Groups)
        {
            if (!part.AsSpan(at).StartsWith(group, StringComparison.Ordinal))
            {
                continue;
            }

            at += group.Length;
            var count = char.IsAsciiDigit(group[^1]) ? 1 : ReadNumber(part, ref at, allowPoint: false);
            foreach (var (component, number) in ions)
            {
                moles[component] = moles.GetValueOrDefault(component) + (number * count * multiple);
            }

            return true;
        }

        return false;
    }

    private static double ReadNumber(string part, ref int at, bool allowPoint)
    {
        var start = at;
        while (at < part.Length && (char.IsAsciiDigit(part[at]) || (allowPoint && part[at] == '.')))
        {
            at++;
        }

        return at == start ? 1 : double.Parse(part.AsSpan(start, at - start), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
    }
}
