using System.Globalization;
using System.Text.Json;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Substances;

/// <summary>
/// Turns one object of a built-in data file into a <see cref="Substance"/>. The format is described in the files' "about".
/// </summary>
internal sealed class SubstanceReader(string file, JsonElement sources)
{
    public CatalogueEntry Entry(JsonElement row)
    {
        var names = new List<string>(8) { Text(row, "id"), Text(row, "name") };
        names.AddRange(Texts(row, "aliases"));
        if (OptionalText(row, "family") is { } family)
        {
            names.Add(family);
        }

        var cas = row.TryGetProperty("cas", out var record) ? Text(record, "value") : null;
        return new CatalogueEntry(names[0], names, cas, OptionalText(row, "formula"), () => Read(row));
    }

    private Substance Read(JsonElement row)
    {
        var id = Text(row, "id");
        try
        {
            return row.TryGetProperty("label", out var label) ? Labelled(row, label) : Pure(row);
        }
        catch (Exception e) when (e is InvalidOperationException or KeyNotFoundException or FormatException or ArgumentException)
        {
            throw new InvalidOperationException($"{file}, substance '{id}': {e.Message}", e);
        }
    }

    private static string Text(JsonElement row, string key) =>
        row.TryGetProperty(key, out var value) && value.GetString() is { } text
            ? text
            : throw new InvalidOperationException($"'{key}' is missing");

    private static string? OptionalText(JsonElement row, string key) => row.TryGetProperty(key, out var value) ? value.GetString() : null;

    private static bool Flag(JsonElement row, string key) => row.TryGetProperty(key, out var value) && value.GetBoolean();

    private static string[] Texts(JsonElement row, string key) =>
        row.TryGetProperty(key, out var list) ? [.. list.EnumerateArray().Select(t => t.GetString()!)] : [];

    // Written out: parsing enums by name costs milliseconds on the first call.
    private static SubstanceKind Kind(JsonElement row) => Text(row, "kind") switch
    {
        "salt" => SubstanceKind.Salt,
        "chelate" => SubstanceKind.Chelate,
        "chelating agent" => SubstanceKind.ChelatingAgent,
        "acid" => SubstanceKind.Acid,
        "base" => SubstanceKind.Base,
        "preservative" => SubstanceKind.Preservative,
        "dye" => SubstanceKind.Dye,
        "organic" => SubstanceKind.Organic,
        "oxidiser" => SubstanceKind.Oxidiser,
        "silicate" => SubstanceKind.Silicate,
        "product" => SubstanceKind.Product,
        "extract" => SubstanceKind.Extract,
        var word => throw new FormatException($"'{word}' is not a kind"),
    };

    private static PhysicalForm Form(JsonElement row) => OptionalText(row, "form") switch
    {
        null or "solid" => PhysicalForm.Solid,
        "liquid" => PhysicalForm.Liquid,
        var word => throw new FormatException($"'{word}' is not a form"),
    };

    private Substance Pure(JsonElement row)
    {
        var formula = OptionalText(row, "formula") is { } text ? FormulaParser.Parse(text) : null;
        var density = Density(row);
        var (strength, strengthRecord) = Strength(row, density);
        var moles = row.TryGetProperty("dissolves", out var dissolves)
            ? dissolves.EnumerateObject().Select(c => KeyValuePair.Create(c.Name, c.Value.GetDouble())).ToArray()
            : [];
        return Common(row, new Substance
        {
            Id = Text(row, "id"),
            Name = Text(row, "name"),
            Kind = Kind(row),
            Formula = formula,
            Content = formula is null ? ElementContent.Empty : Dissolution.Content(formula, moles, strength),
            Dissolves = formula is null ? [] : Dissolution.Yields(formula, moles, strength),
            Strength = strength,
            StrengthRecord = strengthRecord,
            Density = density,
            Solubility = Solubility(row, formula),
        });
    }

    private Substance Labelled(JsonElement row, JsonElement label)
    {
        var declaration = new LabelDeclaration
        {
            Id = Text(row, "id"),
            Name = Text(row, "name"),
            Kind = Kind(row),
            Form = Form(row),
            Density = Density(row),
            Agent = OptionalText(label, "agent"),
            CounterIon = OptionalText(label, "counterIon"),
            Entries = [.. label.GetProperty("percent").EnumerateObject().Select(e => LabelEntry.FromText(e.Name, e.Value.GetDouble()))],
        };
        var result = LabelProduct.Build(declaration);
        if (result.Substance is not { } substance || result.Problems.Count > 0)
        {
            throw new InvalidOperationException(string.Join("; ", result.Problems.Select(p => p.Message)));
        }

        return Common(row, substance) with { StrengthRecord = new("guaranteed analysis", Source(label), Confidence(label)) };
    }

    private Substance Common(JsonElement row, Substance substance)
    {
        var cas = SourcedText(row, "cas");
        var origin = OptionalText(row, "extractOf") is { } key ? ExtractOrigins.Named(key) : null;
        return substance with
        {
            Dissolves = origin?.Humic?.Yields ?? substance.Dissolves,
            GuessedCharge = origin?.Humic?.GuessedCharge ?? substance.GuessedCharge,
            Aliases = Texts(row, "aliases"),
            HydrateFamily = OptionalText(row, "family"),
            Form = Form(row),
            Cas = cas?.Value,
            CasRecord = cas,
            NeedsAssay = Flag(row, "needsAssay"),
            TypicalAssay = SourcedText(row, "assay"),
            FeedsMicrobes = Flag(row, "feedsMicrobes"),
            Impurities = Impurities(row),
            Hazards = Hazards(row),
            BehavesAs = Text(row, "behavesAs"),
            KeepApartFrom = Apart(row),
            Note = SourcedText(row, "note"),
            Colour = OptionalText(row, "colour"),
            Assumption = Joined(Joined(substance.Assumption, origin?.Humic?.Told), SourcedText(row, "assumes")?.Value),
            Extract = origin,
        };
    }

    private static string? Joined(string? one, string? other) => one is null || other is null ? one ?? other : $"{one} {other}";

    private string Source(JsonElement value) =>
        sources.TryGetProperty(Text(value, "src"), out var source)
            ? source.GetString()!
            : throw new InvalidOperationException($"the source '{Text(value, "src")}' is not in the table");

    private static Confidence Confidence(JsonElement value) => Text(value, "confidence") switch
    {
        "found" => Substances.Confidence.Found,
        "memory" => Substances.Confidence.Memory,
        "derived" => Substances.Confidence.Derived,
        var word => throw new FormatException($"'{word}' is not a confidence"),
    };

    private Sourced<string>? SourcedText(JsonElement row, string key) =>
        row.TryGetProperty(key, out var value) ? new(Text(value, "value"), Source(value), Confidence(value)) : null;

    private Sourced<Density>? Density(JsonElement row) =>
        row.TryGetProperty("density20C", out var value)
            ? new(new Density(value.GetProperty("value").GetDouble()), Source(value), Confidence(value))
            : null;

    private (MassFraction Strength, Sourced<string>? Record) Strength(JsonElement row, Sourced<Density>? density)
    {
        if (!row.TryGetProperty("strength", out var value))
        {
            return (MassFraction.One, null);
        }

        if (value.TryGetProperty("percent", out var percent))
        {
            var text = string.Create(CultureInfo.InvariantCulture, $"{percent.GetDouble()} % w/w");
            return (MassFraction.FromPercent(percent.GetDouble()), new(text, Source(value), Confidence(value)));
        }

        var grams = value.GetProperty("gramsPer100mL").GetDouble();
        var perMillilitre =
            density?.Value.GramsPerMillilitre ?? throw new InvalidOperationException("a strength by volume needs a density");
        return (new MassFraction(grams / 100 / perMillilitre), new(
            string.Create(CultureInfo.InvariantCulture, $"{grams} g/100 mL"), Source(value), Confidence(value)));
    }

    private IReadOnlyList<Impurity> Impurities(JsonElement row) =>
        row.TryGetProperty("impurities", out var list)
            ? [.. list.EnumerateArray().Select(i => new Impurity(
                new Element(Text(i, "element")),
                new(MassFraction.FromPercent(i.GetProperty("percent").GetDouble()), Source(i), Confidence(i))))]
            : [];

    private Hazards Hazards(JsonElement row) =>
        row.TryGetProperty("hazards", out var value)
            ? new(Texts(value, "statements"), Flag(
                value, "harmonised"), Source(value), Confidence(value))
            { SupplierAdds = Texts(value, "supplierAdds") }
            : throw new InvalidOperationException("'hazards' is missing");

    private Sourced<IReadOnlyList<KeepApart>>? Apart(JsonElement row) =>
        row.TryGetProperty("keepApart", out var value)
            ? new([.. Texts(value, "from").Select(t => Enum.Parse<KeepApart>(
                t.Replace(" ", string.Empty, StringComparison.Ordinal), ignoreCase: true))], Source(value), Confidence(value))
            : null;

    private Sourced<IReadOnlyList<SolubilityPoint>>? Solubility(JsonElement row, Formula? formula)
    {
        if (formula is null || !row.TryGetProperty("solubility", out var value))
        {
            return null;
        }

        // The table counts the solute without its crystal water; x is the mass fraction of the substance as bought in the saturated
        // solution.
        var solute = FormulaParser.Parse(Text(value, "of"));
        var perSolute = formula.MolarMass.GramsPerMole / solute.MolarMass.GramsPerMole;
        var points = value.GetProperty("massPercent").EnumerateObject()
            .Select(p => (T: double.Parse(p.Name, CultureInfo.InvariantCulture), X: p.Value.GetDouble() / 100 * perSolute))
            .Where(p => p.X < 1)
            .OrderBy(p => p.T)
            .Select(p => new SolubilityPoint(new Temperature(p.T), 100 * p.X / (1 - p.X)));
        return new([.. points], Source(value), Confidence(value));
    }
}
