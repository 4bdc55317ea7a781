using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Files;

/// <summary>Patterns for shells that do not expand them: "*" and "?" inside a name, "**" for any folders.</summary>
internal static class Glob
{
    public static bool IsPattern(string path) => path.AsSpan().IndexOfAny('*', '?') >= 0;

    /// <summary>Files that match, in the order of their paths.</summary>
    /// <param name="pattern">A full path with wildcards.</param>
    public static IReadOnlyList<string> Expand(IFileTree files, string pattern)
    {
        var parts = pattern.Split('/');
        var fixedParts = parts.TakeWhile(p => !IsPattern(p)).Count();
        var start = string.Join('/', parts[..fixedParts]);
        start = start.Length == 0 || start.EndsWith(':') ? start + "/" : start;
        return [.. FolderWalk.Files(files, start, _ => true)
            .Where(f => Matches(FilePaths.Below(f, start).Split('/'), parts[fixedParts..]))
            .Order(StringComparer.Ordinal)];
    }

    /// <summary>Row by row, so that no pattern takes longer than names times parts.</summary>
    private static bool Matches(string[] names, string[] parts)
    {
        var reached = new bool[names.Length + 1];
        reached[0] = true;
        foreach (var part in parts)
        {
            var next = new bool[names.Length + 1];
            for (var i = 0; i <= names.Length; i++)
            {
                if (part == "**")
                {
                    next[i] = reached[i] || (i > 0 && next[i - 1]);
                }
                else if (i > 0)
                {
                    next[i] = reached[i - 1] && NameMatches(names[i - 1], part);
                }
            }

            reached = next;
        }

        return reached[names.Length];
    }

    private static bool NameMatches(string name, string pattern)
    {
        int at = 0, p = 0, star = -1, resume = 0;
        while (at < name.Length)
        {
            if (p < pattern.Length && pattern[p] == '*')
            {
                star = p++;
                resume = at;
            }
            else if (p < pattern.Length && (pattern[p] == '?' || pattern[p] == name[at]))
            {
                p++;
                at++;
            }
            else if (star >= 0)
            {
                p = star + 1;
                at = ++resume;
            }
            else
            {
                return false;
            }
        }

        return pattern.AsSpan(p).IndexOfAnyExcept('*') < 0;
    }
}
