using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>What a finding says of a pH, and how sure it is where that rests on ions that no label states.</summary>
internal static class PhGuess
{
    /// <summary>"at pH 4.2", or that nobody knows it.</summary>
    public static string At(SolutionState state, int digits = 2) =>
        state.TellsPh ? $"at pH {Say.Ph(Math.Round(state.Ph, digits))}" : "at a pH that is not known here";

    /// <summary>The pH among the values of a finding; none where it is not known.</summary>
    /// <param name="before">True for the pH before anything falls out.</param>
    public static IEnumerable<NamedValue> Values(SolutionState state, bool before = false) =>
        state.TellsPh ? [new NamedValue("pH", before ? Rounding.SixDigits(state.PhBeforeDeposit) : state.Ph, "")] : [];

    /// <summary>A sentence with a blank behind it; empty where the pH is computed from what is stated.</summary>
    public static string Sentence(GuessedPh? guess) => guess is null
        ? ""
        : $"This pH is a guess: {Say.Percent(guess.Share)} of the charge is closed with ions that the "
            + $"{(guess.Names.Count == 1 ? "label" : "labels")} of {Say.List(guess.Names)} "
            + $"{(guess.Names.Count == 1 ? "does" : "do")} not state; measure it. ";

    /// <summary>Nothing that hangs on a guess is certain.</summary>
    public static Odds Weaken(Odds odds, GuessedPh? guess) => guess is not null && odds == Odds.Certain ? Odds.NearTheLimit : odds;
}
