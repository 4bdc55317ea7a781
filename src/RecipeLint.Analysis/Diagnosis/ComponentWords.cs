namespace RecipeLint.Analysis.Diagnosis;

/// <summary>Ions as a grower calls them.</summary>
internal static class ComponentWords
{
    private static readonly Dictionary<string, string> Words = new(StringComparer.Ordinal)
    {
        ["Ca+2"] = "calcium",
        ["Mg+2"] = "magnesium",
        ["K+"] = "potassium",
        ["Na+"] = "sodium",
        ["NH4+"] = "ammonium",
        ["Fe+2"] = "ferrous iron",
        ["Fe+3"] = "ferric iron",
        ["Mn+2"] = "manganese",
        ["Zn+2"] = "zinc",
        ["Cu+2"] = "copper",
        ["Ni+2"] = "nickel",
        ["Co+2"] = "cobalt",
        ["SO4-2"] = "sulfate",
        ["NO3-"] = "nitrate",
        ["H2PO4-"] = "phosphate",
        ["CO3-2"] = "carbonate",
        ["Cl-"] = "chloride",
        ["B(OH)3"] = "boron",
        ["MoO4-2"] = "molybdate",
        ["H4SiO4"] = "silicate",
        ["EDTA-4"] = "EDTA",
        ["DTPA-5"] = "DTPA",
        ["HEDTA-3"] = "HEDTA",
        ["EDDHA-4"] = "EDDHA",
        ["Citrate-3"] = "citrate",
        ["Acetate-"] = "acetate",
        ["Oxalate-2"] = "oxalate",
        ["Benzoate-"] = "benzoate",
        ["Sorbate-"] = "sorbate",
        ["Gluconate-"] = "gluconate",
        ["P2O7-4"] = "pyrophosphate",
        ["Al+3"] = "aluminium",
    };

    public static string Of(string component) => Words.GetValueOrDefault(component, component);
}
