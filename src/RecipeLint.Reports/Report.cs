using RecipeLint.Analysis;
using RecipeLint.Recipes.Json;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Reports;

/// <summary>What one run has to tell, whatever the format.</summary>
public sealed record Report
{
    /// <summary>Findings, what the shop suppressed, and rules that failed; a report sorts them by file and place in the file.</summary>
    public required LintResult Result { get; init; }

    /// <summary>The files read, by path, for lines and excerpts.</summary>
    public required IReadOnlyDictionary<string, SourceFile> Sources { get; init; }

    /// <summary>How many files the user asked about.</summary>
    public required int FilesChecked { get; init; }

    /// <summary>The files the user asked about, relative to the root; empty where nobody asks for them.</summary>
    public IReadOnlyCollection<string> Asked { get; init; } = [];

    /// <summary>What was computed, for formats that tell it; null where only findings are told.</summary>
    public Facts? Facts { get; init; }

    /// <summary>So many times each stock is mixed in thought, for pages; 0 for not at all.</summary>
    public int Mixings { get; init; }

    /// <summary>Every rule there is, fired or not.</summary>
    public IReadOnlyList<RuleDescriptor> Rules { get; init; } = RuleBook.Descriptors;

    /// <summary>Defaults that entered a verdict, one sentence each.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>
    /// Repairs by the finding they mend, where they were asked for; null where not. Findings are told apart by reference.
    /// </summary>
    public IReadOnlyDictionary<Finding, IReadOnlyList<VerifiedRepair>>? Repairs { get; init; }

    /// <summary>Version of the tool, as in "0.1.0".</summary>
    public required string ToolVersion { get; init; }
}
