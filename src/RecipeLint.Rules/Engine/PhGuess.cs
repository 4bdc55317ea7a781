using RecipeLint.Analysis.Equilibria;

namespace RecipeLint.Rules.Engine;

/// <summary>What a finding says and how sure it is where its pH rests on ions that no label states.</summary>
internal static class PhGuess
{
    /// <summary>A sentence with a blank behind it; empty where the pH is computed from what is stated.</summary>
    public static string Sentence(GuessedPh? guess) => guess is null
        ? ""
        : $"This pH is a guess: {Say.Percent(guess.Share)} of the charge is closed with ions that the "
            + $"{(guess.Names.Count == 1 ? "label" : "labels")} of {Say.List(guess.Names)} "
            + $"{(guess.Names.Count == 1 ? "does" : "do")} not state; measure it. ";

    /// <summary>Nothing that hangs on a guess is certain.</summary>
    public static Odds Weaken(Odds odds, GuessedPh? guess) => guess is not null && odds == Odds.Certain ? Odds.NearTheLimit : odds;
}
