namespace RecipeLint.Advice.Slips;

/// <summary>
/// What stands beside a substance on the shelf under a name or in a bag so like its own that it is taken for it. Which are taken for each
/// other is common practice, no source.
/// </summary>
internal static class ShelfNeighbours
{
    private static readonly string[][] Groups =
    [
        ["monopotassium-phosphate", "dipotassium-phosphate"],
        ["monoammonium-phosphate", "diammonium-phosphate", "urea-phosphate"],
        ["monopotassium-phosphate", "monoammonium-phosphate", "monocalcium-phosphate-h2o", "sodium-dihydrogen-phosphate"],
        ["boric-acid", "borax-10h2o", "borax-5h2o", "disodium-octaborate-4h2o"],
        ["potassium-bicarbonate", "potassium-carbonate"],
        ["sodium-bicarbonate", "sodium-carbonate"],
        ["potassium-bicarbonate", "sodium-bicarbonate"],
        [
            "calcium-nitrate-4h2o", "calcium-nitrate-fertiliser", "calcium-nitrate-double-salt", "calcium-nitrate-anhydrous",
            "calcium-chloride-2h2o",
        ],
        ["magnesium-sulfate-7h2o", "magnesium-nitrate-6h2o", "magnesium-chloride-6h2o", "manganese-sulfate-h2o"],
        ["manganese-sulfate-h2o", "magnesium-sulfate-h2o"],
        ["potassium-nitrate", "potassium-sulfate", "potassium-chloride", "sodium-nitrate"],
        ["ammonium-nitrate", "ammonium-sulfate", "ammonium-chloride"],
        ["fe-edta-na-3h2o", "fe-dtpa-hna", "fe-eddha-na", "fe-hbed-na", "ferrous-sulfate-7h2o"],
        ["fe-dtpa-liquid-3", "fe-dtpa-liquid-6"],
        ["ferrous-sulfate-7h2o", "ammonium-ferrous-sulfate-6h2o", "copper-sulfate-5h2o"],
        ["zinc-sulfate-7h2o", "magnesium-sulfate-7h2o"],
        ["sodium-molybdate-2h2o", "ammonium-heptamolybdate-4h2o", "diammonium-molybdate"],
        ["disodium-edta-2h2o", "tetrasodium-edta-4h2o", "edta-acid"],
        ["citric-acid-h2o", "tripotassium-citrate-h2o", "trisodium-citrate-2h2o"],
        ["citric-acid-anhydrous", "tripotassium-citrate-anhydrous"],
        ["sodium-benzoate", "potassium-benzoate", "benzoic-acid", "potassium-sorbate"],
        ["potassium-sorbate", "sorbic-acid"],
        ["potassium-hydroxide", "sodium-hydroxide"],
        ["koh-10", "naoh-10"],
        ["koh-50", "naoh-50"],
        ["nitric-60", "phosphoric-75"],
        ["nitric-38", "sulfuric-37", "phosphoric-59"],
    ];

    /// <summary>Ids of what is taken for this substance; empty where nothing is.</summary>
    public static IEnumerable<string> Of(string id) =>
        Groups.Where(g => g.Contains(id)).SelectMany(g => g).Where(o => o != id).Distinct().Order(StringComparer.Ordinal);
}
