using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>What a reference to another file came to.</summary>
/// <param name="File">Relative to the workspace root; null when it does not resolve.</param>
/// <param name="Kind">The problem when it does not resolve.</param>
/// <param name="Message">What is wrong, whole sentences; empty when it resolves.</param>
internal sealed record ResolvedReference(string? File, ProblemKind Kind, string Message)
{
    public IReadOnlyList<string> Suggestions { get; init; } = [];
}

/// <summary>Turns references between files into workspace paths; whoever knows the files answers.</summary>
internal interface IReferences
{
    /// <param name="fromFile">The referring file, relative to the root.</param>
    /// <param name="reference">As written.</param>
    /// <param name="ending">The ending such a file has (".stock.json").</param>
    /// <param name="what">What is looked for ("stock file"), for messages.</param>
    ResolvedReference Resolve(string fromFile, string reference, string ending, string what);

    /// <summary>
    /// Files of a kind near the referring one whose names are like the one given, as they would be written there; best first.
    /// </summary>
    IReadOnlyList<string> Near(string fromFile, string name, string ending);
}
