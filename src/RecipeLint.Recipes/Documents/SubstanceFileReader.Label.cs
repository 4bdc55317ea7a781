using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Fields;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <content>Guaranteed analyses.</content>
internal sealed partial class SubstanceFileReader
{
    private static readonly string[] PlainKeys =
        ["P2O5", "P", "K2O", "K", "CaO", "Ca", "MgO", "Mg", "SO3", "S", "B", "Mo", "Si", "SiO2", "Na", "Cl", "Co", "Ni"];

    private static readonly string[] MetalKeys = ["Fe", "Mn", "Zn", "Cu"];

    private static readonly (string Key, LabelShare Share)[] NitrogenKeys =
    [
        ("total", LabelShare.Total), ("nitrate", LabelShare.Nitrate), ("ammonium", LabelShare.Ammonium), ("urea", LabelShare.Urea),
        ("organic", LabelShare.Organic),
    ];

    /// <summary>The same beside the elements, as recipes write it.</summary>
    private static readonly (string Key, LabelShare Share)[] NitrogenBeside =
        [("NO3-N", LabelShare.Nitrate), ("NH4-N", LabelShare.Ammonium), ("urea-N", LabelShare.Urea)];

    private static readonly (string Key, LabelShare Share)[] MetalShares =
        [("total", LabelShare.Total), ("chelated", LabelShare.Chelated), ("orthoOrtho", LabelShare.OrthoOrtho)];

    private Substance? ByLabel(JsonItem label, Basics basic)
    {
        var lines = ReadLines(label);
        if (lines.Count == 0 || lines.Any(l => l.Entry is null))
        {
            ReportNoContent(label, lines.Count);
            return null;
        }

        var agent = fields.Text(label["chelatedWith"]);
        var declaration = new LabelDeclaration
        {
            Id = basic.Id,
            Name = basic.Name,
            Kind = basic.Kind ?? SubstanceKind.Product,
            Form = basic.Form ?? (basic.Density is null ? PhysicalForm.Solid : PhysicalForm.Liquid),
            Percent = label["percent"] is { Kind: JsonKind.Text, Text: "w/v" }
                ? LabelPercent.WeightPerVolume
                : LabelPercent.WeightPerWeight,
            Density = basic.Density,
            Entries = [.. lines.Select(l => l.Entry!)],
            Agent = agent?.Value,
        };
        var result = LabelProduct.Build(declaration);
        // An agent that is not known is told once, not for each of its metals; of one figure only its first fault.
        var told = new HashSet<(ProblemKind, Place)>();
        foreach (var problem in result.Problems.DistinctBy(p => p.Kind == LabelProblemKind.UnknownAgent ? "agent" : p.Message))
        {
            var place = problem.Kind == LabelProblemKind.UnknownAgent && label["chelatedWith"] is { } named
                ? fields.At(named)
                : lines.FirstOrDefault(l => l.Entry!.Form == problem.Form) is { Item: { } item } ? fields.At(item) : fields.At(label).Key;
            if (!told.Add((KindOf(problem.Kind), place)))
            {
                continue;
            }

            var slip = problem.Kind switch
            {
                LabelProblemKind.Over100AsSalts => OxideSlip(declaration),
                LabelProblemKind.UnknownAgent when agent is not null => AgentSlip(agent.Value),
                _ => null,
            };
            fields.Report(new Problem(
                KindOf(problem.Kind), place,
                $"{problem.Message}.{(slip is null ? "" : $" {slip.Value.Sentence}")}")
            { Suggestions = slip?.Offered ?? [] });
        }

        return result.Substance is { } substance
            ? substance with
            {
                StrengthRecord = new Sourced<string>("guaranteed analysis", $"stated in {fields.File}", Confidence.Found),
                Assumption = ChelatedInShort(label) is { Length: > 0 } metals
                    ? $"The label names {agent!.Value}: {Wording.Join(metals, "and")}, given as one figure, "
                        + $"{(metals.Length == 1 ? "counts" : "count")} as bound by it. {substance.Assumption}".TrimEnd()
                    : substance.Assumption,
            }
            : null;
    }

    /// <summary>A label without any content; a key that is not known was meant as one, and is told where it stands.</summary>
    private void ReportNoContent(JsonItem label, int lines)
    {
        if (lines == 0 && label.Members.All(m => m.Name is "basis" or "percent" or "chelatedWith" or "note"))
        {
            fields.Report(new Problem(
                ProblemKind.ImpossibleAnalysis,
                fields.At(label).Key,
                "The label declares no content. Copy the guaranteed analysis from the bag."));
        }
    }

    /// <summary>
    /// Figures of a bag that states oxides, entered as elements: too much as elements, and possible as oxides. Null where that does not
    /// explain it.
    /// </summary>
    private static (string Sentence, IReadOnlyList<string> Offered)? OxideSlip(LabelDeclaration declared)
    {
        var oxides = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["P"] = "P2O5",
            ["K"] = "K2O",
            ["Ca"] = "CaO",
            ["Mg"] = "MgO",
            ["S"] = "SO3",
        };
        var wrong = declared.Entries.Where(e => oxides.ContainsKey(e.Form)).ToList();
        if (!wrong.Exists(e => e.Form is "P" or "K"))
        {
            return null;
        }

        var read = LabelProduct.Build(declared with
        {
            Entries = [.. declared.Entries.Select(e => oxides.TryGetValue(e.Form, out var oxide) ? e with { Form = oxide } : e)],
        });
        if (read.Problems.Any(p => p.Kind == LabelProblemKind.Over100AsSalts))
        {
            return null;
        }

        IReadOnlyList<string> keys = [.. wrong.Select(e => oxides[e.Form]).Distinct(StringComparer.Ordinal)];
        return ($"Read as {Wording.Join(keys, "and")} the same figures are possible: bags mostly state oxides, so the basis of this label "
            + "is most likely 'oxide'.", keys);
    }

    private static (string Sentence, IReadOnlyList<string> Offered)? AgentSlip(string agent)
    {
        var near = Spelling.Nearest(agent, LabelAgents.All);
        return near.Count > 0
            ? (Wording.DidYouMean(near).TrimStart(), near)
            : ("Write the agent as the bag names it, such as 'EDTA', 'DTPA' or 'EDDHA'.", []);
    }

    private static ProblemKind KindOf(LabelProblemKind kind) => kind switch
    {
        LabelProblemKind.MissingDensity => ProblemKind.MissingKey,
        LabelProblemKind.UnknownAgent => ProblemKind.UnknownSubstance,
        _ => ProblemKind.ImpossibleAnalysis,
    };

    /// <summary>Every stated line; the entry is null where it could not be read.</summary>
    private List<(JsonItem Item, LabelEntry? Entry)> ReadLines(JsonItem label)
    {
        var isOxide = label["basis"] is { Kind: JsonKind.Text, Text: "oxide" };
        var isElement = label["basis"] is { Kind: JsonKind.Text, Text: "element" };
        var lines = new List<(JsonItem, LabelEntry?)>();
        void Add(JsonItem? item, string form, LabelShare share)
        {
            if (item is { Kind: JsonKind.Text or JsonKind.Number })
            {
                lines.Add((item, ReadLine(item, form, share)));
            }
        }

        foreach (var key in PlainKeys)
        {
            if (label[key] is { } item && Contradicts(key, isOxide, isElement))
            {
                ReportContradiction(item, key);
                lines.Add((item, null));
            }
            else
            {
                Add(label[key], key, LabelShare.Total);
            }
        }

        foreach (var nitrogen in (JsonItem?[])[label["N"], label["nitrogen"]])
        {
            Add(nitrogen, "N", LabelShare.Total);
            foreach (var (key, share) in nitrogen is { Kind: JsonKind.Object } ? NitrogenKeys : [])
            {
                Add(nitrogen![key], "N", share);
            }
        }

        foreach (var (key, share) in NitrogenBeside)
        {
            Add(label[key], "N", share);
        }

        var chelated = ChelatedInShort(label);
        foreach (var metal in MetalKeys)
        {
            if (label[metal] is { Kind: JsonKind.Object } shares)
            {
                foreach (var (key, share) in MetalShares)
                {
                    Add(shares[key], metal, share);
                }
            }
            else
            {
                Add(label[metal], metal, chelated.Contains(metal) ? LabelShare.Chelated : LabelShare.Total);
            }
        }

        return lines;
    }

    /// <summary>Metals given as one figure on a label that names a chelating agent: all of it counts as bound.</summary>
    private static string[] ChelatedInShort(JsonItem label) => label["chelatedWith"] is { Kind: JsonKind.Text } agent
        ? [.. MetalKeys.Where(m => label[m] is { Kind: JsonKind.Text or JsonKind.Number }
            && (m == "Fe" || !LabelAgents.AreForIron(agent.Text)))]
        : [];

    /// <summary>
    /// Labels that count as oxides print P2O5 and K2O; secondary nutrients stand in either way beside them, so only these two decide.
    /// </summary>
    private static bool Contradicts(string key, bool isOxide, bool isElement) =>
        (isOxide && key is ("P" or "K")) || (isElement && key is ("P2O5" or "K2O"));

    private void ReportContradiction(JsonItem item, string key)
    {
        var (oxide, element, count) = key is "P" or "P2O5" ? ("P2O5", "P", 2) : ("K2O", "K", 2);
        var factor = new ChemicalBasis(oxide, 1).MolarMass.GramsPerMole / (count * new ChemicalBasis(element, 1).MolarMass.GramsPerMole);
        fields.Report(new Problem(
            ProblemKind.AmbiguousUnit,
            fields.At(item).Key,
            $"The basis of this label and the key '{key}' disagree: counted as {oxide} or as {element} the content differs by "
            + $"a factor of {Plausibility.Text(Math.Round(factor, 3))}. Rename the key, or correct the basis.")
        {
            Suggestions = [key == oxide ? element : oxide],
            Values = [new NamedValue("factor", factor, "")],
        });
    }

    private LabelEntry? ReadLine(JsonItem item, string form, LabelShare share)
    {
        if (fields.Quantity(item, Due.LabelContent) is not { } content)
        {
            return null;
        }

        var byVolume = content.Dimension == Dimension.MassConcentration;
        // Grams in 100 mL can be more than 100 where the liquid is heavy; LabelContents holds it against the density.
        var part = byVolume ? content.MassConcentration.GramsPerLitre / 1000 : content.MassFraction.Value;
        if (part < 0 || (!byVolume && part > 1))
        {
            ReportImpossibleShare(item, part);
            return null;
        }

        return new LabelEntry(form, part * 100, share)
        {
            Counted = byVolume ? LabelPercent.WeightPerVolume
                : content.Unit == "%" ? null
                : LabelPercent.WeightPerWeight,
        };
    }
}
