using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Rules.Tests.Mutations.Operators;

/// <summary>The right weight of the wrong thing: another hydrate, another salt, another strength, a name that does not say enough.</summary>
internal static class SubstanceSlips
{
    /// <summary>What is taken from the shelf by mistake (common practice, no source): a like name, the same cation or the same anion.</summary>
    private static readonly Dictionary<string, string[]> _mistaken = new()
    {
        ["calcium-nitrate-fertiliser"] = ["calcium-chloride-2h2o", "magnesium-nitrate-6h2o", "ammonium-nitrate", "calcium-sulfate-2h2o"],
        ["calcium-nitrate-4h2o"] = ["calcium-chloride-2h2o", "magnesium-nitrate-6h2o", "ammonium-nitrate", "calcium-sulfate-2h2o"],
        ["potassium-nitrate"] = ["sodium-nitrate", "potassium-chloride", "ammonium-nitrate", "potassium-sulfate"],
        ["potassium-sulfate"] = ["potassium-chloride", "ammonium-sulfate", "magnesium-sulfate-7h2o"],
        ["monopotassium-phosphate"] = ["sodium-dihydrogen-phosphate", "monoammonium-phosphate", "dipotassium-phosphate", "potassium-sulfate"],
        ["magnesium-sulfate-7h2o"] = ["magnesium-nitrate-6h2o", "magnesium-chloride-6h2o", "calcium-sulfate-2h2o"],
        ["fe-dtpa-hna"] = ["ferrous-sulfate-7h2o", "mn-edta"],
        ["fe-edta-na-3h2o"] = ["ferrous-sulfate-7h2o", "disodium-edta-2h2o"],
        ["citric-acid-h2o"] = ["trisodium-citrate-2h2o", "sucrose"],
        ["vinegar-5"] = ["sodium-acetate-3h2o"],
        ["potassium-sorbate"] = ["potassium-acetate", "potassium-sulfate"],
        ["sodium-benzoate"] = ["sodium-bicarbonate", "sodium-chloride"],
        ["manganese-sulfate-h2o"] = ["magnesium-sulfate-h2o", "zinc-sulfate-h2o"],
        ["zinc-sulfate-7h2o"] = ["magnesium-sulfate-7h2o", "copper-sulfate-5h2o"],
        ["copper-sulfate-5h2o"] = ["ferrous-sulfate-7h2o", "zinc-sulfate-7h2o"],
        ["boric-acid"] = ["borax-10h2o", "citric-acid-h2o"],
        ["sodium-molybdate-2h2o"] = ["ammonium-heptamolybdate-4h2o", "sodium-chloride"],
    };

    /// <summary>Names that fit two substances.</summary>
    private static readonly Dictionary<string, string> _vague = new()
    {
        ["magnesium-sulfate-7h2o"] = "magnesium sulfate",
        ["manganese-sulfate-h2o"] = "manganese sulfate",
        ["zinc-sulfate-7h2o"] = "zinc sulfate",
        ["copper-sulfate-5h2o"] = "copper sulfate",
        ["calcium-nitrate-4h2o"] = "calcium nitrate",
        ["calcium-nitrate-fertiliser"] = "calcium nitrate",
        ["sodium-molybdate-2h2o"] = "sodium molybdate",
        ["citric-acid-h2o"] = "citric acid",
    };

    internal static IEnumerable<Mutant> Of(CleanShop shop)
    {
        var catalogue = shop.Workspace.Catalogue;
        foreach (var line in shop.Lines.Where(l => l.Step is AddStep))
        {
            var substance = ((AddStep)line.Step).Substance!;
            foreach (var other in Hydrates(catalogue, substance))
            {
                yield return Exchanged("another hydrate", line, other);
            }

            foreach (var other in _mistaken.GetValueOrDefault(substance.Id, []))
            {
                yield return Exchanged("another salt", line, catalogue.ById(other)!);
            }

            if (_vague.TryGetValue(substance.Id, out var vague))
            {
                yield return Slips.Value(shop, "name that fits two substances", line, "add", vague);
            }

            yield return Slips.Value(shop, "assay a third lower", line, "assay", Slips.Times(line.Item["assay"]!.Text, 2 / 3.0));
            yield return Slips.Value(shop, "assay a tenth", line, "assay", Slips.Times(line.Item["assay"]!.Text, 0.1));
            if (substance.Id == "vinegar-5")
            {
                yield return Exchanged("weaker vinegar", line, catalogue.ById("vinegar-4")!);
                yield return Slips.Value(shop, "weaker vinegar", line, "assay", "60 %");
            }
        }

        Mutant Exchanged(string slip, Line line, Substance other) =>
            Slips.Value(shop, slip, line, "add", other.Id, Naming.WordsOf(((AddStep)line.Step).Substance!).Concat(Naming.WordsOf(other)).Distinct());
    }

    private static IEnumerable<Substance> Hydrates(SubstanceCatalogue catalogue, Substance substance) =>
        substance.HydrateFamily is { } family ? catalogue.Substances.Where(s => s.HydrateFamily == family && s.Id != substance.Id).OrderBy(s => s.Id, StringComparer.Ordinal) : [];
}
