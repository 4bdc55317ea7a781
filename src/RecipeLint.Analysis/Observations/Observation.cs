namespace RecipeLint.Analysis.Observations;

/// <summary>A word that was not in the vocabulary but near to one that is.</summary>
public sealed record Reread(string Written, string ReadAs);

/// <summary>What was seen, smelt and tried, in the controlled vocabulary.</summary>
public sealed record Observation
{
    /// <summary>Signs of what happened to somebody; no deposit tells itself by them.</summary>
    private static readonly HashSet<string> OfPeople = new(StringComparer.Ordinal)
    {
        "splashed", "swallowed", "breathed-in", "animal-harmed", "not-understood",
    };

    /// <summary>How long it took, or what ran then, which is something only beside what was seen.</summary>
    private static readonly HashSet<string> Durations = new(StringComparer.Ordinal)
    {
        "at-mixing", "hours", "days", "weeks", "months", "on-dosing",
    };

    public static Observation Nothing { get; } = new();

    /// <summary>Each sign once, in the order it was told.</summary>
    public IReadOnlyList<Seen> Signs { get; init; } = [];

    /// <summary>Colours of the liquid, which are not those of a deposit; in the order they were told.</summary>
    public IReadOnlyList<Sign> LiquidColours { get; init; } = [];

    /// <summary>Words that were left out, as written.</summary>
    public IReadOnlyList<string> Unknown { get; init; } = [];

    public IReadOnlyList<Reread> Reread { get; init; } = [];

    /// <summary>Signs that were told both ways and therefore left out.</summary>
    public IReadOnlyList<Sign> Contradictions { get; init; } = [];

    /// <summary>What went in beside the recipe, as told.</summary>
    public IReadOnlyList<PutIn> PutIn { get; init; } = [];

    /// <summary>Other parts of the recipe that went in, as told ("part b").</summary>
    public IReadOnlyList<string> Parts { get; init; } = [];

    /// <summary>What was told of plants, which nothing here judges by looks; as written, in lower case.</summary>
    public IReadOnlyList<string> Plants { get; init; } = [];

    /// <summary>True when nothing was told that could tell causes apart.</summary>
    public bool IsVague => Signs.Count == 0 && LiquidColours.Count == 0;

    /// <summary>
    /// True when all that was told is of plants, of people, of how long it took, or in words that nobody here knows: no cause follows from
    /// it.
    /// </summary>
    public bool TellsNoCause => LiquidColours.Count == 0 && !Signs.Any(PartsCauses)
        && (IsOfPeople
            || (PutIn.Count > 0 && Signs.Count == 0 && PutIn.All(p => p.IsAsked))
            || (PutIn.Count == 0 && (Signs.Count > 0 || Plants.Count > 0 || Unknown.Count > 0)));

    /// <summary>What was spilled on somebody is no addition to the vessel, and when that was is no time at which something fell.</summary>
    private bool IsOfPeople => Signs.Any(s => s.Present && OfPeople.Contains(s.Sign.Id));

    private bool PartsCauses(Seen seen) => !OfPeople.Contains(seen.Sign.Id) && !Durations.Contains(seen.Sign.Id)
        && ((Plants.Count == 0 && !IsOfPeople) || (seen.Present && seen.Sign.Kind != SignKind.Time));

    /// <summary>Present true, absent false, not told null.</summary>
    public bool? Of(string sign)
    {
        foreach (var seen in Signs)
        {
            if (seen.Sign.Id == sign)
            {
                return seen.Present;
            }
        }

        return null;
    }

    /// <summary>Both together; what the two tell differently is a contradiction.</summary>
    public Observation With(Observation other)
    {
        var all = Signs.Concat(other.Signs).Distinct().ToList();
        var torn = all.Where(s => s.Present && all.Contains(s with { Present = false })).Select(s => s.Sign).Concat(Contradictions).Concat(
            other.Contradictions)
            .Distinct().ToList();
        return new Observation
        {
            Signs = [.. all.Where(s => !torn.Contains(s.Sign))],
            LiquidColours = [.. LiquidColours.Concat(other.LiquidColours).Distinct()],
            Unknown = [.. Unknown.Concat(other.Unknown).Distinct(StringComparer.Ordinal)],
            Reread = [.. Reread.Concat(other.Reread).Distinct()],
            Contradictions = torn,
            PutIn = [.. PutIn.Concat(other.PutIn).Distinct()],
            Parts = [.. Parts.Concat(other.Parts).Distinct(StringComparer.Ordinal)],
            Plants = [.. Plants.Concat(other.Plants).Distinct(StringComparer.Ordinal)],
        };
    }

    /// <summary>The same with these signs, as from an answer.</summary>
    public Observation With(IEnumerable<Seen> signs) => With(new Observation { Signs = [.. signs] });
}
