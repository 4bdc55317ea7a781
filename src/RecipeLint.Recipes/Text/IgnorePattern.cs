using System.Text;

namespace RecipeLint.Recipes.Text;

/// <summary>
/// One line of a list of ignored files, in the syntax of gitignore: "*" and "?" inside a name, "[a-z]" one of these, "**" any folders, a
/// slash at the end for folders only, one at the beginning or inside to hold it to the folder of the list, "!" to take it back.
/// </summary>
/// <remarks>gitignore(5). A library was held against git and differed in anchored patterns, so this is our own, with git as its
/// test.</remarks>
internal sealed class IgnorePattern
{
    /// <summary>A longer line is no pattern of anybody's.</summary>
    private const int LongestLine = 1000;

    private readonly string[] _parts;

    private IgnorePattern(string[] parts, bool foldersOnly, bool takesBack)
    {
        _parts = parts;
        FoldersOnly = foldersOnly;
        TakesBack = takesBack;
    }

    public bool FoldersOnly { get; }

    /// <summary>"!": what earlier lines ignore is not ignored after all.</summary>
    public bool TakesBack { get; }

    /// <summary>Null for an empty line and a comment.</summary>
    public static IgnorePattern? Parse(string line)
    {
        var text = WithoutTrailingSpace(line.TrimEnd('\r', '\n'));
        if (text.Length is 0 or > LongestLine || text[0] == '#')
        {
            return null;
        }

        var takesBack = text[0] == '!';
        text = takesBack ? text[1..] : text;
        var foldersOnly = text.EndsWith('/');
        text = foldersOnly ? text[..^1] : text;
        var anchored = text.Contains('/', StringComparison.Ordinal);
        text = text.StartsWith('/') ? text[1..] : text;
        return text.Length == 0 ? null : new IgnorePattern(anchored ? text.Split('/') : ["**", text], foldersOnly, takesBack);
    }

    /// <param name="names">The path below the folder of the list, name by name.</param>
    public bool Matches(ReadOnlySpan<string> names)
    {
        // Row by row, so that no pattern takes longer than names times parts.
        var reached = new bool[names.Length + 1];
        reached[0] = true;
        for (var p = 0; p < _parts.Length; p++)
        {
            var next = new bool[names.Length + 1];
            var last = p == _parts.Length - 1;
            for (var i = 0; i <= names.Length; i++)
            {
                if (_parts[p] == "**")
                {
                    // At the end it takes what is inside, never the folder itself.
                    next[i] = (i > 0 && (next[i - 1] || (last && reached[i - 1]))) || (!last && reached[i]);
                }
                else
                {
                    next[i] = i > 0 && reached[i - 1] && NameMatches(names[i - 1], _parts[p]);
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
            var (fits, after) = p < pattern.Length ? One(name[at], pattern, p) : (false, p);
            if (p < pattern.Length && pattern[p] == '*')
            {
                star = p++;
                resume = at;
            }
            else if (fits)
            {
                p = after;
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

    /// <summary>Whether one character fits what stands at a place of the pattern, and where the pattern goes on.</summary>
    private static (bool Fits, int After) One(char c, string pattern, int at)
    {
        switch (pattern[at])
        {
            case '?':
                return (true, at + 1);
            case '\\' when at + 1 < pattern.Length:
                return (pattern[at + 1] == c, at + 2);
            case '[' when ClassEnd(pattern, at) is var end && end > 0:
                return (InClass(c, pattern[(at + 1)..end]), end + 1);
            default:
                return (pattern[at] == c, at + 1);
        }
    }

    private static int ClassEnd(string pattern, int at)
    {
        var first = at + 1 < pattern.Length && pattern[at + 1] is '!' or '^' ? at + 2 : at + 1;

        // A bracket right at the beginning is a member.
        return first < pattern.Length ? pattern.IndexOf(']', first + 1) : -1;
    }

    private static bool InClass(char c, string members)
    {
        var not = members.Length > 0 && members[0] is '!' or '^';
        var set = not ? members[1..] : members;
        var found = false;
        for (var i = 0; i < set.Length; i++)
        {
            var low = set[i] == '\\' && i + 1 < set.Length ? set[++i] : set[i];
            if (i + 2 < set.Length && set[i + 1] == '-')
            {
                found |= c >= low && c <= set[i + 2];
                i += 2;
            }
            else
            {
                found |= c == low;
            }
        }

        return found != not;
    }

    /// <summary>Space at the end does not count unless a backslash holds it.</summary>
    private static string WithoutTrailingSpace(string line)
    {
        var text = new StringBuilder(line);
        while (text.Length > 0 && text[^1] == ' ' && !(text.Length > 1 && text[^2] == '\\'))
        {
            text.Length--;
        }

        return text.ToString();
    }
}
