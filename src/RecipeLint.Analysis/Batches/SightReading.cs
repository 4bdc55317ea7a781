using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Recipes.Batches;

namespace RecipeLint.Analysis.Batches;

/// <summary>What one sight in a batch tells, read by the words that the diagnosis reads too. Pure.</summary>
/// <param name="Told">Its words as signs.</param>
public sealed record SightReading(BatchSight Sight, Observation Told)
{
    public static SightReading Of(BatchSight sight) => new(sight, ObservationReader.Read(sight.What.Value));

    /// <summary>Something lies, floats or hangs in it, whatever it is.</summary>
    public bool TellsDeposit => Told.Signs.Any(s => s is { Present: true, Sign.Kind: SignKind.Form or SignKind.Feel });

    /// <summary>
    /// Nothing fell out, smells, presses or heats: it is told so, or the words begin with "clear" or "nothing". Everything else was seen.
    /// </summary>
    public bool IsClear => !TellsDeposit && !Told.Signs.Any(IsOdd) && (Told.Signs.Any(TellsClear) || BeginsClear);

    private bool BeginsClear => Begins("clear") || Begins("nothing");

    /// <summary>Hazards that the words can mean, whatever was weighed.</summary>
    /// <param name="holding">What the bottle holds by the record.</param>
    public IReadOnlyList<HazardKind> Dangers(Holding holding) => NoticedHazards.Of(Told, holding);

    private static bool IsOdd(Seen seen) => seen.Present && seen.Sign.Kind switch
    {
        SignKind.Gas => true,
        SignKind.Smell => seen.Sign.Id is not ("smell-none" or "smell-aromatic"),
        SignKind.Liquid => seen.Sign.Id is not ("liquid-clear" or "normal"),
        _ => false,
    };

    private static bool TellsClear(Seen seen) => seen is { Present: false, Sign.Id: "deposit" }
        || seen is { Present: true, Sign.Id: "liquid-clear" or "normal" };

    private bool Begins(string word) => Sight.What.Value.TrimStart().StartsWith(word, StringComparison.OrdinalIgnoreCase);
}
