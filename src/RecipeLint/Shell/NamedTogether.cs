using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Shell;

/// <summary>Things on a command line that could not be carried out: a mix in one line, whichever command it was given to.</summary>
internal static class NamedTogether
{
    /// <summary>Arguments that are looked at: more of them are files.</summary>
    private const int MostArguments = 40;

    /// <summary>
    /// What those of one argument can do to each other, else those of all; empty where nothing is known to happen. Options and paths name
    /// nothing.
    /// </summary>
    public static IReadOnlyList<Hazard> Dangers(IReadOnlyList<string> arguments)
    {
        List<string> lines = [.. arguments.Where(a => !a.StartsWith('-') && !IsPath(a)).Take(MostArguments)];
        return lines.Select(NamedMix.Dangers).FirstOrDefault(d => d.Count > 0)
            ?? NamedMix.Dangers(lines.Append(string.Join(' ', lines.Skip(1))));
    }

    private static bool IsPath(string argument) =>
        argument.EndsWith(".json", StringComparison.OrdinalIgnoreCase) || argument.Contains('\\', StringComparison.Ordinal)
        || (argument.Contains('/', StringComparison.Ordinal) && !argument.Contains(' ', StringComparison.Ordinal));
}
