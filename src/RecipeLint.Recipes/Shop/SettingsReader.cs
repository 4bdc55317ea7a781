using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Shop;

/// <summary>Finds the one substance that a name fits; null after reporting at the item that it fits none or several.</summary>
internal delegate Substance? SubstanceFinder(Located<string>? name, JsonItem? item, FieldReader fields);

/// <summary>Reads one recipelint.json. Names of rules are checked where the rules are known.</summary>
/// <param name="substances">Knows the built-in substances and the shop's own; asked only where prices are declared.</param>
internal sealed class SettingsReader(FieldReader fields, IReadOnlyCollection<string>? profiles, SubstanceFinder substances)
{
    private static readonly (string Word, MeasureKind Kind)[] Kinds =
    [
        ("cylinder", MeasureKind.Cylinder), ("flask", MeasureKind.Flask), ("pipette", MeasureKind.Pipette),
        ("syringe", MeasureKind.Syringe),
        ("injector", MeasureKind.Injector), ("jug", MeasureKind.Jug), ("dropper", MeasureKind.Dropper), ("spoon", MeasureKind.Spoon),
    ];

    private readonly Dictionary<string, Place> _tools = new(StringComparer.Ordinal);

    private readonly HashSet<string> _unread = new(StringComparer.Ordinal);

    private readonly Dictionary<string, Place> _priced = new(StringComparer.Ordinal);

    public ShopSettings Read(JsonItem root) => new()
    {
        File = fields.File,
        IsReadable = root.Kind == JsonKind.Object,
        Scales = ReadList(root["scales"], ReadScale),
        Measures = ReadList(root["measures"], ReadMeasure),
        Meters = ReadList(root["meters"], ReadMeter),
        Vessels = ReadList(root["vessels"], ReadVessel),
        Sites = ReadList(root["sites"], ReadSite),
        Prices = ReadList(root["prices"], ReadPrice),
        Currency = fields.Text(root["currency"])?.Value,
        Profile = ReadProfile(root["profile"]),
        Rules = ReadRules(root["rules"]),
        Suppressions = ReadList(root["suppressions"], ReadSuppression),
        Calibrations = [.. Calibrations(root["scales"]), .. Calibrations(root["meters"])],
        Paths = ReadList(root["paths"], ReadPaths),
        Extends = fields.Text(root["extends"]),
        PinnedData = fields.Text(root["data"]),
        Baseline = ReadBaseline(root["baseline"]),
        HouseRuleFolders = ReadFolders(root["houseRules"]),
        UnreadNames = _unread,
    };

    private List<Located<string>> ReadFolders(JsonItem? item) => item switch
    {
        { Kind: JsonKind.Text } => [fields.Text(item)!],
        { Kind: JsonKind.Array } => [.. item.Items.Select(fields.Text).OfType<Located<string>>()],
        _ => [],
    };

    private List<T> ReadList<T>(JsonItem? list, Func<JsonItem, T?> read)
        where T : class
    {
        var items = new List<T>();
        var names = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (var entry in list is { Kind: JsonKind.Array } ? list.Items.Where(i => i.Kind == JsonKind.Object) : [])
        {
            // A step names a scale or a measure by one word, so the two share their names.
            var taken = typeof(T) == typeof(Scale) || typeof(T) == typeof(Measure) ? _tools : names;
            if (fields.Text(entry["name"]) is { } name && !taken.TryAdd(name.Value, name.Place))
            {
                fields.Report(new Problem(
                    ProblemKind.DuplicateKey,
                    name.Place,
                    $"The name '{Wording.Shorten(name.Value)}' is taken. Give this one a name of its own.")
                {
                    Related = [new RelatedPlace(taken[name.Value], "first used here")],
                });
            }
            else if (read(entry) is { } item)
            {
                items.Add(item);
            }
            else if (entry["name"] is { Kind: JsonKind.Text } unread)
            {
                _unread.Add(unread.Text);
            }
        }

        return items;
    }

    private Scale? ReadScale(JsonItem entry)
    {
        var readability = Mass(entry["readability"]);
        return fields.Text(entry["name"]) is { } name && readability is not null
            ? new Scale(
                name.Value,
                fields.At(entry),
                Mass(entry["capacity"])?.Value,
                readability.Value,
                Mass(entry["repeatability"])?.Value,
                Mass(entry["minimumWeight"])?.Value)
            : null;
    }

    private Measure? ReadMeasure(JsonItem entry)
    {
        foreach (var (word, kind) in Kinds)
        {
            if (entry["kind"] is { Kind: JsonKind.Text } item && item.Text == word && fields.Text(entry["name"]) is { } name)
            {
                return new Measure(
                    name.Value,
                    fields.At(entry),
                    kind,
                    Volume(entry["capacity"])?.Value,
                    Volume(entry["readability"])?.Value,
                    fields.Tolerance(entry["tolerance"], Dimension.Volume));
            }
        }

        return null;
    }

    private Meter? ReadMeter(JsonItem entry)
    {
        if (fields.Text(entry["name"]) is not { } name
            || fields.Word(entry["measures"], ("pH", MeterKind.Ph), ("EC", MeterKind.Conductivity)) is not { } kind)
        {
            return null;
        }

        var accuracy = fields.Tolerance(entry["accuracy"], kind.Value == MeterKind.Ph ? Dimension.Number : Dimension.Conductivity);
        return accuracy is { } stated ? new Meter(name.Value, fields.At(entry), kind.Value, stated) : null;
    }

    private Vessel? ReadVessel(JsonItem entry) => fields.Text(entry["name"]) is { } name
        ? new Vessel(name.Value, fields.At(entry), Volume(entry["capacity"])?.Value, Mass(entry["tare"])?.Value)
        : null;

    private Site? ReadSite(JsonItem entry)
    {
        if (fields.Text(entry["name"]) is not { } name || fields.Located(entry["at"], Due.Temperatures, q => q.Temperatures) is not { } at)
        {
            return null;
        }

        Plausibility.Storage(at.Value, entry["at"]!, fields);
        return new Site(name.Value, fields.At(entry), at.Value);
    }

    private Price? ReadPrice(JsonItem entry)
    {
        var due = new Due([Dimension.Mass, Dimension.Volume], ["25 kg", "10 L"]) { UsualUnits = ["kg", "L"] };
        var of = fields.Text(entry["of"]);
        var substance = substances(of, entry["of"], fields);
        if (of is null || Plausibility.Cost(FieldReader.Number(entry["cost"]), entry["cost"], fields) is not { } cost
            || fields.Quantity(entry["for"], due) is not { Low: > 0 } bought)
        {
            return null;
        }

        if (substance is not null && !_priced.TryAdd(substance.Id, of.Place))
        {
            fields.Report(new Problem(
                ProblemKind.DuplicateKey,
                of.Place,
                $"'{Wording.Shorten(of.Value)}' has a price already, so this one is not counted. Keep the price that holds.")
            {
                Related = [new RelatedPlace(_priced[substance.Id], "the price that is counted")],
            });
            return null;
        }

        return bought.Dimension == Dimension.Mass
            ? new Price(of.Value, fields.At(entry), cost, bought.Mass, null, substance)
            : new Price(of.Value, fields.At(entry), cost, null, bought.Volume, substance);
    }

    private Located<string>? ReadProfile(JsonItem? item)
    {
        var name = fields.Text(item);
        if (name is not null && profiles is not null && !profiles.Contains(name.Value))
        {
            ProfileNames.Report(name, profiles, fields);
        }

        return name;
    }

    private List<RuleSetting> ReadRules(JsonItem? rules)
    {
        var settings = new List<RuleSetting>();
        foreach (var (name, item) in rules is { Kind: JsonKind.Object } ? rules.Members.Select(m => (m.Name, m.Value)) : [])
        {
            if (name == "note" || rules![name] != item)
            {
                continue;
            }

            if (item.Kind == JsonKind.Text)
            {
                settings.Add(new RuleSetting(name, fields.At(item), LevelOf(item), new Dictionary<string, Located<string>>()));
            }
            else if (item.Kind == JsonKind.Object)
            {
                settings.Add(new RuleSetting(name, fields.At(item), LevelOf(item["level"]), ReadOptions(item)));
            }
        }

        return settings;
    }

    private Dictionary<string, Located<string>> ReadOptions(JsonItem rule)
    {
        var options = new Dictionary<string, Located<string>>(StringComparer.Ordinal);
        foreach (var (name, item) in rule.Members.Select(m => (m.Name, m.Value)))
        {
            var literal = item.Kind switch
            {
                JsonKind.Text or JsonKind.Number => item.Text,
                JsonKind.True => "true",
                JsonKind.False => "false",
                _ => null,
            };
            if (name is not ("level" or "note") && literal is not null)
            {
                options[name] = new Located<string>(literal, fields.At(item));
            }
        }

        return options;
    }

    private static string? LevelOf(JsonItem? item) =>
        item is { Kind: JsonKind.Text, Text: "off" or "note" or "warning" or "error" } ? item.Text : null;

    private PathRules? ReadPaths(JsonItem entry)
    {
        var patterns = entry["files"] is { Kind: JsonKind.Array } list
            ? list.Items.Where(i => i.Kind == JsonKind.Text).Select(i => i.Text).ToList()
            : [];
        return patterns.Count == 0 ? null : new PathRules(fields.At(entry), patterns, ReadRules(entry["rules"]));
    }

    /// <summary>Entries with both a day and a time; one without the other says nothing that can be due.</summary>
    private IEnumerable<Calibration> Calibrations(JsonItem? list)
    {
        foreach (var entry in list is { Kind: JsonKind.Array } ? list.Items.Where(i => i.Kind == JsonKind.Object) : [])
        {
            var every = Plausibility.PositiveDuration(
                fields.Located(entry["calibrateEvery"], Due.Duration, q => q.Duration), entry["calibrateEvery"], fields);
            if (ReadDate(entry["calibrated"]) is { } done && every is { Value.Days: < 100_000 } && fields.Text(entry["name"]) is { } name)
            {
                var due = DateOnly.FromDayNumber((int)Math.Min(DateOnly.MaxValue.DayNumber, done.DayNumber + Math.Floor(every.Value.Days)));
                yield return new Calibration(name.Value, fields.At(entry["calibrated"]!), done, due);
            }
        }
    }

    private string? ReadBaseline(JsonItem? item)
    {
        if (fields.Text(item) is not { } written)
        {
            return null;
        }

        if (FilePaths.Resolve(FilePaths.FolderOf("/" + fields.File), written.Value) is { } target)
        {
            return target[1..];
        }

        fields.Report(ProblemKind.ReferenceLeavesRepository, item!, $"'{Wording.Shorten(written.Value)}' climbs out of the repository.");
        return null;
    }

    private Suppression? ReadSuppression(JsonItem entry)
    {
        if (fields.Text(entry["rule"]) is not { } rule
            || fields.Text(entry["file"]) is not { } file
            || fields.Text(entry["reason"]) is not { } reason)
        {
            return null;
        }

        if (FilePaths.Resolve(FilePaths.FolderOf("/" + fields.File), file.Value) is not { } target)
        {
            fields.Report(
                ProblemKind.ReferenceLeavesRepository, entry["file"]!, $"'{Wording.Shorten(file.Value)}' climbs out of the repository.");
            return null;
        }

        if (string.IsNullOrWhiteSpace(reason.Value))
        {
            fields.Report(
                ProblemKind.WrongShape,
                entry["reason"]!,
                "The reason is blank. Say why the finding is accepted, so that the next reader can judge it.");
            return null;
        }

        var expires = ReadDate(entry["expires"]);
        return entry["expires"] is not null && expires is null
            ? null
            : new Suppression(
                fields.At(entry),
                rule.Value,
                target[1..],
                fields.Text(entry["at"])?.Value,
                reason.Value,
                FieldReader.Number(entry["accepted"]),
                expires);
    }

    private DateOnly? ReadDate(JsonItem? item) => fields.Date(item)?.Value;

    private Located<Chemistry.Quantities.Mass>? Mass(JsonItem? item) =>
        Plausibility.PositiveMass(fields.Located(item, Due.Mass, q => q.Mass), item, fields);

    private Located<Chemistry.Quantities.Volume>? Volume(JsonItem? item) =>
        Plausibility.PositiveVolume(fields.Located(item, Due.Volume, q => q.Volume), item, fields);
}
