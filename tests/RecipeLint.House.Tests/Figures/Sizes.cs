using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using RecipeLint.House.Tests.Reading;

namespace RecipeLint.House.Tests.Figures;

/// <summary>How long and how large the parts of the house are.</summary>
internal static class Sizes
{
    /// <summary>The lengths that .editorconfig declares: for code, and for templates of markup, whose line breaks are text.</summary>
    private const int LineLength = 140, TemplateLength = 520;

    private static readonly string[] Templates = ["BenchSheets", "Handbook", "Labels", "Markup", "Pages", "Pictures"];

    /// <summary>Methods, constructors, operators, accessors and local functions with their lines, signature to last brace, the longest first.</summary>
    public static IReadOnlyList<(string What, int Lines)> Methods(Checkout house) =>
    [
        .. Written(house).SelectMany(f => f.Tree.GetRoot().DescendantNodes()
                .Where(n => n is BaseMethodDeclarationSyntax or AccessorDeclarationSyntax or LocalFunctionStatementSyntax or PropertyDeclarationSyntax { ExpressionBody: not null })
                .Select(n => (What: $"{f.Path} {NameOf(n)}", Lines: LinesOf(n))))
            .OrderByDescending(m => m.Lines).ThenBy(m => m.What, StringComparer.Ordinal),
    ];

    /// <summary>
    /// Types with the number of their fields, properties, indexers, events, constructors, operators and methods, all partial parts together
    /// and what a positional record declares in its head included, the largest first. Members of nested types count for those; enum members are not counted.
    /// </summary>
    public static IReadOnlyList<(string What, int Members)> Classes(Checkout house) =>
    [
        .. Written(house).SelectMany(f => f.Tree.GetRoot().DescendantNodes().OfType<TypeDeclarationSyntax>().Select(t => (Name: FullName(f, t), Members: MembersOf(t))))
            .GroupBy(t => t.Name, StringComparer.Ordinal)
            .Select(g => (What: g.Key, Members: g.Sum(t => t.Members)))
            .OrderByDescending(t => t.Members).ThenBy(t => t.What, StringComparer.Ordinal),
    ];

    /// <summary>Lines over the declared length, as file and line.</summary>
    public static IReadOnlyList<string> LongLines(Checkout house) =>
        [.. Written(house).SelectMany(f => f.Lines.Index().Where(l => l.Item.TrimEnd('\r').Length > Declared(f)).Select(l => $"{f.Path}:{l.Index + 1}"))];

    private static int Declared(SourceFile file) =>
        Templates.Any(t => file.Path.StartsWith($"src/RecipeLint.Reports/{t}/", StringComparison.Ordinal)) ? TemplateLength : LineLength;

    /// <summary>Files with their lines, the longest first.</summary>
    public static IReadOnlyList<(string What, int Lines)> Files(Checkout house) =>
        [.. Written(house).Select(f => (What: f.Path, Lines: LineCount(f))).OrderByDescending(f => f.Lines).ThenBy(f => f.What, StringComparer.Ordinal)];

    /// <summary>Files that people write; generated tables are left out.</summary>
    public static IEnumerable<SourceFile> Written(Checkout house) => house.Projects.SelectMany(p => p.Files).Where(f => !f.IsGenerated);

    private static int LineCount(SourceFile file) => file.Lines.Count - (file.Lines[^1].Length == 0 ? 1 : 0);

    private static int LinesOf(SyntaxNode node)
    {
        var span = node.GetLocation().GetLineSpan();
        return span.EndLinePosition.Line - span.StartLinePosition.Line + 1;
    }

    private static string NameOf(SyntaxNode node) => node switch
    {
        MethodDeclarationSyntax m => m.Identifier.Text,
        ConstructorDeclarationSyntax c => $"{c.Identifier.Text} (constructor)",
        LocalFunctionStatementSyntax l => l.Identifier.Text,
        PropertyDeclarationSyntax p => p.Identifier.Text,
        AccessorDeclarationSyntax a => $"{a.FirstAncestorOrSelf<PropertyDeclarationSyntax>()?.Identifier.Text ?? "this"}.{a.Keyword.Text}",
        _ => node.Kind().ToString(),
    };

    private static string FullName(SourceFile file, TypeDeclarationSyntax type)
    {
        var names = type.AncestorsAndSelf().OfType<TypeDeclarationSyntax>().Reverse().Select(t => t.Identifier.Text);
        return $"{file.Namespace}.{string.Join('.', names)}";
    }

    private static int MembersOf(TypeDeclarationSyntax type)
    {
        var declared = type.Members.Sum(m => m switch
        {
            BaseFieldDeclarationSyntax field => field.Declaration.Variables.Count,
            BaseTypeDeclarationSyntax or DelegateDeclarationSyntax => 0,
            _ => 1,
        });
        return declared + (type is RecordDeclarationSyntax { ParameterList: { } head } ? head.Parameters.Count : 0);
    }
}
