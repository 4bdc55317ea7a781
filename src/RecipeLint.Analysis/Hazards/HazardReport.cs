using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Hazards;

/// <summary>What the gate says of one vessel: the hazards that are there, the gravest first, and what it forbids.</summary>
public sealed record HazardReport(Holding Holding, IReadOnlyList<Hazard> Hazards, HazardLimits Limits)
{
    /// <summary>Hazards whose reactants are together.</summary>
    public IEnumerable<Hazard> Present => Hazards.Where(h => h.Grade >= HazardGrade.Present);

    /// <summary>
    /// Those that are there besides what has been said already, each kind once. What is said of a kind goes for all of it; only heat comes
    /// in two ways that are mended each by itself: what boils as it goes in, and what spits when water comes onto it.
    /// </summary>
    public IReadOnlyList<Hazard> PresentBesides(Func<Hazard, bool> isSaid)
    {
        List<Hazard> there = [.. (Each ?? Hazards).Where(h => h.Grade >= HazardGrade.Present)];
        List<Hazard> said = [.. there.Where(isSaid)];
        return HazardGate.Gravest(there.Except(said)
            .Where(h => h is { Kind: HazardKind.Heat, WaitsForWater: false } || said.TrueForAll(s => s.Kind != h.Kind)));
    }

    /// <summary>Every one that was found, before each kind was told once at its worst; null where nobody asks.</summary>
    internal IReadOnlyList<Hazard>? Each { get; init; }

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

    /// <summary>What may be in it though no recipe says so, such as black sulfide: nothing is put to it that it bears as little.</summary>
    public IReadOnlyList<Held> MayHold { get; init; } = [];

    /// <summary>The same with something that may be in it and what that does.</summary>
    /// <param name="grade">Possible, or suspected where hardly anything else explains what was seen.</param>
    public HazardReport Allowing(HazardKind kind, Held held, HazardGrade grade) => this with
    {
        Holding = grade == HazardGrade.Possible ? Holding : Holding.Suspecting([.. Holding.Suspected, kind]),
        Hazards = HazardGate.Gravest(Hazards.Append(new Hazard(kind, grade, held, null, "", 0, 0, ""))),
        MayHold = [.. MayHold, held],
    };

    /// <summary>The same for a bottle made anew from the same recipe: what may have formed in this one is not in it.</summary>
    public HazardReport OfTheNextBottle() => this with { MayHold = [] };

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

        if (MayHold.SelectMany(m => HazardGate.Of(Holding.Of([m, held], Holding.Litres).OnlyWhatIsKnown()).Present)
            .FirstOrDefault() is { } waiting)
        {
            // How much of it there is nobody knows.
            return new Refusal(waiting with { Value = 0, Limit = 0, Unit = "" }, null, held, true);
        }

        if (Corroding(held) is { } heat)
        {
            return new Refusal(heat, null, held, true);
        }

        var after = HazardGate.Of(Holding.With(held), Limits).Hazards.Concat(HazardGate.Meeting(Holding, held, Limits));
        var arising = after.FirstOrDefault(h => IsWorse(h) && !(pinch && h.Kind is HazardKind.CarbonDioxidePressure
            or HazardKind.FermentationPressure));
        return arising is null ? null : new Refusal(arising, null, held, true);
    }

    /// <summary>Acid into what burns as a lye, and lye into what burns as an acid, get hot and spit.</summary>
    private Hazard? Corroding(Held reagent)
    {
        var burns = Hazards.FirstOrDefault(h => h is { Kind: HazardKind.Splashed or HazardKind.Caustic, Grade: HazardGrade.Possible });
        if (burns is not { From: { } strong })
        {
            return null;
        }

        var (one, other) = strong.Is(HazardRole.Alkali) ? (HazardRole.Alkali, HazardRole.Acid) : (HazardRole.Acid, HazardRole.Alkali);
        return strong.Is(one) && (reagent.Is(other) || (other == HazardRole.Acid && reagent.Is(HazardRole.AcidSalt))
            || (other == HazardRole.Alkali && reagent.Is(HazardRole.Carbonate)))
            ? new Hazard(HazardKind.Heat, HazardGrade.Present, strong, reagent, "", 0, 0, "")
            : null;
    }

    private bool IsWorse(Hazard hazard) =>
        hazard.Grade >= HazardGrade.Present && (Find(hazard.Kind) is not { } before || before.Grade < hazard.Grade);
}
