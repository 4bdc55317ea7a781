using System.Text.Json;
using Json.Schema;

namespace RecipeLint.Reports.Tests.Support;

/// <summary>The OASIS schema of SARIF 2.1.0, with formats asserted.</summary>
internal static class SarifSchema
{
    private static readonly Lazy<JsonSchema> _schema = new(() =>
    {
        using var stream = typeof(SarifSchema).Assembly.GetManifestResourceStream("sarif-2.1.0.json")!;
        using var reader = new StreamReader(stream);
        return JsonSchema.FromText(reader.ReadToEnd(), new BuildOptions { SchemaRegistry = new SchemaRegistry() });
    });

    /// <summary>What the schema has against a log, as "pointer: text"; empty when valid.</summary>
    public static IReadOnlyList<string> Problems(string json)
    {
        using var document = JsonDocument.Parse(json);
        var result = _schema.Value.Evaluate(
            document.RootElement,
            new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true });
        return result.IsValid
            ? []
            : [.. (result.Details ?? []).Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))];
    }
}
