using System.Text;
using System.Text.Json;
using CsCheck;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Tests.Documents;
using RecipeLint.Recipes.Tests.Json;

namespace RecipeLint.Recipes.Tests.Schema;

/// <summary>The quick look at a document says what the evaluator says, or that it does not know.</summary>
public sealed class QuickSchemaTests
{
    private static readonly JsonDocumentOptions _options = new() { MaxDepth = JsonReading.DepthLimit };

    /// <summary>Documents of all kinds together: 100,000 in a long run.</summary>
    private static readonly int _documents = Environment.GetEnvironmentVariable("RECIPELINT_LONG") == "1" ? 15_000 : 600;

    [Theory]
    [InlineData(DocumentKind.Stock)]
    [InlineData(DocumentKind.Recipe)]
    [InlineData(DocumentKind.Water)]
    [InlineData(DocumentKind.Substances)]
    [InlineData(DocumentKind.Settings)]
    [InlineData(DocumentKind.Profile)]
    [InlineData(DocumentKind.HouseRule)]
    public void SaysWhatTheEvaluatorSays(DocumentKind kind)
    {
        var schema = SchemaDocument.Load(DocumentKinds.SchemaFileName(kind)!);
        var (quick, evaluator) = (new QuickSchema(schema.Root), new SchemaEvaluator(schema.Text));
        var (plain, sure) = (0, 0);
        new SchemaDocuments(schema.Root).Documents.Sample(
            text =>
            {
                var file = JsonReading.Read("x.json", Encoding.UTF8.GetBytes(text)).Source;
                if (file is not { IsPlain: true, Tree: { } tree })
                {
                    return;
                }

                Interlocked.Increment(ref plain);
                if (quick.Fits(tree.Root) is { } fits)
                {
                    Interlocked.Increment(ref sure);
                    using var json = JsonDocument.Parse(file.DecodableBytes, _options);
                    Assert.True(fits == (evaluator.Evaluate(json.RootElement).Count == 0), $"quick says {fits}: {text}");
                }
            },
            iter: _documents);

        // An answer that is always 'not sure' would be right and of no use.
        Assert.True(sure >= plain * 0.5, $"sure of only {sure} of {plain} documents");
    }

    [Fact]
    public void KnowsEveryGoodFileOfTheExamples()
    {
        var looked = 0;
        foreach (var path in Directory.EnumerateFiles(Repository.PathOf("examples"), "*.json", SearchOption.AllDirectories))
        {
            if (DocumentKinds.FromFileName(path) is not { } kind || DocumentKinds.SchemaFileName(kind) is not { } name)
            {
                continue;
            }

            var file = JsonReading.Read("x.json", File.ReadAllBytes(path)).Source;
            if (file is { IsPlain: true, Tree: { } tree } && SchemaCheck.Check(kind, file).Count == 0)
            {
                Assert.True(new QuickSchema(SchemaDocument.Load(name).Root).Fits(tree.Root), path);
                looked++;
            }
        }

        Assert.True(looked > 20, $"only {looked} good files");
    }

    [Theory]
    [InlineData("""{"type": "integer"}""", "1.0", null)]
    [InlineData("""{"const": 1}""", "1.0", null)]
    [InlineData("""{"const": 1}""", "2", false)]
    [InlineData("""{"const": 1}""", "1", true)]
    [InlineData("""{"multipleOf": 2}""", "4", null)]
    [InlineData("""{"maximum": 3}""", "1e400", null)]
    [InlineData("""{"maximum": 3}""", "3.5", false)]
    [InlineData("""{"pattern": "^a$"}""", "\"a\\n\"", null)]
    [InlineData("""{"if": {"multipleOf": 2}, "then": false}""", "3", null)]
    [InlineData("""{"anyOf": [{"multipleOf": 2}, {"type": "number"}]}""", "3", true)]
    [InlineData("""{"anyOf": [{"multipleOf": 2}, {"type": "string"}]}""", "3", null)]
    [InlineData("""{"additionalProperties": false, "properties": {"a": true}}""", """{"a": 1, "b": 2}""", false)]
    [InlineData("""{"additionalProperties": false, "patternProperties": {"^x": {"type": "string"}}}""", """{"x1": 2}""", false)]
    [InlineData("""{"dependentSchemas": {"a": {"required": ["b"]}}}""", """{"a": 1}""", false)]
    [InlineData("""{"$ref": "#/$defs/gone"}""", "1", null)]
    public void DoesNotGuess(string schema, string document, bool? expected)
    {
        using var parsed = JsonDocument.Parse(schema);
        var tree = JsonReading.Read("x.json", Encoding.UTF8.GetBytes(document)).Source.Tree!;
        Assert.Equal(expected, new QuickSchema(parsed.RootElement).Fits(tree.Root));
    }
}
