using RecipeLint.Analysis;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Shell;

/// <summary>Files read and facts computed: what every command that looks at files starts from.</summary>
internal sealed record Session(Workspace Workspace, Facts Facts)
{
    /// <summary>The files it was read from, standard input included.</summary>
    public required IFileTree Files { get; init; }

    /// <summary>What was asked for, as the user wrote it.</summary>
    public required IReadOnlyList<string> Asked { get; init; }

    public required LoadOptions Load { get; init; }

    /// <summary>The file that standard input stood for, as the user wrote it; null when none did.</summary>
    public string? FromStandardInput { get; init; }

    /// <exception cref="UsageException">A path cannot be used, or nothing of ours was found.</exception>
    public static Session Open(Surroundings world, string[] paths, string? stdinName, string? config, bool noConfig) =>
        Open(Input.Of(world, paths, stdinName, config, noConfig));

    /// <exception cref="UsageException">A path cannot be used, or nothing of ours was found.</exception>
    public static Session Open(Input input, Timings? timings = null)
    {
        var workspace = Timings.Phase(timings, "read", () => WorkspaceLoader.Load(input.Files, input.Asked, input.Load));
        Refuse(input, workspace, mayBeEmpty: input.Load.Only is not null);
        return new Session(workspace, Timings.Phase(timings, "facts", () => Analyzer.Analyse(workspace)))
        {
            Files = input.Files,
            Asked = input.Asked,
            Load = input.Load,
            FromStandardInput = input.FromStandardInput,
        };
    }

    /// <summary>Reads files from wherever they are, such as another revision.</summary>
    /// <exception cref="UsageException">A path cannot be used, or nothing of ours was found.</exception>
    public static Session OpenIn(IFileTree files, string path) =>
        Open(new Input(files, [path], new LoadOptions { Profiles = ProfileLibrary.AllNames }, null));

    /// <summary>
    /// The session of one file, with everything else in the folder of its settings: what a stock is dosed into, and whether it is used at
    /// all, stands in other files. The same session where there are no settings.
    /// </summary>
    public static Session WithShopOf(Surroundings world, Session alone, string asked, string? config, bool noConfig)
    {
        var file = alone.Workspace.Asked.Single();
        return alone.Workspace.SettingsFor(file).File is { } settings && config is null && !noConfig
            ? Open(world, [asked, Path.GetDirectoryName(Path.Combine(alone.Workspace.Root, settings))!], null, null, false)
            : alone;
    }

    /// <exception cref="UsageException">A path that was asked for cannot be used.</exception>
    internal static void RefuseUnusable(Workspace workspace)
    {
        if (workspace.Unusable.Count > 0)
        {
            var first = workspace.Unusable[0];
            throw new UsageException($"'{first.Path}' {first.Reason}.");
        }
    }

    private static void Refuse(Input input, Workspace workspace, bool mayBeEmpty)
    {
        RefuseUnusable(workspace);
        if (workspace.Unrecognised.Count > 0)
        {
            var named = workspace.Unrecognised[0];
            var stem = named.EndsWith(".json", StringComparison.OrdinalIgnoreCase) ? named[..^".json".Length] : null;
            throw new UsageException(
                $"'{named}' is no file of ours; names end in .stock.json, .recipe.json, .water.json, "
                    + ".substances.json, .profile.json, .batch.json or .rule.json, or are recipelint.json."
                    + (stem is null ? "" : $" If it holds a stock, call it '{stem}.stock.json'."));
        }

        if (workspace.Asked.Count == 0 && !mayBeEmpty)
        {
            throw new UsageException(NotRead.Line(input.Files, workspace.NotOurs, workspace.Root)
                ?? "no stock, recipe, water, substances or settings file was found there; 'recipelint init my-shop' writes some to start "
                    + "from.");
        }
    }
}
