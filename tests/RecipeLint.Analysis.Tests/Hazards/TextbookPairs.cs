using RecipeLint.Analysis.Hazards;

namespace RecipeLint.Analysis.Tests.Hazards;

/// <summary>
/// What textbooks keep apart, told by the family of a name: a second opinion that knows nothing of the roles of the gate
/// (Bretherick's Handbook of Reactive Chemical Hazards, recalled).
/// </summary>
internal static class TextbookPairs
{
    private static readonly string[] Acids = ["nitric-", "phosphoric-", "sulfuric-", "hydrochloric-", "vinegar-", "acetic-", "citric-acid", "lactic-", "malic-acid",
        "sulfamic-acid"];

    private static readonly string[] Alkalis = ["koh-", "naoh-", "potassium-hydroxide", "sodium-hydroxide"];

    private static readonly string[] Carbonates = ["potassium-carbonate", "potassium-bicarbonate", "sodium-carbonate", "sodium-bicarbonate"];

    private static readonly string[] Bleaches = ["sodium-hypochlorite", "calcium-hypochlorite"];

    private static readonly string[] Catalysts = ["ferrous-", "ferric-", "manganese-", "copper-", "fe-", "cu-edta", "mn-edta", "cu-idha", "mn-idha", "mn-lignosulfonate", "cobalt-", "potassium-iodide"];

    private static readonly string[] Ammonium = ["ammonium-", "monoammonium-", "diammonium-"];

    private static readonly string[] Amines = ["urea", "glycine", "sulfamic-acid", "fe-idha", "mn-idha", "zn-idha", "cu-idha", "tetrasodium-idha"];

    private static readonly string[] Thiosulfates = ["ammonium-thiosulfate", "potassium-thiosulfate", "sodium-thiosulfate"];

    private static readonly string[] Nitrites = ["potassium-nitrite", "sodium-nitrite"];

    /// <summary>What comes of two substances, in either order.</summary>
    public static IReadOnlySet<HazardKind> Of(string one, string other) => new HashSet<HazardKind>([.. Expected(one, other), .. Expected(other, one)]);

    public static bool IsBleach(string id) => Is(id, Bleaches);

    public static bool IsPeroxide(string id) => id.StartsWith("hydrogen-peroxide", StringComparison.Ordinal);

    private static IEnumerable<HazardKind> Expected(string one, string other)
    {
        if (Is(one, Bleaches) && Is(other, Acids))
        {
            yield return HazardKind.Chlorine;
        }

        if (Is(one, Bleaches) && (Is(other, Ammonium) || Is(other, Amines)))
        {
            yield return HazardKind.Chloramines;
        }

        if (Is(one, Bleaches) && other == "potassium-iodide")
        {
            yield return HazardKind.Iodine;
        }

        if (IsPeroxide(one) && (Is(other, Catalysts) || Is(other, Alkalis) || Is(other, Bleaches)))
        {
            yield return HazardKind.OxygenPressure;
        }

        if (Is(one, Carbonates) && Is(other, Acids) && !other.StartsWith("vinegar", StringComparison.Ordinal))
        {
            yield return HazardKind.CarbonDioxidePressure;
        }

        if (Is(one, Thiosulfates) && Is(other, Acids))
        {
            yield return HazardKind.SulfurDioxide;
        }

        if (Is(one, Nitrites) && Is(other, Acids))
        {
            yield return HazardKind.NitrogenOxides;
        }

        if (Is(one, Nitrites) && other is ("ammonium-nitrate" or "ammonium-sulfate" or "ammonium-chloride" or "ammonium-thiosulfate-60"))
        {
            yield return HazardKind.NitrogenPressure;
        }

        if (Is(one, Alkalis) && other is ("ammonium-nitrate" or "ammonium-sulfate" or "ammonium-chloride"))
        {
            yield return HazardKind.Ammonia;
        }
    }

    private static bool Is(string id, string[] families) => families.Any(f => id.StartsWith(f, StringComparison.Ordinal));
}
