using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>What names in one file can refer to: substances, other files, equipment, crop profiles.</summary>
/// <param name="Catalogue">The built-in substances and the shop's own that serve this file.</param>
/// <param name="Settings">The shop settings that hold for this file.</param>
/// <param name="References">Turns file references into workspace paths.</param>
/// <param name="Profiles">Known crop profiles; null when names of profiles are not checked.</param>
/// <param name="OwnProfiles">Those of them that the shop describes in files of its own.</param>
/// <param name="UnreadSubstances">Names whose entry in a substances file could not be read and is reported there.</param>
/// <param name="ChecksEquipment">False when the run was asked to ignore the shop settings.</param>
internal sealed record Resolution(
    SubstanceCatalogue Catalogue,
    ShopSettings Settings,
    IReferences References,
    IReadOnlyCollection<string>? Profiles,
    IReadOnlyList<ProfileDocument> OwnProfiles,
    IReadOnlySet<string> UnreadSubstances,
    bool ChecksEquipment)
{
    public const string StockEnding = ".stock.json";
    public const string RecipeEnding = ".recipe.json";
    public const string WaterEnding = ".water.json";

    /// <summary>The one substance a name fits; null after reporting that it fits none or several.</summary>
    public Substance? FindSubstance(Located<string>? name, JsonItem? item, FieldReader fields) =>
        new SubstanceNames(Catalogue, UnreadSubstances).Find(name, item, fields);

    /// <summary>The workspace path of a referenced file; null after reporting why not.</summary>
    public string? FindFile(Located<string>? reference, JsonItem? item, FieldReader fields, string ending, string what)
    {
        if (reference is null || item is null)
        {
            return null;
        }

        var resolved = References.Resolve(fields.File, reference.Value, ending, what);
        if (resolved.File is null)
        {
            fields.Report(resolved.Kind, item, resolved.Message, resolved.Suggestions);
        }

        return resolved.File;
    }

    /// <summary>A water by built-in name or file; null when absent. An unresolved one keeps its name without a file.</summary>
    public Located<WaterReference>? FindWater(JsonItem? item, FieldReader fields)
    {
        if (fields.Text(item) is not { } name)
        {
            return null;
        }

        if (BuiltInWaters.Find(name.Value) is not null)
        {
            return new Located<WaterReference>(new WaterReference(name.Value, null), name.Place);
        }

        if (!name.Value.EndsWith(WaterEnding, StringComparison.OrdinalIgnoreCase) && !name.Value.Contains('/', StringComparison.Ordinal))
        {
            IReadOnlyList<string> near = BuiltInWaters.NameFor(name.Value) is { } meant ? [meant] :
            [
                .. Spelling.Nearest(name.Value, BuiltInWaters.Names),
                .. References.Near(fields.File, name.Value + WaterEnding, WaterEnding),
            ];
            fields.Report(
                ProblemKind.MissingReference,
                item!,
                $"'{Wording.Shorten(name.Value)}' is no water known here. Write "
                    + $"{Wording.Join([.. BuiltInWaters.Names.Select(n => $"'{n}'")], "or")}, or a *{WaterEnding} "
                        + $"file.{(near.Count == 0 && BuiltInWaters.DiffersByPlace(name.Value)
                            ? " It differs from place to place: 'recipelint init --water' asks for what its report says."
                            : Wording.DidYouMean(near))}",
                near);
            return new Located<WaterReference>(new WaterReference(name.Value, null) { IsUnresolved = true }, name.Place);
        }

        var file = FindFile(name, item, fields, WaterEnding, "water file");
        return new Located<WaterReference>(new WaterReference(name.Value, file) { IsUnresolved = file is null }, name.Place);
    }

    /// <summary>A scale or measure by name; reported when the shop has none of that name.</summary>
    public Located<string>? FindTool(JsonItem? item, FieldReader fields) =>
        FindEquipment(item, fields, "scale or measure", Settings.Scales.Select(s => s.Name).Concat(Settings.Measures.Select(m => m.Name)));

    public Located<string>? FindMeasure(JsonItem? item, FieldReader fields) =>
        FindEquipment(item, fields, "measure", Settings.Measures.Select(m => m.Name));

    public Located<string>? FindVessel(JsonItem? item, FieldReader fields) =>
        FindEquipment(item, fields, "vessel", Settings.Vessels.Select(v => v.Name));

    public Site? FindSite(JsonItem item, FieldReader fields)
    {
        FindEquipment(item, fields, "site", Settings.Sites.Select(s => s.Name));
        return Settings.Sites.FirstOrDefault(s => s.Name == item.Text);
    }

    /// <summary>
    /// A crop by the name of a profile or by its file; the file is null for a built-in profile and for one that is not known (reported).
    /// </summary>
    public (Located<string>? Name, string? File) FindProfile(JsonItem? item, FieldReader fields)
    {
        var name = fields.Text(item);
        if (name is null)
        {
            return (null, null);
        }

        if (name.Value.EndsWith(ProfileFileReader.Ending, StringComparison.OrdinalIgnoreCase))
        {
            return (name, FindFile(name, item, fields, ProfileFileReader.Ending, "profile file"));
        }

        if (OwnProfiles.FirstOrDefault(p => p.Name == name.Value) is { } own)
        {
            return (name, own.File);
        }

        if (Profiles is { } known && !known.Contains(name.Value))
        {
            ProfileNames.Report(name, known, fields);
        }

        return (name, null);
    }

    private Located<string>? FindEquipment(JsonItem? item, FieldReader fields, string what, IEnumerable<string> names)
    {
        var name = fields.Text(item);
        if (name is null || !ChecksEquipment || !Settings.IsReadable || Settings.UnreadNames.Contains(name.Value))
        {
            return name;
        }

        var known = names.ToArray();
        if (!known.Contains(name.Value))
        {
            var near = Spelling.Nearest(name.Value, known);
            var where = Settings.File ?? "the shop settings (recipelint.json), of which there are none here";
            var hint = near.Count > 0 ? $" Did you mean {Wording.Join([.. near.Select(n => $"'{n}'")], "or")}?" : "";
            fields.Report(ProblemKind.UnknownEquipment, item!, $"'{Wording.Shorten(name.Value)}' is no {what} of {where}.{hint}", near);
        }

        return name;
    }
}
