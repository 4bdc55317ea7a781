using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Tests.Mutations;

/// <summary>A file as a mutant has it.</summary>
internal sealed record FileText(string Path, byte[] Bytes);

/// <summary>One mistake made on purpose.</summary>
/// <param name="Operator">The kind of slip.</param>
/// <param name="Name">Where it was made and what was written, unique in its shop.</param>
/// <param name="Files">The files it changes.</param>
/// <param name="Places">Where the mistake stands in the changed files; empty for something left out.</param>
/// <param name="Words">What else names the mistake in a message: the substance, its elements, the stock, the scale.</param>
internal sealed record Mutant(string Operator, string Name, IReadOnlyList<FileText> Files, IReadOnlyList<Place> Places, IReadOnlyList<string> Words)
{
    internal required CleanShop Shop { get; init; }

    /// <summary>True where only the targets are changed: without targets there is no such mutant.</summary>
    internal bool InTargets { get; init; }

    /// <summary>Set where the mistake is one of information: what a person reads is then wrong whatever the numbers do.</summary>
    internal string? Misinforms { get; init; }

    internal string Key => $"{Shop.Name} {Operator}: {Name}";

    public override string ToString() => Key;
}
