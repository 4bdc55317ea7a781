using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Reads one *.profile.json. Bounds that cannot be used are reported and left out.</summary>
/// <param name="known">Built-in profiles; null leaves names unchecked.</param>
internal sealed class ProfileFileReader(FieldReader fields, IReadOnlyCollection<string>? known)
{
    public const string Ending = ".profile.json";

    private static readonly string[] ElementKeys =
        ["N", "NO3-N", "NH4-N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "Zn", "Cu", "B", "Mo", "Si", "Cl", "Na", "Ni", "Co", "Se", "I"];

    private static readonly Due RatioDue = new([Dimension.Number], ["0.5..1.2"]) { AllowRange = true };

    /// <summary>The profile; null when the file is not an object at all.</summary>
    public ProfileDocument? Read(JsonItem root)
    {
        if (root.Kind != JsonKind.Object)
        {
            return null;
        }

        var name = fields.Text(root["name"]);
        var profile = new ProfileDocument
        {
            File = fields.File,
            Name = name?.Value ?? StockReader.NameOf(fields.File, Ending),
            NamePlace = name?.Place ?? Place.Whole(fields.File),
            Extends = ReadBase(root["extends"]),
            Source = fields.Text(root["source"])?.Value,
            IsPractice = root["practice"] is not { Kind: JsonKind.False },
            Any = ReadBounds(root),
            Stages = ReadStages(root["stages"]),
            Ratios = ReadRatios(root["ratios"]),
        };
        if (known?.Contains(profile.Name) == true)
        {
            fields.Report(new Problem(
                ProblemKind.DuplicateKey,
                profile.NamePlace,
                $"The name '{Wording.Shorten(profile.Name)}' belongs to a built-in profile. Give this profile a name of its own, so that "
                    + "no recipe changes its meaning."));
        }

        return profile;
    }

    private Located<string>? ReadBase(JsonItem? item)
    {
        var name = fields.Text(item);
        if (name is not null && known is not null && !known.Contains(name.Value))
        {
            ProfileNames.Report(name, known, fields);
            return null;
        }

        return name;
    }

    private ProfileBounds ReadBounds(JsonItem item) => new(
        ReadWindow(
            item["EC"],
            Due.Conductivity with { AllowTolerance = false },
            ec => new Interval<double>(ec.Conductivities.Low.MillisiemensPerCentimetre, ec.Conductivities.High.MillisiemensPerCentimetre)),
        ReadWindow(item["pH"], Due.Ph with { AllowTolerance = false }, ph => ph.Numbers),
        ReadElements(item["elements"]));

    private Dictionary<string, ProfileBounds> ReadStages(JsonItem? item)
    {
        var stages = new Dictionary<string, ProfileBounds>(StringComparer.Ordinal);
        foreach (var (name, stage) in item is { Kind: JsonKind.Object } ? item.Members.Select(m => (m.Name, m.Value)) : [])
        {
            if (name != "note" && stage.Kind == JsonKind.Object && item![name] == stage)
            {
                stages[name] = ReadBounds(stage);
            }
        }

        return stages;
    }

    private Located<Interval<double>>? ReadWindow(JsonItem? item, Due due, Func<Quantity, Interval<double>> convert)
    {
        if (fields.Quantity(item, due) is not { } quantity)
        {
            return null;
        }

        var window = convert(quantity);
        if (!IsRange(window, item!))
        {
            return null;
        }

        if (due.Accepts[0] == Dimension.Number && window.High > 14)
        {
            fields.Implausible(
                item!, $"A pH of {Plausibility.Text(window.High)} is outside 0 to 14.", new NamedValue("pH", window.High, ""));
            return null;
        }

        return new Located<Interval<double>>(window, fields.At(item!));
    }

    private List<ProfileElement> ReadElements(JsonItem? item)
    {
        var elements = new List<ProfileElement>();
        foreach (var (key, entry) in item is { Kind: JsonKind.Object } ? item.Members.Select(m => (m.Name, m.Value)) : [])
        {
            // Of a duplicate key the last stands, and the duplicate is reported.
            if (ElementKeys.Contains(key) && entry.Kind == JsonKind.Object && item![key] == entry && ReadElement(key, entry) is { } element)
            {
                elements.Add(element);
            }
        }

        return elements;
    }

    private ProfileElement? ReadElement(string key, JsonItem entry)
    {
        var range = Concentration(key, entry["range"], allowRange: true);
        if (range is { } usual && !IsRange(usual, entry["range"]!))
        {
            range = null;
        }

        var element = new ProfileElement(
            key,
            fields.At(entry),
            Concentration(key, entry["deficientBelow"], allowRange: false)?.Low,
            range,
            Concentration(key, entry["upTo"], allowRange: false)?.Low,
            Concentration(key, entry["toxicAbove"], allowRange: false)?.Low,
            fields.Text(entry["source"])?.Value);
        double?[] ordered = [element.DeficientBelow, element.Range?.Low, element.Range?.High, element.UpTo, element.ToxicAbove];
        var stated = ordered.OfType<double>().ToList();
        if (stated.Zip(stated.Skip(1)).Any(p => p.First > p.Second))
        {
            fields.Implausible(
                entry,
                $"The bounds of {key} are not in order: {string.Join(", ", stated.Select(Plausibility.Text))} mg/L. They go up from "
                    + "'deficientBelow' over 'range' and 'upTo' to 'toxicAbove'.",
                new NamedValue("lowest", stated.Min(), "mg/L"));
            return null;
        }

        return element;
    }

    /// <summary>mg/L of the element.</summary>
    private Interval<double>? Concentration(string key, JsonItem? item, bool allowRange)
    {
        if (item is null || TargetReader.ReadConcentration(key, item, fields, allowRange) is not { } concentration)
        {
            return null;
        }

        return new Interval<double>(concentration.Low.MilligramsPerLitre, concentration.High.MilligramsPerLitre);
    }

    private List<ProfileRatio> ReadRatios(JsonItem? list)
    {
        var ratios = new List<ProfileRatio>();
        foreach (var entry in list is { Kind: JsonKind.Array } ? list.Items.Where(i => i.Kind == JsonKind.Object) : [])
        {
            var (of, to) = (ReadSide(entry["of"]), ReadSide(entry["to"]));
            if (of is null
                || to is null
                || fields.Quantity(entry["range"], RatioDue) is not { } range
                || !IsRange(range.Numbers, entry["range"]!))
            {
                continue;
            }

            ratios.Add(new ProfileRatio(
                fields.At(entry), of, to, fields.Text(entry["by"])?.Value ?? "mass", range.Numbers, fields.Text(entry["source"])?.Value));
        }

        return ratios;
    }

    /// <summary>A key, or several joined by "+"; null after reporting one that is no element of a profile.</summary>
    private string? ReadSide(JsonItem? item)
    {
        if (fields.Text(item) is not { } side)
        {
            return null;
        }

        var keys = side.Value.Split('+', StringSplitOptions.TrimEntries);
        if (keys.FirstOrDefault(k => !ElementKeys.Contains(k)) is not { } wrong)
        {
            return string.Join('+', keys);
        }

        var near = Spelling.Nearest(wrong, ElementKeys);
        fields.Report(
            ProblemKind.WrongShape,
            item!,
            $"'{Wording.Shorten(wrong)}' is no element of a ratio. Write keys such as 'K', or several joined by '+', such as 'Ca+Mg'.",
            near);
        return null;
    }

    private bool IsRange(Interval<double> range, JsonItem item)
    {
        if (range.Low >= 0 && range.Low < range.High)
        {
            return true;
        }

        fields.Implausible(
            item,
            $"'{Wording.Shorten(item.Text)}' {(range.Low < 0 ? "begins below nothing" : "is no range")}. Write two values from low to "
                + "high, such as '1..2'.",
            new NamedValue("low", range.Low, ""),
            new NamedValue("high", range.High, ""));
        return false;
    }
}
