using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Hazards;

/// <summary>What the gate says of one vessel: the hazards that are there, the gravest first, and what it forbids.</summary>
public sealed record HazardReport(Holding Holding, IReadOnlyList<Hazard> Hazards, HazardLimits Limits)
{
    /// <summary>Hazards whose reactants are together.</summary>
    public IEnumerable<Hazard> Present => Hazards.Where(h => h.Grade >= HazardGrade.Present);

    /// <summary>The hazard before which nothing else is said: leave the bottle alone; null when there is none.</summary>
    public Hazard? ForLeaving => Hazards.FirstOrDefault(h => h.IsForLeaving);

    /// <summary>The same with hazards of which a sign was told; what the contents say of them already stays when it is graver.</summary>
    public HazardReport Suspecting(IEnumerable<HazardKind> kinds)
    {
        List<HazardKind> suspected = [.. kinds.Distinct()];
        return this with
        {
            Holding = Holding.Suspecting(suspected),
            Hazards = HazardGate.Gravest(Hazards.Select(h => suspected.Contains(h.Kind)
                ? h with { IsNoticed = true, Grade = h.Grade == HazardGrade.Possible ? HazardGrade.Suspected : h.Grade } : h)
                .Concat(suspected.Where(k => Find(k) is null).Select(HazardGate.Suspicion))),
        };
    }

    public Hazard? Find(HazardKind kind) => Hazards.FirstOrDefault(h => h.Kind == kind);

    /// <summary>Why this must not be done with the vessel; null when nothing speaks against it.</summary>
    public Refusal? Forbids(VesselAction handling) =>
        Hazards.FirstOrDefault(h => h.Forbids(handling)) is { } hazard ? new Refusal(hazard, handling, null, false) : null;

    /// <summary>Why this must not be put into the vessel; null when nothing speaks against it.</summary>
    /// <param name="reagent">What goes in.</param>
    /// <param name="gramsPerLitre">How much of it, as bought.</param>
    /// <param name="pinch">
    /// True for a pinch of a deposit on an open spoon, where carbon dioxide is looked for and harmless.
    /// </param>
    public Refusal? Forbids(Substance reagent, double gramsPerLitre = Holding.TrialGramsPerLitre, bool pinch = false)
    {
        var held = Held.Of(reagent, gramsPerLitre * Holding.Litres);
        if (Hazards.FirstOrDefault(h => h.ForbidsPutting) is { } there)
        {
            return new Refusal(there, null, held, false);
        }

        if (Holding.HasUnknown && held.Roles.Overlaps(HazardGate.Reactive))
        {
            return new Refusal(Find(HazardKind.UnknownContents)!, null, held, false);
        }

        var after = HazardGate.Of(Holding.With(held), Limits).Hazards.Concat(HazardGate.Meeting(Holding, held, Limits));
        var arising = after.FirstOrDefault(h => IsWorse(h) && !(pinch && h.Kind is HazardKind.CarbonDioxidePressure
            or HazardKind.FermentationPressure));
        return arising is null ? null : new Refusal(arising, null, held, true);
    }

    private bool IsWorse(Hazard hazard) =>
        hazard.Grade >= HazardGrade.Present && (Find(hazard.Kind) is not { } before || before.Grade < hazard.Grade);
}
