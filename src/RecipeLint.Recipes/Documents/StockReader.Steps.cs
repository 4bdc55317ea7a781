using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <content>The steps.</content>
internal sealed partial class StockReader
{
    private static readonly (string Verb, Handling Handling)[] Handlings =
    [
        ("stir", Handling.Stir), ("filter", Handling.Filter), ("warm", Handling.Warm),
        ("cool", Handling.Cool), ("rest", Handling.Rest), ("rinse", Handling.Rinse),
    ];

    /// <summary>An aliquot is measured by volume or weight, never in moles of something.</summary>
    private static readonly Due AliquotDue =
        new([Dimension.Volume, Dimension.Mass, Dimension.Drops, Dimension.Dose], ["20 mL", "5 mL/L"]) { UsualUnits = ["mL", "g"] };

    private List<Step> ReadSteps(JsonItem? list)
    {
        var entries = list is { Kind: JsonKind.Array } ? list.Items.Where(i => i.Kind == JsonKind.Object).ToArray() : [];
        _complete &= list is { Kind: JsonKind.Array } && entries.Length == list.Items.Count;
        var ids = new IdSet(entries, fields);
        var steps = new List<Step>(entries.Length);
        foreach (var entry in entries)
        {
            if (ReadStep(entry, ids) is { } step)
            {
                steps.Add(step with { Note = fields.Note(entry) });
            }
            else
            {
                _complete = false;
            }
        }

        return steps;
    }

    private Step? ReadStep(JsonItem entry, IdSet ids)
    {
        // With two verbs in one step the schema has spoken; the first of this order is read.
        if (entry["add"] is { Kind: JsonKind.Text } add)
        {
            return add.Text.EndsWith(".json", StringComparison.OrdinalIgnoreCase) ? ReadAliquot(entry, add, ids) : ReadAdd(entry, add, ids);
        }

        if (entry["pour"] is { } pour)
        {
            return ReadPour(entry, pour, ids);
        }

        if (entry["adjust"] is { } adjust)
        {
            return ReadAdjust(entry, adjust, ids);
        }

        if (entry["topUp"] is { } topUp)
        {
            return ReadTopUp(entry, topUp, ids);
        }

        foreach (var (verb, handling) in Handlings)
        {
            if (fields.Text(entry[verb]) is { } how)
            {
                return new HandlingStep(ids.For(entry, verb), fields.At(entry), handling, how);
            }
        }

        return null;
    }

    private AddStep ReadAdd(JsonItem entry, JsonItem add, IdSet ids)
    {
        var written = WrittenAddition.Read(entry, add, ids, _makes, resolution, fields);
        _complete &= written.IsComplete;
        return new AddStep(written.Id, fields.At(entry))
        {
            What = written.What,
            Substance = written.Substance,
            Amount = written.Amount,
            Tolerance = written.Tolerance,
            Assay = written.Assay,
            With = written.With,
        };
    }

    private AliquotStep ReadAliquot(JsonItem entry, JsonItem add, IdSet ids)
    {
        var what = new Located<string>(add.Text, fields.At(add));
        var file = Needed(resolution.FindFile(what, add, fields, Resolution.StockEnding, "stock file"));
        var (amount, _) = PortionReader.Read(entry["amount"], AliquotDue, fields);
        if (Needed(amount) is not null && _makes is not null)
        {
            Plausibility.AgainstBatch(amount!.Value, null, _makes, entry["amount"]!, fields);
        }

        return new AliquotStep(ids.For(entry, NameOf(add.Text, Resolution.StockEnding)), fields.At(entry))
        {
            What = what,
            StockFile = file,
            Amount = amount,
            With = resolution.FindTool(entry["with"], fields),
        };
    }

    private PourStep ReadPour(JsonItem entry, JsonItem pour, IdSet ids)
    {
        var volume = Needed(Plausibility.PositiveVolume(fields.Located(pour, Due.Volume, q => q.Volume), pour, fields));
        if (volume is not null && _makes is not null)
        {
            Plausibility.LiquidAgainstBatch(volume.Value, _makes, pour, fields);
        }

        return new PourStep(ids.For(entry, "pour"), fields.At(entry))
        {
            Volume = volume,
            Of = FindWater(entry),
            With = resolution.FindTool(entry["with"], fields),
        };
    }

    private TopUpStep ReadTopUp(JsonItem entry, JsonItem topUp, IdSet ids) => new(ids.For(entry, "top-up"), fields.At(entry))
    {
        To = Needed(Plausibility.PositiveVolume(fields.Located(topUp, Due.Volume, q => q.Volume), topUp, fields)),
        Of = FindWater(entry),
    };

    private AdjustStep ReadAdjust(JsonItem entry, JsonItem adjust, IdSet ids)
    {
        var quantity = fields.Quantity(adjust, Due.PhStep);
        var target = quantity is null ? null : new Located<double>(quantity.Number, fields.At(adjust));
        var reagent = fields.Text(entry["using"]);
        return new AdjustStep(ids.For(entry, "adjust"), fields.At(entry))
        {
            TargetPh = Needed(Plausibility.Ph(target, adjust, fields)),
            PhTolerance = quantity?.Tolerance?.HalfWidth(quantity.Number),
            Using = reagent,
            Reagent = Needed(StatedStrength.Reagent(entry, resolution, fields)),
        };
    }

    private Located<WaterReference>? FindWater(JsonItem entry)
    {
        var water = resolution.FindWater(entry["of"], fields);
        _complete &= water is not { Value.IsUnresolved: true };
        return water;
    }
}
