using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Chemistry.Substances;

/// <summary>
/// Reads from a formula which ions it sets free, for substances that a shop adds by formula: "K2HPO4" gives K+ 2, H2PO4- 1, H+ -1.
/// </summary>
public static class IonReading
{
    /// <summary>Longest first, so that HPO4 is not read as H and PO4.</summary>
    private static readonly (string Group, (string Component, double Moles)[] Ions)[] Groups =
    [
        ("CH3COO", [("Acetate-", 1)]),
        ("C6H5O7", [("Citrate-3", 1)]),
        ("C6H11O7", [("Gluconate-", 1)]),
        ("C7H5O2", [("Benzoate-", 1)]),
        ("C6H7O2", [("Sorbate-", 1)]),
        ("H2PO4", [("H2PO4-", 1)]),
        ("HPO4", [("H2PO4-", 1), ("H+", -1)]),
        ("P2O7", [("P2O7-4", 1)]),
        ("PO4", [("H2PO4-", 1), ("H+", -2)]),
        ("HCO3", [("CO3-2", 1), ("H+", 1)]),
        ("C2O4", [("Oxalate-2", 1)]),
        ("CO3", [("CO3-2", 1)]),
        ("HSO4", [("SO4-2", 1), ("H+", 1)]),
        ("SO4", [("SO4-2", 1)]),
        ("NO3", [("NO3-", 1)]),
        ("NH4", [("NH4+", 1)]),
        ("MoO4", [("MoO4-2", 1)]),
        ("SeO4", [("inert:SeO4-2", 1)]),
        ("SiO3", [("H4SiO4", 1), ("H+", -2)]),
        ("B4O7", [("B(OH)3", 4), ("H+", -2)]),
        ("H2O", []),
        ("OH", [("H+", -1)]),
        ("Cl", [("Cl-", 1)]),
        ("Na", [("Na+", 1)]),
        ("Mg", [("Mg+2", 1)]),
        ("Ca", [("Ca+2", 1)]),
        ("Fe", [("Fe+2", 1)]),
        ("Mn", [("Mn+2", 1)]),
        ("Zn", [("Zn+2", 1)]),
        ("Cu", [("Cu+2", 1)]),
        ("Ni", [("Ni+2", 1)]),
        ("Co", [("Co+2", 1)]),
        ("Al", [("Al+3", 1)]),
        ("K", [("K+", 1)]),
        ("I", [("inert:I-1", 1)]),
        ("H", [("H+", 1)]),
    ];

    /// <summary>
    /// Moles of each component per mole of the formula: from a substance of the catalogue that is the same apart from water,
    /// else from the groups the formula is written in. Iron is Fe+3 where only that closes the charge.
    /// </summary>
    /// <returns>False when the ions cannot be told, or charge and atoms do not close.</returns>
    public static bool TryRead(Formula formula, SubstanceCatalogue catalogue, [NotNullWhen(true)] out IReadOnlyDictionary<string, double>? molesPerMole)
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
            var moles = known.Dissolves.ToDictionary(d => d.Component, d => Math.Round(d.MolesPerGram * perMole, 9), StringComparer.Ordinal);
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

        if (moles.Remove("Fe+2", out var iron))
        {
            moles["Fe+2"] = iron;
            if (Dissolution.Check(formula, moles).Count > 0)
            {
                moles.Remove("Fe+2");
                moles["Fe+3"] = iron;
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
