using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using RecipeLint.House.Tests.Reading;

namespace RecipeLint.House.Tests.Figures;

/// <summary>Names of ions, rules and options that stand in the code as bare strings.</summary>
internal static class Names
{
    /// <summary>Strings that are the name of a component of a solution, such as "Ca+2".</summary>
    public static IReadOnlyList<string> Ions(Checkout house) => [.. Literals(house, (_, text, _) => house.Ions.Contains(text))];

    /// <summary>Strings that are the name of a rule, outside the files of that rule.</summary>
    public static IReadOnlyList<string> ForeignRules(Checkout house) =>
        [.. Literals(house, (file, text, _) => house.Rules.Contains(text) && !Owns(file, text))];

    /// <summary>Strings handed over as argument or key that are the name of a rule's option, in the project of the rules.</summary>
    public static IReadOnlyList<string> Options(Checkout house) =>
    [
        .. Literals(house, (file, text, literal) => house.Options.Contains(text)
            && file.Path.StartsWith("src/RecipeLint.Rules/", StringComparison.Ordinal)
            && literal.Parent is ArgumentSyntax { Parent: BaseArgumentListSyntax { Parent: InvocationExpressionSyntax or ElementAccessExpressionSyntax } }),
    ];

    private static IEnumerable<string> Literals(Checkout house, Func<SourceFile, string, LiteralExpressionSyntax, bool> counts) =>
        Sizes.Written(house).SelectMany(f => f.Tree.GetRoot().DescendantNodes().OfType<LiteralExpressionSyntax>()
            .Where(l => l.IsKind(SyntaxKind.StringLiteralExpression) && counts(f, l.Token.ValueText, l))
            .Select(l => $"{f.Path}:{l.GetLocation().GetLineSpan().StartLinePosition.Line + 1} \"{l.Token.ValueText}\""));

    /// <summary>Whether a file is one of a rule's own: it is named after the rule, or lies in a folder that is.</summary>
    private static bool Owns(SourceFile file, string rule)
    {
        var name = string.Concat(rule.Split('-').Select(w => char.ToUpperInvariant(w[0]) + w[1..]));
        var own = Path.GetFileName(file.Path);
        return own.StartsWith(name + ".", StringComparison.OrdinalIgnoreCase) || file.Folder.Split('/').Contains(name, StringComparer.OrdinalIgnoreCase);
    }
}
