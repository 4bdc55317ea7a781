namespace RecipeLint.Analysis.Hazards;

/// <summary>What contents of a vessel can do to people; the words for each stand in hazards.json.</summary>
public enum HazardKind
{
    /// <summary>Somebody fell or feels ill: told, never computed. So are those that follow, but for strong acids and lyes that may
    /// splash.</summary>
    PersonIll,
    Swallowed,
    Splashed,

    /// <summary>A lye, or an acid as strong as one that burns at once, that is not warmed, shaken or filtered.</summary>
    Caustic,

    /// <summary>A vessel that burst, boiled over or threw out what it holds.</summary>
    Burst,
    AnimalHarmed,

    /// <summary>Something is told of people, gas or a smell, and nobody here understands it.</summary>
    NotUnderstood,
    Chlorine,
    Chloramines,

    /// <summary>Chlorite or chlorate with acid.</summary>
    ChlorineDioxide,

    /// <summary>Iodine of iodide that an oxidiser meets.</summary>
    Iodine,

    /// <summary>Bromine of bromide that bleach meets.</summary>
    Bromine,
    NitrogenOxides,

    /// <summary>Nitrite with a weak acid or an acid phosphate: a small share of it gives nitrogen oxides off, slowly.</summary>
    NitrousAcid,

    /// <summary>A strong oxidiser with organic matter in the wet.</summary>
    Runaway,

    /// <summary>Hydrogen chloride or nitric acid driven out by strong sulfuric acid.</summary>
    AcidFumes,
    HydrogenSulfide,
    HydrogenCyanide,

    /// <summary>Fluoride with acid, and hydrofluoric acid by itself.</summary>
    HydrogenFluoride,

    /// <summary>Metal phosphide with water or acid.</summary>
    Phosphine,
    SulfurDioxide,
    Ammonia,
    OxygenPressure,

    /// <summary>Nitrite with sulfamic acid or ammonium.</summary>
    NitrogenPressure,
    CarbonDioxidePressure,
    FermentationPressure,

    /// <summary>Aluminium or zinc in acid or lye.</summary>
    Hydrogen,

    /// <summary>Acetylene of carbide, hydrogen of hydrides and alkali metals, with nothing but water.</summary>
    FlammableGas,

    /// <summary>What goes off at a touch once it is dry: iodine with ammonia water, azide with acid or heavy metals,
    /// acetone with peroxide.</summary>
    Explosive,

    /// <summary>An oxidising salt dry with organic matter.</summary>
    Fire,

    /// <summary>Heat of diluting or neutralising acids and alkalis, of slaking lime, and of bleach with thiosulfate.</summary>
    Heat,

    /// <summary>Burnt lime that slakes with water: lumps boil and spit, and what is left is lye.</summary>
    Slaking,

    /// <summary>Silicate in its own lye, on skin, in eyes and on light metals.</summary>
    SilicateLye,
    UnknownContents,
}

/// <summary>How near a hazard is.</summary>
public enum HazardGrade
{
    /// <summary>One of its reactants is there.</summary>
    Possible,

    /// <summary>A sign of it was told, whatever the recipe says.</summary>
    Suspected,

    /// <summary>Its reactants are together.</summary>
    Present,

    /// <summary>Present, and so much of it that mixing itself is not advised.</summary>
    Grave,
}

/// <summary>What somebody may be advised to do with a vessel, other than putting something in.</summary>
public enum VesselAction
{
    /// <summary>Mix it in this order.</summary>
    Order,

    /// <summary>Keep what it holds in one part.</summary>
    KeepTogether,

    /// <summary>Make the same stronger.</summary>
    MakeStronger,
    Heat,

    /// <summary>Close it tightly.</summary>
    Cap,
    Shake,
    Filter,
    Smell,

    /// <summary>Take the cap off to get at what is in it.</summary>
    Open,

    /// <summary>Wipe off what dried on the outside.</summary>
    Wipe,
}

/// <summary>What a substance does to other contents; the classes of roles.json.</summary>
public enum HazardRole
{
    None,
    Acid,

    /// <summary>A salt that is acid in water, below about pH 5.5.</summary>
    AcidSalt,

    /// <summary>Too weak for carbonate, yet an acid to bleach and sulfide.</summary>
    FaintAcid,
    Alkali,
    Carbonate,
    Ammonium,
    AmmoniaWater,

    /// <summary>Urea, amino acids and the amino groups of chelating agents.</summary>
    Amine,

    /// <summary>Fuel to an oxidiser.</summary>
    Organic,

    /// <summary>Sugar.</summary>
    Fermentable,

    /// <summary>Burns with an oxidising salt it lies dry with: charcoal, sawdust, sulfur, oil.</summary>
    Fuel,

    /// <summary>A fuel that does not mix with water.</summary>
    Oil,

    /// <summary>Burnt lime: slakes with water and gets hot enough to boil it.</summary>
    Quicklime,
    Chloride,
    NitricAcid,
    SulfuricAcid,
    HydrochloricAcid,
    OxidisingSalt,
    Peroxide,

    /// <summary>Takes peroxide apart: iron, copper, manganese, cobalt, nickel, molybdenum, iodide, chelated or not.</summary>
    PeroxideCatalyst,
    Hypochlorite,

    /// <summary>Iron(II), iodide.</summary>
    Reductant,
    Sulfide,
    Cyanide,

    /// <summary>Aluminium, zinc, iron wool as metal.</summary>
    BareMetal,

    /// <summary>Sulfite, thiosulfate, dithionite.</summary>
    Sulfite,
    Nitrite,

    /// <summary>Permanganate, chlorate, chlorite, persulfate.</summary>
    StrongOxidiser,

    /// <summary>Chlorite and chlorate, strong oxidisers that give chlorine dioxide with acid.</summary>
    Chlorite,

    /// <summary>Iodide, which bleach turns to iodine.</summary>
    Iodide,

    /// <summary>Bromide, which bleach turns to hypobromite and acid to bromine.</summary>
    Bromide,

    /// <summary>Iodine itself, in tinctures and tablets as well.</summary>
    Iodine,
    Fluoride,

    /// <summary>Phosphide of aluminium, zinc, magnesium or calcium.</summary>
    Phosphide,
    Azide,

    /// <summary>Carbides, hydrides and alkali metals: burning gas with water alone.</summary>
    WaterReactive,

    /// <summary>Acetone and other ketones, hexamine: with peroxide crystals that go off at a touch.</summary>
    ExplosiveWithPeroxide,

    /// <summary>Nothing tells what is in it.</summary>
    Unknown,
}
