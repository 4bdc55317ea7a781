using System.Text.RegularExpressions;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// What a substance does to other contents: for the catalogue from roles.json, for what a shop brings of its own from formula, ions, kind
/// and name. In doubt a role is given, not withheld.
/// </summary>
public static partial class HazardRoles
{
    private static readonly string[] Catalysts =
    [
        Component.FerrousIron, Component.FerricIron, Component.Copper, Component.Manganese, Component.Cobalt, Component.Nickel,
        Component.Molybdate, "inert:I-1", "inert:FeHBED-1",
    ];

    private static readonly string[] HydrolysingMetals =
    [
        Component.FerrousIron, Component.FerricIron, Component.Copper, Component.Manganese, Component.Zinc, Component.Cobalt,
        Component.Nickel, Component.Aluminium,
    ];

    private static readonly string[] Amines =
    [
        "inert:urea", Component.Glycinate, Component.Edta, Component.Dtpa, Component.Hedta, Component.Eddha, Component.Idha,
        "inert:FeHBED-1",
    ];

    private static readonly string[] Fuels =
        [
            Component.Citrate, Component.Acetate, Component.Benzoate, Component.Sorbate, Component.Gluconate, Component.Oxalate,
            Component.Phthalate, Component.Lactate, Component.Malate, "inert:propionate-1", .. Amines, "inert:sucrose", "inert:glucose",
        ];

    /// <summary>Metals that take water apart.</summary>
    private static readonly string[] AlkaliMetals = ["Li", "Na", "K", "Ca"];

    /// <summary>
    /// Parts of trade names, without blanks and hyphens, also misspelt and as bought abroad (common practice, no source).
    /// </summary>
    private static readonly (HazardRole[] Roles, string[] Words)[] Names =
    [
        ([HazardRole.Hypochlorite],
            ["hypochlor", "hypoclor", "hipochlor", "hipoclor", "ypochlorit", "naocl", "naclo", "bleach", "blech", "javel",
                "poolchlor", "poolshock", "swimmingpool", "hottub", "spachlor", "poolpowder", "poolcleaner",
                "shockchlor", "shocktreat", "chlorine", "clorine", "chlortab", "chlorgran", "dakinsol", "lejia", "candegina",
                "eaudej", "sanitis",
                "sanitiz", "disinfect", "toiletcleaner", "mouldremov", "moldremov", "chlorideoflime", "chlorinatedlime",
                "chlorrein", "chlorbleich", "bleichmittel", "chlorkalk", "activechlor", "aktivchlor", "sanitärrein", "sanitarrein",
                "schimmelentfern"]),
        ([HazardRole.Hypochlorite, HazardRole.OxidisingSalt],
            ["isocyanur", "dichlor", "trichlor", "bromochlor", "pooltab", "poolstick", "poolgran", "pooldisinf"]),
        ([HazardRole.Hypochlorite, HazardRole.Acid, HazardRole.Alkali], ["draincleaner", "drainopener", "drainunblock", "pipecleaner",
            "abflussrein", "rohrrein"]),
        ([HazardRole.Sulfide, HazardRole.Alkali], ["limesulf", "limesulph", "schwefelkalk"]),
        ([HazardRole.Sulfide],
            ["polysulf", "polysulph", "liverofsul", "hydrosulf", "hydrosulph", "sulfide", "sulphide", "sulfuratedpotash",
                "sulphuratedpotash", "schwefelleber", "sulfid"]),
        ([HazardRole.BareMetal],
            ["aluminiummetal", "aluminummetal", "aluminiumfoil", "aluminumfoil", "zincmetal", "steelwool", "ironwool", "galvanised",
                "galvanized"]),
        ([HazardRole.BareMetal, HazardRole.Fuel],
            ["aluminiumpowder", "aluminumpowder", "aluminiumdust", "aluminumdust", "aluminiumflake", "aluminumflake", "zincdust",
                "zincpowder", "magnesiummetal", "magnesiumpowder", "magnesiumturning", "magnesiumribbon", "magnesiumshaving"]),
        ([HazardRole.WaterReactive],
            ["calciumcarbide", "carbidelamp", "lampcarbide", "calciumkarbid", "calciumcarbid", "sodiummetal", "potassiummetal",
                "lithiummetal", "borohydrid",
                "sodiumhydride", "calciumhydride", "lithiumhydride", "aluminiumhydride", "aluminumhydride"]),
        ([HazardRole.Phosphide], ["phosphid", "fosfid", "fumigationtablet", "fumigationpellet"]),
        ([HazardRole.Azide], ["sodiumazid", "potassiumazid", "leadazid"]),
        ([HazardRole.Iodine], ["iodine", "lugol", "povidon", "iodtinctur", "tinctureofiod", "jodtinktur", "yodo"]),
        ([HazardRole.Iodide, HazardRole.Reductant, HazardRole.PeroxideCatalyst], ["iodide"]),
        ([HazardRole.Bromide], ["bromide", "bromid"]),
        ([HazardRole.Fluoride, HazardRole.Acid], ["hydrofluor", "flusssäure", "flusssaure", "bifluorid", "fluosilicicacid",
            "fluorosilicicacid", "hexafluorosilicic"]),
        ([HazardRole.Fluoride], ["sodiumfluorid", "potassiumfluorid", "ammoniumfluorid", "fluosilicat", "fluorosilicat", "silicofluorid"]),
        ([HazardRole.Cyanide], ["cyanid", "cianur", "zyanid", "prussicacid"]),
        ([HazardRole.Sulfite], ["sulfite", "sulphite", "bisulf", "sulfit", "thiosulf", "thiosulph", "dithionite", "campden"]),
        ([HazardRole.Nitrite], ["nitrite", "curingsalt", "picklingsalt", "nitrit", "pökelsalz", "pokelsalz"]),
        ([HazardRole.StrongOxidiser, HazardRole.Chlorite],
            ["chlorate", "chlorite", "chlorinedioxide", "chlorat", "chlorit", "chlordioxid"]),
        ([HazardRole.StrongOxidiser, HazardRole.Acid], ["monopersulf", "monopersulph", "peroxymonosulf", "peroxomonosulf"]),
        ([HazardRole.StrongOxidiser],
            ["permang", "condyscrystal", "iodate", "bromate", "persulf", "persulph", "manganesedioxid", "leaddioxid", "pyrolusit",
                "braunstein", "peroxymono", "dichromate", "bichromate"]),
        ([HazardRole.Peroxide], ["perox", "peroksid", "perhydrol", "h2o2", "oxygenbleach", "oxybleach"]),
        ([HazardRole.Peroxide, HazardRole.Alkali, HazardRole.Carbonate], ["percarb"]),
        ([HazardRole.Peroxide, HazardRole.Acid, HazardRole.Organic], ["peracet", "peroxyacet"]),
        ([HazardRole.Ammonium], ["ammoni", "amonia", "amoni", "salmiak", "hirschhornsalz"]),
        ([HazardRole.Amine, HazardRole.Organic], ["urea", "amino", "harnstoff"]),
        ([HazardRole.Acid],
            ["phdown", "phminus", "phreduc", "phdecreas", "phlower", "descal", "limeremov", "limescaleremov", "scaleremov",
                "rustremov", "brickclean",
                "milkstone", "vinegar", "etchant", "lemonjuice", "cementclean", "toiletclean", "toiletstuff", "toiletbowlclean",
                "kettleclean",
                "phosphoric", "nitric", "saure", "säure", "vinaigre", "vinagre",
                "essig", "entkalk", "kalkentfern", "kalklös", "rostentfern", "wcrein", "zitronensaft"]),
        ([HazardRole.NitricAcid, HazardRole.Acid],
            ["nitricacid", "aquafortis", "scheidewasser", "salpetersäure", "salpetersaure", "acidenitrique", "acidonitrico",
                "ácidonítrico"]),
        ([HazardRole.SulfuricAcid, HazardRole.Acid],
            ["sulfuricacid", "sulphuricacid", "batteryacid", "accumulatoracid", "oilofvitriol", "schwefelsäure", "schwefelsaure"]),
        ([HazardRole.HydrochloricAcid, HazardRole.Acid],
            ["hydrochloric", "muriatic", "spiritsofsalt", "spiritofsalt", "salfumant", "salzsäure", "salzsaure"]),
        ([HazardRole.Alkali],
            ["phup", "phplus", "phincreas", "phrais", "ovencleaner", "caustic", "quicklime", "slakedlime", "hydratedlime",
                "milkoflime", "lauge",
                "sodalye", "potashlye", "waterglass", "woodash", "limeputty", "builderslime",
                "ätznatron", "atznatron", "ätzkali", "atzkali", "ätzkalk", "löschkalk", "loschkalk", "kalkhydrat", "wasserglas",
                "backofenrein", "pottasche"]),
        ([HazardRole.AmmoniaWater], ["glassclean", "windowclean", "salmiakgeist", "glasrein", "fensterrein"]),
        ([HazardRole.Alkali, HazardRole.Quicklime],
            ["quicklime", "burntlime", "unslakedlime", "lumplime", "calciumoxide", "causticlime", "branntkalk", "chauxvive"]),
        ([HazardRole.Carbonate, HazardRole.Alkali],
            ["washingsoda", "sodaash", "waschsoda", "pottasche", "potassiumcarbonate", "sodiumcarbonate"]),
        ([HazardRole.Carbonate],
            ["bicarb", "bakingsoda", "bakingpowder", "backpulver", "speisesoda", "speisenatron", "calciumcarbonate", "chalk",
                "limestone", "dolomite"]),
        ([HazardRole.Organic],
            ["humic", "fulvic", "alcohol", "ethanol", "glycer", "glycol", "extract", "formaldehyd", "formalin", "glutaral"]),
        ([HazardRole.Organic, HazardRole.Fuel],
            ["solvent", "paintthinner", "methylatedspirit", "surgicalspirit", "spiritus", "rubbingalcohol", "propanol", "toluene",
                "xylene", "benzene",
                "ethylacetate"]),
        ([HazardRole.Organic, HazardRole.Fuel, HazardRole.ExplosiveWithPeroxide],
            ["acetone", "propanone", "butanone", "ketone", "nailpolishremov", "nailvarnishremov"]),
        ([HazardRole.Organic, HazardRole.Fuel, HazardRole.Amine, HazardRole.ExplosiveWithPeroxide],
            ["hexamin", "hexamethylenetetramin", "methenamin", "urotropin"]),
        ([HazardRole.Organic, HazardRole.Amine], ["seaweed", "kelp", "fish"]),
        ([HazardRole.Organic, HazardRole.Fermentable], ["molasses", "sugar", "syrup", "melasse", "zucker", "sirup", "honig"]),
        ([HazardRole.Organic, HazardRole.Fuel],
            ["charcoal", "sawdust", "holzkohle", "sägemehl", "sagemehl", "sägespän", "sagespan", "woodflour", "cornflour",
                "wheatflour", "woodshaving", "starch", "dextrin", "glycerin", "glycerol"]),
        ([HazardRole.Organic, HazardRole.Fuel, HazardRole.Oil],
            ["paraffin", "kerosene", "kerosine", "petroleum", "benzin", "heizöl", "heizol", "terpentin", "diesel", "petrol",
                "gasoline", "gasoil", "naphtha", "whitespirit",
                "turpentin",
                "fueloil", "heatingoil", "motoroil", "engineoil", "lampoil", "vegetableoil", "neemoil", "mineraloil", "whiteoil",
                "horticulturaloil", "sprayoil", "summeroil", "winteroil", "rapeseedoil", "canolaoil", "soybeanoil", "cottonseedoil",
                "linseedoil", "wasteoil", "candlewax"]),
    ];

    /// <summary>What nobody catalogues, as far as its name or formula tells what it does to others; null where it does not.</summary>
    public static Substance? Named(string name)
    {
        if (name.Length is 0 or > SubstanceCatalogue.MaxTextLength)
        {
            return null;
        }

        var product = new Substance
        {
            Id = Slug.Of(name),
            Name = name,
            Kind = SubstanceKind.Product,
            Content = ElementContent.Empty,
            Formula = FormulaOf(name),
        };
        return Of(product).Any(r => r is not (HazardRole.Unknown or HazardRole.None)) ? product : null;
    }

    /// <summary>A compound that is written as formulas are ("Na2S"); null for a word that only reads like one.</summary>
    private static Formula? FormulaOf(string name) => FormulaParser.TryParse(name.Trim(), out var formula, out _)
        && formula.Atoms.Count > 1 && name.Any(char.IsAsciiLetterUpper)
        && (KnownNames.BuiltIn.IsFormula(name.Trim()) || name.Any(char.IsAsciiDigit))
            ? formula
            : null;

    /// <summary>The roles of a substance; never empty.</summary>
    public static IReadOnlySet<HazardRole> Of(Substance substance)
    {
        if (HazardData.RolesOf(substance.Id) is { } known && (substance.Formula is null || BuiltIn(substance)))
        {
            return known;
        }

        var roles = new HashSet<HazardRole>();
        ByName(substance, roles);
        ByFormula(substance.Formula, roles);
        ByIons(substance, roles);
        ByKind(substance, roles);
        // A formula that is only a name in a file was catalogued by nobody: nothing else is known of it.
        var isTold = substance.Formula is not null && !ReferenceEquals(substance.Content, ElementContent.Empty);
        if (!isTold && substance.Dissolves.Count == 0 && substance.Kind != SubstanceKind.Dye)
        {
            roles.Add(HazardRole.Unknown);
        }

        if (roles.Count == 0)
        {
            roles.Add(HazardRole.None);
        }

        return roles;
    }

    /// <summary>A shop may give the id of the catalogue to something else.</summary>
    private static bool BuiltIn(Substance substance) =>
        SubstanceCatalogue.BuiltIn.ById(substance.Id) is { } known
        && (ReferenceEquals(known, substance) || ReferenceEquals(known.Formula, substance.Formula)
            || (known.Formula?.HasCompositionOf(substance.Formula!) ?? false));

    private static void ByName(Substance substance, HashSet<HazardRole> roles)
    {
        string[] called = [Compact(substance.Name), Compact(substance.Id), .. substance.Aliases.Select(Compact)];
        foreach (var (given, words) in Names)
        {
            if (words.Any(w => called.Any(c => c.Contains(w, StringComparison.Ordinal))))
            {
                roles.UnionWith(given);
            }
        }

        string[] spaced = [substance.Name, substance.Id, .. substance.Aliases];
        if (substance.Kind != SubstanceKind.Dye && spaced.Any(n => AcidName().IsMatch(n)))
        {
            roles.Add(HazardRole.Acid);
        }

        if (spaced.Any(n => SulfurName().IsMatch(n)))
        {
            roles.Add(HazardRole.Fuel);
        }

        ByMetal(substance, spaced, roles);
        if (spaced.Any(n => LyeName().IsMatch(n)))
        {
            roles.Add(HazardRole.Alkali);
        }

        if (called.Any(c => c.Contains("ferrocyanid", StringComparison.Ordinal) || c.Contains("ferricyanid", StringComparison.Ordinal)))
        {
            // Iron holds it against all but strong acid with heat.
            roles.Remove(HazardRole.Cyanide);
        }

        if (SulfateName().IsMatch(substance.Name))
        {
            // "Potassium bisulfate" is an acid salt, no sulfite.
            roles.Remove(HazardRole.Sulfite);
        }
    }

    /// <summary>A thing of metal; what a label tells the contents of is none, whatever it is called ("zinc granules").</summary>
    private static void ByMetal(Substance substance, string[] names, HashSet<HazardRole> roles)
    {
        if (substance.Dissolves.Count > 0 || substance.Formula is not null)
        {
            return;
        }

        if (names.Any(n => MetalName().IsMatch(n)))
        {
            roles.UnionWith([HazardRole.BareMetal, HazardRole.Reductant]);
        }

        // No acid dissolves copper but one that oxidises.
        if (names.Any(n => CopperName().IsMatch(n)))
        {
            roles.Add(HazardRole.Reductant);
        }
    }

    private static string Compact(string name) =>
        string.Concat(name.Where(char.IsLetterOrDigit)).ToLowerInvariant();

    private static void ByFormula(Formula? formula, HashSet<HazardRole> roles)
    {
        if (formula is null)
        {
            return;
        }

        var text = formula.Text;
        if (formula.Atoms.ContainsKey(new Element("S")) && !formula.Atoms.ContainsKey(Element.C) && formula.Atoms.Count > 1
            && !HasOxygen(formula.AnhydrousHill))
        {
            roles.Add(HazardRole.Sulfide);
        }

        if (formula.Atoms.Count == 1 && (formula.Atoms.ContainsKey(new Element("S")) || formula.Atoms.ContainsKey(Element.C)))
        {
            roles.Add(HazardRole.Fuel);
        }

        ByElements(formula, roles);

        Add(HypochloriteGroup(), HazardRole.Hypochlorite);
        Add(StrongOxidiserGroup(), HazardRole.StrongOxidiser);
        Add(ChloriteGroup(), HazardRole.Chlorite);
        Add(AzideGroup(), HazardRole.Azide);
        Add(NitriteGroup(), HazardRole.Nitrite);
        Add(PeroxideGroup(), HazardRole.Peroxide);
        Add(CyanideGroup(), HazardRole.Cyanide);
        if (!formula.Atoms.ContainsKey(Element.C))
        {
            Add(SulfiteGroup(), HazardRole.Sulfite);
        }

        void Add(Regex group, HazardRole role)
        {
            if (group.IsMatch(text))
            {
                roles.Add(role);
            }
        }
    }

    /// <summary>What the elements alone tell: metals, carbides, hydrides, phosphides, fluorides, iodine.</summary>
    private static void ByElements(Formula formula, HashSet<HazardRole> roles)
    {
        bool Has(string symbol) => formula.Atoms.ContainsKey(new Element(symbol));
        bool Any(string[] symbols) => symbols.Any(Has);
        var one = formula.Atoms.Count == 1;
        var two = formula.Atoms.Count == 2;
        void When(bool holds, params ReadOnlySpan<HazardRole> given)
        {
            foreach (var role in holds ? given : [])
            {
                roles.Add(role);
            }
        }

        When(one && Any(["Al", "Zn", "Mg"]), HazardRole.BareMetal, HazardRole.Fuel);
        When(one && Any(["Fe", "Mn"]), HazardRole.BareMetal);
        When(one && Any(AlkaliMetals), HazardRole.WaterReactive);
        When(two && Has("C") && Any(AlkaliMetals), HazardRole.WaterReactive);
        When(Has("H") && !Has("O") && !Has("C") && !Has("N") && !Has("S") && !Has("F") && !Has("Cl") && Any(AlkaliMetals),
            HazardRole.WaterReactive);
        When(two && Has("P") && Any(["Al", "Zn", "Mg", .. AlkaliMetals]), HazardRole.Phosphide);
        When(two && Has("Ca") && Has("O") && formula.Atoms.Values.All(n => n == 1), HazardRole.Quicklime, HazardRole.Alkali);
        When(Has("Br") && !Has("C") && !Has("O"), HazardRole.Bromide);
        When(Has("F") && !Has("C"), HazardRole.Fluoride);
        When(Has("F") && Has("H") && !Has("C"), HazardRole.Acid);
        When(one && Has("I"), HazardRole.Iodine);
    }

    private static bool HasOxygen(string hill) => hill.Split(' ').Any(p => p.Length > 0 && p[0] == 'O' && (p.Length == 1
        || !char.IsLower(p[1])));

    private static void ByIons(Substance substance, HashSet<HazardRole> roles)
    {
        double Of(string component) => substance.Dissolves.Where(d => d.Component == component).Sum(d => d.MolesPerGram);
        bool Any(IEnumerable<string> components) => components.Any(c => Of(c) > 0);
        void When(bool holds, HazardRole role)
        {
            if (holds)
            {
                roles.Add(role);
            }
        }

        When(Of(HazardGate.Hypochlorite) > 0, HazardRole.Hypochlorite);
        When(Of(Iodination.Iodide) > 0, HazardRole.Iodide);
        When(Of(HydrogenPeroxide.Component) > 0, HazardRole.Peroxide);
        When(Of(Component.Ammonium) > 0, HazardRole.Ammonium);
        When(Of(Component.Ammonium) > 0, HazardRole.FaintAcid);
        When(Of(Component.Boron) > 0 && Of(Component.Hydrogen) >= 0, HazardRole.FaintAcid);
        When(Of(Component.Carbonate) > 0, HazardRole.Carbonate);
        When(Of(Component.Carbonate) > Of(Component.Hydrogen) && Of(Component.Calcium) < Of(Component.Carbonate), HazardRole.Alkali);
        When(Of(Component.Hydrogen) > Of(Component.Carbonate) && substance.Kind != SubstanceKind.Chelate, HazardRole.Acid);
        When(Of(Component.Phosphate) > 0 && Of(Component.Hydrogen) >= 0, HazardRole.AcidSalt);
        When(-Of(Component.Hydrogen) > Of(Component.Phosphate) && Of(Component.Boron) == 0, HazardRole.Alkali);
        When((Of(Component.Edta) > 0 || Of(Component.Idha) > 0 || Of(Component.Pyrophosphate) > 0)
            && Of(Component.Hydrogen) <= 0
            && !Any(HydrolysingMetals)
            && Of(Component.Calcium) + Of(Component.Magnesium) <= 0,
            HazardRole.Alkali);
        When(Any(Amines) || Of(Component.Sulfamate) > 0, HazardRole.Amine);
        When(Of(Component.Nitrite) > 0, HazardRole.Nitrite);
        When(Of(Component.Thiosulfate) > 0, HazardRole.Sulfite);
        When(Any(Fuels) || (substance.Formula is { } formula && formula.Atoms.ContainsKey(Element.C) && Of(Component.Carbonate) <= 0),
            HazardRole.Organic);
        When(Any(["inert:sucrose", "inert:glucose"]), HazardRole.Fermentable);
        When(Any(Catalysts), HazardRole.PeroxideCatalyst);
        When(Any(HydrolysingMetals) && !Any(Amines), HazardRole.AcidSalt);
        When(Of(Component.FerrousIron) > 0 || Of(Iodination.Iodide) > 0 || Of(Component.Thiosulfate) > 0,
            HazardRole.Reductant);
        When(Of(Component.Chloride) > 0, HazardRole.Chloride);
        When(Of(Component.Nitrate) > 0 && substance.Form == PhysicalForm.Solid, HazardRole.OxidisingSalt);
        When(Of(Component.Hydrogen) > 0 && Of(Component.Nitrate) > 0, HazardRole.NitricAcid);
        When(Of(Component.Hydrogen) > 0 && Of(Component.Sulfate) > 0 && substance.Form == PhysicalForm.Liquid, HazardRole.SulfuricAcid);
        When(Of(Component.Hydrogen) > 0 && Of(Component.Chloride) > 0, HazardRole.HydrochloricAcid);
    }

    private static void ByKind(Substance substance, HashSet<HazardRole> roles)
    {
        switch (substance.Kind)
        {
            case SubstanceKind.Acid:
                roles.Add(HazardRole.Acid);
                break;
            case SubstanceKind.Base or SubstanceKind.Silicate when !roles.Contains(HazardRole.Carbonate):
                roles.Add(HazardRole.Alkali);
                break;
            case SubstanceKind.Organic or SubstanceKind.Preservative or SubstanceKind.Dye or SubstanceKind.ChelatingAgent
                or SubstanceKind.Chelate or SubstanceKind.Extract:
                roles.Add(HazardRole.Organic);
                break;
            case SubstanceKind.Oxidiser when !roles.Overlaps([HazardRole.Peroxide, HazardRole.Hypochlorite]):
                roles.Add(HazardRole.StrongOxidiser);
                break;
            default:
                break;
        }

        if (substance.FeedsMicrobes)
        {
            roles.Add(HazardRole.Organic);
        }

        if (substance.Hazards is { } hazards)
        {
            if (hazards.Statements.Contains("H272") && substance.Form == PhysicalForm.Solid)
            {
                roles.Add(HazardRole.OxidisingSalt);
            }

            if (hazards.Statements.Any(s => s is "H270" or "H271"))
            {
                roles.Add(HazardRole.StrongOxidiser);
            }
        }
    }

    [GeneratedRegex(@"(ClO(?![2-9])|OCl)", RegexOptions.CultureInvariant)]
    private static partial Regex HypochloriteGroup();

    [GeneratedRegex(@"(ClO[234]|BrO3|IO[34]|MnO4|Cr2O7|CrO4|S2O8|FeO4|^(Mn|Pb)O2$)", RegexOptions.CultureInvariant)]
    private static partial Regex StrongOxidiserGroup();

    [GeneratedRegex(@"ClO[23](?![0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex ChloriteGroup();

    /// <summary>A metal with N3 alone.</summary>
    [GeneratedRegex(@"^[A-Z][a-z]?\(?N3\)?[0-9]?$", RegexOptions.CultureInvariant)]
    private static partial Regex AzideGroup();

    [GeneratedRegex(@"NO2(?![0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex NitriteGroup();

    [GeneratedRegex(@"(^|·[0-9.]*)H2O2|Na2O2|CaO2", RegexOptions.CultureInvariant)]
    private static partial Regex PeroxideGroup();

    /// <summary>A metal with nothing but CN: no cyanate, no cyanoferrate, no organic nitrogen.</summary>
    [GeneratedRegex(@"^([A-Z][a-z]?|NH4)\(?CN\)?[0-9]?$", RegexOptions.CultureInvariant)]
    private static partial Regex CyanideGroup();

    [GeneratedRegex(@"((?<!NH2)SO3(?![0-9])|S2O[345](?![0-9])|S[45]O6)", RegexOptions.CultureInvariant)]
    private static partial Regex SulfiteGroup();

    /// <summary>"Battery acid", "acide", "ácido"; not an acid that is none to others, nor what stands acid.</summary>
    [GeneratedRegex(
        @"(?<!\b(amino|humic|fulvic|boric|silicic|orthosilicic)[ -])\b(acid|acids|acide|acido|ácido)\b"
            + "(?![ -](stable|proof|free|resistant|fast|loving|soil))",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AcidName();

    [GeneratedRegex(@"\blye\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex LyeName();

    /// <summary>"Zinc granules", "aluminium can", "steel nails"; not the salts ("zinc sulfate granules").</summary>
    [GeneratedRegex(
        @"\b(alumini?um|alu|zinc|magnesium|iron|steel|galvani[sz]ed)[ -](metal|foil|wire|granules?|turnings?|shavings?|chips?|sheets?|"
            + "strips?|scrap|filings?|nails?|screws?|bolts?|wool|ribbon|cans?|pots?|pans?|spoons?|buckets?|pipes?|rods?|anodes?)\\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex MetalName();

    [GeneratedRegex(
        @"\b(copper|brass|bronze|silver)[ -]"
            + @"(metal|foil|wire|turnings?|shavings?|sheets?|strips?|scrap|filings?|nails?|pipes?|rods?|coins?)\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CopperName();

    /// <summary>The element itself, not what is made of it.</summary>
    [GeneratedRegex(
        @"^(flowers? of |wettable |elemental |powdered |garden |rolled |yellow )?(sulfur|sulphur)( powder| dust| flowers?)?$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SulfurName();

    [GeneratedRegex("bisul(f|ph)ate|persul(f|ph)ate", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SulfateName();
}
