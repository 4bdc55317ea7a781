using System.Globalization;
using System.Text.Json;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Analysis.Tests.Published;

/// <summary>One figure a publication prints.</summary>
/// <param name="Key">Element or nitrogen form.</param>
/// <param name="Printed">The number as printed, with all its digits.</param>
/// <param name="Unit">mg/L, mmol/L or umol/L.</param>
internal sealed record PrintedFigure(string Key, string Printed, string Unit)
{
    public double Value => double.Parse(Printed, CultureInfo.InvariantCulture);

    /// <summary>Half a unit of the last printed digit.</summary>
    public double Rounding
    {
        get
        {
            var point = Printed.IndexOf('.', StringComparison.Ordinal);
            return 0.5 * Math.Pow(10, point < 0 ? 0 : point + 1 - Printed.Length);
        }
    }

    public double Computed(RecipeFacts facts)
    {
        var fact = facts.Elements[Key];
        return Unit switch
        {
            "mg/L" => fact.Concentration.MilligramsPerLitre,
            "mmol/L" => fact.Molar.MillimolesPerLitre,
            "umol/L" => fact.Molar.MillimolesPerLitre * 1000,
            _ => throw new FormatException(Unit),
        };
    }
}

/// <summary>A published solution: its salts as a recipe file, and beside it what the publication prints and where it stands.</summary>
internal sealed record PublishedRecipe(
    string Id,
    string Citation,
    bool Recalled,
    IReadOnlyList<PrintedFigure> Figures,
    IReadOnlyDictionary<string, double> BeyondRoundingPercent,
    RecipeFacts Facts)
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Published");

    private static readonly Lazy<SubstanceCatalogue> Catalogue = new(() => SubstanceCatalogue.BuiltIn.With(ReadSubstances()).Catalogue);

    public static IEnumerable<string> Ids =>
        Directory.GetFiles(Folder, "*.published.json").Select(f => Path.GetFileName(f).Replace(".published.json", "", StringComparison.Ordinal)).Order();

    public static PublishedRecipe Read(string id)
    {
        using var published = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, $"{id}.published.json")));
        var root = published.RootElement;
        return new PublishedRecipe(
            id,
            root.GetProperty("citation").GetString()!,
            root.GetProperty("recalled").GetBoolean(),
            [.. root.GetProperty("published").EnumerateObject().Select(p => Figure(p.Name, p.Value.GetString()!))],
            root.GetProperty("beyondRounding").EnumerateObject().ToDictionary(p => p.Name, p => p.Value.GetProperty("percent").GetDouble()),
            Analyse(id));
    }

    private static PrintedFigure Figure(string key, string text)
    {
        var parts = text.Split(' ');
        return new PrintedFigure(key, parts[0], parts[1]);
    }

    private static RecipeFacts Analyse(string id)
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, $"{id}.recipe.json")));
        var root = document.RootElement;
        var doses = root.GetProperty("doses").EnumerateArray().Select(d => Bench.Direct(
            Substance(d.GetProperty("add").GetString()!),
            d.GetProperty("amount").GetString()!,
            d.TryGetProperty("assay", out var assay) ? assay.GetString() : null));
        var recipe = Bench.Recipe(root.GetProperty("final").GetString()!, FinalVolumeMeaning.MadeUp, [.. doses]);
        return Bench.Analyse([], recipe).Recipes.Single();
    }

    private static Substance Substance(string id) =>
        Catalogue.Value.ById(id) ?? throw new KeyNotFoundException($"'{id}' is neither in the catalogue nor in published.substances.json.");

    private static List<Substance> ReadSubstances()
    {
        using var document = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(Folder, "published.substances.json")));
        return [.. document.RootElement.GetProperty("substances").EnumerateArray().Select(ReadSubstance)];
    }

    private static Substance ReadSubstance(JsonElement item)
    {
        var id = item.GetProperty("id").GetString()!;
        var name = item.GetProperty("name").GetString()!;
        if (item.TryGetProperty("formula", out var text))
        {
            // A hydrate of a catalogue salt sets free what the salt does.
            var formula = FormulaParser.Parse(text.GetString()!);
            var sibling = SubstanceCatalogue.BuiltIn.Substances.First(s => s.Formula?.AnhydrousHill == formula.AnhydrousHill);
            var moles = sibling.Dissolves.Select(y => KeyValuePair.Create(y.Component, y.MolesPerGram * sibling.Formula!.MolarMass.GramsPerMole));
            return sibling with
            {
                Id = id,
                Name = name,
                Formula = formula,
                Content = Dissolution.Content(formula, moles, MassFraction.One),
                Dissolves = Dissolution.Yields(formula, moles, MassFraction.One),
            };
        }

        var label = item.GetProperty("label");
        var entries = new List<LabelEntry>();
        foreach (var property in label.EnumerateObject().Where(p => p.Name is not ("basis" or "chelatedWith")))
        {
            if (property.Value.ValueKind == JsonValueKind.String)
            {
                entries.Add(new LabelEntry(property.Name, Percent(property.Value)));
                continue;
            }

            entries.AddRange(property.Value.EnumerateObject().Select(s =>
                new LabelEntry(property.Name, Percent(s.Value), s.Name == "chelated" ? LabelShare.Chelated : LabelShare.Total)));
        }

        var declaration = new LabelDeclaration
        {
            Id = id,
            Name = name,
            Entries = entries,
            Agent = label.TryGetProperty("chelatedWith", out var agent) ? agent.GetString() : null,
        };
        return LabelProduct.Build(declaration).Substance ?? throw new FormatException(id);
    }

    private static double Percent(JsonElement text) => double.Parse(text.GetString()!.TrimEnd('%', ' '), CultureInfo.InvariantCulture);
}
