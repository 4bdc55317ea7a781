using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>How and how long a stock is kept.</summary>
/// <param name="At">Storage temperatures from coldest to warmest.</param>
public sealed record Keeping(Located<Interval<Temperature>>? At, Located<Duration>? For, Located<LightExposure>? Light);

public enum LightExposure
{
    Dark,
    Shade,
    Light,
}

/// <summary>A stock: what it makes and the steps in the order they are done.</summary>
public sealed record StockDocument
{
    /// <summary>Relative to the workspace root, forward slashes.</summary>
    public required string File { get; init; }

    public Place Place => Place.Whole(File);

    /// <summary>The stated name, or the file name without its ending.</summary>
    public required string Name { get; init; }

    /// <summary>The finished volume; null when it could not be read.</summary>
    public Located<Volume>? Makes { get; init; }

    /// <summary>The dose this stock was made for.</summary>
    public Located<Dose>? Dose { get; init; }

    public Keeping? Keep { get; init; }

    public required IReadOnlyList<Step> Steps { get; init; }

    /// <summary>True when the file is marked for the bench ("use": "bench"), so that rules on labels and handling look at it.</summary>
    public bool ForBench { get; init; }

    public Label? Label { get; init; }

    /// <summary>The vessel it is mixed in, as named in the shop settings.</summary>
    public Located<string>? Vessel { get; init; }

    /// <summary>False when something that decides the contents could not be read; totals are then a lower bound.</summary>
    public bool IsComplete { get; init; } = true;
}

/// <summary>What the label on the bottle says; keys present mean stated.</summary>
public sealed record Label(Place Place, bool Contents, bool Dilution, bool Date, bool Hazard, bool KeepApart, bool Disposal, string? Colour)
{
    /// <summary>What the label says is inside; null where it says nothing.</summary>
    public string? ContentsText { get; init; }
}

/// <summary>One step at the bench.</summary>
/// <param name="Id">Stated, or made from the substance; unique in the file. Locators and fingerprints use it.</param>
/// <param name="Place">The whole step.</param>
public abstract record Step(string Id, Place Place)
{
    public string? Note { get; init; }
}

/// <summary>A substance put in.</summary>
public sealed record AddStep(string Id, Place Place) : Step(Id, Place)
{
    /// <summary>As written.</summary>
    public required Located<string> What { get; init; }

    /// <summary>Null when the name fits nothing or several substances (already reported).</summary>
    public Substance? Substance { get; init; }

    /// <summary>Null when it could not be read (already reported).</summary>
    public Located<Portion>? Amount { get; init; }

    /// <summary>Stated half-width of the amount ("1 drop ± 20 %").</summary>
    public Tolerance? Tolerance { get; init; }

    /// <summary>The stated assay; null when none was declared.</summary>
    public Located<MassFraction>? Assay { get; init; }

    /// <summary>Scale, cylinder or syringe as named in the shop settings.</summary>
    public Located<string>? With { get; init; }
}

/// <summary>A measured part of another stock put in (a pre-stock, a serial dilution).</summary>
public sealed record AliquotStep(string Id, Place Place) : Step(Id, Place)
{
    public required Located<string> What { get; init; }

    public Located<Portion>? Amount { get; init; }

    public Located<string>? With { get; init; }

    /// <summary>The other stock's file relative to the workspace root; null when it does not resolve (already reported).</summary>
    public string? StockFile { get; init; }

    /// <summary>
    /// The same of a reference that is found but not followed, because it closes a loop or leads too far (already reported).
    /// </summary>
    public string? NotFollowed { get; init; }

    internal AliquotStep LeftOut() => this with { StockFile = null, NotFollowed = StockFile };
}

/// <summary>Water poured in.</summary>
public sealed record PourStep(string Id, Place Place) : Step(Id, Place)
{
    public Located<Volume>? Volume { get; init; }

    public Located<WaterReference>? Of { get; init; }

    public Located<string>? With { get; init; }
}

/// <summary>A reagent added until a pH is reached; how much that takes is the solver's to say.</summary>
public sealed record AdjustStep(string Id, Place Place) : Step(Id, Place)
{
    public Located<double>? TargetPh { get; init; }

    public double? PhTolerance { get; init; }

    public Located<string>? Using { get; init; }

    public Substance? Reagent { get; init; }
}

/// <summary>Water up to the final volume.</summary>
public sealed record TopUpStep(string Id, Place Place) : Step(Id, Place)
{
    public Located<Volume>? To { get; init; }

    public Located<WaterReference>? Of { get; init; }
}

/// <summary>What is done without adding anything.</summary>
public enum Handling
{
    Stir,
    Filter,
    Warm,
    Cool,
    Rest,
    Rinse,
}

public sealed record HandlingStep(string Id, Place Place, Handling Handling, Located<string> How) : Step(Id, Place);

/// <summary>A water file of the workspace or one of the built-in waters.</summary>
/// <param name="Name">As written: a file reference, or "distilled", "reverse-osmosis", "rain".</param>
/// <param name="File">Relative to the workspace root; null for a built-in water or one that does not resolve.</param>
public sealed record WaterReference(string Name, string? File)
{
    /// <summary>True when the name is neither a built-in water nor a file that resolves (already reported).</summary>
    public bool IsUnresolved { get; init; }
}
