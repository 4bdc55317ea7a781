// Written by the workbench from Data/thermo/solids.json; do not edit by hand.
#pragma warning disable
namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>The rules that own the solids, one constant each, as the rows of the solids name them.</summary>
public static class SolidOwner
{
    public const string AnyOtherSolid = "any-other-solid";

    public const string CalciumWithCitrate = "calcium-with-citrate";

    public const string CalciumWithPhosphate = "calcium-with-phosphate";

    public const string CalciumWithSulfate = "calcium-with-sulfate";

    public const string CarbonateInStock = "carbonate-in-stock";

    public const string ChelatingAcidDropsOut = "chelating-acid-drops-out";

    public const string DoubleSalt = "double-salt";

    public const string IronWithPhosphate = "iron-with-phosphate";

    public const string MagnesiumAmmoniumPhosphate = "magnesium-ammonium-phosphate";

    public const string MetalHydroxide = "metal-hydroxide";

    public const string MolybdateWithCalcium = "molybdate-with-calcium";

    public const string PhosphateInTraceStock = "phosphate-in-trace-stock";

    public const string PreservativeDropsOut = "preservative-drops-out";

    public const string SaltPastItsSolubility = "salt-past-its-solubility";

    public const string SilicateWithAcidOrMetal = "silicate-with-acid-or-metal";
}

internal static class SolidRows
{
    public static readonly SolidRow[] All =
    [
        new("gypsum (calcium sulfate)", "calcium-with-sulfate", 0, null, 0, null, 0.3, "common practice, no source: twice saturation; just above saturation gypsum stays dissolved for hours", true, "Dissolves over hours, and in a stock that already holds calcium or sulfate over days.", "common practice, no source: a large volume of distilled water clears it in about an hour, a stock does not", "gypsum", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("brushite (calcium phosphate)", "calcium-with-phosphate", 0, null, 0.3, "about twofold: the metastable zone of struvite in Bouropoulos and Koutsoukos, J. Cryst. Growth 213 (2000) 381 (recalled), taken for its kin", 0.3, "common practice, no source: twice saturation", true, "Grows into harder calcium phosphates; only strong acid takes it up at once.", "common practice, no source", "calcium-phosphate", true),
        new("monetite (calcium phosphate)", "calcium-with-phosphate", 0, null, 0, null, null, null, null, null, null, "calcium-phosphate", true),
        new("octacalcium phosphate", "calcium-with-phosphate", 0.5, "between the published values, common practice, no source", 0, null, null, null, null, null, null, "calcium-phosphate", false),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("calcite (lime scale)", "carbonate-in-stock", 0, null, 1, "tenfold supersaturation without seeds, as in the remark on its role", 1, "tenfold supersaturation without seeds, as in the constants", true, "Scale on the walls; acid dissolves it with gas, a neutral solution hardly.", "common practice, no source", "calcium-carbonate", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("nesquehonite (magnesium carbonate)", "carbonate-in-stock", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", false, "Acid takes it up with gas.", "common practice, no source", "magnesium-hydroxide", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("magnesium hydroxide", "metal-hydroxide", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", false, "A fresh gel that acid or ammonium dissolves.", "common practice, no source", "magnesium-hydroxide", true),
        new("calcium hydroxide", "metal-hydroxide", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", false, "Dissolves when diluted or acidified.", "common practice, no source", "magnesium-hydroxide", true),
        new("newberyite (magnesium phosphate)", "magnesium-ammonium-phosphate", 0, null, 0.3, "about twofold: the metastable zone of struvite in Bouropoulos and Koutsoukos, J. Cryst. Growth 213 (2000) 381 (recalled), taken for its kin", 0.3, "common practice, no source: twice saturation", true, "Hard crystals that a weak acid takes up over hours.", "common practice, no source", "struvite", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("vivianite (ferrous phosphate)", "iron-with-phosphate", 0.5, "between the published values, common practice, no source", 0, null, 0.3, "common practice, no source: twice saturation", true, "Its surface oxidises in air, and the skin of ferric phosphate does not dissolve.", "common practice, no source", "iron-phosphate", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("ferric hydroxide (rust)", "metal-hydroxide", 1, "published values run from 1.2 to 4.9 with its age", 0, null, 0.5, "common practice, no source: three times the solubility; closer to it a clear ferric solution stays clear for days", true, "Rust: dissolves in strong acid only; a chelate takes it up over days or never.", "common practice, no source", "ferric-hydroxide", true),
        new("ferric hydroxide (rust)", "metal-hydroxide", 2.1, "published values run from 1.2 to 4.9 with its age", 0, null, double.PositiveInfinity, "ripens over days", true, "The floc some days later; dissolves in strong acid only.", "common practice, no source", "ferric-hydroxide", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new("ferrous hydroxide", "metal-hydroxide", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "Turns to rust in the air while it stands.", "common practice, no source", "ferric-hydroxide", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("manganese carbonate", "carbonate-in-stock", 0.5, "between the published values, common practice, no source", 0, null, 0.3, "common practice, no source: twice saturation", true, "Dissolves in acid over hours.", "common practice, no source", "manganese-carbonate", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("manganese hydroxide", "metal-hydroxide", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "Browns to manganese oxide in the air, which acid does not dissolve.", "common practice, no source", "manganese-carbonate", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new("copper hydroxide", "metal-hydroxide", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", false, "A fresh gel that acid dissolves within minutes.", "common practice, no source", "copper-hydroxide", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("malachite (basic copper carbonate)", "carbonate-in-stock", 0.5, "several hydroxides multiply every doubt", 0, null, null, null, null, null, null, "copper-hydroxide", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("brochantite (basic copper sulfate)", "metal-hydroxide", 0.5, "several hydroxides multiply every doubt", 0, null, 0.3, "common practice, no source: twice saturation", true, "Basic copper sulfate dissolves over hours in weak acid.", "common practice, no source", "copper-hydroxide", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("langite (basic copper sulfate)", "metal-hydroxide", 0.5, "several hydroxides multiply every doubt", 0, null, 0.3, "common practice, no source: twice saturation", true, "Basic copper sulfate dissolves over hours in weak acid.", "common practice, no source", "copper-hydroxide", true),
        new("basic copper chloride", "metal-hydroxide", 0.5, "several hydroxides multiply every doubt", 0, null, 0.3, "common practice, no source: twice saturation", true, "Basic copper chloride dissolves over hours in weak acid.", "common practice, no source", "copper-hydroxide", true),
        new("calcium molybdate", "molybdate-with-calcium", 0, null, 0, null, null, null, null, null, null, "calcium-molybdate", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, "molybdic-acid", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, "molybdic-acid", true),
        new("calcium oxalate", "calcium-with-citrate", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "Dissolves in strong acid only.", "common practice, no source", "calcium-oxalate", true),
        new("calcium oxalate", "calcium-with-citrate", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "Dissolves in strong acid only.", "common practice, no source", "calcium-oxalate", true),
        new("calcium citrate", "calcium-with-citrate", 0.3, "between the published values, common practice, no source", 0, null, 0.3, "common practice, no source: twice saturation", true, "Dissolves over days when diluted or acidified.", "common practice, no source", "calcium-citrate", true),
        new("calcium gluconate", "calcium-with-citrate", 0, null, 0, null, null, null, null, null, null, null, true),
        new("EDTA acid", "chelating-acid-drops-out", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "White sand that dissolves again over hours once the pH is back above 4.", "common practice, no source; also the remark on its role in the constants", "edta-acid", true),
        new("citric acid", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "citric-acid", true),
        new("boric acid", "salt-past-its-solubility", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", false, "Dissolves again with water or warmth.", "common practice, no source", "boric-acid", true),
        new("borax", "salt-past-its-solubility", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", false, "Dissolves again with water or warmth.", "common practice, no source", "borax", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("calcium silicate gel", "silicate-with-acid-or-metal", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "In acid silica gel is left of it.", "common practice, no source", "silica-gel", true),
        new("calcium silicate gel", "silicate-with-acid-or-metal", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "In acid silica gel is left of it.", "common practice, no source", "silica-gel", true),
        new("calcium silicate gel", "silicate-with-acid-or-metal", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "In acid silica gel is left of it.", "common practice, no source", "silica-gel", true),
        new("silica gel", "silicate-with-acid-or-metal", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "A gel that acid never takes up again.", "common practice, no source", "silica-gel", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("picromerite (potassium magnesium sulfate)", "double-salt", 0.35, "between published values and the change points of the potassium sulfate systems", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Dissolves again with water or warmth.", "common practice, no source", "double-salt", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("syngenite (potassium calcium sulfate)", "calcium-with-sulfate", 0.3, "between published values and the change points of the potassium sulfate systems", 0, null, 0.3, "common practice, no source: twice saturation", true, "Turns into gypsum first, which then dissolves over hours.", "common practice, no source", "syngenite", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new("aphthitalite (potassium sodium sulfate)", "double-salt", 0.35, "between published values and the change points of the potassium sulfate systems", 0, null, 0.3, "common practice, no source: twice saturation", false, "Dissolves again with water or warmth.", "common practice, no source", "double-salt", true),
        new("potassium sulfate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "potassium-sulfate", true),
        new("Epsom salt (magnesium sulfate)", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "magnesium-sulfate", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("Glauber's salt (sodium sulfate)", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "sodium-salt", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("potassium chloride", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "potassium-chloride", true),
        new("sodium chloride", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "sodium-salt", true),
        new("potassium nitrate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "potassium-nitrate", true),
        new("sodium nitrate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "sodium-salt", true),
        new("potassium dihydrogen phosphate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "monopotassium-phosphate", true),
        new("sodium dihydrogen phosphate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "sodium-salt", true),
        new("magnesium nitrate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "magnesium-nitrate", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new("calcium chloride", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "not described", true),
        new("magnesium chloride", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "not described", true),
        new("carnallite (potassium magnesium chloride)", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "potassium-chloride", true),
        new("iron(II) sulfate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("copper sulfate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "copper-sulfate", true),
        new("cobalt sulfate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("nickel sulfate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("potassium hydrogen carbonate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "not described", true),
        new("sodium hydrogen carbonate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "sodium-salt", true),
        new("sodium carbonate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "sodium-salt", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("cobalt hydroxide", "metal-hydroxide", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "Browns in the air; then weak acid does not dissolve it.", "common practice, no source", "not described", true),
        new("nickel hydroxide", "metal-hydroxide", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "Dissolves in weak acid over hours.", "common practice, no source", "not described", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("calcium pyrophosphate", "any-other-solid", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "Dissolves in strong acid only.", "common practice, no source", "not described", false),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new("zinc hydroxide", "metal-hydroxide", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", false, "A fresh gel that acid dissolves within minutes.", "common practice, no source", "zinc-hydroxide", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("zinc carbonate", "carbonate-in-stock", 0.5, "between the published values, common practice, no source", 0, null, 0.3, "common practice, no source: twice saturation", false, "A fresh floc that vinegar dissolves.", "common practice, no source", "zinc-hydroxide", true),
        new("zinc sulfate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("basic zinc sulfate", "metal-hydroxide", 0.5, "several hydroxides multiply every doubt", 0, null, 0.3, "common practice, no source: twice saturation", true, "Basic zinc sulfate dissolves over hours in weak acid.", "common practice, no source", "zinc-hydroxide", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("zinc phosphate", "phosphate-in-trace-stock", 3.3, "MINTEQA2 4.0 against WATEQ4F", 0, null, 0.3, "common practice, no source: twice saturation", true, "Crystals that dilute acid takes up over hours.", "common practice, no source", "zinc-phosphate", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("copper phosphate", "phosphate-in-trace-stock", 3.3, "MINTEQA2 4.0 against WATEQ4F", 0, null, 0.3, "common practice, no source: twice saturation", true, "Crystals that dilute acid takes up over hours.", "common practice, no source", "copper-phosphate", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("aluminium hydroxide", "metal-hydroxide", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "Ages within hours; then only strong acid or alkali dissolves it.", "common practice, no source", "not described", true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("sodium molybdate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "sodium-salt", true),
        new("manganese chloride", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("struvite (magnesium ammonium phosphate)", "magnesium-ammonium-phosphate", 0, null, 0.3, "about twofold: the metastable zone of struvite in Bouropoulos and Koutsoukos, J. Cryst. Growth 213 (2000) 381 (recalled), taken for its kin", 0.3, "common practice, no source: twice saturation", true, "Hard crystals that a weak acid takes up over hours.", "common practice, no source", "struvite", true),
        new("K-struvite (magnesium potassium phosphate)", "magnesium-ammonium-phosphate", 0.5, "between the published values, common practice, no source", 0.3, "about twofold: the metastable zone of struvite in Bouropoulos and Koutsoukos, J. Cryst. Growth 213 (2000) 381 (recalled), taken for its kin", 0.3, "common practice, no source: twice saturation", true, "Hard crystals that a weak acid takes up over hours.", "common practice, no source", "struvite", false),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, false),
        new(null, null, 0, null, 0, null, null, null, null, null, null, null, true),
        new("ferric phosphate", "iron-with-phosphate", 0.7, "the gel's constant is uncertain by 0.7", 0, null, 0.3, "common practice, no source: twice saturation", true, "Dissolves in strong acid only, in chelates over days.", "common practice, no source", "iron-phosphate", true),
        new("calcium carbonate", "carbonate-in-stock", 0.5, "a recalled constant", 0, null, 0.3, "common practice, no source: twice saturation", false, "A fresh cloud that acid takes up with gas.", "common practice, no source", "calcium-carbonate", true),
        new("amorphous calcium phosphate", "calcium-with-phosphate", 0.5, "a recalled constant", 0, null, 0.3, "common practice, no source: twice saturation", true, "Ripens into harder phosphates within hours; only strong acid takes it up at once.", "common practice, no source", "calcium-phosphate", false),
        new("basic zinc carbonate", "carbonate-in-stock", 0.5, "several hydroxides multiply every doubt", 0, null, null, null, null, null, null, "zinc-hydroxide", true),
        new("ammonium dihydrogen phosphate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "monoammonium-phosphate", true),
        new("ammonium sulfate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "ammonium-salt", true),
        new("ammonium nitrate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "ammonium-salt", true),
        new("calcium nitrate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "calcium-nitrate", true),
        new("ammonium chloride", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "ammonium-salt", true),
        new("manganese sulfate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("benzoic acid", "preservative-drops-out", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "Flakes that water hardly wets; they dissolve again on warming or with alkali.", "common practice, no source", "benzoic-acid", true),
        new("sorbic acid", "preservative-drops-out", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "White fluff that water hardly wets; it dissolves again on warming or with alkali.", "common practice, no source", "sorbic-acid", true),
        new("boussingaultite (ammonium magnesium sulfate)", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "double-salt", true),
        new("ammonium zinc sulfate", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "double-salt", true),
        new("ammonium copper sulfate", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("Mohr's salt (ammonium iron sulfate)", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("ammonium cobalt sulfate", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("ammonium nickel sulfate", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("ammonium manganese sulfate", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "double-salt", true),
        new("potassium zinc sulfate", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "double-salt", true),
        new("potassium copper sulfate", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("potassium iron sulfate", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("potassium cobalt sulfate", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("potassium nickel sulfate", "double-salt", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "metal-sulfate", true),
        new("disodium EDTA", "salt-past-its-solubility", 0.1, "handbooks print 100 to 111 g/L at 20 °C", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "disodium-edta-crystals", true),
        new("sodium iron EDTA", "salt-past-its-solubility", 0.25, "values of makers' sheets lie between 80 and 120 g/L", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "iron-chelate-crystals", false),
        new("sodium iron DTPA", "salt-past-its-solubility", 0.25, "values of makers' sheets lie between 80 and 120 g/L", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "iron-chelate-crystals", false),
        new("sodium iron EDDHA", "salt-past-its-solubility", 0.25, "values of makers' sheets lie between 80 and 120 g/L", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "iron-chelate-crystals", false),
        new("sodium benzoate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "preservative-salt", true),
        new("potassium benzoate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "preservative-salt", true),
        new("potassium sorbate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "preservative-salt", true),
        new("diammonium phosphate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "ammonium-salt", true),
        new("dipotassium phosphate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "alkaline-potassium-salt", true),
        new("potassium carbonate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "alkaline-potassium-salt", true),
        new("potassium pyrophosphate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "alkaline-potassium-salt", false),
        new("tripotassium citrate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "alkaline-potassium-salt", false),
        new("trisodium citrate", "salt-past-its-solubility", 0.3, "handbooks print 42 to 62 g of the anhydrous salt in 100 g of water at 25 °C", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "sodium-salt", false),
        new("sodium acetate", "salt-past-its-solubility", 0, null, 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "A soluble salt: water or warmth dissolves it again.", "common practice, no source", "sodium-salt", true),
        new("disodium zinc EDTA", "salt-past-its-solubility", 0.3, "values of makers' sheets lie up to a quarter apart", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "white-chelate-crystals", false),
        new("disodium manganese EDTA", "salt-past-its-solubility", 0.3, "values of makers' sheets lie up to a quarter apart", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "white-chelate-crystals", false),
        new("disodium copper EDTA", "salt-past-its-solubility", 0.3, "values of makers' sheets lie up to a quarter apart", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "copper-chelate-crystals", false),
        new("disodium calcium EDTA", "salt-past-its-solubility", 0.3, "values of makers' sheets lie up to a quarter apart", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "white-chelate-crystals", false),
        new("disodium magnesium EDTA", "salt-past-its-solubility", 0.3, "values of makers' sheets lie up to a quarter apart", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "white-chelate-crystals", false),
        new("tetrasodium EDTA", "salt-past-its-solubility", 0.3, "values of makers' sheets lie up to a fifth apart", 0, null, 0, "common practice, no source: a soluble salt crystallises without delay", false, "Water dissolves it again.", "common practice, no source", "white-chelate-crystals", false),
        new("DTPA acid", "chelating-acid-drops-out", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", true, "White sand that dissolves again over hours with alkali.", "common practice, no source", "dtpa-acid", false),
        new("calcium benzoate", "preservative-drops-out", 0, null, 0, null, 0.3, "common practice, no source: twice saturation", false, "Water or warmth dissolves it again.", "common practice, no source", "calcium-benzoate", true),
    ];
}
