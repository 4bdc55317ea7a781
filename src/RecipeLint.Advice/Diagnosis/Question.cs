using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>A possible answer and what it says of the bottle.</summary>
public sealed record Answer(string Say, IReadOnlyList<Seen> Signs);

/// <summary>A question, or a quick bench test, with its possible answers.</summary>
/// <param name="Ask">The question as it is put.</param>
/// <param name="Do">What to do, for the middle of a sentence; null for a question that only looks.</param>
/// <param name="Caution">How it can hurt; null when it cannot.</param>
/// <param name="Ease">What its answer is worth against that of a look, for its trouble and danger; 1 for a look.</param>
/// <param name="Act">
/// What the hazard gate is asked first: a handling, "open", or "reagent:" with an id; null for a look from outside.
/// </param>
public sealed record Question(string Id, string Ask, string? Do, string? Caution, double Ease, IReadOnlyList<Answer> Answers,
    string? Act = null)
{
    public bool IsTest => Do is not null;
}
