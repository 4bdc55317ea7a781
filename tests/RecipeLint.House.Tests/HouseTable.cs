using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using RecipeLint.House.Tests.Figures;
using RecipeLint.House.Tests.Reading;

namespace RecipeLint.House.Tests;

/// <summary>
/// The figures as a table, before and after. RECIPELINT_UPDATE=1 writes it anew and lowers the limits to what was reached, never raises one.
/// RECIPELINT_HOUSE, together with it, names the folder of an older checkout whose figures become the column "before".
/// </summary>
internal static class HouseTable
{
    private static readonly JsonSerializerOptions _json = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static string Folder => Path.Combine(Checkout.Here.Root, "tests", "RecipeLint.House.Tests", "Tables");

    /// <summary>How high each limited figure may be.</summary>
    public static IReadOnlyDictionary<string, int> Limits() => Read<int>("limits.json");

    public static string Text() => File.ReadAllText(Path.Combine(Folder, "house.md"));

    public static void Update(IReadOnlyList<Figure> now)
    {
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") != "1") return;
        if (Environment.GetEnvironmentVariable("RECIPELINT_HOUSE") is { Length: > 0 } older)
        {
            Write("before.json", HouseFigures.Of(Checkout.At(older)).ToDictionary(f => f.What, Value, StringComparer.Ordinal));
        }

        var old = Limits();
        Write("limits.json", HouseFigures.Aims.ToDictionary(
            a => a.Key, a => Math.Max(a.Value, Math.Min(old.GetValueOrDefault(a.Key, int.MaxValue), now.Single(f => f.What == a.Key).Count)), StringComparer.Ordinal));
        File.WriteAllText(Path.Combine(Folder, "house.md"), Markdown(now, Read<string>("before.json"), Limits()));
        File.WriteAllLines(Path.Combine(Path.GetTempPath(), "house.places.txt"), now.SelectMany(f => f.Places.Select(p => $"{f.What}: {p}")));
    }

    private static string Markdown(IReadOnlyList<Figure> now, IReadOnlyDictionary<string, string> before, IReadOnlyDictionary<string, int> limits)
    {
        var text = new StringBuilder();
        text.Append("# Figures of the house\n\nCounted over the source files under src without generated tables, both columns by the same tests ");
        text.Append("(`RECIPELINT_UPDATE=1`; `RECIPELINT_HOUSE` names the checkout to compare with).\n\n");
        text.Append("| counted | before | now | aim | limit |\n| --- | --- | --- | --- | --- |\n");
        foreach (var figure in now)
        {
            var aim = HouseFigures.Aims.TryGetValue(figure.What, out var a) ? Number(a) : "";
            var limit = limits.TryGetValue(figure.What, out var l) ? Number(l) : "";
            text.Append(CultureInfo.InvariantCulture, $"| {figure.What} | {before.GetValueOrDefault(figure.What, "not counted")} | {Value(figure)} | {aim} | {limit} |\n");
        }

        return text.ToString();
    }

    private static string Value(Figure figure) => figure.Detail.Length == 0 ? Number(figure.Count) : $"{Number(figure.Count)} ({figure.Detail})";

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static Dictionary<string, T> Read<T>(string name)
    {
        var file = Path.Combine(Folder, name);
        return File.Exists(file) ? JsonSerializer.Deserialize<Dictionary<string, T>>(File.ReadAllText(file))! : new Dictionary<string, T>(StringComparer.Ordinal);
    }

    private static void Write<T>(string name, Dictionary<string, T> values) =>
        File.WriteAllText(Path.Combine(Folder, name), JsonSerializer.Serialize(values, _json) + "\n");
}
