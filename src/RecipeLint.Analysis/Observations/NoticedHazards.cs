using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Observations;

/// <summary>
/// What somebody noticed, or put in, can mean danger, whatever a recipe says. Which sign points to which hazard stands in hazards.json.
/// </summary>
public static class NoticedHazards
{
    /// <summary>What a kind of gas or heat needs in the vessel before a sign that points to several is put down to it.</summary>
    private static readonly Dictionary<HazardKind, HazardRole> Needs = new()
    {
        [HazardKind.OxygenPressure] = HazardRole.Peroxide,
        [HazardKind.CarbonDioxidePressure] = HazardRole.Carbonate,
        [HazardKind.FermentationPressure] = HazardRole.Organic,
    };

    /// <summary>What harms somebody before it smells or stings, where the vessel holds its salt: nobody may take it for something else.
    /// </summary>
    private static readonly (HazardRole Role, HazardKind Kind)[] Hidden =
    [
        (HazardRole.Sulfide, HazardKind.HydrogenSulfide), (HazardRole.Cyanide, HazardKind.HydrogenCyanide),
        (HazardRole.Sulfite, HazardKind.SulfurDioxide), (HazardRole.Nitrite, HazardKind.NitrogenOxides),
        (HazardRole.Phosphide, HazardKind.Phosphine), (HazardRole.Fluoride, HazardKind.HydrogenFluoride),
        (HazardRole.Iodine, HazardKind.Iodine), (HazardRole.Chlorite, HazardKind.ChlorineDioxide),
        (HazardRole.Azide, HazardKind.Explosive),
    ];

    private static readonly string[] Harmed = ["collapsed", "eyes-water", "breathed-in"];

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

        var whole = observation.PutIn.Select(p => p.Substance).OfType<Substance>()
            .Aggregate(holding, (now, s) => now.With(Held.Of(s, Holding.TrialGramsPerLitre * now.Litres)));
        if (whole.First(HazardRole.Peroxide) is not null)
        {
            pointed.Remove(HazardKind.Heat);
        }

        if (Harmed.Any(told.Contains))
        {
            var hidden = Hidden.Where(h => whole.Has(h.Role)).Select(h => h.Kind).ToList();
            pointed.AddRange(hidden);
            if (hidden.Count > 0 && !whole.Has(HazardRole.Hypochlorite) && !told.Contains("smell-chlorine")
                && !told.Contains("green-fumes"))
            {
                pointed.Remove(HazardKind.Chlorine);
            }
        }

        if (told.Contains("splashed") && whole.Has(HazardRole.Fluoride))
        {
            // It is rinsed as any splash, and then treated as no other.
            pointed.Add(HazardKind.HydrogenFluoride);
        }

        pointed.RemoveAll(k => Needs.TryGetValue(k, out var role) && whole.First(role) is null);
        pointed.AddRange(Meeting(observation.PutIn, holding));
        if (told.Contains("pressure") && !pointed.Exists(Needs.ContainsKey))
        {
            pointed.Add(whole.First(HazardRole.Hypochlorite) is null ? HazardKind.FermentationPressure : HazardKind.OxygenPressure);
        }

        return [.. pointed.Distinct()];
    }

    /// <summary>What the gate says of each thing that was put in, one after the other, whatever its amount.</summary>
    private static IEnumerable<HazardKind> Meeting(IReadOnlyList<PutIn> putIn, Holding holding)
    {
        var now = holding;
        foreach (var put in putIn)
        {
            if (put.Substance is not { } substance)
            {
                yield return HazardKind.UnknownContents;
                now = now.WithNameless();
                continue;
            }

            // Nobody can name all that it holds: what is known of it still counts.
            var (known, held) = (now.OnlyWhatIsKnown(), Held.Of(substance, Holding.TrialGramsPerLitre * now.Litres));
            var before = HazardGate.Of(known);
            foreach (var arising in HazardGate.Of(known.With(held)).Present.Concat(HazardGate.Meeting(known, held, HazardLimits.Default))
                .Where(h => h.Grade >= HazardGrade.Present && !(before.Find(h.Kind)?.Grade >= h.Grade)))
            {
                yield return arising.Kind;
            }

            now = now.With(held);
            if (put.HoldsMore)
            {
                yield return HazardKind.UnknownContents;
                now = now.WithNameless();
            }
        }
    }
}
