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
    internal string ClassName => Naming.Pascal(Name);

    internal string FamilyWord => Naming.Pascal(Family);
}

/// <summary>One option: a number where its default is a JSON number, else a word.</summary>
internal sealed record OptionField(string Name, string Description, string Default, bool IsNumber, string Unit)
{
    internal string Member => char.ToUpperInvariant(Name[0]) + Name.Substring(1);
}

/// <summary>What is wrong with a rule.json.</summary>
/// <param name="Field">The key to point at; null for the whole file.</param>
internal sealed record Problem(string Message, string? Field);
