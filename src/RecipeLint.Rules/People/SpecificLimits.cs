using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Rules.People;

/// <summary>
/// Concentration limits of single substances, which win over the generic ones (CLP, Article 10). Below the lowest of its limits for
/// skin and eyes such a substance carries no statement for them, whatever the generic tables say. All from Regulation (EC) No 1272/2008
/// (CLP), Annex VI, table 3, recalled; those of acids, alkalis, peroxide and hypochlorite stand in "… %" entries, which count what is
/// dissolved.
/// </summary>
internal static class SpecificLimits
{
    /// <summary>Statement on gas that any acid sets free.</summary>
    internal const string AcidGas = "EUH031";

    /// <summary>Statement on what burns the airways.</summary>
    internal const string BurnsAirways = "EUH071";

    private const string Airways = "H335", Breathed = "H331", HarmBreathed = "H332";

    private const string Burn = "H314", Eyes = "H318", Skin = "H315", EyeIrritation = "H319";

    /// <summary>Active chlorine of pure sodium and calcium hypochlorite: molar masses 70.906, 74.442 and 142.98 g/mol.</summary>
    private const double ChlorineInSodium = 70.906 / 74.442, ChlorineInCalcium = 2 * 70.906 / 142.98;

    private static readonly Entry[] Entries =
    [
        // Breathed in it has 2.65 mg/L of vapour: category 3 ends at 10 mg/L, category 4 at 20.
        new(["7697-37-2"], [(Burn, 5), (Breathed, 26.5), (HarmBreathed, 13.25), (BurnsAirways, 13.25)]),
        new(["7664-38-2"], [(Burn, 25), (Eyes, 25), (Skin, 10), (EyeIrritation, 10)]),
        new(["7664-93-9"], [(Burn, 15), (Eyes, 15), (Skin, 5), (EyeIrritation, 5)]),
        new(["7647-01-0"], [(Burn, 25), (Eyes, 25), (Skin, 10), (EyeIrritation, 10), (Airways, 10)]),
        new(["64-19-7"], [(Burn, 25), (Eyes, 25), (Skin, 10), (EyeIrritation, 10)]),
        new(["1310-58-3", "1310-73-2"], [(Burn, 2), (Eyes, 2), (Skin, 0.5), (EyeIrritation, 0.5)]),
        new(["1336-21-6", "7664-41-7"], [(Airways, 5)]),
        new(["7722-84-1"], [(Burn, 50), (Eyes, 8), (Skin, 35), (EyeIrritation, 5), (Airways, 35)]),
        new(["7681-52-9"], [(AcidGas, 5)]) { PerPure = ChlorineInSodium, WaterFactor = 10, IsVeryToxicForLong = true },

        // The entry of the calcium salt states no limit for the gas; that of the sodium salt is taken.
        new(["7778-54-3"], [(Burn, 5), (Eyes, 3), (Skin, 1), (EyeIrritation, 0.5), (AcidGas, 5)])
        {
            PerPure = ChlorineInCalcium, WaterFactor = 10,
        },
        new(["10026-24-1", "10124-43-3", "7791-13-1", "7646-79-9", "10026-22-9", "10141-05-6"], [("H350", 0.01)]),
        new(["10101-97-0", "10101-98-1", "7786-81-4"], [(Skin, 20), ("H317", 0.01), ("H372", 1), ("H373", 0.1)]),
    ];

    private static readonly Dictionary<string, Entry> ByCas =
        Entries.SelectMany(e => e.Cas.Select(c => KeyValuePair.Create(c, e))).ToDictionary(StringComparer.Ordinal);

    /// <summary>
    /// Part of a substance as bought that counts against limits: what is dissolved in it where its entry says so, else all of it.
    /// </summary>
    internal static double Share(Substance substance) =>
        Of(substance) is { } entry ? substance.Strength.Value * entry.PerPure : 1;

    /// <summary>Limit of a substance for a statement, %; null where the generic one holds.</summary>
    internal static double? Limit(Substance substance, string code) =>
        Of(substance) is { } entry && Array.FindIndex(entry.Limits, l => l.Code == code) is >= 0 and var at ? entry.Limits[at].From : null;

    /// <summary>Multiplying factor of its entry for what poisons water life at once; 1 where it states none.</summary>
    internal static double WaterFactor(Substance substance) => Of(substance)?.WaterFactor ?? 1;

    /// <summary>True where its entry makes it very toxic to water life with lasting effects, counted by what is dissolved.</summary>
    internal static bool IsVeryToxicForLong(Substance substance) => Of(substance)?.IsVeryToxicForLong ?? false;

    private static Entry? Of(Substance substance) => substance.Cas is { } cas ? ByCas.GetValueOrDefault(cas) : null;

    /// <param name="Cas">Registry numbers of the substance and its hydrates.</param>
    /// <param name="Limits">Per cent by mass from which it carries each statement.</param>
    private sealed record Entry(string[] Cas, (string Code, double From)[] Limits)
    {
        /// <summary>Mass that counts in a gram of the pure substance, g.</summary>
        public double PerPure { get; init; } = 1;

        public double WaterFactor { get; init; } = 1;

        public bool IsVeryToxicForLong { get; init; }
    }
}
