using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Documents;

/// <summary>The rules on what stands in the files, RL0001 to RL0099.</summary>
internal static class DocumentRules
{
    internal static IReadOnlyList<Rule> All { get; } =
    [
        new DuplicateKey(),
    ];
}
