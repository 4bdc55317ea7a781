using System.Text;
using System.Text.Json;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Workbench;

/// <summary>
/// The book of every rule there ever was, rules/ledger.json. Shops name rules by id and name in their settings and rely on the level, so
/// none of these changes by accident: a new rule gets a row, a retired one keeps its row and its id.
/// </summary>
public sealed class Ledger
{
    public const string Path = "rules/ledger.json";

    private Ledger(IReadOnlyList<LedgerRow> rows) => Rows = rows;

    public IReadOnlyList<LedgerRow> Rows { get; }

    /// <exception cref="BenchException">The text is no ledger.</exception>
    public static Ledger Parse(string json)
    {
        if (json.Length == 0)
        {
            return new Ledger([]);
        }

        try
        {
            using var document = JsonDocument.Parse(json);
            return new Ledger([.. document.RootElement.GetProperty("rules").EnumerateArray().Select(LedgerRow.Read)]);
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            throw new BenchException($"{Path}: {e.Message}");
        }
    }

    /// <summary>With a row for each rule whose id has none. Rows that stand are never touched.</summary>
    public Ledger With(IEnumerable<RuleDescriptor> rules)
    {
        var known = Rows.Select(r => r.Id).ToHashSet();
        var added = rules.Where(r => !known.Contains(r.Id)).Select(LedgerRow.Of);
        return new Ledger([.. Rows.Concat(added).OrderBy(r => r.Id, StringComparer.Ordinal)]);
    }

    /// <summary>What does not fit, one line each; empty when the rules are those of the ledger.</summary>
    public IReadOnlyList<string> Complaints(IReadOnlyCollection<RuleDescriptor> rules) =>
    [
        .. Rows.GroupBy(r => r.Id).Where(g => g.Count() > 1).Select(g => $"{Path}: the id {g.Key} has two rows; ids are never reused."),
        .. Rows.GroupBy(r => r.Name).Where(g => g.Count() > 1).Select(g => $"{Path}: the name '{g.Key}' has two rows; names are never reused."),
        .. Rows.Zip(Rows.Skip(1)).Where(p => string.CompareOrdinal(p.First.Id, p.Second.Id) > 0).Select(p => $"{Path}: {p.Second.Id} stands after {p.First.Id}."),
        .. rules.SelectMany(Complaints),
        .. Rows.Where(r => r.Retired is null && !rules.Any(d => d.Id == r.Id))
            .Select(r => $"{Path}: {r.Id} '{r.Name}' has no rule any more. Write \"retired\": \"VERSION\" into its row; its id stays taken."),
    ];

    public string ToJson()
    {
        var text = new StringBuilder("{\n  \"note\": \"Every rule there ever was. Ids and names are never used again; a level changes only here and in rule.json together.\",\n  \"rules\": [\n");
        text.AppendJoin(",\n", Rows.Select(r => "    " + r.ToJson()));
        return text.Append("\n  ]\n}\n").ToString();
    }

    private IEnumerable<string> Complaints(RuleDescriptor rule)
    {
        if (Rows.FirstOrDefault(r => r.Id == rule.Id) is not { } row)
        {
            yield return $"{Path}: no row for {rule.Id} '{rule.Name}'. Run 'dotnet run --project tests/RecipeLint.Workbench -- refresh'.";
            yield break;
        }

        if (row.Retired is not null || row.Name != rule.Name)
        {
            yield return $"{Path}: {rule.Id} belongs to '{row.Name}' and cannot be given to '{rule.Name}'. Take the next free id of the family.";
            yield break;
        }

        var now = LedgerRow.Of(rule);
        var changes = new[] { ("level", row.Level, now.Level), ("certainty", row.Certainty, now.Certainty), ("since", row.Since, now.Since), ("preview", row.IsPreview ? "true" : "false", now.IsPreview ? "true" : "false") };
        foreach (var (what, was, becomes) in changes.Where(c => c.Item2 != c.Item3))
        {
            yield return $"{Path}: '{rule.Name}' has {what} '{was}' here and '{becomes}' in its rule.json. "
                + "Shops rely on it: take it back, or change it in both places and say why in the commit.";
        }
    }
}

/// <param name="Retired">The version that no longer has the rule; null while it is there.</param>
/// <param name="IsPreview">Still on trial.</param>
public sealed record LedgerRow(
    string Id, string Name, string Level, string Certainty, string Since, string? Retired = null, bool IsPreview = false)
{
    internal static LedgerRow Of(RuleDescriptor rule) =>
        new(rule.Id, rule.Name, Words.Of(rule.Level), Words.Of(rule.Certainty), rule.Since, IsPreview: rule.IsPreview);

    internal static LedgerRow Read(JsonElement row) => new(
        Text(row, "id"), Text(row, "name"), Text(row, "level"), Text(row, "certainty"), Text(row, "since"),
        row.TryGetProperty("retired", out var version) ? version.GetString() : null,
        row.TryGetProperty("preview", out var preview) && preview.GetBoolean());

    internal string ToJson()
    {
        var retired = (IsPreview ? ", \"preview\": true" : "") + (Retired is null ? "" : $", \"retired\": \"{Retired}\"");
        return $$"""{"id": "{{Id}}", "name": "{{Name}}", "level": "{{Level}}", "certainty": "{{Certainty}}", "since": "{{Since}}"{{retired}}}""";
    }

    private static string Text(JsonElement row, string field) =>
        row.TryGetProperty(field, out var value) && value.GetString() is { } text
            ? text
            : throw new BenchException($"{Ledger.Path}: the row {row.GetRawText()} has no '{field}'.");
}
