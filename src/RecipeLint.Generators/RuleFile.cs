namespace RecipeLint.Generators;

/// <summary>A rule.json as it was found.</summary>
internal sealed record RuleText(string Path, string Text)
{
    internal string Folder => System.IO.Path.GetFileName(System.IO.Path.GetDirectoryName(Path)) ?? "";

    internal string Family => System.IO.Path.GetFileName(System.IO.Path.GetDirectoryName(System.IO.Path.GetDirectoryName(Path))) ?? "";

    /// <summary>The same on every machine: rules/FAMILY/NAME/rule.json.</summary>
    internal string ShortPath => $"rules/{Family}/{Folder}/rule.json";
}

/// <summary>What a rule.json says that the generated sources need.</summary>
internal sealed record RuleFile(RuleText Text, string Id, string Name, string Family, IReadOnlyList<OptionField> Options)
{
    /// <summary>"note", "warning" or "error".</summary>
    internal string Level { get; init; } = "";

    /// <summary>"computed", "estimate" or "practice".</summary>
    internal string Certainty { get; init; } = "";

    /// <summary>"stock", "recipe" or "workspace".</summary>
    internal string Scope { get; init; } = "";

    internal string Title { get; init; } = "";

    internal string Since { get; init; } = "";

    internal bool IsPreview { get; init; }

    internal IReadOnlyList<SourceField> Sources { get; init; } = [];

    /// <summary>Members of ProblemKind.</summary>
    internal IReadOnlyList<string> ProblemKinds { get; init; } = [];

    internal string ClassName => Naming.Pascal(Name);

    internal string FamilyWord => Naming.Pascal(Family);
}

/// <summary>One option: a number where its default is a JSON number, else a word.</summary>
internal sealed record OptionField(string Name, string Description, string Default, bool IsNumber, string Unit, string Source)
{
    internal string Member => char.ToUpperInvariant(Name[0]) + Name.Substring(1);
}

/// <summary>What a rule rests on, with how sure that is.</summary>
internal sealed record SourceField(string Text, string Confidence);

/// <summary>What is wrong with a rule.json.</summary>
/// <param name="Field">The key to point at; null for the whole file.</param>
internal sealed record Problem(string Message, string? Field);
