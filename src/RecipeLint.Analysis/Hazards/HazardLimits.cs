namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// From which amount each hazard counts, by family; values, units and sources stand in limits.json. A shop's options may change some.
/// </summary>
public sealed record HazardLimits
{
    private static readonly Lazy<HazardLimits> Loaded = new(() => new HazardLimits());

    public static HazardLimits Default => Loaded.Value;

    public ChlorineLimits Chlorine { get; init; } = new();

    public CorrosiveLimits Corrosive { get; init; } = new();

    public StrongAcidLimits StrongAcid { get; init; } = new();

    public OxidiserLimits Oxidiser { get; init; } = new();

    public GasLimits Gas { get; init; } = new();

    public PoisonLimits Poison { get; init; } = new();

    public HeatLimits Heat { get; init; } = new();

    public WaterOntoLimits WaterOnto { get; init; } = new();

    public FermentLimits Ferment { get; init; } = new();
}

/// <summary>Bleach, by its available chlorine.</summary>
public sealed record ChlorineLimits
{
    /// <summary>mg/L of available chlorine.</summary>
    public double From { get; init; } = HazardData.Limit("chlorineFrom");

    /// <summary>mg/L of available chlorine in a tank.</summary>
    public double GasFrom { get; init; } = HazardData.Limit("chlorineGasFrom");

    /// <summary>ppm of chlorine in the air over a tank.</summary>
    public double AirFrom { get; init; } = HazardData.Limit("chlorineAirFrom");
}

/// <summary>What burns eyes and skin by its pH.</summary>
public sealed record CorrosiveLimits
{
    /// <summary>pH down to which a liquid burns eyes and skin.</summary>
    public double PhTo { get; init; } = HazardData.Limit("corrosivePhTo");

    /// <summary>pH down to which an acid burns at once.</summary>
    public double AtOncePhTo { get; init; } = HazardData.Limit("causticPhTo");

    /// <summary>pH from which a liquid burns eyes and skin.</summary>
    public double PhFrom { get; init; } = HazardData.Limit("corrosivePhFrom");

    /// <summary>pH from which a silicate stock irritates skin and eyes and eats light metals.</summary>
    public double SilicatePhFrom { get; init; } = HazardData.Limit("silicatePhFrom");
}

/// <summary>Nitric and sulfuric acid with what they oxidise or drive out.</summary>
public sealed record StrongAcidLimits
{
    /// <summary>Per cent of nitric acid where it meets organic matter.</summary>
    public double NitricFrom { get; init; } = HazardData.Limit("nitricFrom");

    /// <summary>Per cent of organic matter where it meets nitric acid.</summary>
    public double NitricOrganicFrom { get; init; } = HazardData.Limit("nitricOrganicFrom");

    /// <summary>g/L of nitric acid mixed through with organic matter.</summary>
    public double NitricStandingFrom { get; init; } = HazardData.Limit("nitricStandingFrom");

    /// <summary>g/L of organic matter mixed through with nitric acid.</summary>
    public double NitricStandingOrganicFrom { get; init; } = HazardData.Limit("nitricStandingOrganicFrom");

    /// <summary>g/L of nitric acid mixed through with iron(II).</summary>
    public double NitricIronFrom { get; init; } = HazardData.Limit("nitricIronFrom");

    /// <summary>Per cent of nitric acid where it meets iron(II), iodide or chloride.</summary>
    public double NitricReductantFrom { get; init; } = HazardData.Limit("nitricReductantFrom");

    /// <summary>Per cent of sulfuric acid where it meets chloride, nitrate or organic matter.</summary>
    public double SulfuricFumesFrom { get; init; } = HazardData.Limit("sulfuricFumesFrom");
}

/// <summary>Oxidisers with what burns.</summary>
public sealed record OxidiserLimits
{
    /// <summary>Per cent of peroxide where it meets organic matter.</summary>
    public double PeroxideFrom { get; init; } = HazardData.Limit("peroxideFrom");

    /// <summary>Per cent of hypochlorite where it meets organic matter.</summary>
    public double HypochloriteFrom { get; init; } = HazardData.Limit("hypochloriteFrom");

    /// <summary>Per cent of organic matter where it meets peroxide or bleach.</summary>
    public double OrganicFrom { get; init; } = HazardData.Limit("organicFrom");

    /// <summary>Per cent of organic matter in a dry oxidising salt.</summary>
    public double CombustibleFrom { get; init; } = HazardData.Limit("combustibleFrom");

    /// <summary>g/L of hydrochloric acid mixed through with peroxide.</summary>
    public double HydrochloricWithPeroxideFrom { get; init; } = HazardData.Limit("hydrochloricWithPeroxideFrom");

    /// <summary>g/L of peroxide mixed through with strong hydrochloric acid.</summary>
    public double PeroxideWithHydrochloricFrom { get; init; } = HazardData.Limit("peroxideWithHydrochloricFrom");

    /// <summary>g/L of ammonium nitrate beside fuel or oil.</summary>
    public double NitrateWithOilFrom { get; init; } = HazardData.Limit("nitrateWithOilFrom");

    /// <summary>g/L of permanganate, chlorate and the like.</summary>
    public double StrongFrom { get; init; } = HazardData.Limit("strongOxidiserFrom");
}

/// <summary>Gas that bursts what is closed, litres from a litre of contents.</summary>
public sealed record GasLimits
{
    /// <summary>L/L that a closed bottle does not bear.</summary>
    public double From { get; init; } = HazardData.Limit("gasFrom");

    /// <summary>L/L from which an open vessel foams over.</summary>
    public double BriskFrom { get; init; } = HazardData.Limit("briskGasFrom");

    /// <summary>L/L that a storage bottle does not hold.</summary>
    public double BurstFrom { get; init; } = HazardData.Limit("burstFrom");
}

/// <summary>What gives a poisonous gas off.</summary>
public sealed record PoisonLimits
{
    /// <summary>mg/L of ammonia.</summary>
    public double AmmoniaFrom { get; init; } = HazardData.Limit("ammoniaFrom");

    /// <summary>mg/L of sulfide.</summary>
    public double SulfideFrom { get; init; } = HazardData.Limit("sulfideFrom");

    /// <summary>mg/L of cyanide salt.</summary>
    public double CyanideFrom { get; init; } = HazardData.Limit("cyanideFrom");

    /// <summary>mg/L of sulfite or thiosulfate.</summary>
    public double SulfiteFrom { get; init; } = HazardData.Limit("sulfiteFrom");

    /// <summary>mg/L of nitrite.</summary>
    public double NitriteFrom { get; init; } = HazardData.Limit("nitriteFrom");

    /// <summary>mg/L of bromine.</summary>
    public double BromineFrom { get; init; } = HazardData.Limit("bromineFrom");

    /// <summary>mg/L of iodine.</summary>
    public double IodineFrom { get; init; } = HazardData.Limit("iodineFrom");

    /// <summary>mg/L of fluoride.</summary>
    public double FluorideFrom { get; init; } = HazardData.Limit("fluorideFrom");

    /// <summary>mg/L of chlorite or chlorate.</summary>
    public double ChloriteFrom { get; init; } = HazardData.Limit("chloriteFrom");

    /// <summary>Per cent of nitrite dry with an ammonium salt.</summary>
    public double NitriteDryFrom { get; init; } = HazardData.Limit("nitriteDryFrom");
}

/// <summary>How warm a step gets.</summary>
public sealed record HeatLimits
{
    /// <summary>°C that scald.</summary>
    public double HotFrom { get; init; } = HazardData.Limit("hotFrom");

    /// <summary>°C near boiling.</summary>
    public double BoilingFrom { get; init; } = HazardData.Limit("boilingFrom");
}

/// <summary>Acid or lye onto which water is poured.</summary>
public sealed record WaterOntoLimits
{
    /// <summary>Per cent of sulfuric acid.</summary>
    public double SulfuricFrom { get; init; } = HazardData.Limit("sulfuricWaterFrom");

    /// <summary>Per cent of nitric acid.</summary>
    public double NitricFrom { get; init; } = HazardData.Limit("nitricWaterFrom");

    /// <summary>Per cent of hydrochloric acid.</summary>
    public double HydrochloricFrom { get; init; } = HazardData.Limit("hydrochloricWaterFrom");

    /// <summary>Per cent of phosphoric acid.</summary>
    public double PhosphoricFrom { get; init; } = HazardData.Limit("phosphoricWaterFrom");

    /// <summary>Per cent of acetic acid.</summary>
    public double AceticFrom { get; init; } = HazardData.Limit("aceticWaterFrom");

    /// <summary>Per cent of sodium or potassium hydroxide.</summary>
    public double LyeFrom { get; init; } = HazardData.Limit("lyeWaterFrom");

    /// <summary>Kelvin by which the acid warms, from which nobody pours water onto it.</summary>
    public double WarmsFrom { get; init; } = HazardData.Limit("waterWarmsFrom");

    /// <summary>Kelvin by which the acid warms, from which the order is worth a word.</summary>
    public double NoticedFrom { get; init; } = HazardData.Limit("waterNoticedFrom");
}

/// <summary>When what can ferment does.</summary>
public sealed record FermentLimits
{
    /// <summary>Days of keeping.</summary>
    public double Days { get; init; } = HazardData.Limit("fermentDays");

    /// <summary>°C from which it does within weeks.</summary>
    public double Celsius { get; init; } = HazardData.Limit("fermentCelsius");

    /// <summary>pH below which no yeast grows.</summary>
    public double LowestPh { get; init; } = HazardData.Limit("fermentLowestPh");

    /// <summary>pH above which no yeast grows.</summary>
    public double HighestPh { get; init; } = HazardData.Limit("fermentHighestPh");

    /// <summary>mol/L of strong acid or alkali left over in which no yeast grows.</summary>
    public double StrongTo { get; init; } = HazardData.Limit("fermentStrongTo");
}
