using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;

namespace RecipeLint.Recipes.Files;

/// <summary>How a workspace is read.</summary>
public sealed record LoadOptions
{
    /// <summary>What the settings of a shop are called.</summary>
    public static string SettingsFileName => DocumentKinds.SettingsFileName;

    /// <summary>A settings file for every input in place of the nearest one, as the user wrote the path.</summary>
    public string? ConfigFile { get; init; }

    /// <summary>Ignores all settings files; names of equipment are then not checked.</summary>
    public bool NoConfig { get; init; }

    /// <summary>Full path of the folder all paths are relative to, with forward slashes; null looks for it.</summary>
    public string? Root { get; init; }

    /// <summary>Full paths: of the files that the paths stand for only these are asked about; null asks about all.</summary>
    public IReadOnlySet<string>? Only { get; init; }

    /// <summary>Names of known crop profiles; null leaves them unchecked.</summary>
    public IReadOnlyCollection<string>? Profiles { get; init; }

    /// <summary>The largest file that is read, in bytes.</summary>
    public int SizeLimit { get; init; } = JsonReading.DefaultSizeLimit;

    /// <summary>Keeps what was parsed for the next run over mostly the same files; null parses everything anew.</summary>
    public ParsedFiles? Parsed { get; init; }
}
