using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Reads one *.stock.json.</summary>
internal sealed partial class StockReader(FieldReader fields, Resolution resolution)
{
    private bool _complete = true;
    private Located<Volume>? _makes;

    /// <summary>The stock; null when the file is not an object at all.</summary>
    public StockDocument? Read(JsonItem root)
    {
        if (root.Kind != JsonKind.Object)
        {
            return null;
        }

        NotUnderstoodReader.Report(root, fields);
        _makes = Needed(Plausibility.Batch(fields.Located(root["makes"], Due.Volume, q => q.Volume), root["makes"], fields));
        var steps = ReadSteps(root["steps"]);
        return new StockDocument
        {
            File = fields.File,
            Name = fields.Text(root["name"])?.Value ?? NameOf(fields.File, Resolution.StockEnding),
            Makes = _makes,
            Dose = Plausibility.Dose(fields.Located(root["dose"], Due.Dose, q => q.Dose), root["dose"], fields),
            Keep = ReadKeeping(root["keep"]),
            Steps = steps,
            ForBench = root["use"] is { Kind: JsonKind.Text, Text: "bench" },
            Label = ReadLabel(root["label"]),
            Vessel = resolution.FindVessel(root["vessel"], fields),
            IsComplete = _complete,
        };
    }

    /// <summary>The file name without folder and ending.</summary>
    public static string NameOf(string file, string ending)
    {
        var name = FilePaths.NameOf(file);
        return name.EndsWith(ending, StringComparison.OrdinalIgnoreCase) && name.Length > ending.Length ? name[..^ending.Length] : name;
    }

    private Keeping? ReadKeeping(JsonItem? keep)
    {
        if (keep is not { Kind: JsonKind.Object })
        {
            return null;
        }

        var duration = fields.Located(keep["for"], Due.Duration, q => q.Duration);
        var light =
            fields.Word(keep["light"], ("dark", LightExposure.Dark), ("shade", LightExposure.Shade), ("light", LightExposure.Light));
        return new Keeping(
            StorageReader.Read(keep["at"], fields, resolution), Plausibility.PositiveDuration(duration, keep["for"], fields), light);
    }

    private Label? ReadLabel(JsonItem? label)
    {
        if (label is not { Kind: JsonKind.Object })
        {
            return null;
        }

        bool States(string key) => label[key] is { Kind: JsonKind.Text } item && !string.IsNullOrWhiteSpace(item.Text);
        return new Label(
            fields.At(label),
            States("contents"),
            States("dilution"),
            States("date"),
            States("hazard"),
            States("keepApart"),
            States("disposal"),
            States("colour") ? label["colour"]!.Text.Trim() : null)
        {
            ContentsText = States("contents") ? label["contents"]!.Text.Trim() : null,
        };
    }

    /// <summary>Passes a value on and remembers when one that decides the contents is missing.</summary>
    private T? Needed<T>(T? value)
        where T : class
    {
        _complete &= value is not null;
        return value;
    }
}
