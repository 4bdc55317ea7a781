using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Chemistry.Substances;

/// <summary>Which share of an element a line of a guaranteed analysis states.</summary>
public enum LabelShare
{
    Total,

    /// <summary>Nitrogen as nitrate, counted as N.</summary>
    Nitrate,

    /// <summary>Nitrogen as ammonium, counted as N.</summary>
    Ammonium,

    /// <summary>Nitrogen as urea, counted as N.</summary>
    Urea,

    /// <summary>Other organic nitrogen, counted as N.</summary>
    Organic,

    /// <summary>Bound by the chelating agent that the label names.</summary>
    Chelated,

    /// <summary>Bound in the ortho-ortho isomer of EDDHA and its kin.</summary>
    OrthoOrtho,
}

/// <summary>What the per cent of a label counts.</summary>
public enum LabelPercent
{
    /// <summary>Grams in 100 g of product.</summary>
    WeightPerWeight,

    /// <summary>Grams in 100 mL of product; needs the density.</summary>
    WeightPerVolume,
}

/// <summary>One line of a guaranteed analysis.</summary>
/// <param name="Form">What the per cent counts: an element ("N", "Fe") or a form of <see cref="OxideBasis"/> ("P2O5", "NO3").</param>
/// <param name="Percent">Grams in 100 g or 100 mL.</param>
/// <param name="Share">Which share of the element it is.</param>
public sealed record LabelEntry(string Form, double Percent, LabelShare Share = LabelShare.Total)
{
    /// <summary>What the figure counts where its line says so itself; null where the label's way of counting holds.</summary>
    public LabelPercent? Counted { get; init; }

    /// <summary>Reads "N nitrate", "P2O5", "Fe chelated", "Fe ortho-ortho".</summary>
    /// <exception cref="FormatException">The word after the form is not a share.</exception>
    public static LabelEntry FromText(string text, double percent)
    {
        var space = text.IndexOf(' ', StringComparison.Ordinal);
        if (space < 0)
        {
            return new LabelEntry(text, percent);
        }

        LabelShare share = text[(space + 1)..] switch
        {
            "total" => LabelShare.Total,
            "nitrate" => LabelShare.Nitrate,
            "ammonium" => LabelShare.Ammonium,
            "urea" => LabelShare.Urea,
            "organic" => LabelShare.Organic,
            "chelated" => LabelShare.Chelated,
            "ortho-ortho" => LabelShare.OrthoOrtho,
            var word => throw new FormatException($"'{word}' is not a share of an element."),
        };
        return new LabelEntry(text[..space], percent, share);
    }
}

/// <summary>A product as its label describes it.</summary>
public sealed record LabelDeclaration
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public SubstanceKind Kind { get; init; } = SubstanceKind.Product;

    public PhysicalForm Form { get; init; } = PhysicalForm.Solid;

    public LabelPercent Percent { get; init; } = LabelPercent.WeightPerWeight;

    /// <summary>At 20 °C; needed for w/v labels and for liquids that are poured by volume.</summary>
    public Sourced<Density>? Density { get; init; }

    public required IReadOnlyList<LabelEntry> Entries { get; init; }

    /// <summary>What the per cent of a line counts.</summary>
    public LabelPercent CountedIn(LabelEntry entry) => entry.Counted ?? Percent;

    /// <summary>The chelating agent that the chelated shares are bound by ("EDTA", "DTPA"); null when the label names none.</summary>
    public string? Agent { get; init; }

    /// <summary>The ion that closes the charge, by component name ("Na+", "SO4-2"); null to let a stated assumption choose.</summary>
    public string? CounterIon { get; init; }
}
