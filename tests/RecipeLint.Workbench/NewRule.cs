using System.Globalization;
using System.Text.RegularExpressions;

namespace RecipeLint.Workbench;

/// <summary>The folder and the class of a rule that does not judge yet. What is still to be said stands empty, and the build or a test asks for it.</summary>
public static class NewRule
{
    private static readonly string[] _headings =
        ["What it finds", "Why it matters", "Failing", "Passing", "Options", "What to do", "Repairs", "Cautions", "Sources"];

    /// <exception cref="BenchException">The name is taken or unusable, or there is no such family.</exception>
    public static void Write(Repository repository, string family, string name, string scope, TextWriter output)
    {
        var ledger = Ledger.Parse(repository.Read(Ledger.Path));
        var siblings = ledger.Rows.Where(r => Directory.Exists(repository.PathOf($"rules/{family}/{r.Name}"))).ToList();
        if (siblings.Count == 0)
        {
            throw new BenchException($"There is no family '{family}' under rules/.");
        }

        if (!Regex.IsMatch(name, "^[a-z][a-z0-9]+(-[a-z0-9]{2,})*$"))
        {
            throw new BenchException($"'{name}' is no name for a rule: small letters, words of two letters at least, hyphens between.");
        }

        if (ledger.Rows.Any(r => r.Name == name) || Directory.Exists(repository.PathOf($"rules/{family}/{name}")))
        {
            throw new BenchException($"The name '{name}' is taken; names are never reused.");
        }

        var number = 1 + siblings.Max(r => int.Parse(r.Id[2..], CultureInfo.InvariantCulture));
        while (ledger.Rows.Any(r => r.Id == Id(number)))
        {
            number++;
        }

        var (classFamily, className) = (Pascal(family), Pascal(name));
        Add($"rules/{family}/{name}/rule.json", Description(Id(number), name, family, scope));
        Add($"rules/{family}/{name}/explanation.md", "# \n\n" + string.Concat(_headings.Select(h => $"## {h}\n\n\n")).TrimEnd() + "\n");
        Add($"src/RecipeLint.Rules/{classFamily}/{className}/{className}.cs", Class(classFamily, className, name, scope));
        output.WriteLine($"{Id(number)} is free and taken for it. Fill the three files, build, and add folders failing-WHAT and passing-WHAT with small");
        output.WriteLine("real files. Then run 'refresh', and the rule tests once with RECIPELINT_UPDATE=1. Whatever is missing, the build or a test names.");

        void Add(string path, string text)
        {
            repository.Write(path, text);
            output.WriteLine($"written: {path}");
        }
    }

    private static string Id(int number) => "RL" + number.ToString("0000", CultureInfo.InvariantCulture);

    private static string Pascal(string kebab) => string.Concat(kebab.Split('-').Select(w => char.ToUpperInvariant(w[0]) + w[1..]));

    private static string Description(string id, string name, string family, string scope) =>
        $$"""
        {
          "id": "{{id}}",
          "name": "{{name}}",
          "family": "{{family}}",
          "level": "warning",
          "certainty": "estimate",
          "scope": "{{scope}}",
          "title": "",
          "options": [],
          "since": "0.1.0",
          "sources": [
            {
              "text": "",
              "confidence": "memory"
            }
          ]
        }

        """;

    private static string Class(string family, string name, string rule, string scope)
    {
        var (kind, subject, word) = scope switch
        {
            "stock" => ("StockRule", "StockFacts stock", "stock.Stock.Place"),
            "recipe" => ("RecipeRule", "RecipeFacts recipe", "recipe.Recipe.Place"),
            _ => ("WorkspaceRule", "Facts facts", "Place.Whole(facts.Workspace.Sources.Keys.First())"),
        };
        return
            $$"""
            using RecipeLint.Analysis;
            using RecipeLint.Recipes.Text;
            using RecipeLint.Rules.Engine;
            using RecipeLint.Rules.Workings;

            namespace RecipeLint.Rules.{{family}};

            /// <summary></summary>
            internal sealed class {{name}} : {{kind}}<{{name}}Verdict>
            {
                public const string RuleName = "{{rule}}";

                public override string Name => RuleName;

                /// <summary>All it looks at, whether it fires or not: every comparison is a check here, and no text.</summary>
                protected override IEnumerable<{{name}}Verdict> Judge({{subject}}, RuleContext context)
                {
                    yield return new {{name}}Verdict({{word}}) { Checks = [Check.That("", false)] };
                }

                /// <summary>What is wrong with numbers and units; why it matters; what to do.</summary>
                protected override Finding Describe({{name}}Verdict verdict, RuleContext context) => context.Find(verdict.Place, "", Harm.Damage, Odds.Possible);

                /// <summary>How the values of the checks follow, in steps of a pocket calculator.</summary>
                protected override Working Work({{name}}Verdict verdict, RuleContext context) =>
                    new WorkingBuilder("").Statements(verdict).Done();
            }

            /// <summary>What the rule found out about one thing.</summary>
            internal sealed record {{name}}Verdict(Place Place) : Verdict;

            """;
    }
}
