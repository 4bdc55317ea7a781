using System.Text.Json;

namespace RecipeLint.Rules.Tests.Folders;

/// <summary>A finding that a failing example must raise. Level and line belong to the rule under test; others state them only where it helps.</summary>
public sealed record ExpectedFinding(string Rule, string File, string IdPath, int Line, string Level);

/// <summary>Findings of other rules the example raises as well, and why. Without file or path every finding of that rule is meant.</summary>
public sealed record AlsoExpected(string Rule, string? File, string? IdPath, string Reason)
{
    public bool Covers(string rule, string file, string idPath) =>
        Rule == rule && (File is null || File == file) && (IdPath is null || IdPath == idPath);
}

/// <summary>What stands in the expected.json of a failing example.</summary>
public sealed record Expectation(IReadOnlyList<ExpectedFinding> Findings, IReadOnlyList<AlsoExpected> Also)
{
    public static Expectation Read(string path)
    {
        using var json = JsonDocument.Parse(File.ReadAllBytes(path));
        return new Expectation(
            [.. json.RootElement.GetProperty("findings").EnumerateArray().Select(ReadFinding)],
            [.. json.RootElement.GetProperty("also").EnumerateArray().Select(ReadAlso)]);
    }

    /// <summary>The file as it is kept in the repository.</summary>
    public string Write()
    {
        static string Text(string text) => JsonSerializer.Serialize(text, RelaxedOptions);
        var findings = Findings.Select(f =>
            FormattableString.Invariant($"{{\"rule\": {Text(f.Rule)}, \"file\": {Text(f.File)}, \"idPath\": {Text(f.IdPath)}, \"line\": {f.Line}, \"level\": {Text(f.Level)}}}"));
        var also = Also.Select(a =>
            "{" + string.Join(", ", new[] { ("rule", a.Rule), ("file", a.File), ("idPath", a.IdPath), ("reason", a.Reason) }
                .Where(p => p.Item2 is not null)
                .Select(p => $"\"{p.Item1}\": {Text(p.Item2!)}")) + "}");
        return $"{{\n  \"findings\": [{Lines(findings)}],\n  \"also\": [{Lines(also)}]\n}}\n";
    }

    private static readonly JsonSerializerOptions RelaxedOptions = new()
    {
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static string Lines(IEnumerable<string> items)
    {
        var list = items.ToList();
        return list.Count == 0 ? "" : "\n    " + string.Join(",\n    ", list) + "\n  ";
    }

    private static ExpectedFinding ReadFinding(JsonElement f) =>
        new(
            f.GetProperty("rule").GetString()!,
            f.GetProperty("file").GetString()!,
            f.GetProperty("idPath").GetString()!,
            f.GetProperty("line").GetInt32(),
            f.GetProperty("level").GetString()!);

    private static AlsoExpected ReadAlso(JsonElement a) =>
        new(a.GetProperty("rule").GetString()!, Optional(a, "file"), Optional(a, "idPath"), a.GetProperty("reason").GetString()!);

    private static string? Optional(JsonElement a, string name) => a.TryGetProperty(name, out var value) ? value.GetString() : null;
}
