using System.Collections.Immutable;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace RecipeLint.Generators;

/// <summary>
/// From rules/FAMILY/NAME/rule.json and the rule classes: the list of all rules, their descriptions and a typed record of each one's
/// options.
/// A description that lacks something, a folder without class or a class without folder stops the build with file and field.
/// </summary>
[Generator(LanguageNames.CSharp)]
public sealed class RuleGenerator : IIncrementalGenerator
{
    internal const string RuleBase = "RecipeLint.Rules.Engine.Rule";

    private static readonly DiagnosticDescriptor _wrong = new(
        "RULE001", "A rule is not complete", "{0}", "Rules", DiagnosticSeverity.Error, isEnabledByDefault: true);

    public void Initialize(IncrementalGeneratorInitializationContext context)
    {
        var files = context.AdditionalTextsProvider
            .Where(t => Path.GetFileName(t.Path) == "rule.json")
            .Select((t, cancel) => new RuleText(t.Path, t.GetText(cancel)?.ToString() ?? ""))
            .Collect();
        var classes = context.SyntaxProvider
            .CreateSyntaxProvider(
                (node, _) => node is ClassDeclarationSyntax { BaseList: not null } declared
                    && !declared.Modifiers.Any(m => m.ValueText == "abstract"),
                (found, cancel) => RuleClass.Of((ClassDeclarationSyntax)found.Node, found.SemanticModel, cancel))
            .Where(c => c is not null)
            .Collect();
        context.RegisterSourceOutput(files.Combine(classes), (output, both) => Write(output, both.Left, both.Right));
    }

    private static void Write(SourceProductionContext output, ImmutableArray<RuleText> files, ImmutableArray<RuleClass?> classes)
    {
        if (files.IsEmpty)
        {
            // A project without rules: the same compiler extension only holds its data rows against what they owe.
            return;
        }

        var rules = new List<RuleFile>();
        foreach (var file in files.OrderBy(f => f.Path, StringComparer.Ordinal))
        {
            var reader = new RuleFileReader(file);
            if (reader.Read() is { } rule)
            {
                rules.Add(rule);
            }

            foreach (var problem in reader.Problems)
            {
                Report(output, file, problem);
            }
        }

        var known = classes.OfType<RuleClass>().Distinct().ToList();
        Match(output, rules, known);
        foreach (var twice in rules.GroupBy(r => r.Id).Where(g => g.Count() > 1))
        {
            Report(
                output,
                twice.Last().Text,
                new Problem($"'id' {twice.Key} is taken by {twice.First().Text.ShortPath}; ids are never reused", "id"));
        }

        output.AddSource("RuleList.g.cs", SourceText.From(RuleListWriter.Write(known), Encoding.UTF8));
        output.AddSource("RuleNames.g.cs", SourceText.From(RuleNamesWriter.Write(rules), Encoding.UTF8));
        output.AddSource("WrittenRules.g.cs", SourceText.From(DescriptorsWriter.Write(rules), Encoding.UTF8));
        output.AddSource("RuleOptions.g.cs", SourceText.From(OptionsWriter.Write(rules), Encoding.UTF8));
    }

    private static void Match(SourceProductionContext output, List<RuleFile> rules, List<RuleClass> classes)
    {
        var names = new HashSet<string>(classes.Select(c => c.FamilyAndName));
        foreach (var rule in rules.Where(r => !names.Contains($"{r.FamilyWord}.{r.ClassName}")))
        {
            Report(
                output,
                rule.Text,
                new Problem(
                    $"no rule class '{rule.ClassName}'; write src/RecipeLint.Rules/{rule.FamilyWord}/{rule.ClassName}/{rule.ClassName}.cs",
                    "name"));
        }

        var folders = new HashSet<string>(rules.Select(r => $"{r.FamilyWord}.{r.ClassName}"));
        foreach (var homeless in classes.Where(c => rules.Count > 0 && !folders.Contains(c.FamilyAndName)))
        {
            output.ReportDiagnostic(Diagnostic.Create(
                _wrong, homeless.Place.ToLocation(),
                $"the rule class '{homeless.Name}' has no folder rules/FAMILY/{Naming.Kebab(homeless.Name)}/ with a rule.json"));
        }
    }

    private static void Report(SourceProductionContext output, RuleText file, Problem problem)
    {
        var text = SourceText.From(file.Text);
        var at = problem.Field is null ? -1 : file.Text.IndexOf("\"" + problem.Field + "\"", StringComparison.Ordinal);
        var span = new TextSpan(Math.Max(at, 0), 0);
        var place = Location.Create(file.Path, span, text.Lines.GetLinePositionSpan(span));
        output.ReportDiagnostic(Diagnostic.Create(_wrong, place, $"{file.ShortPath}: {problem.Message}"));
    }
}
