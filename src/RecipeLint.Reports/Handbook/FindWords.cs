using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>The words of the search: a script file that sets one list, because a page opened from a folder may fetch nothing.</summary>
internal static partial class FindWords
{
    private static readonly string[] _sections = ["What it finds", "Why it matters", "What to do", "Failing", "Passing"];

    /// <summary>Words too common to find anything by.</summary>
    private static readonly HashSet<string> _common = new(StringComparer.Ordinal)
    {
        "about", "above", "after", "also", "another", "because", "been", "before", "below", "both", "comes", "does", "each", "else",
        "every", "first", "from",
        "give", "gives", "have", "here", "holds", "into", "itself", "less", "many", "more", "most", "much", "must", "never", "none",
        "nothing", "once", "only",
        "other", "over", "same", "says", "should", "some", "such", "than", "that", "their", "them", "then", "there", "these", "they",
        "this", "those", "together",
        "under", "until", "upon", "very", "what", "when", "where", "which", "while", "with", "without", "would", "your",
        "add", "all", "and", "any", "are", "but", "can", "for", "has", "how", "its", "may", "not", "off", "one", "out", "pour", "rule",
        "message", "the", "too", "two", "use", "was", "who",
    };

    /// <summary>The other spelling that people type.</summary>
    private static readonly (string Ours, string Other)[] _spellings =
    [
        ("mould", "mold"), ("colour", "color"), ("sulf", "sulph"), ("litre", "liter"), ("fertilis", "fertiliz"), ("oxidis", "oxidiz"),
        ("crystallis", "crystalliz"),
        ("neutralis", "neutraliz"), ("grey", "gray"), ("epsom", "epsom salts"),
    ];

    public static string Of(IEnumerable<RuleDescriptor> rules)
    {
        var script = new StringBuilder(
            "// Made with the handbook: number, name, level, title, words of each rule.\n\"use strict\";\nwindow.handbookRules = [\n");
        foreach (var rule in rules)
        {
            string[] row = [rule.Id, rule.Name, Words.Of(rule.Level), rule.Title, string.Join(' ', WordsOf(rule))];
            script.Append(CultureInfo.InvariantCulture, $"[{string.Join(",", row.Select(Quoted))}],\n");
        }

        return script.Append("];\n").ToString();
    }

    private static IEnumerable<string> WordsOf(RuleDescriptor rule)
    {
        var signs = Sign.All.Where(s => s.Rules.Contains(rule.Name)).Select(s => s.Seen);
        var text = string.Join(' ', _sections.Select(rule.Section).Concat(signs).Append(Family.Of(rule.Family).Title)).ToLowerInvariant();
        var words = Word().Matches(text).Select(m => m.Value).Where(w => !_common.Contains(w)).ToHashSet(StringComparer.Ordinal);
        foreach (var (ours, other) in _spellings)
        {
            words.UnionWith([.. words.Where(w => w.Contains(ours, StringComparison.Ordinal))
                .Select(w => w.Replace(ours, other, StringComparison.Ordinal))]);
        }

        return words.Order(StringComparer.Ordinal);
    }

    // The default encoder leaves nothing that could end a script or a string.
    private static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text)}\"";

    [GeneratedRegex(@"[a-z][a-z0-9]{2,}|ph|ec|[a-z]+[0-9][a-z0-9]*")]
    private static partial Regex Word();
}
