using System.Globalization;
using System.Text;
using System.Text.Json;

namespace RecipeLint.Workbench.Tables;

/// <summary>Turns the readable data files into the static tables of RecipeLint.Chemistry.Physical.</summary>
internal static class PhysicalTables
{
    internal static string Constants()
    {
        var water = TableFolder.Physical("water.json");
        var volumes = TableFolder.Physical("volumes.json").GetProperty("constants");
        var c = water.GetProperty("coefficients");
        var text = Open("water.json and volumes.json", "internal static class PhysicalConstants");
        text.Append("    internal static ReadOnlySpan<double> WaterDensity => [")
            .AppendJoin(", ", Enumerable.Range(0, 6).Select(i => Number(c.GetProperty($"c{i}")))).Append("];\n");
        Constant("WaterDensityDivisor", c.GetProperty("d"));
        Constant("WaterGramsPerMol", water.GetProperty("molarMass_g_mol").GetProperty("value"));
        Constant("WaterHeatCapacity", water.GetProperty("heatCapacity_J_g_K").GetProperty("value"));
        Constant("VolumeDebyeHueckelSlope", volumes.GetProperty("debyeHueckelSlope").GetProperty("value"));
        Constant("VolumeDriftDamping", volumes.GetProperty("driftDamping").GetProperty("value"));
        Constant("MassRuleMlPerGram", volumes.GetProperty("massRule").GetProperty("value"));
        return text.Append("}\n").ToString();

        void Constant(string name, JsonElement value) => text.Append(CultureInfo.InvariantCulture, $"    internal const double {name} = {Number(value)};\n");
    }

    internal static string Volumes()
    {
        var data = TableFolder.Physical("volumes.json");
        var constituents = Sorted(data.GetProperty("constituents"), "species");
        var complexes = Sorted(data.GetProperty("complexes"), "species");
        var index = constituents.Select((e, i) => (Name: e.GetProperty("species").GetString()!, i)).ToDictionary(p => p.Name, p => p.i, StringComparer.Ordinal);
        var text = Open("volumes.json", "internal static partial class VolumeTable");
        text.Append("    internal static readonly Constituent[] Constituents =\n    [\n");
        foreach (var e in constituents)
        {
            text.Append("        new(").AppendJoin(", ",
                Quote(e, "species"), Number(e.GetProperty("charge")), Number(e.GetProperty("g_mol")), Number(e.GetProperty("v20_cm3_mol")),
                Flag(e, "debyeHueckel", false), Optional(e, "b"), Optional(e, "bUpToI"), Optional(e, "slope"), Optional(e, "slopeUpTo"),
                Drift(e, 0), Drift(e, 1), Flag(e, "measured", true)).Append("),\n");
        }

        text.Append("    ];\n\n    internal static readonly string[] ComplexNames =\n    [\n");
        foreach (var e in complexes)
            text.Append("        ").Append(Quote(e, "species")).Append(",\n");
        text.Append("    ];\n\n    internal static ReadOnlySpan<short> PartStart =>\n    [\n        0,\n");
        var at = 0;
        foreach (var e in complexes)
            text.Append(CultureInfo.InvariantCulture, $"        {at += 2 * e.GetProperty("parts").EnumerateObject().Count()},\n");
        text.Append("    ];\n\n    internal static ReadOnlySpan<short> Parts =>\n    [\n");
        foreach (var e in complexes)
        {
            text.Append("        ").AppendJoin(" ", e.GetProperty("parts").EnumerateObject()
                .Select(p => string.Create(CultureInfo.InvariantCulture, $"{index[p.Name]}, {p.Value.GetInt32()},"))).Append('\n');
        }

        return text.Append("    ];\n}\n").ToString();
    }

    internal static string Conductivity()
    {
        var data = TableFolder.Physical("conductivity.json");
        JsonElement[] ions = [.. data.GetProperty("ions").EnumerateArray()];
        var curve = ions.Select((e, i) => (Name: e.GetProperty("ion").GetString()!, i)).ToDictionary(p => p.Name, p => p.i, StringComparer.Ordinal);
        var text = Open("conductivity.json", "internal static class ConductivityTable");
        List("IonCurve", "Curves", ions, e => [Quote(e, "ion"), Number(e.GetProperty("lambda25")), .. Numbers(e, "shape"), .. Numbers(e, "A"), Number(e.GetProperty("B"))]);
        List("IonAnalog", "Analogs", data.GetProperty("analogs").EnumerateArray(), e => [Quote(e, "ion"), Number(e.GetProperty("lambda25")), Like(e)]);
        List("PairConductivity", "SulfatePairs", data.GetProperty("sulfatePairs").EnumerateArray(), e => [Quote(e, "pair"), Number(e.GetProperty("lambda"))]);
        List("ChargeConductivity", "ByCharge", data.GetProperty("byCharge").EnumerateArray(), e => [Number(e.GetProperty("charge")), Number(e.GetProperty("lambda")), Like(e)]);
        text.Length--;
        return text.Append("}\n").ToString();

        string Like(JsonElement e) => curve[e.GetProperty("like").GetString()!].ToString(CultureInfo.InvariantCulture);

        void List(string type, string name, IEnumerable<JsonElement> rows, Func<JsonElement, string[]> cells)
        {
            text.Append(CultureInfo.InvariantCulture, $"    internal static readonly {type}[] {name} =\n    [\n");
            foreach (var row in rows)
                text.Append("        new(").AppendJoin(", ", cells(row)).Append("),\n");
            text.Append("    ];\n\n");
        }
    }

    internal static string Strengths()
    {
        var text = Open("acid-and-base-density.json", "internal static class StrengthTable");
        text.Append("    internal static readonly AcidStrength[] All =\n    [\n");
        foreach (var e in TableFolder.Physical("acid-and-base-density.json").GetProperty("substances").EnumerateArray())
        {
            text.Append(CultureInfo.InvariantCulture, $"        new({Quote(e, "formula")}, {Quote(e, "name")}, {Number(e.GetProperty("g_mol"))}, ");
            if (e.TryGetProperty("temperature", out var t))
                text.Append("new(").AppendJoin(", ", [.. Numbers(t, "c"), .. Numbers(t, "t_C"), Number(t.GetProperty("massPercentUpTo"))]).Append("),\n        [\n");
            else
                text.Append("null,\n        [\n");
            foreach (var rows in e.GetProperty("rows").EnumerateArray().Chunk(8))
                text.Append("            ").AppendJoin(" ", rows.Select(r => $"{Number(r[0])}, {Number(r[1])},")).Append('\n');
            text.Append("        ]),\n");
        }

        return text.Append("    ];\n}\n").ToString();
    }

    internal static string Heats()
    {
        var data = TableFolder.Physical("heats-of-solution.json");
        var text = Open("heats-of-solution.json", "internal static class HeatTable");
        text.Append("    internal static readonly HeatOfSolution[] All =\n    [\n");
        foreach (var e in data.GetProperty("heats").EnumerateArray())
        {
            var sources = data.GetProperty("sources");
            var source = sources.GetProperty(e.GetProperty("source").GetString()!).GetString()!;
            if (e.TryGetProperty("more", out _))
                source += "; " + sources.GetProperty("more").GetString();
            text.Append("        new(").AppendJoin(", ",
                Quote(e, "formula"), Number(e.GetProperty("g_mol")), Number(e.GetProperty("kJ_mol")), Optional(e, "more"),
                CrystalWater(e.GetProperty("formula").GetString()!).ToString(CultureInfo.InvariantCulture),
                Literal(source), e.GetProperty("confidence").GetString() == "recalled" ? "true" : "false").Append("),\n");
        }

        return text.Append("    ];\n}\n").ToString();
    }

    private static int CrystalWater(string formula)
    {
        var dot = formula.LastIndexOf('.');
        if (dot < 0)
            return 0;
        var tail = formula[(dot + 1)..];
        if (!tail.EndsWith("H2O", StringComparison.Ordinal))
            throw new BenchException($"{formula}: no crystal water after the dot.");
        return tail.Length == 3 ? 1 : int.Parse(tail[..^3], CultureInfo.InvariantCulture);
    }

    private static StringBuilder Open(string from, string declaration) => new StringBuilder()
        .Append(CultureInfo.InvariantCulture, $"// <auto-generated>Made from Data/physical/{from} by the workbench. Edit the data, not this file.</auto-generated>\n")
        .Append("#nullable enable\nnamespace RecipeLint.Chemistry.Physical;\n\n").Append(declaration).Append("\n{\n");

    private static JsonElement[] Sorted(JsonElement rows, string key) =>
        [.. rows.EnumerateArray().OrderBy(e => e.GetProperty(key).GetString(), StringComparer.Ordinal)];

    private static string Number(JsonElement e) => e.GetDouble().ToString("R", CultureInfo.InvariantCulture);

    private static string[] Numbers(JsonElement e, string key) => [.. e.GetProperty(key).EnumerateArray().Select(Number)];

    private static string Optional(JsonElement e, string key) => e.TryGetProperty(key, out var value) ? Number(value) : "0";

    private static string Drift(JsonElement e, int index) => e.TryGetProperty("drift", out var value) ? Number(value[index]) : "0";

    private static string Flag(JsonElement e, string key, bool otherwise) => (e.TryGetProperty(key, out var value) ? value.GetBoolean() : otherwise) ? "true" : "false";

    private static string Quote(JsonElement e, string key) => Literal(e.GetProperty(key).GetString()!);

    private static string Literal(string text) => "\"" + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";
}
