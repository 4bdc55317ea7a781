namespace RecipeLint.Chemistry.Substances;

/// <summary>What a substance is kept apart from, on the shelf or in one vessel. A closed list, so that rules can match on it.</summary>
public enum KeepApart
{
    Acids,
    Alkali,
    AluminiumAndZinc,
    AmmoniumSalts,
    CalciumStocks,
    Carbonates,
    Chelates,
    Chlorides,
    ConcentratedAcids,
    ConcentratedOrganicAcids,
    Heat,
    Hypochlorite,
    IronSalts,
    Light,
    MagnesiumStocks,
    Metals,
    Nitrites,
    OrganicMatter,
    Oxidisers,
    PhosphateStocks,
    ReducingAgents,
    SilicateStocks,
    SulfateStocks,
    TraceMetals,

    /// <summary>Water poured into the substance; the substance goes into water.</summary>
    WaterPouredIn,
}
