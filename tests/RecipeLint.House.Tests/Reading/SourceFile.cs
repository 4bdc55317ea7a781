using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace RecipeLint.House.Tests.Reading;

/// <summary>One source file.</summary>
/// <param name="Path">From the root of the checkout, with forward slashes.</param>
/// <param name="Folder">Within the project, with forward slashes; empty at its top.</param>
/// <param name="Namespace">The namespace it declares; empty for a file of assembly attributes or of statements.</param>
internal sealed record SourceFile(string Path, string Folder, string Namespace, IReadOnlyList<string> Lines, SyntaxTree Tree)
{
    public bool IsGenerated => Path.EndsWith(".generated.cs", StringComparison.Ordinal);

    public static SourceFile Read(string root, string project, string file, CSharpParseOptions options)
    {
        var full = System.IO.Path.Combine(project, file);
        var text = File.ReadAllText(full);
        var tree = CSharpSyntaxTree.ParseText(text, options, full);
        var space = tree.GetCompilationUnitRoot().Members.OfType<BaseNamespaceDeclarationSyntax>().FirstOrDefault()?.Name.ToString() ?? "";
        return new SourceFile(
            System.IO.Path.GetRelativePath(root, full).Replace('\\', '/'),
            file.Contains('/', StringComparison.Ordinal) ? file[..file.LastIndexOf('/')] : "",
            space,
            text.Split('\n'),
            tree);
    }
}
