using RecipeLint.Recipes.Json;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports;

/// <summary>A finding the shop has accepted, with the reason it gave.</summary>
public sealed record SuppressedFinding(Finding Finding, string Reason);

/// <summary>What one run has to tell, whatever the format.</summary>
public sealed record Report
{
    /// <summary>In any order; a report sorts them by file and place.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    public IReadOnlyList<SuppressedFinding> Suppressed { get; init; } = [];

    /// <summary>The files read, by path, for lines and excerpts.</summary>
    public required IReadOnlyDictionary<string, SourceFile> Sources { get; init; }

    /// <summary>How many files the user asked about.</summary>
    public required int FilesChecked { get; init; }

    /// <summary>Every rule there is, fired or not.</summary>
    public required IReadOnlyList<RuleDescriptor> Rules { get; init; }

    /// <summary>Defaults that entered a verdict, one sentence each.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>Internal faults, one sentence each; with any of them the run is not complete.</summary>
    public IReadOnlyList<string> Faults { get; init; } = [];

    /// <summary>Version of the tool, as in "0.1.0".</summary>
    public required string ToolVersion { get; init; }

    /// <summary>A key that stays when lines move; the engine's, for a later run to recognise the finding by.</summary>
    public required Func<Finding, string> Fingerprint { get; init; }
}
