using RecipeLint.Analysis.Hazards;

namespace RecipeLint.Analysis.Observations;

/// <summary>What somebody noticed can mean danger, whatever a recipe says. Which sign points to which hazard stands in hazards.json.</summary>
public static class NoticedHazards
{
    /// <summary>What a kind of gas or heat needs in the vessel before a sign that points to several is put down to it.</summary>
    private static readonly Dictionary<HazardKind, HazardRole> Needs = new()
    {
        [HazardKind.OxygenPressure] = HazardRole.Peroxide,
        [HazardKind.CarbonDioxidePressure] = HazardRole.Carbonate,
        [HazardKind.FermentationPressure] = HazardRole.Organic,
    };

    /// <summary>Kinds in the order of hazards.json; empty where nothing dangerous was told. Pure; never throws.</summary>
    public static IReadOnlyList<HazardKind> Of(Observation observation, Holding holding)
    {
        var told = observation.Signs.Where(s => s.Present).Select(s => s.Sign.Id).ToHashSet(StringComparer.Ordinal);
        var pointed = HazardText.All.Where(t => t.Signs.Any(told.Contains)).Select(t => t.Kind).ToList();
        if (told.Contains("smell-ammonia") && !told.Contains("smell-chlorine"))
        {
            // What stings and smells of ammonia is ammonia; what stings without a name, the worst of what stings.
            pointed.Remove(HazardKind.Chlorine);
        }

        if (holding.First(HazardRole.Peroxide) is not null)
        {
            pointed.Remove(HazardKind.Heat);
        }

        pointed.RemoveAll(k => Needs.TryGetValue(k, out var role) && holding.First(role) is null);
        if (told.Contains("pressure") && !pointed.Exists(Needs.ContainsKey))
        {
            pointed.Add(HazardKind.FermentationPressure);
        }

        return pointed;
    }
}
