namespace RecipeLint.Chemistry.Substances;

public enum LabelProblemKind
{
    /// <summary>A form that is neither an element nor one a label uses.</summary>
    UnknownForm,

    /// <summary>Negative, not finite, or more than the product can hold.</summary>
    BadPercent,

    /// <summary>One share stated twice with different contents, such as P and P2O5 that disagree.</summary>
    Contradiction,

    /// <summary>The forms of nitrogen do not add up to the total.</summary>
    NitrogenForms,

    /// <summary>A chelated or ortho-ortho share larger than what it is a share of.</summary>
    ShareOverTotal,

    /// <summary>A share that this element does not have, such as chelated nitrogen.</summary>
    MisplacedShare,

    /// <summary>A chelating agent the tool does not know, or none named for a chelated share.</summary>
    UnknownAgent,

    /// <summary>A w/v label without a density.</summary>
    MissingDensity,

    /// <summary>The declared counter-ion cannot be read or has the wrong sign.</summary>
    BadCounterIon,

    /// <summary>As salts the declared contents weigh more than the product.</summary>
    Over100AsSalts,

    /// <summary>No line could be used.</summary>
    Empty,
}

/// <summary>Something wrong with a label, as data.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="Message">One sentence with the numbers in it.</param>
/// <param name="Form">The form of the line meant; null when it is the whole label.</param>
public sealed record LabelProblem(LabelProblemKind Kind, string Message, string? Form = null);

/// <summary>What a label gives: a substance unless nothing could be made of it, and every problem found.</summary>
public sealed record LabelResult(Substance? Substance, IReadOnlyList<LabelProblem> Problems);
