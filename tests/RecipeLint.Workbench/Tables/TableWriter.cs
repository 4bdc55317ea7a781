using System.Globalization;
using System.Text;

namespace RecipeLint.Workbench.Tables;

/// <summary>Turns the constants into the typed tables the library is built with.</summary>
public static class TableWriter
{
    public const string Path = "src/RecipeLint.Chemistry/Equilibrium/ThermoTables.generated.cs";
    private const double R = 8.314462618, Ln10 = 2.302585092994046, T0 = 298.15;

    public static string Write(ThermoData d)
    {
        var s = new StringBuilder();
        s.Append("// Written by the workbench from the files in Data/thermo; do not edit by hand.\n");
        s.Append("#pragma warning disable\nnamespace RecipeLint.Chemistry.Equilibrium;\n\ninternal static class ThermoTables\n{\n");
        var component = d.Components.Select((c, i) => (c.Name, i)).ToDictionary(p => p.Name, p => p.i);
        var species = d.UsedSpecies.ToList();
        var ion = new Dictionary<string, int>(component);
        for (var i = 0; i < species.Count; i++) ion.Add(species[i].Name, component.Count + i);
        Strings(s, "ComponentNames", d.Components.Select(c => c.Name));
        Numbers(s, "sbyte", "ComponentCharges", d.Components.Select(c => (double)c.Charge));
        Numbers(s, "double", "ComponentMolarMass", d.Components.Select(c => c.MolarMass));
        Strings(s, "SpeciesNames", species.Select(x => x.Name));
        Numbers(s, "sbyte", "SpeciesCharges", species.Select(x => (double)x.Charge));
        Reactions(s, "Species", [.. species.Select(x => x.Reaction)], component);
        Numbers(s, "double", "SpeciesReference", species.SelectMany(x => x.ProductOnly ? Nothing : VanTHoff(x.LogK, x.DH ?? 0, 0)));
        Numbers(s, "double", "SpeciesProduct", species.SelectMany(x => d.ProductWithout.ContainsKey(x.Name) ? Nothing :
            d.ProductSpecies.TryGetValue(x.Name, out var text) ? Sum(text, d) : VanTHoff(x.LogK, x.DH ?? 0, 0)));
        Numbers(s, "double", "SpeciesDoubt", species.Select(d.DoubtOf));
        Strings(s, "SpeciesSources", species.Select(x => Citation(d, x.Source, x.Ref, x.Status)));
        Strings(s, "SolidNames", d.Solids.Select(x => x.Name));
        Strings(s, "SolidFormulas", d.Solids.Select(x => x.Formula));
        Numbers(s, "byte", "SolidRoles", d.Solids.Select(x => (double)Array.IndexOf(Roles, x.Role)));
        Strings(s, "SolidReasons", d.Solids.Select(x => x.Because));
        Strings(s, "SolidSources", d.Solids.Select(x => Citation(d, x.Source, x.Ref, x.Status)));
        Reactions(s, "Solid", [.. d.Solids.Select(x => x.Reaction)], component);
        Numbers(s, "double", "SolidReference", d.Solids.SelectMany(x => x.LogK is { } k ? VanTHoff(k, x.DH ?? 0, 0) : Nothing));
        Numbers(s, "double", "SolidProduct", d.Solids.SelectMany(x => d.ProductSolids.TryGetValue(x.Name, out var a) ? a.Analytic ?? Sum(a.Is!, d)
            : x.LogK is { } k ? VanTHoff(k, x.DH ?? 0, 0) : Nothing));
        var cal = d.Calibrations.ToDictionary(c => c.Solid);
        Numbers(s, "double", "SolidReferencePlain", d.Solids.SelectMany(x => cal.TryGetValue(x.Name, out var c)
            ? VanTHoff(c.Plain[0], c.Plain[1], c.Plain[2]) : Nothing));
        Numbers(s, "double", "SolidReferenceExtended", d.Solids.SelectMany(x => cal.TryGetValue(x.Name, out var c)
            ? VanTHoff(c.Extended[0], c.Extended[1], c.Extended[2]) : Nothing));
        Numbers(s, "double", "GasReference", VanTHoff(d.Gas.ReferenceLogK, d.Gas.ReferenceDH, 0));
        Numbers(s, "double", "GasProduct", Sum(d.Gas.Is, d));
        Pairs(s, "Plain", [.. d.Plain], ion);
        var extended = Merge(d.Plain, d.Extended);
        Pairs(s, "Extended", extended, ion);
        var product = Merge(extended, d.ProductPairs);
        Pairs(s, "Product", product, ion);
        Numbers(s, "double", "ProductPairEpsilonPerKelvin", product.Select(p => p.EpsT));
        Numbers(s, "double", "DebyeHueckelCelsius", d.DebyeHueckel.Select(p => p.T));
        Numbers(s, "double", "DebyeHueckelA", d.DebyeHueckel.Select(p => p.A));
        s.Append("}\n");
        return s.ToString();
    }

    public static readonly string[] Roles = ["readily", "slowly", "soluble", "excluded", "weak"];
    private static readonly double[] Nothing = [double.NaN, 0, 0, 0, 0, 0];

    /// <summary>log10 K = a + b T + c/T + d log10 T + e/T² + f T² from the value, enthalpy (kJ/mol) and heat capacity (kJ/mol/K) at 25 °C.</summary>
    public static double[] VanTHoff(double logK, double dH, double dCp)
    {
        if (dH == 0 && dCp == 0) return [logK, 0, 0, 0, 0, 0];
        double h = dH * 1000 / (R * Ln10), c = dCp * 1000 / (R * Ln10);
        return [logK + h / T0 - c * (1 + Math.Log(T0)), 0, -h + c * T0, c * Ln10, 0, 0];
    }

    public static double[] Sum(string text, ThermoData d)
    {
        var total = new double[6];
        double sign = 1;
        var id = "";
        foreach (var token in text.Split(' ').Append("+"))
        {
            if (token is not ("+" or "-")) { id = id.Length == 0 ? token : id + " " + token; continue; }
            if (id.Length > 0)
            {
                var step = d.Steps[id];
                var a = step.Analytic ?? VanTHoff(-step.PK25!.Value, step.DH!.Value, step.DCp!.Value);
                for (var i = 0; i < 6; i++) total[i] += sign * a[i];
                id = "";
            }
            sign = token == "-" ? -1 : 1;
        }
        return total;
    }

    private static List<ThermoData.Pair> Merge(IEnumerable<ThermoData.Pair> first, IEnumerable<ThermoData.Pair> then)
    {
        static string Key(ThermoData.Pair p) => string.CompareOrdinal(p.I, p.J) < 0 ? p.I + "|" + p.J : p.J + "|" + p.I;
        var result = first.ToList();
        foreach (var p in then)
        {
            var at = result.FindIndex(q => Key(q) == Key(p));
            if (at < 0) result.Add(p); else result[at] = p;
        }
        return result;
    }

    private static string Citation(ThermoData d, string source, string? reference, string status) =>
        d.Sources[source] + (reference is null ? "" : " [" + reference + "]") + (status is "database" or "paper" ? "" : " (" + status + ")");

    private static void Pairs(StringBuilder s, string name, List<ThermoData.Pair> pairs, Dictionary<string, int> ion)
    {
        Numbers(s, "ushort", name + "PairFirst", pairs.Select(p => (double)ion[p.I]));
        Numbers(s, "ushort", name + "PairSecond", pairs.Select(p => (double)ion[p.J]));
        Numbers(s, "double", name + "PairEpsilon", pairs.Select(p => p.Eps));
        Numbers(s, "double", name + "PairEpsilonLogI", pairs.Select(p => p.EpsLogI));
    }

    private static void Reactions(StringBuilder s, string name, List<Reaction> reactions, Dictionary<string, int> component)
    {
        var start = new List<double> { 0 };
        foreach (var r in reactions) start.Add(start[^1] + r.Terms.Count);
        Numbers(s, "ushort", name + "Start", start);
        Numbers(s, "byte", name + "Terms", reactions.SelectMany(r => r.Terms).Select(t => (double)component[t.Component]));
        Numbers(s, "double", name + "Coefficients", reactions.SelectMany(r => r.Terms).Select(t => t.Coefficient));
    }

    private static void Strings(StringBuilder s, string name, IEnumerable<string> values)
    {
        s.Append(CultureInfo.InvariantCulture, $"    public static readonly string[] {name} =\n    [\n");
        foreach (var v in values) s.Append("        \"").Append(v.Replace("\\", "\\\\").Replace("\"", "\\\"")).Append("\",\n");
        s.Append("    ];\n\n");
    }

    private static void Numbers(StringBuilder s, string type, string name, IEnumerable<double> values)
    {
        s.Append(CultureInfo.InvariantCulture, $"    public static ReadOnlySpan<{type}> {name} =>\n    [");
        var n = 0;
        foreach (var v in values)
            s.Append(n++ % 12 == 0 ? "\n        " : " ").Append(double.IsNaN(v) ? "double.NaN" : v.ToString("R", CultureInfo.InvariantCulture)).Append(',');
        s.Append("\n    ];\n\n");
    }
}
