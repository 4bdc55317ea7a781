using Microsoft.CodeAnalysis;
using RecipeLint.House.Tests.Reading;

namespace RecipeLint.House.Tests.Figures;

/// <summary>Who uses what across rooms.</summary>
internal static class Uses
{
    /// <summary>Public types of a project that no other project under src names or reads a member of.</summary>
    public static IReadOnlyList<string> PublicAtHomeOnly(Checkout house, SourceProject project)
    {
        var away = house.References.Where(r => r.TypeProject == project.Name && r.Project != project.Name).Select(r => r.Type).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. TypesIn(project.Compilation.Assembly.GlobalNamespace)
                .Where(t => t.DeclaredAccessibility == Accessibility.Public)
                .Select(ReferenceReader.FullName)
                .Where(t => !away.Contains(t))
                .Order(StringComparer.Ordinal),
        ];
    }

    /// <summary>Places that ask a solver themselves, outside the rooms of equilibrium.</summary>
    public static IReadOnlyList<string> DirectSolverCalls(Checkout house) => SolverCalls(house, question: false);

    /// <summary>Where the one question (mix, conditions, what may form) is put outside its own room; all get the same state.</summary>
    public static IReadOnlyList<string> Questions(Checkout house) => SolverCalls(house, question: true);

    private static IReadOnlyList<string> SolverCalls(Checkout house, bool question) =>
    [
        .. house.References
            .Where(r => r.Member.Length > 0 && r.Type.EndsWith("Solver", StringComparison.Ordinal) && r.Member is "Solve" or "Precipitate" or "Settle" or "Ask")
            .Where(r => r.Type.EndsWith(".StateSolver", StringComparison.Ordinal) == question)
            .Where(r => r.Project != "RecipeLint.Chemistry" && !r.From.EndsWith(".Equilibria", StringComparison.Ordinal))
            .Select(r => $"{r.Where} {r.Type[(r.Type.LastIndexOf('.') + 1)..]}.{r.Member}"),
    ];

    private static IEnumerable<INamedTypeSymbol> TypesIn(INamespaceSymbol space) =>
        space.GetTypeMembers().Concat(space.GetNamespaceMembers().SelectMany(TypesIn));
}
