namespace RecipeLint.Recipes.Text;

/// <summary>
/// What reading and resolving can find wrong with a file; each kind is a rule of the documents family with the same name in kebab case.
/// </summary>
public enum ProblemKind
{
    MalformedFile,
    FileTooLarge,
    WrongEncoding,
    DuplicateKey,
    UnknownKey,
    WrongShape,
    MissingKey,
    CommentInFile,
    UnknownUnit,
    NumberWithoutUnit,
    AmbiguousNumber,
    AmbiguousUnit,
    WrongDimension,
    ImplausibleAmount,
    UnknownSubstance,
    AmbiguousSubstance,
    MissingReference,
    ReferenceLeavesRepository,
    ReferenceLoop,
    UnknownEquipment,
    UnknownProfile,
    ImpossibleAnalysis,
    FormulaMassDisagrees,
    UnknownRule,
    ImportNotUnderstood,
}

/// <summary>A labelled second place that helps to understand a problem or finding.</summary>
public sealed record RelatedPlace(Place Place, string Label);

/// <summary>One number a message is about, for machines.</summary>
/// <param name="Name">What it is ("factor", "sulfate", "limit").</param>
/// <param name="Value">Finite.</param>
/// <param name="Unit">Spelled as in the message; empty for a ratio.</param>
public sealed record NamedValue(string Name, double Value, string Unit);

/// <summary>Something wrong with a file, found while reading; the documents rules give it a level.</summary>
public sealed record Problem(ProblemKind Kind, Place Place, string Message)
{
    public IReadOnlyList<RelatedPlace> Related { get; init; } = [];

    public IReadOnlyList<NamedValue> Values { get; init; } = [];

    /// <summary>The file is read and understood all the same: a matter of habit.</summary>
    public bool IsHarmless { get; init; }

    /// <summary>What the text most likely meant, as it would stand in the file; offered, never assumed.</summary>
    public IReadOnlyList<string> Suggestions { get; init; } = [];
}
