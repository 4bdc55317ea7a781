using System.Text.Json;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;
using Evaluation = Json.Schema;

namespace RecipeLint.Recipes.Schema;

/// <summary>Something in a schema of the shop's own that cannot be used.</summary>
internal sealed record SchemaFault(JsonItem At, string Message, IReadOnlyList<string> Suggestions);

/// <summary>
/// A JSON Schema (draft 2020-12) that somebody else has written. It may use what can be evaluated in bounded time: keywords of a list,
/// references to its own definitions that do not run in circles, and patterns without looking around and back references, which are matched
/// in time that grows with the text only.
/// </summary>
public sealed class HouseSchema
{
    /// <summary>Schemas inside the schema, each counted as often as it is referred to.</summary>
    public const int MostParts = 10_000;

    /// <summary>Parts of the schema times values of the facts; beyond it a rule is not evaluated (some seconds at the worst).</summary>
    public const long MostWork = 10_000_000;

    /// <summary>In characters.</summary>
    public const int LongestPattern = 200;

    private readonly Evaluation.JsonSchema _schema;

    private HouseSchema(Evaluation.JsonSchema schema, int parts)
    {
        _schema = schema;
        Parts = parts;
    }

    /// <summary>How many schemas there are inside it, at least 1.</summary>
    public int Parts { get; }

    /// <summary>Null where something in it cannot be used; every such thing is listed.</summary>
    internal static HouseSchema? Read(SourceFile source, JsonItem item, out IReadOnlyList<SchemaFault> faults)
    {
        var check = new HouseSchemaCheck(item);
        var parts = check.Count();
        faults = check.Faults;
        if (faults.Count > 0)
        {
            return null;
        }

        try
        {
            SchemaLibrary.MakeReady();
            using var json = JsonDocument.Parse(source.DecodableBytes.Slice(item.Span.Start, item.Span.Length));
            var registry = new Evaluation.SchemaRegistry { Fetch = (_, _) => null };
            var options = new Evaluation.BuildOptions { SchemaRegistry = registry, Dialect = HouseDialect.Only };
            return new HouseSchema(Evaluation.JsonSchema.Build(json.RootElement.Clone(), options), parts);
        }
        catch (Exception e) when (e is Evaluation.JsonSchemaException or ArgumentException or InvalidOperationException
            or FormatException or JsonException)
        {
            faults = [new SchemaFault(item, $"This is no JSON Schema that can be used: {Wording.Shorten(e.Message)}.", [])];
            return null;
        }
    }

    /// <summary>Pointers of the values that do not fit, each once, in the order of evaluation; empty where all fit.</summary>
    /// <param name="values">How many values the document holds.</param>
    /// <exception cref="HouseSchemaTooMuchException">It would take too much work.</exception>
    public IReadOnlyList<JsonPointer> Misfits(JsonElement document, int values)
    {
        if ((long)Parts * values > MostWork)
        {
            throw new HouseSchemaTooMuchException();
        }

        var options = new Evaluation.EvaluationOptions
        {
            OutputFormat = Evaluation.OutputFormat.Flag,
            Culture = System.Globalization.CultureInfo.InvariantCulture,
        };
        if (_schema.Evaluate(document, options).IsValid)
        {
            return [];
        }

        options.OutputFormat = Evaluation.OutputFormat.Hierarchical;
        var found = new List<JsonPointer>();
        Collect(_schema.Evaluate(document, options), found);
        return [.. found.Distinct()];
    }

    /// <summary>Follows what failed down to the values; alternatives and conditions are told at the value they were asked of.</summary>
    private static void Collect(Evaluation.EvaluationResults result, List<JsonPointer> found)
    {
        var here = new JsonPointer(result.InstanceLocation.ToString());
        var before = found.Count;
        if (result.Errors is { Count: > 0 })
        {
            found.Add(here);
        }

        var above = result.EvaluationPath.ToString();
        foreach (var group in (result.Details ?? []).GroupBy(d => KeywordOf(d.EvaluationPath.ToString(), above), StringComparer.Ordinal))
        {
            switch (group.Key)
            {
                case "if" or "not" or "contains" or "oneOf":
                    break;
                case "anyOf":
                    if (group.All(d => !d.IsValid))
                    {
                        found.Add(here);
                    }

                    break;
                default:
                    foreach (var part in group.Where(d => !d.IsValid))
                    {
                        Collect(part, found);
                    }

                    break;
            }
        }

        if (found.Count == before)
        {
            found.Add(here);
        }
    }

    private static string KeywordOf(string path, string above)
    {
        var rest = path.StartsWith(above, StringComparison.Ordinal) ? path[above.Length..].TrimStart('/') : path;
        var slash = rest.IndexOf('/', StringComparison.Ordinal);
        return slash < 0 ? rest : rest[..slash];
    }
}

/// <summary>A schema and a document that are together too large to be evaluated.</summary>
public sealed class HouseSchemaTooMuchException() : Exception("The schema and the facts are together too large.");
