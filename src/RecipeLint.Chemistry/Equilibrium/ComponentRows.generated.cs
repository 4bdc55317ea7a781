// Written by the workbench from Data/thermo/components.json; do not edit by hand.
#pragma warning disable
namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>The names of the components, one constant each: how facts, recipes and rules speak of them.</summary>
public static class Component
{
    /// <summary>acid: H, charge 1.</summary>
    public const string Hydrogen = "H+";

    /// <summary>water: H2O, charge 0.</summary>
    public const string Water = "H2O";

    /// <summary>sodium: Na, charge 1.</summary>
    public const string Sodium = "Na+";

    /// <summary>potassium: K, charge 1.</summary>
    public const string Potassium = "K+";

    /// <summary>ammonium: NH4, charge 1.</summary>
    public const string Ammonium = "NH4+";

    /// <summary>magnesium: Mg, charge 2.</summary>
    public const string Magnesium = "Mg+2";

    /// <summary>calcium: Ca, charge 2.</summary>
    public const string Calcium = "Ca+2";

    /// <summary>iron: Fe, charge 2.</summary>
    public const string FerrousIron = "Fe+2";

    /// <summary>iron: Fe, charge 3.</summary>
    public const string FerricIron = "Fe+3";

    /// <summary>manganese: Mn, charge 2.</summary>
    public const string Manganese = "Mn+2";

    /// <summary>zinc: Zn, charge 2.</summary>
    public const string Zinc = "Zn+2";

    /// <summary>copper: Cu, charge 2.</summary>
    public const string Copper = "Cu+2";

    /// <summary>nickel: Ni, charge 2.</summary>
    public const string Nickel = "Ni+2";

    /// <summary>cobalt: Co, charge 2.</summary>
    public const string Cobalt = "Co+2";

    /// <summary>aluminium: Al, charge 3.</summary>
    public const string Aluminium = "Al+3";

    /// <summary>chloride: Cl, charge -1.</summary>
    public const string Chloride = "Cl-";

    /// <summary>nitrate: NO3, charge -1.</summary>
    public const string Nitrate = "NO3-";

    /// <summary>sulfate: SO4, charge -2.</summary>
    public const string Sulfate = "SO4-2";

    /// <summary>phosphate: H2PO4, charge -1.</summary>
    public const string Phosphate = "H2PO4-";

    /// <summary>carbonate: CO3, charge -2.</summary>
    public const string Carbonate = "CO3-2";

    /// <summary>boron: B(OH)3, charge 0.</summary>
    public const string Boron = "B(OH)3";

    /// <summary>molybdate: MoO4, charge -2.</summary>
    public const string Molybdate = "MoO4-2";

    /// <summary>silicate: H4SiO4, charge 0.</summary>
    public const string Silicate = "H4SiO4";

    /// <summary>EDTA: C10H12N2O8, charge -4.</summary>
    public const string Edta = "EDTA-4";

    /// <summary>DTPA: C14H18N3O10, charge -5.</summary>
    public const string Dtpa = "DTPA-5";

    /// <summary>HEDTA: C10H15N2O7, charge -3.</summary>
    public const string Hedta = "HEDTA-3";

    /// <summary>EDDHA: C18H16N2O6, charge -4.</summary>
    public const string Eddha = "EDDHA-4";

    /// <summary>citrate: C6H5O7, charge -3.</summary>
    public const string Citrate = "Citrate-3";

    /// <summary>acetate: C2H3O2, charge -1.</summary>
    public const string Acetate = "Acetate-";

    /// <summary>benzoate: C7H5O2, charge -1.</summary>
    public const string Benzoate = "Benzoate-";

    /// <summary>sorbate: C6H7O2, charge -1.</summary>
    public const string Sorbate = "Sorbate-";

    /// <summary>gluconate: C6H11O7, charge -1.</summary>
    public const string Gluconate = "Gluconate-";

    /// <summary>oxalate: C2O4, charge -2.</summary>
    public const string Oxalate = "Oxalate-2";

    /// <summary>pyrophosphate: P2O7, charge -4.</summary>
    public const string Pyrophosphate = "P2O7-4";

    /// <summary>glycine: C2H4NO2, charge -1.</summary>
    public const string Glycinate = "Glycinate-";

    /// <summary>phthalate: C8H4O4, charge -2.</summary>
    public const string Phthalate = "Phthalate-2";

    /// <summary>lactate: C3H5O3, charge -1.</summary>
    public const string Lactate = "Lactate-";

    /// <summary>malate: C4H4O5, charge -2.</summary>
    public const string Malate = "Malate-2";

    /// <summary>sulfamate: NH2SO3, charge -1.</summary>
    public const string Sulfamate = "NH2SO3-";

    /// <summary>thiosulfate: S2O3, charge -2.</summary>
    public const string Thiosulfate = "S2O3-2";

    /// <summary>nitrite: NO2, charge -1.</summary>
    public const string Nitrite = "NO2-";

    /// <summary>IDHA: C8H7NO8, charge -4.</summary>
    public const string Idha = "IDHA-4";

    /// <summary>acid groups of humic matter: C7H6O4, charge -1.</summary>
    public const string AcidGroup25 = "AcidGroup2.5-";

    /// <summary>acid groups of humic matter: C7H6O4, charge -1.</summary>
    public const string AcidGroup45 = "AcidGroup4.5-";

    /// <summary>acid groups of humic matter: C7H6O4, charge -1.</summary>
    public const string AcidGroup65 = "AcidGroup6.5-";

    /// <summary>acid groups of humic matter: C7H6O4, charge -1.</summary>
    public const string AcidGroup85 = "AcidGroup8.5-";

    /// <summary>acid groups of humic matter: C7H6O4, charge -1.</summary>
    public const string AcidGroup105 = "AcidGroup10.5-";
}

internal static class ComponentRows
{
    public static readonly ComponentRow[] All =
    [
        new(Component.Hydrogen, "acid", ComponentRoles.None, 1, 1, "H", 1.008, null, null),
        new(Component.Water, "water", ComponentRoles.None, 0, 0, "H2O", 18.015, null, null),
        new(Component.Sodium, "sodium", ComponentRoles.None, 1, 1, "Na", 22.99, null, null),
        new(Component.Potassium, "potassium", ComponentRoles.None, 1, 1, "K", 39.098, null, null),
        new(Component.Ammonium, "ammonium", ComponentRoles.None, 1, 1, "NH4", 18.039, null, "ammonium"),
        new(Component.Magnesium, "magnesium", ComponentRoles.Metal, 2, 2, "Mg", 24.305, 9, null),
        new(Component.Calcium, "calcium", ComponentRoles.Metal, 2, 2, "Ca", 40.078, 8, null),
        new(Component.FerrousIron, "iron", ComponentRoles.Metal | ComponentRoles.TraceMetal, 2, 2, "Fe", 55.845, 6, null),
        new(Component.FerricIron, "iron", ComponentRoles.Metal | ComponentRoles.TraceMetal, 3, 3, "Fe", 55.845, 1, null),
        new(Component.Manganese, "manganese", ComponentRoles.Metal | ComponentRoles.TraceMetal, 2, 2, "Mn", 54.938, 7, null),
        new(Component.Zinc, "zinc", ComponentRoles.Metal | ComponentRoles.TraceMetal, 2, 2, "Zn", 65.38, 4, null),
        new(Component.Copper, "copper", ComponentRoles.Metal | ComponentRoles.TraceMetal, 2, 2, "Cu", 63.546, 2, null),
        new(Component.Nickel, "nickel", ComponentRoles.Metal | ComponentRoles.TraceMetal, 2, 2, "Ni", 58.693, 3, null),
        new(Component.Cobalt, "cobalt", ComponentRoles.Metal | ComponentRoles.TraceMetal, 2, 2, "Co", 58.933, 5, null),
        new(Component.Aluminium, "aluminium", ComponentRoles.Metal, 3, 3, "Al", 26.982, 10, null),
        new(Component.Chloride, "chloride", ComponentRoles.None, -1, -1, "Cl", 35.45, null, null),
        new(Component.Nitrate, "nitrate", ComponentRoles.None, -1, -1, "NO3", 62.004, null, "nitrate"),
        new(Component.Sulfate, "sulfate", ComponentRoles.None, -2, -2, "SO4", 96.056, null, null),
        new(Component.Phosphate, "phosphate", ComponentRoles.None, -1, -1, "H2PO4", 96.986, null, null),
        new(Component.Carbonate, "carbonate", ComponentRoles.None, -2, -1, "CO3", 60.008, null, null),
        new(Component.Boron, "boron", ComponentRoles.None, 0, 0, "B(OH)3", 61.831, null, null),
        new(Component.Molybdate, "molybdate", ComponentRoles.None, -2, -2, "MoO4", 159.946, null, null),
        new(Component.Silicate, "silicate", ComponentRoles.None, 0, 0, "H4SiO4", 96.113, null, null),
        new(Component.Edta, "EDTA", ComponentRoles.Chelator, -4, -2, "C10H12N2O8", 288.212, 3, "organic"),
        new(Component.Dtpa, "DTPA", ComponentRoles.Chelator, -5, -3, "C14H18N3O10", 388.309, 2, "organic"),
        new(Component.Hedta, "HEDTA", ComponentRoles.Chelator, -3, -2, "C10H15N2O7", 275.237, 4, "organic"),
        new(Component.Eddha, "EDDHA", ComponentRoles.Chelator, -4, 0, "C18H16N2O6", 356.334, 1, "organic"),
        new(Component.Citrate, "citrate", ComponentRoles.Ligand | ComponentRoles.Food, -3, -2, "C6H5O7", 189.099, 6, null),
        new(Component.Acetate, "acetate", ComponentRoles.Preservative | ComponentRoles.Food, -1, -1, "C2H3O2", 59.044, null, null),
        new(Component.Benzoate, "benzoate", ComponentRoles.Preservative, -1, -1, "C7H5O2", 121.115, null, null),
        new(Component.Sorbate, "sorbate", ComponentRoles.Preservative, -1, -1, "C6H7O2", 111.12, null, null),
        new(Component.Gluconate, "gluconate", ComponentRoles.Ligand | ComponentRoles.Food, -1, -1, "C6H11O7", 195.147, 7, null),
        new(Component.Oxalate, "oxalate", ComponentRoles.Ligand, -2, -2, "C2O4", 88.018, 9, null),
        new(Component.Pyrophosphate, "pyrophosphate", ComponentRoles.Ligand, -4, -2, "P2O7", 173.941, 10, null),
        new(Component.Glycinate, "glycine", ComponentRoles.Ligand | ComponentRoles.Food, -1, 0, "C2H4NO2", 74.059, 8, "organic"),
        new(Component.Phthalate, "phthalate", ComponentRoles.None, -2, -2, "C8H4O4", 164.116, null, null),
        new(Component.Lactate, "lactate", ComponentRoles.Ligand | ComponentRoles.Food, -1, -1, "C3H5O3", 89.07, 12, null),
        new(Component.Malate, "malate", ComponentRoles.Ligand | ComponentRoles.Food, -2, -2, "C4H4O5", 132.071, 11, null),
        new(Component.Sulfamate, "sulfamate", ComponentRoles.None, -1, -1, "NH2SO3", 96.08, null, "organic"),
        new(Component.Thiosulfate, "thiosulfate", ComponentRoles.None, -2, -2, "S2O3", 112.117, null, null),
        new(Component.Nitrite, "nitrite", ComponentRoles.None, -1, -1, "NO2", 46.005, null, "organic"),
        new(Component.Idha, "IDHA", ComponentRoles.Chelator | ComponentRoles.Food, -4, -3, "C8H7NO8", 245.143, 5, "organic"),
        new(Component.AcidGroup25, "acid groups of humic matter", ComponentRoles.None, -1, -1, "C7H6O4", 154.121, null, null),
        new(Component.AcidGroup45, "acid groups of humic matter", ComponentRoles.None, -1, -1, "C7H6O4", 154.121, null, null),
        new(Component.AcidGroup65, "acid groups of humic matter", ComponentRoles.None, -1, 0, "C7H6O4", 154.121, null, null),
        new(Component.AcidGroup85, "acid groups of humic matter", ComponentRoles.None, -1, 0, "C7H6O4", 154.121, null, null),
        new(Component.AcidGroup105, "acid groups of humic matter", ComponentRoles.None, -1, 0, "C7H6O4", 154.121, null, null),
    ];
}
