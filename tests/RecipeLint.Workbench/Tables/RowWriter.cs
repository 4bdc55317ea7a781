using System.Globalization;
using System.Text;

namespace RecipeLint.Workbench.Tables;

/// <summary>Turns what the data say about components and solids in words into the typed rows the library is built with.</summary>
public static class RowWriter
{
    public const string ComponentPath = "src/RecipeLint.Chemistry/Equilibrium/ComponentRows.generated.cs";
    public const string SolidPath = "src/RecipeLint.Chemistry/Equilibrium/SolidRows.generated.cs";

    private static readonly Dictionary<string, string> Roles = new()
    {
        ["metal"] = "Metal",
        ["trace"] = "TraceMetal",
        ["chelator"] = "Chelator",
        ["ligand"] = "Ligand",
        ["preservative"] = "Preservative",
        ["food"] = "Food",
    };

    /// <summary>Roles a component may have in the data.</summary>
    public static IReadOnlyCollection<string> KnownRoles => Roles.Keys;

    public static string Components(ThermoData d)
    {
        var s = Head("components.json");
        s.Append("/// <summary>The names of the components, one constant each: how facts, recipes and rules speak of them.</summary>\n");
        s.Append("public static class Component\n{\n");
        foreach (var c in d.Components)
            s.Append(CultureInfo.InvariantCulture, $"    /// <summary>{c.Word}: {c.Formula}, charge {c.Charge}.</summary>\n    public const string {c.Id} = {Quoted(c.Name)};\n\n");
        s.Length--;
        s.Append("}\n\ninternal static class ComponentRows\n{\n    public static readonly ComponentRow[] All =\n    [\n");
        foreach (var c in d.Components)
        {
            var roles = c.Roles.Count == 0 ? "ComponentRoles.None" : string.Join(" | ", c.Roles.Select(r => "ComponentRoles." + Roles[r]));
            s.Append(CultureInfo.InvariantCulture, $"        new(Component.{c.Id}, {Quoted(c.Word)}, {roles}, {c.Charge}, {c.FeedCharge}, {Quoted(c.Formula)}, ");
            s.Append(CultureInfo.InvariantCulture, $"{c.MolarMass:R}, {(c.Rank is { } rank ? rank.ToString(CultureInfo.InvariantCulture) : "null")}, {Quoted(c.Nitrogen)}),\n");
        }

        return s.Append("    ];\n}\n").ToString();
    }

    public static string Solids(ThermoData d)
    {
        var several = Calibration.Rows().Where(r => r.At.Count > 1 || r.DH is not null).Select(r => r.Solid).ToHashSet();
        var s = Head("solids.json");
        s.Append("/// <summary>The rules that own the solids, one constant each, as the rows of the solids name them.</summary>\npublic static class SolidOwner\n{\n");
        foreach (var owner in d.Solids.Select(x => x.Habit.Owner).OfType<string>().Distinct().Order(StringComparer.Ordinal))
            s.Append(CultureInfo.InvariantCulture, $"    public const string {Pascal(owner)} = {Quoted(owner)};\n\n");
        s.Length--;
        s.Append("}\n\n");
        s.Append("internal static class SolidRows\n{\n    public static readonly SolidRow[] All =\n    [\n");
        foreach (var x in d.Solids)
        {
            var h = x.Habit;
            var known = x.DH is not null || d.ProductSolids.ContainsKey(x.Name) || several.Contains(x.Name);
            s.Append(CultureInfo.InvariantCulture, $"        new({Quoted(h.Called)}, {Quoted(h.Owner)}, {h.Spread:R}, {Quoted(h.SpreadBecause)}, ");
            s.Append(CultureInfo.InvariantCulture, $"{h.StartsInStorage:R}, {Quoted(h.StartsInStorageSource)}, {Starts(h.StartsWhileMixing)}, ");
            s.Append(CultureInfo.InvariantCulture, $"{Quoted(h.StartsWhileMixingSource)}, {Slowly(x.Name, h.Redissolves)}, {Quoted(h.RedissolvesBecause)}, ");
            s.Append(CultureInfo.InvariantCulture, $"{Quoted(h.RedissolvesSource)}, {Quoted(h.Look)}, {(known ? "true" : "false")}),\n");
        }

        return s.Append("    ];\n}\n").ToString();
    }

    private static StringBuilder Head(string file) => new(
        $"// Written by the workbench from Data/thermo/{file}; do not edit by hand.\n#pragma warning disable\nnamespace RecipeLint.Chemistry.Equilibrium;\n\n");

    private static string Pascal(string kebab) => string.Concat(kebab.Split('-').Select(w => char.ToUpperInvariant(w[0]) + w[1..]));

    private static string Starts(double? value) => value switch
    {
        null => "null",
        double.PositiveInfinity => "double.PositiveInfinity",
        { } v => v.ToString("R", CultureInfo.InvariantCulture),
    };

    private static string Slowly(string solid, string? word) => word switch
    {
        null => "null",
        "slowly" => "true",
        "readily" => "false",
        _ => throw new FormatException($"{solid}: redissolves is '{word}', neither slowly nor readily."),
    };

    private static string Quoted(string? text) => text is null ? "null" : "\"" + text.Replace("\\", "\\\\").Replace("\"", "\\\"") + "\"";
}
