using System.Globalization;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>What accepting a finding writes: a suppression in the settings of its shop, with reason, value and last day.</summary>
/// <param name="File">The settings file, relative to the root or full where it lies elsewhere.</param>
/// <param name="Patch">Null where the settings cannot hold it.</param>
public sealed record Acceptance(string File, PatchResult? Patch)
{
    /// <param name="last">The last day it holds; null for no end.</param>
    public static Acceptance Of(Judged judged, Finding finding, string reason, DateOnly? last)
    {
        var settings = judged.Workspace.SettingsFor(finding.Place.File);
        var file = settings.File ?? LoadOptions.SettingsFileName;
        var folder = file[..(file.LastIndexOf('/') + 1)];
        if (!settings.IsReadable
            || !finding.Place.File.StartsWith(folder, StringComparison.Ordinal)
            || Path.IsPathRooted(finding.Place.File))
        {
            return new Acceptance(file, null);
        }

        var entry = Entry(finding, finding.Place.File[folder.Length..], reason, last);
        var patch = settings.File is not null
            ? judged.Workspace.Sources.TryGetValue(file, out var source) ? Patched(source, entry) : null
            : JsonPatcher.Create(new JsonEdit.NewFile(
                Place.Whole(file), new JsonDraft.Object([new DraftMember("suppressions", new JsonDraft.List([entry]))])));
        return new Acceptance(file, patch);
    }

    private static JsonDraft.Object Entry(Finding finding, string file, string reason, DateOnly? last)
    {
        var members = new List<DraftMember> { new("rule", JsonDraft.Of(finding.Rule.Name)), new("file", JsonDraft.Of(file)) };
        if (finding.IdPath.Length > 0)
        {
            members.Add(new DraftMember("at", JsonDraft.Of(finding.IdPath)));
        }

        members.Add(new DraftMember("reason", JsonDraft.Of(reason)));
        if (BaselineEntry.Of(finding).Value is { } value)
        {
            members.Add(new DraftMember("accepted", new JsonDraft.Literal(value.ToString("R", CultureInfo.InvariantCulture))));
        }

        if (last is { } day)
        {
            members.Add(new DraftMember("expires", JsonDraft.Of(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))));
        }

        return new JsonDraft.Object(members);
    }

    private static PatchResult Patched(SourceFile source, JsonDraft.Object entry)
    {
        var root = Place.Whole(source.Path);
        return source.Tree?.Root["suppressions"] is { } list
            ? JsonPatcher.Apply(source, [new JsonEdit.InsertElement(root.Child("suppressions"), list.Items.Count, entry)])
            : JsonPatcher.Apply(source, [new JsonEdit.InsertMember(root, "suppressions", new JsonDraft.List([entry]))]);
    }
}
