using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>Whether the stated final volume includes the doses.</summary>
public enum FinalVolumeMeaning
{
    /// <summary>Doses and water together are brought to the final volume.</summary>
    MadeUp,

    /// <summary>The doses are poured into that much water and their own volume comes on top.</summary>
    AddedTo,
}

/// <summary>Where a final solution goes.</summary>
public enum Receiver
{
    /// <summary>To the roots, as a feed.</summary>
    Roots,

    /// <summary>Onto leaves, as a spray: what roots bear says nothing of it.</summary>
    Leaves,
}

/// <summary>What the plants get: doses into water, with a target.</summary>
public sealed record RecipeDocument
{
    public required string File { get; init; }

    public Place Place => Place.Whole(File);

    public required string Name { get; init; }

    /// <summary>Crop profile by name; null means the shop's default, then "generic".</summary>
    public Located<string>? Crop { get; init; }

    /// <summary>The shop's own file of that profile; null for a built-in one.</summary>
    public string? ProfileFile { get; init; }

    public Located<string>? Stage { get; init; }

    public Located<WaterReference>? Water { get; init; }

    /// <summary>How warm the solution is at the roots, coldest to warmest; null when the file does not say.</summary>
    public Located<Interval<Temperature>>? At { get; init; }

    public Located<Volume>? Final { get; init; }

    /// <summary>Null when the file does not say; then "made up" is assumed and listed among the assumptions.</summary>
    public Located<FinalVolumeMeaning>? VolumeMeaning { get; init; }

    public required IReadOnlyList<DoseEntry> Doses { get; init; }

    /// <summary>Null when the file does not say; then it is a feed for roots.</summary>
    public Located<Receiver>? GivenTo { get; init; }

    /// <summary>True for what is sprayed onto leaves.</summary>
    public bool IsForLeaves => GivenTo?.Value == Receiver.Leaves;

    public PhAdjustment? Adjust { get; init; }

    public IReadOnlyList<Target> Targets { get; init; } = [];

    public bool IsComplete { get; init; } = true;
}

/// <summary>One thing that goes into the final solution.</summary>
public abstract record DoseEntry(string Id, Place Place)
{
    public Located<string>? With { get; init; }
}

/// <summary>A dose of a stock.</summary>
public sealed record StockDose(string Id, Place Place) : DoseEntry(Id, Place)
{
    public required Located<string> Stock { get; init; }

    /// <summary>Null when the reference does not resolve (already reported).</summary>
    public string? StockFile { get; init; }

    /// <summary>The dose stated here; null when neither dose nor volume is stated and the stock's own dose holds.</summary>
    public Located<Dose>? Dose { get; init; }

    /// <summary>A stated volume for the whole final volume ("250 mL").</summary>
    public Located<Volume>? Amount { get; init; }

    public Located<int>? Strokes { get; init; }
}

/// <summary>A substance put straight into the final solution.</summary>
public sealed record DirectDose(string Id, Place Place) : DoseEntry(Id, Place)
{
    public required Located<string> What { get; init; }

    public Substance? Substance { get; init; }

    public Located<Portion>? Amount { get; init; }

    public Tolerance? Tolerance { get; init; }

    public Located<MassFraction>? Assay { get; init; }
}

/// <summary>The pH the final solution is brought to.</summary>
public sealed record PhAdjustment(Place Place, Located<double>? Target, double? Tolerance, Located<string>? Using, Substance? Reagent);

/// <summary>What a target speaks of.</summary>
/// <param name="Key">As written: "N", "NO3-N", "NH4-N", "P", "EC", "pH".</param>
public sealed record Target(Located<string> Key, Place Place)
{
    /// <summary>Element concentration wanted, as the element, whatever basis it was written in; null for EC and pH.</summary>
    public MassConcentration? Concentration { get; init; }

    /// <summary>The basis as written ("P2O5", "K2O"), null for the element itself.</summary>
    public string? Basis { get; init; }

    /// <summary>EC in mS/cm or the pH value, for those two keys.</summary>
    public double? Number { get; init; }

    /// <summary>Half-width in the unit of the value; null when none was stated.</summary>
    public Tolerance? Tolerance { get; init; }
}
