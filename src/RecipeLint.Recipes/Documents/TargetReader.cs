using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Reads the targets of a recipe; every concentration becomes mg/L of the element.</summary>
internal static class TargetReader
{
    /// <summary>What each key may count as beside itself, and the charge that makes meq/L mean one thing; 0 where it would not.</summary>
    private static readonly Dictionary<string, (Element Element, int Charge, ChemicalBasis[] Bases)> Keys = new(StringComparer.Ordinal)
    {
        ["N"] = (Element.N, 0, [new("N", 1)]),
        ["NO3-N"] = (Element.N, 1, [new("N", 1), new("NO3", 1)]),
        ["NH4-N"] = (Element.N, 1, [new("N", 1), new("NH4", 1)]),
        ["P"] = (Element.P, 0, [new("P", 1), new("P2O5", 2), new("PO4", 1)]),
        ["K"] = (Element.K, 1, [new("K", 1), new("K2O", 2)]),
        ["Ca"] = (Element.Ca, 2, [new("Ca", 1), new("CaO", 1), new("CaCO3", 1)]),
        ["Mg"] = (Element.Mg, 2, [new("Mg", 1), new("MgO", 1), new("CaCO3", 1)]),
        ["S"] = (Element.S, 2, [new("S", 1), new("SO3", 1), new("SO4", 1)]),
        ["Fe"] = (Element.Fe, 0, [new("Fe", 1)]),
        ["Mn"] = (Element.Mn, 0, [new("Mn", 1)]),
        ["Zn"] = (Element.Zn, 0, [new("Zn", 1)]),
        ["Cu"] = (Element.Cu, 0, [new("Cu", 1)]),
        ["B"] = (Element.B, 0, [new("B", 1), new("B2O3", 2)]),
        ["Mo"] = (Element.Mo, 0, [new("Mo", 1)]),
        ["Si"] = (Element.Si, 0, [new("Si", 1), new("SiO2", 1)]),
        ["Cl"] = (Element.Cl, 1, [new("Cl", 1)]),
        ["Na"] = (Element.Na, 1, [new("Na", 1)]),
        ["Ni"] = (new Element("Ni"), 0, [new("Ni", 1)]),
        ["Co"] = (new Element("Co"), 0, [new("Co", 1)]),
    };

    public static IReadOnlyList<Target> Read(JsonItem? targets, FieldReader fields)
    {
        var read = new List<Target>();
        foreach (var (name, item) in targets is { Kind: JsonKind.Object } ? targets.Members.Select(m => (m.Name, m.Value)) : [])
        {
            // Of a duplicate key the last stands, and the duplicate is reported.
            if (targets![name] == item && ReadOne(name, item, fields) is { } target)
            {
                read.Add(target);
            }
        }

        return read;
    }

    private static Target? ReadOne(string name, JsonItem item, FieldReader fields)
    {
        var key = new Located<string>(name, fields.At(item).Key);
        var place = fields.At(item);
        if (name == "pH")
        {
            var ph = fields.Quantity(item, Due.Ph with { AllowRange = false });
            return ph is not null && Plausibility.Ph(new Located<double>(ph.Number, place), item, fields) is not null
                ? new Target(key, place) { Number = ph.Number, Tolerance = ph.Tolerance }
                : null;
        }

        if (name == "EC")
        {
            var ec = fields.Quantity(item, Due.Conductivity with { AllowRange = false });
            return ec is not null && Plausibility.Positive(new Located<double>(ec.Low, place), v => v, item, fields) is not null
                ? new Target(key, place) { Number = ec.Low, Tolerance = ec.Tolerance }
                : null;
        }

        return Keys.TryGetValue(name, out var meaning) ? ReadElement(key, place, item, meaning, fields) : null;
    }

    private static Target? ReadElement(
        Located<string> key,
        Place place,
        JsonItem item,
        (Element Element, int Charge, ChemicalBasis[] Bases) meaning,
        FieldReader fields)
    {
        if (ReadQuantity(item, meaning, fields, allowRange: false) is not { } quantity)
        {
            return null;
        }

        return new Target(key, place)
        {
            Concentration = Convert(quantity, quantity.Low, meaning),
            Basis = quantity.Basis == meaning.Element.Symbol ? null : quantity.Basis,
            Tolerance = quantity.Tolerance,
        };
    }

    /// <summary>
    /// A concentration or a range of them, as the element, under a key of targets and profiles; null after reporting what cannot be one.
    /// </summary>
    public static Interval<MassConcentration>? ReadConcentration(string key, JsonItem item, FieldReader fields, bool allowRange) =>
        Keys.TryGetValue(key, out var meaning) && ReadQuantity(item, meaning, fields, allowRange) is { } quantity
            ? new Interval<MassConcentration>(Convert(quantity, quantity.Low, meaning), Convert(quantity, quantity.High, meaning))
            : null;

    private static Quantity? ReadQuantity(
        JsonItem item, (Element Element, int Charge, ChemicalBasis[] Bases) meaning, FieldReader fields, bool allowRange)
    {
        var due = Due.Analyte with
        {
            AllowRange = allowRange,
            AllowTolerance = !allowRange,
            Bases = [.. meaning.Bases.Select(b => b.Formula)],
            Accepts = meaning.Charge == 0 ? [Dimension.MassConcentration, Dimension.AmountConcentration] : Due.Analyte.Accepts,
            Examples = allowRange ? ["120..180 mg/L"] : ["150 mg/L", "5 mmol/L"],
            UsualUnits = ["mg/L", "mmol/L"],
        };
        if (fields.Quantity(item, due) is not { } quantity)
        {
            return null;
        }

        if (quantity.Low < 0)
        {
            fields.Implausible(item, $"'{Wording.Shorten(item.Text)}' is less than nothing.", new NamedValue("amount", quantity.Low, ""));
            return null;
        }

        return quantity;
    }

    private static MassConcentration Convert(Quantity quantity, double value, (Element Element, int Charge, ChemicalBasis[] Bases) meaning)
    {
        var basis = meaning.Bases.First(b => b.Formula == (quantity.Basis ?? meaning.Element.Symbol));
        var moles = quantity.Dimension switch
        {
            Dimension.MassConcentration => basis.Convert(new MassConcentration(value)),
            Dimension.AmountConcentration => new AmountConcentration(value) * basis.Count,
            _ => new AmountConcentration(value / meaning.Charge),
        };
        return moles * new MolarMass(AtomicWeights.Of(meaning.Element));
    }
}
