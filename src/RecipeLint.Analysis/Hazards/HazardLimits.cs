namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// From which amount each hazard counts; values, units and sources stand in limits.json. A shop's options may change some.
/// </summary>
public sealed record HazardLimits
{
    private static readonly Lazy<HazardLimits> Loaded = new(() => new HazardLimits());

    public static HazardLimits Default => Loaded.Value;

    /// <summary>mg/L of available chlorine.</summary>
    public double ChlorineFrom { get; init; } = HazardData.Limit("chlorineFrom");

    /// <summary>mg/L of available chlorine in a tank.</summary>
    public double ChlorineGasFrom { get; init; } = HazardData.Limit("chlorineGasFrom");

    /// <summary>ppm of chlorine in the air over a tank.</summary>
    public double ChlorineAirFrom { get; init; } = HazardData.Limit("chlorineAirFrom");

    /// <summary>pH down to which a liquid burns eyes and skin.</summary>
    public double CorrosivePhTo { get; init; } = HazardData.Limit("corrosivePhTo");

    /// <summary>pH from which a liquid burns eyes and skin.</summary>
    public double CorrosivePhFrom { get; init; } = HazardData.Limit("corrosivePhFrom");

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

    /// <summary>Litres of gas per litre of contents that a storage bottle does not hold.</summary>
    public double BurstFrom { get; init; } = HazardData.Limit("burstFrom");

    /// <summary>Days of keeping from which what can ferment does.</summary>
    public double FermentDays { get; init; } = HazardData.Limit("fermentDays");

    /// <summary>°C from which what can ferment does within weeks.</summary>
    public double FermentCelsius { get; init; } = HazardData.Limit("fermentCelsius");

    /// <summary>pH below which no yeast grows.</summary>
    public double FermentLowestPh { get; init; } = HazardData.Limit("fermentLowestPh");

    /// <summary>pH above which no yeast grows.</summary>
    public double FermentHighestPh { get; init; } = HazardData.Limit("fermentHighestPh");

    /// <summary>mol/L of strong acid or alkali left over in which no yeast grows.</summary>
    public double FermentStrongTo { get; init; } = HazardData.Limit("fermentStrongTo");

    /// <summary>Per cent of nitric acid where it meets iron(II), iodide or chloride.</summary>
    public double NitricReductantFrom { get; init; } = HazardData.Limit("nitricReductantFrom");

    /// <summary>Per cent of peroxide where it meets organic matter.</summary>
    public double PeroxideFrom { get; init; } = HazardData.Limit("peroxideFrom");

    /// <summary>Per cent of hypochlorite where it meets organic matter.</summary>
    public double HypochloriteFrom { get; init; } = HazardData.Limit("hypochloriteFrom");

    /// <summary>Per cent of organic matter where it meets peroxide or bleach.</summary>
    public double OrganicFrom { get; init; } = HazardData.Limit("organicFrom");

    /// <summary>Per cent of organic matter in a dry oxidising salt.</summary>
    public double CombustibleFrom { get; init; } = HazardData.Limit("combustibleFrom");

    /// <summary>Litres of gas per litre of contents.</summary>
    public double GasFrom { get; init; } = HazardData.Limit("gasFrom");

    /// <summary>Litres of gas per litre of contents.</summary>
    public double BriskGasFrom { get; init; } = HazardData.Limit("briskGasFrom");

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

    /// <summary>g/L of permanganate, chlorate and the like.</summary>
    public double StrongOxidiserFrom { get; init; } = HazardData.Limit("strongOxidiserFrom");

    /// <summary>°C that scald.</summary>
    public double HotFrom { get; init; } = HazardData.Limit("hotFrom");

    /// <summary>°C near boiling.</summary>
    public double BoilingFrom { get; init; } = HazardData.Limit("boilingFrom");

    /// <summary>Per cent of sulfuric acid onto which water is poured.</summary>
    public double SulfuricWaterFrom { get; init; } = HazardData.Limit("sulfuricWaterFrom");

    /// <summary>Per cent of nitric acid onto which water is poured.</summary>
    public double NitricWaterFrom { get; init; } = HazardData.Limit("nitricWaterFrom");

    /// <summary>Per cent of hydrochloric acid onto which water is poured.</summary>
    public double HydrochloricWaterFrom { get; init; } = HazardData.Limit("hydrochloricWaterFrom");

    /// <summary>Per cent of phosphoric acid onto which water is poured.</summary>
    public double PhosphoricWaterFrom { get; init; } = HazardData.Limit("phosphoricWaterFrom");

    /// <summary>Per cent of acetic acid onto which water is poured.</summary>
    public double AceticWaterFrom { get; init; } = HazardData.Limit("aceticWaterFrom");

    /// <summary>Kelvin by which an acid warms where water is poured onto it.</summary>
    public double WaterWarmsFrom { get; init; } = HazardData.Limit("waterWarmsFrom");
}
