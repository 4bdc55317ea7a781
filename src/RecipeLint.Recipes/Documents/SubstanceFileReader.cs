using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Reads one *.substances.json. Entries that cannot become a substance are reported and left out.</summary>
internal sealed partial class SubstanceFileReader(FieldReader fields)
{
    private static readonly (string Word, SubstanceKind Kind)[] Kinds =
    [
        ("salt", SubstanceKind.Salt), ("chelate", SubstanceKind.Chelate), ("chelating-agent", SubstanceKind.ChelatingAgent),
        ("acid", SubstanceKind.Acid), ("base", SubstanceKind.Base), ("preservative", SubstanceKind.Preservative),
        ("dye", SubstanceKind.Dye),
        ("organic", SubstanceKind.Organic), ("oxidiser", SubstanceKind.Oxidiser), ("silicate", SubstanceKind.Silicate),
        ("product", SubstanceKind.Product),
        ("extract", SubstanceKind.Extract),
    ];

    /// <summary>The file's substances; null when the file is not an object at all.</summary>
    public SubstanceFile? Read(JsonItem root)
    {
        if (root.Kind != JsonKind.Object)
        {
            return null;
        }

        var entries = root["substances"] is { Kind: JsonKind.Array } list ? list.Items.Where(i => i.Kind == JsonKind.Object) : [];
        var read = new Dictionary<string, ShopSubstance>(StringComparer.Ordinal);
        var seen = new Dictionary<string, JsonItem>(StringComparer.Ordinal);
        var unread = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in entries)
        {
            if (fields.Text(entry["id"]) is not { Value.Length: > 0 } id)
            {
                continue;
            }

            if (!seen.TryAdd(id.Value, entry["id"]!))
            {
                ReportTaken(entry["id"]!, fields.At(seen[id.Value]), "first used here");
            }
            else if (SubstanceCatalogue.BuiltIn.ById(id.Value) is not null)
            {
                fields.Report(
                    ProblemKind.DuplicateKey,
                    entry["id"]!,
                    $"The id '{Wording.Shorten(id.Value)}' belongs to the built-in catalogue. "
                    + "Give this product an id of its own, so that no recipe changes its meaning.");
            }
            else if (ReadEntry(entry, id.Value) is { } substance)
            {
                read.Add(id.Value, substance);
            }
            else
            {
                unread.Add(id.Value);
                unread.UnionWith(Aliases(entry));
            }
        }

        return new SubstanceFile(fields.File, [.. read.Values]) { UnreadNames = unread };
    }

    private void ReportTaken(JsonItem id, Place first, string label) =>
        fields.Report(new Problem(
            ProblemKind.DuplicateKey, fields.At(id), $"The id '{Wording.Shorten(id.Text)}' is taken. Give this product an id of its own.")
        {
            Related = [new RelatedPlace(first, label)],
        });

    private ShopSubstance? ReadEntry(JsonItem entry, string id)
    {
        var basic = new Basics(
            id,
            fields.Text(entry["name"])?.Value ?? id,
            KindOf(entry["kind"]),
            entry["form"] is { Kind: JsonKind.Text, Text: "liquid" }
                ? PhysicalForm.Liquid
                : entry["form"] is null ? null : PhysicalForm.Solid,
            ReadDensity(entry["density"]));
        var unknown = entry["unknownComposition"] is { Kind: JsonKind.True };
        var substance = entry["formula"] is { Kind: JsonKind.Text } formula ? ByFormula(entry, formula, basic)
            : entry["strengthOf"] is { Kind: JsonKind.Text } of ? ByStrength(entry, of, basic)
            : entry["label"] is { Kind: JsonKind.Object } label ? ByLabel(label, basic)
            : unknown ? OfUnknownComposition(basic)
            : null;
        if (substance is null)
        {
            return null;
        }

        // What pours needs a density before it can be weighed in thought; without one only drops and weights of it can be used.
        // The schema asks for that of a solution itself.
        if (substance is { Form: PhysicalForm.Liquid, Density: null, StatesItsStrength: false } && !unknown && entry["density"] is null)
        {
            fields.Report(new Problem(
                ProblemKind.MissingKey,
                fields.At(entry),
                "A liquid needs its 'density', such as \"1.23 g/mL\", before it can be measured by volume."));
        }

        var drop = fields.Quantity(entry["drop"], Due.Volume with { AllowTolerance = true });
        var dropVolume = drop is null
            ? null
            : Plausibility.PositiveVolume(new Located<Volume>(drop.Volume, fields.At(entry["drop"]!)), entry["drop"], fields);
        return new ShopSubstance(fields.At(entry), WithStatements(substance, entry))
        {
            Drop = dropVolume,
            DropTolerance = dropVolume is null ? null : drop!.Tolerance,
            Certificate = fields.Text(entry["certificate"])?.Value,
            UnknownComposition = unknown,
        };
    }

    private static SubstanceKind? KindOf(JsonItem? item)
    {
        foreach (var (word, kind) in Kinds)
        {
            if (item is { Kind: JsonKind.Text } && item.Text == word)
            {
                return kind;
            }
        }

        return null;
    }

    private Sourced<Density>? ReadDensity(JsonItem? item)
    {
        if (fields.Located(item, Due.Density, q => q.Density) is not { } density)
        {
            return null;
        }

        // Liquids sold to growers lie between light alcohols and strong acids (common practice, no source).
        if (density.Value.GramsPerMillilitre is < 0.5 or > 3)
        {
            fields.Implausible(
                item!,
                $"A density of {Plausibility.Text(density.Value.GramsPerMillilitre)} g/mL is outside 0.5 to 3 g/mL. Check the unit.",
                new NamedValue("density", density.Value.GramsPerMillilitre, "g/mL"));
            return null;
        }

        return new Sourced<Density>(density.Value, $"stated in {fields.File}", Confidence.Found);
    }

    private Substance WithStatements(Substance substance, JsonItem entry)
    {
        var hazards = entry["hazards"] is { Kind: JsonKind.Array } codes
            ? codes.Items
                .Where(i => i.Kind == JsonKind.Text)
                .Select(i => i.Text)
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal)
                .ToArray()
            : null;
        return substance with
        {
            Aliases = Aliases(entry),
            Cas = ReadCas(entry["cas"]) ?? substance.Cas,
            Colour = fields.Text(entry["colour"])?.Value ?? substance.Colour,
            Hazards = hazards is null ? substance.Hazards : new Hazards(hazards, false, $"stated in {fields.File}", Confidence.Found),
            Impurities = ReadImpurities(entry["impurities"]) ?? substance.Impurities,
        };
    }

    private static string[] Aliases(JsonItem entry) => entry["aliases"] is { Kind: JsonKind.Array } list
        ? [.. list.Items.Where(i => i.Kind == JsonKind.Text && !string.IsNullOrWhiteSpace(i.Text)).Select(i => i.Text)]
        : [];

    private string? ReadCas(JsonItem? item)
    {
        if (item is not { Kind: JsonKind.Text } || !CasNumber.HasShape(item.Text))
        {
            return null;
        }

        if (CasNumber.IsValid(item.Text))
        {
            return item.Text;
        }

        fields.Report(
            ProblemKind.WrongShape,
            item,
            $"The last digit of the CAS number '{Wording.Shorten(item.Text)}' does not fit the others. Copy it again from the label.");
        return null;
    }

    private List<Impurity>? ReadImpurities(JsonItem? item)
    {
        if (item is not { Kind: JsonKind.Object })
        {
            return null;
        }

        var impurities = new List<Impurity>();
        foreach (var (name, value) in item.Members.Select(m => (m.Name, m.Value)).Where(m => m.Name != "note" && item[m.Name] == m.Value))
        {
            var element = new Element(name);
            if (!AtomicWeights.TryGet(element, out _))
            {
                fields.Report(new Problem(ProblemKind.ImpossibleAnalysis, fields.At(
                    value).Key, $"'{Wording.Shorten(name)}' is no element with an atomic weight."));
            }
            else if (fields.Quantity(value, Due.Content) is { } content)
            {
                if (content.Low is >= 0 and <= 1)
                {
                    impurities.Add(new Impurity(
                        element, new Sourced<MassFraction>(content.MassFraction, $"stated in {fields.File}", Confidence.Found)));
                }
                else
                {
                    ReportImpossibleShare(value, content.Low);
                }
            }
        }

        return impurities;
    }

    private void ReportImpossibleShare(JsonItem item, double share) =>
        fields.Report(new Problem(
            ProblemKind.ImpossibleAnalysis,
            fields.At(item),
            $"'{Wording.Shorten(item.Text)}' is not a possible content; it is between 0 and 100 %.")
        {
            Values = [new NamedValue("percent", share * 100, "%")],
        });

    private sealed record Basics(string Id, string Name, SubstanceKind? Kind, PhysicalForm? Form, Sourced<Density>? Density);
}
