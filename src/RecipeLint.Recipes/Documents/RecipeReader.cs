using System.Globalization;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Reads one *.recipe.json.</summary>
internal sealed class RecipeReader(FieldReader fields, Resolution resolution)
{
    private bool _complete = true;
    private Located<Volume>? _final;

    /// <summary>The recipe; null when the file is not an object at all.</summary>
    public RecipeDocument? Read(JsonItem root)
    {
        if (root.Kind != JsonKind.Object)
        {
            return null;
        }

        _final = Needed(Plausibility.Batch(fields.Located(root["final"], Due.Volume, q => q.Volume), root["final"], fields));
        var water = resolution.FindWater(root["water"], fields);
        _complete &= water is not { Value.IsUnresolved: true };
        var doses = ReadDoses(root["doses"]);
        var (crop, profile) = resolution.FindProfile(root["crop"], fields);
        return new RecipeDocument
        {
            File = fields.File,
            Name = fields.Text(root["name"])?.Value ?? StockReader.NameOf(fields.File, Resolution.RecipeEnding),
            Crop = crop,
            ProfileFile = profile,
            Stage = fields.Text(root["stage"]),
            Water = water,
            At = StorageReader.Read(root["at"], fields, resolution),
            Final = _final,
            VolumeMeaning = fields.Word(root["volume"], ("made up", FinalVolumeMeaning.MadeUp), ("added to", FinalVolumeMeaning.AddedTo)),
            GivenTo = fields.Word(root["givenTo"], ("roots", Receiver.Roots), ("leaves", Receiver.Leaves)),
            Doses = doses,
            Adjust = ReadAdjustment(root["adjust"]),
            Targets = TargetReader.Read(root["targets"], fields),
            IsComplete = _complete,
        };
    }

    private List<DoseEntry> ReadDoses(JsonItem? list)
    {
        var entries = list is { Kind: JsonKind.Array } ? list.Items.Where(i => i.Kind == JsonKind.Object).ToArray() : [];
        _complete &= list is { Kind: JsonKind.Array } && entries.Length == list.Items.Count;
        var ids = new IdSet(entries, fields);
        var doses = new List<DoseEntry>(entries.Length);
        foreach (var entry in entries)
        {
            if (entry["stock"] is { Kind: JsonKind.Text } stock)
            {
                doses.Add(ReadStockDose(entry, stock, ids));
            }
            else if (entry["add"] is { Kind: JsonKind.Text } add)
            {
                doses.Add(ReadDirectDose(entry, add, ids));
            }
            else
            {
                _complete = false;
            }
        }

        return doses;
    }

    private StockDose ReadStockDose(JsonItem entry, JsonItem stock, IdSet ids)
    {
        var reference = new Located<string>(stock.Text, fields.At(stock));
        var file = Needed(resolution.FindFile(reference, stock, fields, Resolution.StockEnding, "stock file"));
        var dose = Plausibility.Dose(fields.Located(entry["dose"], Due.Dose, q => q.Dose), entry["dose"], fields);
        var amount = Plausibility.PositiveVolume(fields.Located(entry["amount"], Due.Volume, q => q.Volume), entry["amount"], fields);
        if (amount is not null && _final is not null)
        {
            Plausibility.LiquidAgainstBatch(amount.Value, _final, entry["amount"]!, fields);
        }

        _complete &= (entry["dose"] is null || dose is not null) && (entry["amount"] is null || amount is not null);
        return new StockDose(ids.For(entry, StockReader.NameOf(stock.Text, Resolution.StockEnding)), fields.At(entry))
        {
            Stock = reference,
            StockFile = file,
            Dose = dose,
            Amount = amount,
            With = resolution.FindMeasure(entry["with"], fields),
            Strokes = ReadStrokes(entry["strokes"]),
        };
    }

    private Located<int>? ReadStrokes(JsonItem? item)
    {
        if (item is not { Kind: JsonKind.Number })
        {
            return null;
        }

        // "4.0" and "4e0" are the integer 4 to a schema as well.
        if (FieldReader.Number(item) is { } number && number is >= 1 and <= int.MaxValue && number == Math.Floor(number))
        {
            if (number > 10_000)
            {
                fields.Implausible(
                    item,
                    $"{number.ToString(CultureInfo.InvariantCulture)} strokes is more than anyone counts. Use a larger measure.",
                    new NamedValue("strokes", number, ""));
            }

            return new Located<int>((int)number, fields.At(item));
        }

        _complete = false;
        return null;
    }

    private DirectDose ReadDirectDose(JsonItem entry, JsonItem add, IdSet ids)
    {
        var written = WrittenAddition.Read(entry, add, ids, _final, resolution, fields);
        _complete &= written.IsComplete;
        return new DirectDose(written.Id, fields.At(entry))
        {
            What = written.What,
            Substance = written.Substance,
            Amount = written.Amount,
            Tolerance = written.Tolerance,
            Assay = written.Assay,
            With = written.With,
        };
    }

    private PhAdjustment? ReadAdjustment(JsonItem? adjust)
    {
        if (adjust is not { Kind: JsonKind.Object })
        {
            return null;
        }

        var quantity = fields.Quantity(adjust["pH"], Due.Ph with { AllowRange = false });
        var target = quantity is null ? null : new Located<double>(quantity.Number, fields.At(adjust["pH"]!));
        var reagent = fields.Text(adjust["using"]);
        return new PhAdjustment(
            fields.At(adjust),
            Plausibility.Ph(target, adjust["pH"], fields),
            quantity?.Tolerance?.HalfWidth(quantity.Number),
            reagent,
            StatedStrength.Reagent(adjust, resolution, fields));
    }

    private T? Needed<T>(T? value)
        where T : class
    {
        _complete &= value is not null;
        return value;
    }
}
