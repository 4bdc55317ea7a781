using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Batches;

/// <summary>Reads one *.batch.json.</summary>
internal sealed class BatchReader(FieldReader fields, Resolution resolution)
{
    /// <summary>What a scale or measure shows; a batch is never recorded per litre.</summary>
    private static readonly Due Taken =
        new([Dimension.Mass, Dimension.Volume, Dimension.Drops], ["80.02 g", "45 mL"]) { UsualUnits = ["g", "mL"] };

    private static readonly Due Weight = Due.Mass with { Examples = ["1.12 kg", "560 g"], AllowTolerance = true };

    private static readonly Due Reading = Due.Conductivity with { AllowRange = false };

    private bool _complete = true;

    /// <summary>The record; null when the file is not an object at all.</summary>
    public BatchDocument? Read(JsonItem root)
    {
        if (root.Kind != JsonKind.Object)
        {
            return null;
        }

        var (stock, recipe) = (fields.Text(root["stock"]), fields.Text(root["recipe"]));
        var size = Plausibility.Batch(fields.Located(root["batch"], Due.Volume, q => q.Volume), root["batch"], fields);
        _complete &= root["batch"] is null || size is not null;
        var steps = Entries(root["steps"]).ToArray();
        _complete &= root["steps"] is null or { Kind: JsonKind.Array } && steps.Length == (root["steps"]?.Items.Count ?? 0);
        return new BatchDocument
        {
            File = fields.File,
            Stock = stock,
            StockFile = resolution.FindFile(stock, root["stock"], fields, Resolution.StockEnding, "stock file"),
            Recipe = recipe,
            RecipeFile = resolution.FindFile(recipe, root["recipe"], fields, Resolution.RecipeEnding, "recipe file"),
            Edition = fields.Text(root["edition"]),
            Made = fields.Date(root["made"]),
            By = fields.Text(root["by"])?.Value,
            Size = size,
            Steps = [.. steps.Select(ReadStep)],
            Readings = [.. Entries(root["readings"]).Select(ReadReading).OfType<BatchReading>()],
            Seen = [.. Entries(root["seen"]).Select(ReadSight).OfType<BatchSight>()],
            Note = fields.Note(root),
            IsComplete = _complete,
        };
    }

    private static IEnumerable<JsonItem> Entries(JsonItem? list) =>
        list is { Kind: JsonKind.Array } ? list.Items.Where(i => i.Kind == JsonKind.Object) : [];

    private BatchStep ReadStep(JsonItem entry)
    {
        var what = fields.Text(entry["add"]);
        var substance = resolution.FindSubstance(what, entry["add"], fields);
        var (amount, nothing) = ReadAmount(entry["amount"]);
        if (amount is not null && substance is not null && !PortionReader.Fits(amount.Value, substance, entry["amount"]!, fields))
        {
            amount = null;
        }

        if (what is not null && entry["amount"] is null)
        {
            fields.Report(
                ProblemKind.MissingKey,
                entry["add"]!,
                $"How much of '{Wording.Shorten(what.Value)}' went in is not recorded. Add \"amount\", such as \"3.2 g\".");
        }

        _complete &= (what is null || (substance is not null && entry["amount"] is not null))
            && (entry["amount"] is null || nothing || amount is not null);
        var step = fields.Text(entry["step"]);
        _complete &= step is not null || what is not null;
        return new BatchStep(fields.At(entry))
        {
            Step = step,
            What = what,
            Substance = substance,
            Amount = amount,
            LeftOut = nothing,
            Lot = fields.Text(entry["lot"])?.Value,
            With = resolution.FindTool(entry["with"], fields),
            Note = fields.Note(entry),
        };
    }

    /// <summary>What went in, or that nothing did.</summary>
    private (Located<Portion>? Amount, bool Nothing) ReadAmount(JsonItem? item)
    {
        if (fields.Quantity(item, Taken) is not { } quantity)
        {
            return (null, false);
        }

        if (quantity.Low == 0 && quantity.High == 0)
        {
            return (null, true);
        }

        Portion portion = quantity.Dimension switch
        {
            Dimension.Mass => new Portion.ByMass(quantity.Mass),
            Dimension.Volume => new Portion.ByVolume(quantity.Volume),
            _ => new Portion.ByDrops(quantity.Drops),
        };
        return (Plausibility.PositivePortion(new Located<Portion>(portion, fields.At(item!)), item, fields), false);
    }

    private BatchReading? ReadReading(JsonItem entry)
    {
        var place = fields.At(entry);
        var dilution = Plausibility.Dose(fields.Located(entry["dilution"], Due.Dose, q => q.Dose), entry["dilution"], fields);
        if (entry["dilution"] is not null && dilution is null)
        {
            return null;
        }

        if (ReadValue(entry, place) is not { } reading)
        {
            return null;
        }

        return reading with { Dilution = dilution is { Value.LitresPerLitre: > 0 and <= 1 } ? dilution.Value.Dilution : 1 };
    }

    private BatchReading? ReadValue(JsonItem entry, Place place)
    {
        if (entry["pH"] is { } ph)
        {
            return fields.Quantity(ph, Due.Ph with { AllowRange = false }) is { } quantity
                && Plausibility.Ph(new Located<double>(quantity.Number, fields.At(ph)), ph, fields) is { } value
                    ? new PhReading(place, quantity.Tolerance, value.Value)
                    : null;
        }

        if (entry["EC"] is { } ec)
        {
            return fields.Quantity(ec, Reading) is { } quantity
                && Plausibility.Positive(
                    new Located<Conductivity>(quantity.Conductivities.Low, fields.At(ec)), c => c.MillisiemensPerCentimetre, ec, fields)
                    is { } value
                    ? new ConductivityReading(place, quantity.Tolerance, value.Value)
                    : null;
        }

        if (entry["weight"] is not { } weight || fields.Quantity(weight, Weight) is not { } weighed
            || Plausibility.PositiveMass(new Located<Mass>(weighed.Mass, fields.At(weight)), weight, fields) is not { } mass)
        {
            return null;
        }

        var of = Plausibility.PositiveVolume(fields.Located(entry["of"], Due.Volume, q => q.Volume), entry["of"], fields);
        return entry["of"] is not null && of is null ? null : new WeightReading(place, weighed.Tolerance, mass.Value, of?.Value);
    }

    private BatchSight? ReadSight(JsonItem entry)
    {
        if (fields.Text(entry["what"]) is not { } what)
        {
            return null;
        }

        if (string.IsNullOrWhiteSpace(what.Value))
        {
            fields.Report(
                ProblemKind.WrongShape, entry["what"]!, "Nothing is said of what was seen. Write \"clear\" where nothing fell out.");
            return null;
        }

        // "0 days" is at once.
        var after = fields.Located(entry["after"], Due.Duration, q => q.Duration);
        return after is { Value.Days: < 0 }
            ? null
            : new BatchSight(fields.At(entry), what, after, StorageReader.Read(entry["at"], fields, resolution))
            {
                Note = fields.Note(entry),
            };
    }
}
