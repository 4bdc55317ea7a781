namespace RecipeLint.Shell;

/// <summary>What the process answers; the output format never changes it.</summary>
internal static class ExitCodes
{
    /// <summary>Nothing at or above the threshold.</summary>
    public const int Clean = 0;

    /// <summary>Findings at or above the threshold, or advice refused because somebody could be hurt.</summary>
    public const int Findings = 1;

    /// <summary>Wrong usage, unreadable input, or no input matched.</summary>
    public const int Usage = 2;

    /// <summary>A fault of the program itself.</summary>
    public const int Fault = 3;
}
