using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>A solid a rule may speak of.</summary>
/// <param name="Solid">Name in the constant set.</param>
/// <param name="Rule">The one rule that owns it.</param>
/// <param name="Called">What a grower calls it.</param>
/// <param name="Spread">
/// How far the published constants lie apart, on the scale of the saturation index of the formula as written; 0 when the activity model is
/// the larger doubt.
/// </param>
/// <param name="StartsAt">Saturation index it usually needs to start without seeds; 0 when it starts on its own.</param>
internal sealed record OwnedSolid(string Solid, string Rule, string Called, double Spread = 0, double StartsAt = 0);

/// <summary>
/// Which rule owns which solid: one deposit gives one finding. What no named rule owns falls to the generic one. Solids the constants mark
/// as excluded or as too weak have no owner; of those that form slowly only the listed ones give a remark about storage: the others ripen
/// out of a solid that is judged already, or indicate deposits in stocks known to stay clear.
/// </summary>
internal static class SolidOwners
{
    public const string Generic = "any-other-solid";

    // Spreads. Copper and zinc phosphate: MINTEQA2 4.0 against WATEQ4F, 3.3. Ferric phosphate: the gel's constant is uncertain by 0.7.
    // Ferrihydrite: published values run from 1.2 to 4.9 with its age. Amorphous calcium carbonate and phosphate: recalled constants.
    // Basic copper and zinc salts: six hydroxides multiply every doubt. Picromerite and syngenite: between published values and the change
    // points of the potassium sulfate systems (all as in the data of the constants).
    // Starts. Calcite: tenfold supersaturation without seeds (as in the constants). Phosphates of calcium and magnesium: about twofold, the
    // metastable zone of struvite in Bouropoulos and Koutsoukos, J. Cryst. Growth 213 (2000) 381 (recalled), taken for its kin.
    private static readonly OwnedSolid[] Table =
    [
        new("Gypsum", "calcium-with-sulfate", "gypsum (calcium sulfate)"),
        new("Syngenite", "calcium-with-sulfate", "syngenite (potassium calcium sulfate)", Spread: 0.3),

        new("Brushite", "calcium-with-phosphate", "brushite (calcium phosphate)", StartsAt: 0.3),
        new("Amorphous calcium phosphate", "calcium-with-phosphate", "amorphous calcium phosphate", Spread: 0.5),
        new("Monetite", "calcium-with-phosphate", "monetite (calcium phosphate)"),
        new("Octacalcium phosphate", "calcium-with-phosphate", "octacalcium phosphate", Spread: 0.5),

        new("Hopeite", "phosphate-in-trace-stock", "zinc phosphate", Spread: 3.3),
        new("Cu3(PO4)2:3H2O", "phosphate-in-trace-stock", "copper phosphate", Spread: 3.3),

        new("FePO4 amorphous", "iron-with-phosphate", "ferric phosphate", Spread: 0.7),
        new("Vivianite", "iron-with-phosphate", "vivianite (ferrous phosphate)", Spread: 0.5),

        new("Struvite", "magnesium-ammonium-phosphate", "struvite (magnesium ammonium phosphate)", StartsAt: 0.3),
        new("K-struvite", "magnesium-ammonium-phosphate", "K-struvite (magnesium potassium phosphate)", Spread: 0.5, StartsAt: 0.3),
        new("Newberyite", "magnesium-ammonium-phosphate", "newberyite (magnesium phosphate)", StartsAt: 0.3),

        new("Amorphous silica", "silicate-with-acid-or-metal", "silica gel"),
        new("C-S-H 0.8", "silicate-with-acid-or-metal", "calcium silicate gel"),
        new("C-S-H 1.2", "silicate-with-acid-or-metal", "calcium silicate gel"),
        new("C-S-H 1.6", "silicate-with-acid-or-metal", "calcium silicate gel"),

        new("Calcite", "carbonate-in-stock", "calcite (lime scale)", StartsAt: 1),
        new("Amorphous calcium carbonate", "carbonate-in-stock", "calcium carbonate", Spread: 0.5),
        new("Nesquehonite", "carbonate-in-stock", "nesquehonite (magnesium carbonate)"),
        new("Rhodochrosite (synthetic)", "carbonate-in-stock", "manganese carbonate", Spread: 0.5),
        new("ZnCO3:H2O", "carbonate-in-stock", "zinc carbonate", Spread: 0.5),
        new("Hydrozincite", "carbonate-in-stock", "basic zinc carbonate", Spread: 0.5),
        new("Malachite", "carbonate-in-stock", "malachite (basic copper carbonate)", Spread: 0.5),

        new("Powellite", "molybdate-with-calcium", "calcium molybdate"),

        new("Brucite", "metal-hydroxide", "magnesium hydroxide"),
        new("Portlandite", "metal-hydroxide", "calcium hydroxide"),
        new("Ferrihydrite (amorphous)", "metal-hydroxide", "ferric hydroxide (rust)", Spread: 1),
        new("Ferrihydrite (aged)", "metal-hydroxide", "ferric hydroxide (rust)", Spread: 2.1),
        new("Fe(OH)2", "metal-hydroxide", "ferrous hydroxide"),
        new("Pyrochroite", "metal-hydroxide", "manganese hydroxide"),
        new("Cu(OH)2", "metal-hydroxide", "copper hydroxide"),
        new("Brochantite", "metal-hydroxide", "brochantite (basic copper sulfate)", Spread: 0.5),
        new("Langite", "metal-hydroxide", "langite (basic copper sulfate)", Spread: 0.5),
        new("Cu2Cl(OH)3 (fresh)", "metal-hydroxide", "basic copper chloride", Spread: 0.5),
        new("Zn(OH)2 (amorphous)", "metal-hydroxide", "zinc hydroxide"),
        new("Zn4(OH)6SO4", "metal-hydroxide", "basic zinc sulfate", Spread: 0.5),
        new("Co(OH)2", "metal-hydroxide", "cobalt hydroxide"),
        new("Ni(OH)2", "metal-hydroxide", "nickel hydroxide"),
        new("Al(OH)3 (amorphous)", "metal-hydroxide", "aluminium hydroxide"),

        new("Calcium citrate (Earlandite)", "calcium-with-citrate", "calcium citrate", Spread: 0.3),
        new("Whewellite", "calcium-with-citrate", "calcium oxalate"),
        new("Weddellite", "calcium-with-citrate", "calcium oxalate"),
        new("Calcium gluconate", "calcium-with-citrate", "calcium gluconate"),

        new("Niter", "salt-past-its-solubility", "potassium nitrate"),
        new("Arcanite", "salt-past-its-solubility", "potassium sulfate"),
        new("MKP", "salt-past-its-solubility", "potassium dihydrogen phosphate"),
        new("MAP", "salt-past-its-solubility", "ammonium dihydrogen phosphate"),
        new("NaH2PO4", "salt-past-its-solubility", "sodium dihydrogen phosphate"),
        new("Ammonium sulfate", "salt-past-its-solubility", "ammonium sulfate"),
        new("Ammonium nitrate", "salt-past-its-solubility", "ammonium nitrate"),
        new("Salammoniac", "salt-past-its-solubility", "ammonium chloride"),
        new("Ca nitrate tetrahydrate", "salt-past-its-solubility", "calcium nitrate"),
        new("Nitromagnesite", "salt-past-its-solubility", "magnesium nitrate"),
        new("Epsomite", "salt-past-its-solubility", "Epsom salt (magnesium sulfate)"),
        new("Mirabilite", "salt-past-its-solubility", "Glauber's salt (sodium sulfate)"),
        new("Nitratine", "salt-past-its-solubility", "sodium nitrate"),
        new("Sylvite", "salt-past-its-solubility", "potassium chloride"),
        new("Halite", "salt-past-its-solubility", "sodium chloride"),
        new("Antarcticite", "salt-past-its-solubility", "calcium chloride"),
        new("Bischofite", "salt-past-its-solubility", "magnesium chloride"),
        new("Melanterite", "salt-past-its-solubility", "iron(II) sulfate"),
        new("Chalcanthite", "salt-past-its-solubility", "copper sulfate"),
        new("Goslarite", "salt-past-its-solubility", "zinc sulfate"),
        new("MnSO4 pentahydrate", "salt-past-its-solubility", "manganese sulfate"),
        new("MnCl2:4H2O", "salt-past-its-solubility", "manganese chloride"),
        new("Bieberite", "salt-past-its-solubility", "cobalt sulfate"),
        new("Morenosite", "salt-past-its-solubility", "nickel sulfate"),
        new("Na2MoO4:2H2O", "salt-past-its-solubility", "sodium molybdate"),
        new("Kalicinite", "salt-past-its-solubility", "potassium hydrogen carbonate"),
        new("Nahcolite", "salt-past-its-solubility", "sodium hydrogen carbonate"),
        new("Natron", "salt-past-its-solubility", "sodium carbonate"),
        new("Citric acid monohydrate", "salt-past-its-solubility", "citric acid"),
        new("Boric acid", "salt-past-its-solubility", "boric acid"),
        new("Borax", "salt-past-its-solubility", "borax"),

        new("Picromerite", "double-salt", "picromerite (potassium magnesium sulfate)", Spread: 0.35),
        new("Aphthitalite (glaserite)", "double-salt", "aphthitalite (potassium sodium sulfate)", Spread: 0.35),
        new("Carnallite", "double-salt", "carnallite (potassium magnesium chloride)"),

        new("EDTA acid", "chelating-acid-drops-out", "EDTA acid"),

        new("Benzoic acid", "preservative-drops-out", "benzoic acid"),
        new("Sorbic acid", "preservative-drops-out", "sorbic acid"),

        new("Ca2P2O7", Generic, "calcium pyrophosphate"),
    ];

    private static readonly Dictionary<string, OwnedSolid> BySolid = Table.ToDictionary(o => o.Solid, StringComparer.Ordinal);

    /// <summary>The listed solids, each once.</summary>
    public static IReadOnlyList<OwnedSolid> Listed => Table;

    /// <summary>Who owns a solid; null when no finding may rest on it.</summary>
    public static OwnedSolid? Of(Solid solid) => solid.Role switch
    {
        SolidRole.FormsReadily or SolidRole.SolubleSalt =>
            BySolid.TryGetValue(solid.Name, out var named) ? named : new OwnedSolid(solid.Name, Generic, solid.Name),
        SolidRole.FormsSlowly => BySolid.GetValueOrDefault(solid.Name),
        _ => null,
    };
}
