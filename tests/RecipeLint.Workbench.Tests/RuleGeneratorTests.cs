using System.Text.Json.Nodes;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;
using RecipeLint.Generators;

namespace RecipeLint.Workbench.Tests;

/// <summary>What a rule folder or class lacks stops the build, with the file and the field.</summary>
public sealed class RuleGeneratorTests
{
    private const string File = "/repository/rules/plant/too-sour/rule.json";

    private const string Engine =
        """
        namespace RecipeLint.Recipes.Text
        {
            public enum ProblemKind { MissingKey, UnknownKey }
        }

        namespace RecipeLint.Rules.Engine
        {
            using System.Collections.Generic;
            using RecipeLint.Recipes.Text;

            public abstract class Rule { }
            public enum Level { Note, Warning, Error }
            public enum Certainty { Computed, Estimate, Practice }
            public enum RuleScope { Workspace, Stock, Recipe }
            public record RuleOption(string Name, string Description, string Default, bool IsNumber, string Unit, string Source);
            public record RuleSource(string Text, string Confidence);
            public record RuleDescriptor
            {
                public string Id, Name, Family, Title, Since;
                public Level Level;
                public Certainty Certainty;
                public RuleScope Scope;
                public bool IsPreview;
                public System.Lazy<string> Explanation;
                public IReadOnlyList<RuleOption> Options = [];
                public IReadOnlyList<RuleSource> Sources = [];
                public IReadOnlyList<ProblemKind> ProblemKinds = [];
            }
            public static class RuleBook
            {
                internal static System.Lazy<string> ExplanationIn(string resource) => new(() => resource);
            }
            public interface IRuleOptions<T> where T : IRuleOptions<T>
            {
                static abstract T From(System.Collections.Generic.IReadOnlyDictionary<string, string> values);
            }
            public readonly record struct NumberOption(string Name, double Value, string Unit)
            {
                public static NumberOption Read(string name, string text, string unit) => new(name, double.Parse(text), unit);
            }
        }
        """;

    private const string Class = "namespace RecipeLint.Rules.Plant { public sealed class TooSour : Engine.Rule { } }";

    private static JsonObject Good() => JsonNode.Parse(
        """
        {
          "id": "RL0599", "name": "too-sour", "family": "plant", "level": "warning", "certainty": "estimate", "scope": "recipe",
          "title": "A feed is too sour.",
          "options": [
            {"name": "lowest", "description": "Lowest pH.", "default": 4.5, "unit": "", "source": "common practice, no source"},
            {"name": "word", "description": "A \"word\" <b>.", "default": "harm", "unit": "", "source": "common practice, no source"}
          ],
          "since": "0.1.0",
          "sources": [{"text": "common practice, no source", "confidence": "practice"}]
        }
        """)!.AsObject();

    private static (Compilation Compilation, IReadOnlyList<Diagnostic> Said) Build(IEnumerable<(string Path, string Text)> files, params string[] sources)
    {
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(p => Path.GetFileName(p).StartsWith("System.", StringComparison.Ordinal)).Select(p => MetadataReference.CreateFromFile(p));
        var compilation = CSharpCompilation.Create(
            "Rules", [.. sources.Append(Engine).Select(s => CSharpSyntaxTree.ParseText(s))], references, new(OutputKind.DynamicallyLinkedLibrary));
        CSharpGeneratorDriver.Create([new RuleGenerator().AsSourceGenerator()], files.Select(f => (AdditionalText)new Text(f.Path, f.Text)))
            .RunGeneratorsAndUpdateCompilation(compilation, out var after, out var said);
        return (after, said);
    }

    private static string Only(string json, params string[] sources)
    {
        var said = Assert.Single(Build([(File, json)], sources.Length > 0 ? sources : [Class]).Said);
        Assert.Equal(DiagnosticSeverity.Error, said.Severity);
        return said.GetMessage();
    }

    [Fact]
    public void ACompleteRuleBuildsAndItsOptionsAreTyped()
    {
        var (compilation, said) = Build(
            [(File, Good().ToJsonString())],
            Class,
            """
            using RecipeLint.Rules.Plant;
            static class Use
            {
                static double Lowest(TooSourOptions o) => o.Lowest.Value;
                static string Word(TooSourOptions o) => o.Word;
                static RecipeLint.Rules.Engine.Rule First => RecipeLint.Rules.RuleList.All[0];
            }
            """);
        Assert.Empty(said);
        Assert.Empty(compilation.GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error));
    }

    /// <summary>A word that is no member of ProblemKind stops the build by the compiler; what is one stands in the description.</summary>
    [Theory]
    [InlineData("""["UnknownKey", "MissingKey"]""", true)]
    [InlineData("""["UnknownKey", "MissingKye"]""", false)]
    public void KindsOfReadingProblemsAreThoseThatThereAre(string kinds, bool there)
    {
        var rule = Good();
        rule["problemKind"] = JsonNode.Parse(kinds);
        var (compilation, said) = Build([(File, rule.ToJsonString())], Class);
        Assert.Empty(said);
        Assert.Equal(there, !compilation.GetDiagnostics().Any(d => d.Severity == DiagnosticSeverity.Error));
    }

    public static TheoryData<string> Fields() => ["id", "name", "family", "level", "certainty", "scope", "title", "options", "since", "sources"];

    [Theory]
    [MemberData(nameof(Fields))]
    public void AMissingFieldIsNamed(string field)
    {
        var rule = Good();
        rule.Remove(field);
        var said = Build([(File, rule.ToJsonString())], Class).Said;
        Assert.Contains(said, d => d.GetMessage().StartsWith($"rules/plant/too-sour/rule.json: '{field}' is ", StringComparison.Ordinal));
        Assert.All(said, d => Assert.Equal(File, d.Location.GetLineSpan().Path));
    }

    [Theory]
    [InlineData("name")]
    [InlineData("description")]
    [InlineData("default")]
    [InlineData("unit")]
    [InlineData("source")]
    public void AMissingFieldOfAnOptionIsNamed(string field)
    {
        var rule = Good();
        rule["options"]![0]!.AsObject().Remove(field);
        Assert.Matches($"rules/plant/too-sour/rule.json: option.*'{field}' is missing", Only(rule.ToJsonString()));
    }

    [Theory]
    [InlineData("level", "grave", "'level' is 'grave'; write one of note, warning, error")]
    [InlineData("certainty", "sure", "'certainty' is 'sure'")]
    [InlineData("scope", "house", "'scope' is 'house'")]
    [InlineData("id", "R1", "'id' must be RL and four digits")]
    [InlineData("since", "soon", "'since' must be a version")]
    [InlineData("levl", "note", "unknown field 'levl'")]
    [InlineData("problemKind", "missing-key", "'problemKind' must be a kind of reading problem or a list of them")]
    public void AWrongFieldIsNamed(string field, string value, string expected)
    {
        var rule = Good();
        rule[field] = value;
        Assert.Contains("rules/plant/too-sour/rule.json: " + expected, Only(rule.ToJsonString()), StringComparison.Ordinal);
    }

    [Fact]
    public void ANameThatIsNotItsFolderIsNamed()
    {
        var rule = Good();
        rule["name"] = "too-sweet";
        Assert.Contains(Build([(File, rule.ToJsonString())], Class).Said, d => d.GetMessage().Contains("'name' is 'too-sweet', but its folder is 'too-sour'", StringComparison.Ordinal));
    }

    [Fact]
    public void ANumberInQuotesIsNamed()
    {
        var rule = Good();
        rule["options"]![0]!["default"] = "4.5";
        Assert.Contains("option 'lowest': 'default' is a number in quotes", Only(rule.ToJsonString()), StringComparison.Ordinal);
    }

    [Fact]
    public void TextThatIsNoJsonIsNamed() =>
        Assert.Contains(Build([(File, "{")], Class).Said, d => d.GetMessage().StartsWith("rules/plant/too-sour/rule.json: not JSON", StringComparison.Ordinal));

    [Fact]
    public void AFolderWithoutClassIsNamed() =>
        Assert.Contains("no rule class 'TooSour'; write src/RecipeLint.Rules/Plant/TooSour/TooSour.cs", Only(Good().ToJsonString(), "class Other { }"), StringComparison.Ordinal);

    [Fact]
    public void AClassWithoutFolderIsNamed() =>
        Assert.Contains(
            "the rule class 'TooDry' has no folder rules/FAMILY/too-dry/",
            Only(Good().ToJsonString(), Class, "namespace RecipeLint.Rules.Plant { public sealed class TooDry : Engine.Rule { } }"),
            StringComparison.Ordinal);

    [Fact]
    public void AnIdThatStandsTwiceIsNamed()
    {
        var other = Good();
        other["name"] = "too-salty";
        var said = Build(
            [(File, Good().ToJsonString()), ("/repository/rules/plant/too-salty/rule.json", other.ToJsonString())],
            Class, "namespace RecipeLint.Rules.Plant { public sealed class TooSalty : Engine.Rule { } }").Said;
        Assert.Contains("'id' RL0599 is taken by rules/plant/too-salty/rule.json", Assert.Single(said).GetMessage(), StringComparison.Ordinal);
    }

    private sealed class Text(string path, string text) : AdditionalText
    {
        public override string Path => path;

        public override SourceText GetText(CancellationToken cancellationToken = default) => SourceText.From(text);
    }
}
