using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Editions;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Batches;

/// <summary>An addition as asked for and as recorded.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Asked">Where it is asked for.</param>
/// <param name="Mass">Asked for in the size of the batch; null for a dose of a stock.</param>
/// <param name="Volume">The same for what is measured; null for what is weighed.</param>
/// <param name="Part">Taken over asked for; 0 for what was left out or replaced by something else.</param>
public sealed record RecordedAddition(BatchStep Entry, string Name, Place Asked, Mass? Mass, Volume? Volume, double Part);

/// <summary>What a batch should be like: a bottle of a stock or a tank of a recipe, as asked for and as it was really made.</summary>
public abstract record BatchForecast(BatchDocument Batch)
{
    /// <summary>False where something that decides the contents could not be read: then nothing is foretold.</summary>
    public abstract bool IsWhole { get; }

    /// <summary>The file that it was mixed from.</summary>
    public abstract Place MixedFrom { get; }

    /// <summary>Those that the record tells something of, in its order.</summary>
    public abstract IReadOnlyList<RecordedAddition> Additions { get; }

    /// <summary>Hazards of what was made.</summary>
    public abstract HazardReport Hazards { get; }

    /// <summary>What was read, with what it should be; in the order of the record.</summary>
    public abstract IEnumerable<CheckedReading> Readings { get; }

    /// <summary>
    /// Null where the stock or recipe has no facts, or was changed since the batch was mixed from it: then the file tells nothing of it.
    /// </summary>
    public static BatchForecast? Of(Facts facts, BatchDocument batch) =>
        Edition.IsEarlier(facts.Workspace, batch) ? null
        : batch.RecipeFile is null ? BottleForecast.Of(facts, batch)
        : TankForecast.Of(facts, batch);

    /// <summary>What was seen, read; in the order of the record.</summary>
    public IReadOnlyList<SightReading> Sights { get; } = [.. Batch.Seen.Select(SightReading.Of)];

    /// <summary>Sights of something that fell out, or of what cannot be told: neither clear nor a danger alone.</summary>
    public IEnumerable<SightReading> Clouded
    {
        get
        {
            var holding = Hazards.Holding;
            return Sights.Where(s => !s.IsClear && (s.TellsDeposit || s.Dangers(holding).Count == 0));
        }
    }

    /// <summary>False where the one judgement finds, or cannot rule out, that something falls out by the time of a sight.</summary>
    /// <param name="bottle">From where on deposits count in a bottle of this shop.</param>
    /// <param name="tank">The same for a tank.</param>
    public abstract bool StaysClear(BatchSight sight, DepositLimits bottle, OwnerLimits tank);
}
