using System.Globalization;
using System.Text.Json;

namespace RecipeLint.Workbench.Tables;

/// <summary>The constants as written in src/RecipeLint.Chemistry/Data/thermo, read for the table generator and the data checks.</summary>
public sealed class ThermoData
{
    private ThermoData(string folder)
    {
        Sources = Read(folder, "sources.json").GetProperty("sources").EnumerateObject()
            .ToDictionary(p => p.Name, p => p.Value.GetString()!);
        Components = [.. Items(folder, "components.json", "components").Select(e => new Component(
            Text(e, "name"), Text(e, "id"), Text(e, "word"), [.. e.GetProperty("roles").EnumerateArray().Select(r => r.GetString()!)],
            e.GetProperty("charge").GetInt32(), e.GetProperty("feedCharge").GetInt32(), Text(e, "formula"), e.GetProperty("molarMass").GetDouble(),
            Number(e, "rank") is { } rank ? (int)rank : null, Optional(e, "nitrogen")))];
        AllSpecies = [.. Items(folder, "species.json", "species").Select(e => ReadSpecies(e, productOnly: false)),
            .. Items(folder, "product.json", "added").Select(e => ReadSpecies(e, productOnly: true))];
        Doubts = [.. Items(folder, "species.json", "doubts").Select(e => (Optional(e, "ref"), Optional(e, "status"), e.GetProperty("logK").GetDouble()))];
        Solids = [.. Items(folder, "solids.json", "solids").Select(e => new SolidRow(
            Text(e, "name"), Text(e, "formula"), Reaction.Parse(Text(e, "to")), Number(e, "logK"), Number(e, "dH"), Text(e, "source"),
            Optional(e, "ref"), Text(e, "status"), Text(e, "role"), Text(e, "because"), ReadHabit(e)))];
        Calibrations = [.. Items(folder, "reference-calibration.json", "calibrations").Select(e => new Calibration(
            Text(e, "solid"), Numbers(e, "plain"), Numbers(e, "extended")))];
        var sit = Read(folder, "sit.json");
        Plain = [.. sit.GetProperty("plain").EnumerateArray().Select(ReadPair)];
        Extended = [.. sit.GetProperty("extended").EnumerateArray().Select(ReadPair)];
        DebyeHueckel = [.. Items(folder, "water.json", "debyeHuckelA").Select(e => (e.GetProperty("t").GetDouble(), e.GetProperty("A").GetDouble()))];
        var product = Read(folder, "product.json");
        Steps = product.GetProperty("steps").EnumerateArray().ToDictionary(e => Text(e, "id"), e => new Step(
            e.TryGetProperty("analytic", out _) ? Numbers(e, "analytic") : null,
            Number(e, "pK25"), Number(e, "dH"), Number(e, "dCp"), Text(e, "source")));
        ProductSpecies = product.GetProperty("species").EnumerateArray().ToDictionary(e => Text(e, "name"), e => Text(e, "is"));
        ProductSolids = product.GetProperty("solids").EnumerateArray()
            .ToDictionary(e => Text(e, "name"), e => new ProductSolid(
                e.TryGetProperty("analytic", out _) ? Numbers(e, "analytic") : null, Optional(e, "is"), Text(e, "source")));
        ProductWithout = product.GetProperty("without").EnumerateArray().ToDictionary(e => Text(e, "name"), e => (Text(e, "because"), Text(e, "source")));
        var gas = product.GetProperty("gas")[0];
        Gas = new GasRow(Text(gas, "name"), Text(gas, "is"), gas.GetProperty("referenceLogK").GetDouble(),
            gas.GetProperty("referenceDH").GetDouble(), Text(gas, "source"));
        ProductPairs = [.. product.GetProperty("pairs").EnumerateArray().Select(ReadPair)];
    }

    public Dictionary<string, string> Sources { get; }
    public IReadOnlyList<Component> Components { get; }
    public IReadOnlyList<Species> AllSpecies { get; }
    public IReadOnlyList<(string? Ref, string? Status, double LogK)> Doubts { get; }
    public IReadOnlyList<SolidRow> Solids { get; }
    public IReadOnlyList<Calibration> Calibrations { get; }
    public IReadOnlyList<Pair> Plain { get; }
    public IReadOnlyList<Pair> Extended { get; }
    public IReadOnlyList<Pair> ProductPairs { get; }
    public IReadOnlyList<(double T, double A)> DebyeHueckel { get; }
    public Dictionary<string, Step> Steps { get; }
    public Dictionary<string, string> ProductSpecies { get; }
    public Dictionary<string, ProductSolid> ProductSolids { get; }
    public Dictionary<string, (string Because, string Source)> ProductWithout { get; }
    public GasRow Gas { get; }

    /// <summary>How far log10 K of a species may be off.</summary>
    public double DoubtOf(Species species) =>
        Doubts.First(d => d.Ref is { } reference ? reference == species.Ref : d.Status == species.Status).LogK;

    public IEnumerable<Species> UsedSpecies => AllSpecies.Where(s => s.Use);

    public static ThermoData Load() => new(Path.Combine(TableFolder.Root, "src", "RecipeLint.Chemistry", "Data", "thermo"));

    private static Species ReadSpecies(JsonElement e, bool productOnly) => new(
        Text(e, "name"), e.GetProperty("charge").GetInt32(), Reaction.Parse(Text(e, "from")), e.GetProperty("logK").GetDouble(), Number(e, "dH"),
        Number(e, "logK_I0.1"), Text(e, "source"), Optional(e, "ref"), Text(e, "status"),
        !e.TryGetProperty("use", out var use) || use.GetBoolean(), productOnly);

    private static Habit ReadHabit(JsonElement e) => new(
        Optional(e, "called"), Optional(e, "owner"), Number(e, "spread") ?? 0, Optional(e, "spreadBecause"),
        Number(e, "startsInStorage") ?? 0, Optional(e, "startsInStorageSource"), Starts(e), Optional(e, "startsWhileMixingSource"),
        Optional(e, "redissolves"), Optional(e, "redissolvesBecause"), Optional(e, "redissolvesSource"), Optional(e, "look"));

    private static double? Starts(JsonElement e) => !e.TryGetProperty("startsWhileMixing", out var v) ? null
        : v.ValueKind == JsonValueKind.Number ? v.GetDouble()
        : v.GetString() == "never" ? double.PositiveInfinity
        : throw new FormatException($"{Text(e, "name")}: startsWhileMixing is neither a number nor \"never\".");

    private static JsonElement Read(string folder, string file)
    {
        using var doc = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, file)));
        return doc.RootElement.Clone();
    }

    private static JsonElement.ArrayEnumerator Items(string folder, string file, string name) =>
        Read(folder, file).GetProperty(name).EnumerateArray();

    private static Pair ReadPair(JsonElement e) => new(Text(e, "i"), Text(e, "j"), e.GetProperty("eps").GetDouble(),
        Number(e, "epsLogI") ?? 0, Number(e, "epsT") ?? 0, Text(e, "source"), Text(e, "status"));

    private static string Text(JsonElement e, string name) => e.GetProperty(name).GetString()!;
    private static string? Optional(JsonElement e, string name) => e.TryGetProperty(name, out var v) ? v.GetString() : null;
    private static double? Number(JsonElement e, string name) => e.TryGetProperty(name, out var v) ? v.GetDouble() : null;
    private static double[] Numbers(JsonElement e, string name) => [.. e.GetProperty(name).EnumerateArray().Select(v => v.GetDouble())];

    public sealed record Component(string Name, string Id, string Word, IReadOnlyList<string> Roles, int Charge, int FeedCharge, string Formula,
        double MolarMass, int? Rank, string? Nitrogen);

    public sealed record Habit(string? Called, string? Owner, double Spread, string? SpreadBecause, double StartsInStorage, string? StartsInStorageSource,
        double? StartsWhileMixing, string? StartsWhileMixingSource, string? Redissolves, string? RedissolvesBecause, string? RedissolvesSource, string? Look);

    public sealed record Species(string Name, int Charge, Reaction Reaction, double LogK, double? DH, double? LogKAtPointOne,
        string Source, string? Ref, string Status, bool Use, bool ProductOnly);
    public sealed record SolidRow(string Name, string Formula, Reaction Reaction, double? LogK, double? DH, string Source, string? Ref,
        string Status, string Role, string Because, Habit Habit);
    public sealed record Calibration(string Solid, double[] Plain, double[] Extended);
    public sealed record Pair(string I, string J, double Eps, double EpsLogI, double EpsT, string Source, string Status);
    public sealed record Step(double[]? Analytic, double? PK25, double? DH, double? DCp, string Source);
    public sealed record ProductSolid(double[]? Analytic, string? Is, string Source);
    public sealed record GasRow(string Name, string Is, double ReferenceLogK, double ReferenceDH, string Source);
}

/// <summary>A reaction written as "Ca+2 + H2PO4- - H+ + 2 H2O": terms separated by a sign between blanks, an optional number before a name.</summary>
public sealed record Reaction(IReadOnlyList<(string Component, double Coefficient)> Terms)
{
    public static Reaction Parse(string text)
    {
        var terms = new List<(string, double)>();
        double sign = 1, factor = 1;
        foreach (var token in text.Split(' '))
        {
            if (token == "+") (sign, factor) = (1, 1);
            else if (token == "-") (sign, factor) = (-1, 1);
            else if (double.TryParse(token, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var n)) factor = n;
            else terms.Add((token, sign * factor));
        }
        return new Reaction(terms);
    }
}
