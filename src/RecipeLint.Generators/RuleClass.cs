using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace RecipeLint.Generators;

/// <summary>A concrete class that is a rule.</summary>
/// <param name="FullName">With its namespace.</param>
/// <param name="Family">The part of the namespace after RecipeLint.Rules ("Plant").</param>
internal sealed record RuleClass(string FullName, string Family, string Name, SourcePlace Place)
{
    internal string FamilyAndName => $"{Family}.{Name}";

    internal static RuleClass? Of(ClassDeclarationSyntax declared, SemanticModel model, CancellationToken cancel)
    {
        if (model.GetDeclaredSymbol(declared, cancel) is not INamedTypeSymbol { IsAbstract: false, ContainingType: null } type
            || !IsRule(type))
        {
            return null;
        }

        var parts = type.ContainingNamespace.ToDisplayString().Split('.');
        return new RuleClass(
            type.ToDisplayString(SymbolDisplayFormat.FullyQualifiedFormat),
            parts.Length > 2 ? parts[2] : "",
            type.Name,
            SourcePlace.Of(declared.Identifier.GetLocation()));
    }

    private static bool IsRule(INamedTypeSymbol type)
    {
        for (var above = type.BaseType; above is not null; above = above.BaseType)
        {
            if (above.ToDisplayString() == RuleGenerator.RuleBase)
            {
                return true;
            }
        }

        return false;
    }
}

/// <summary>A place in source, comparable, so that the generator can tell that nothing changed.</summary>
internal sealed record SourcePlace(string Path, TextSpan Span, LinePositionSpan Lines)
{
    internal static SourcePlace Of(Location location) =>
        new(location.SourceTree?.FilePath ?? "", location.SourceSpan, location.GetLineSpan().Span);

    internal Location ToLocation() => Location.Create(Path, Span, Lines);
}
