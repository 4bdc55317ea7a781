using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace RecipeLint.House.Tests.Reading;

/// <summary>Finds what every name of a project stands for, as the compiler sees it: written types, inferred ones and members.</summary>
internal static class ReferenceReader
{
    public static IReadOnlyList<Reference> Of(SourceProject project) =>
        [.. project.Files.AsParallel().AsOrdered().SelectMany(f => Of(project, f))];

    private static List<Reference> Of(SourceProject project, SourceFile file)
    {
        var model = project.Compilation.GetSemanticModel(file.Tree);
        var found = new List<Reference>();
        foreach (var node in file.Tree.GetCompilationUnitRoot().DescendantNodes(n => n is not UsingDirectiveSyntax))
        {
            if (node is not (SimpleNameSyntax or ImplicitObjectCreationExpressionSyntax)) continue;
            var symbol = model.GetSymbolInfo(node).Symbol;
            if (symbol is null || OwnerOf(symbol) is not { } type || !InHouse(type)) continue;
            var where = $"{file.Path}:{node.GetLocation().GetLineSpan().StartLinePosition.Line + 1}";
            var member = symbol is INamedTypeSymbol or IMethodSymbol { MethodKind: MethodKind.Constructor } ? "" : symbol.Name;
            found.Add(new Reference(project.Name, SpaceOf(node, file), ProjectOf(type), type.ContainingNamespace.ToDisplayString(), FullName(type), member, where));
        }

        return found;
    }

    /// <summary>Full name of a type, with the number of its type parameters where it has any.</summary>
    public static string FullName(INamedTypeSymbol type) => $"{type.ContainingNamespace.ToDisplayString()}.{type.MetadataName}";

    private static string SpaceOf(SyntaxNode node, SourceFile file) =>
        node.FirstAncestorOrSelf<BaseNamespaceDeclarationSyntax>()?.Name.ToString() ?? file.Namespace;

    private static INamedTypeSymbol? OwnerOf(ISymbol symbol)
    {
        var type = symbol switch
        {
            INamedTypeSymbol named => named,
            IMethodSymbol { ReducedFrom: { } extension } => extension.ContainingType,
            IMethodSymbol or IPropertySymbol or IFieldSymbol or IEventSymbol => symbol.ContainingType,
            _ => null,
        };
        while (type?.ContainingType is { } outer) type = outer;
        return type?.OriginalDefinition;
    }

    private static bool InHouse(INamedTypeSymbol type) =>
        type.ContainingAssembly?.Name.StartsWith("recipelint", StringComparison.OrdinalIgnoreCase) == true
        && type.ContainingNamespace is { IsGlobalNamespace: false };

    private static string ProjectOf(INamedTypeSymbol type) =>
        type.ContainingAssembly.Name == "recipelint" ? "RecipeLint" : type.ContainingAssembly.Name;
}
