using RecipeLint.Recipes.Json;

namespace RecipeLint.Reports.Handbook;

/// <summary>Which lines of a file are new against an earlier state of it: those outside the longest common subsequence of lines.</summary>
internal static class AddedLines
{
    /// <returns>Line numbers from 1. A comma at the end of a line makes no difference.</returns>
    public static IReadOnlySet<int> Between(SourceFile before, SourceFile after)
    {
        var old = Lines(before);
        var now = Lines(after);
        var common = new int[old.Length + 1, now.Length + 1];
        for (var i = old.Length - 1; i >= 0; i--)
        {
            for (var j = now.Length - 1; j >= 0; j--)
            {
                common[i, j] = old[i] == now[j] ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
            }
        }

        var added = new HashSet<int>();
        var (at, line) = (0, 0);
        while (line < now.Length)
        {
            if (at < old.Length && old[at] == now[line])
            {
                at++;
                line++;
            }
            else if (at < old.Length && common[at + 1, line] >= common[at, line + 1])
            {
                at++;
            }
            else
            {
                line++;
                added.Add(line);
            }
        }

        return added;
    }

    private static string[] Lines(SourceFile file) =>
        [.. Enumerable.Range(1, file.LineCount).Select(n => file.Line(n).Trim().TrimEnd(','))];
}
