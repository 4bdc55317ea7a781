using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Evaluation = Json.Schema;

namespace RecipeLint.Recipes.Schema;

/// <summary>One failed keyword: where in the document, and the way through the schema that led to it.</summary>
internal readonly record struct SchemaFailure(string Pointer, string EvaluationPath, string Keyword);

/// <summary>
/// The only place that speaks to the schema library, so that nothing else pays for loading it. Each schema is built once, in a
/// registry of its own that fetches nothing.
/// </summary>
internal sealed partial class SchemaEvaluator
{
    private readonly Evaluation.JsonSchema _schema;

    /// <param name="text">One of our own schemas.</param>
    public SchemaEvaluator(string text)
    {
        SchemaLibrary.MakeReady();
        var registry = new Evaluation.SchemaRegistry { Fetch = (_, _) => null };
        _schema = Evaluation.JsonSchema.FromText(WithTrueEnds(text), new Evaluation.BuildOptions { SchemaRegistry = registry });
    }

    /// <summary>Everything that failed, in the order of evaluation; empty when the document fits.</summary>
    public IReadOnlyList<SchemaFailure> Evaluate(JsonElement document)
    {
        // A yes or no is much cheaper than the list of reasons, and yes is the usual answer.
        if (_schema.Evaluate(document, Options(Evaluation.OutputFormat.Flag)).IsValid)
        {
            return [];
        }

        var results = _schema.Evaluate(document, Options(Evaluation.OutputFormat.List));
        var failures = new List<SchemaFailure>();
        foreach (var result in (results.Details ?? []).Prepend(results))
        {
            foreach (var keyword in result.Errors?.Keys ?? Enumerable.Empty<string>())
            {
                failures.Add(new SchemaFailure(result.InstanceLocation.ToString(), result.EvaluationPath.ToString(), keyword));
            }
        }

        return failures;
    }

    /// <summary>In JSON Schema '$' is the end of the text; that of the runtime is also found before a last line break.</summary>
    private static string WithTrueEnds(string text) => PatternEnd().Replace(text, "$1$$(?!\\\\n)\"");

    [GeneratedRegex(@"(""pattern"": ""[^""\n]*)\$""")]
    private static partial Regex PatternEnd();

    private static Evaluation.EvaluationOptions Options(Evaluation.OutputFormat format) =>
        new() { OutputFormat = format, Culture = CultureInfo.InvariantCulture };
}
