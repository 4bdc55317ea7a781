using RecipeLint.Advice;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Shell;

/// <summary>What the process answers; the output format never changes it.</summary>
internal static class ExitCodes
{
    /// <summary>Nothing at or above the threshold.</summary>
    public const int Clean = 0;

    /// <summary>Findings at or above the threshold, or advice on what a check calls an error or the hazard gate forbids.</summary>
    public const int Findings = 1;

    /// <summary>
    /// What a command answers that says how a stock is mixed, divided, made stronger or checked: none of them ends as if all were well
    /// where nothing may be advised, or where a plain check has an error in that stock.
    /// </summary>
    /// <param name="isRefused">True where somebody could be hurt, or nobody can name what is in it.</param>
    /// <param name="errors">What <see cref="CheckedStock.Errors"/> says of the stock, or of what is proposed in its place.</param>
    public static int OfAdvice(bool isRefused, IEnumerable<Finding> errors) => isRefused || errors.Any() ? Findings : Clean;

    /// <summary>Wrong usage, unreadable input, or no input matched.</summary>
    public const int Usage = 2;

    /// <summary>A fault of the program itself.</summary>
    public const int Fault = 3;
}
