namespace RecipeLint.Analysis.Solutions;

/// <summary>Ions as a grower calls them.</summary>
public static class IonWords
{
    private static readonly Dictionary<string, string> Words = new(StringComparer.Ordinal)
    {
        ["Na+"] = "sodium",
        ["K+"] = "potassium",
        ["NH4+"] = "ammonium",
        ["Mg+2"] = "magnesium",
        ["Ca+2"] = "calcium",
        ["Fe+2"] = "iron",
        ["Fe+3"] = "iron",
        ["Mn+2"] = "manganese",
        ["Zn+2"] = "zinc",
        ["Cu+2"] = "copper",
        ["Ni+2"] = "nickel",
        ["Co+2"] = "cobalt",
        ["Al+3"] = "aluminium",
        ["Cl-"] = "chloride",
        ["NO3-"] = "nitrate",
        ["SO4-2"] = "sulfate",
        ["H2PO4-"] = "phosphate",
        ["CO3-2"] = "carbonate",
        ["B(OH)3"] = "boron",
        ["MoO4-2"] = "molybdate",
        ["H4SiO4"] = "silicate",
        ["EDTA-4"] = "EDTA",
        ["DTPA-5"] = "DTPA",
        ["HEDTA-3"] = "HEDTA",
        ["EDDHA-4"] = "EDDHA",
        ["Citrate-3"] = "citrate",
        ["Acetate-"] = "acetate",
        ["Benzoate-"] = "benzoate",
        ["Sorbate-"] = "sorbate",
        ["Gluconate-"] = "gluconate",
        ["Oxalate-2"] = "oxalate",
        ["P2O7-4"] = "pyrophosphate",
        ["Glycinate-"] = "glycine",
        ["Phthalate-2"] = "phthalate",
        ["H+"] = "acid",
    };

    public static string Of(string component) => Words.GetValueOrDefault(component, component);
}
