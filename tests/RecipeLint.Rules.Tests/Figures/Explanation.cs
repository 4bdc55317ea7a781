using System.Globalization;
using System.Text.RegularExpressions;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Figures;

/// <summary>A figure of an explanation.</summary>
/// <param name="At">Where it begins in the text.</param>
/// <param name="Line">Its whole paragraph, or line of a list.</param>
internal sealed record Figure(string Text, int At, string Section, string Line)
{
    public double Value => double.Parse(Text, CultureInfo.InvariantCulture);

    /// <summary>Half of its last digit.</summary>
    public double Rounding => 0.5 * Math.Pow(10, -Text.SkipWhile(c => c != '.').Skip(1).Count());
}

/// <summary>
/// The figures that an explanation states. What stands in code or in quotes is the text of a file, formulas and units are no figures, and
/// the sources are citations.
/// </summary>
internal sealed partial class Explanation
{
    public const string Sources = "Sources";

    private static readonly Lazy<IReadOnlyList<Explanation>> Read = new(() => [.. RuleFolder.All.Select(f => new Explanation(f))]);

    private Explanation(RuleFolder folder)
    {
        Folder = folder;
        Text = File.ReadAllText(Path.Combine(folder.Path, "explanation.md"));
        Examples = string.Concat(Folder.Failing.Concat(Folder.Passing)
            .SelectMany(e => Directory.GetFiles(e.Path, "*.json", SearchOption.AllDirectories))
            .Select(File.ReadAllText)
            .Concat(Fence().Matches(Text).Select(m => m.Value)));
        Figures = [.. Find()];
        var options = Owner.Options(folder.Name);
        OptionDefaults =
        [
            .. OptionDefault().Matches(Text)
                .Where(m => options.ContainsKey(m.Groups[1].Value) && LineAt(m.Index).StartsWith("- `", StringComparison.Ordinal))
                .Select(m => (m.Groups[1].Value, m.Groups[2].Value, m.Groups[2].Index)),
        ];
    }

    public static IReadOnlyList<Explanation> All => Read.Value;

    public RuleFolder Folder { get; }

    public string Text { get; }

    /// <summary>The files of its examples and the pieces that it prints.</summary>
    public string Examples { get; }

    public IReadOnlyList<Figure> Figures { get; }

    public string Citations => Text[Text.IndexOf("\n## " + Sources, StringComparison.Ordinal)..];

    /// <summary>Beginnings of the words in the text.</summary>
    public IEnumerable<int> Find(string words)
    {
        for (var at = Text.IndexOf(words, StringComparison.Ordinal); at >= 0; at = Text.IndexOf(words, at + 1, StringComparison.Ordinal))
        {
            yield return at;
        }
    }

    /// <summary>The figures in some words, as they are found in a whole text.</summary>
    public static IReadOnlyList<Figure> In(string words) =>
        [.. Number().Matches(Blank(words)).Select(m => new Figure(m.Value, m.Index, "", words))];

    /// <summary>Number of the line at a place: a paragraph is one line.</summary>
    public int ParagraphAt(int at) => Text.AsSpan(0, at).Count('\n');

    private string LineAt(int at) => Text[(Text.LastIndexOf('\n', at) + 1)..].Split('\n')[0];

    /// <summary>What the text says of the defaults of the rule's own options, with where it says it.</summary>
    public IReadOnlyList<(string Name, string Stated, int At)> OptionDefaults { get; }

    private IEnumerable<Figure> Find()
    {
        var (section, at) = ("", 0);
        foreach (var line in Fence().Replace(Text, m => new string(' ', m.Length)).Split('\n'))
        {
            section = line.StartsWith("## ", StringComparison.Ordinal) ? line[3..].Trim() : section;
            foreach (var number in section == Sources ? [] : Number().Matches(Blank(line)).AsEnumerable())
            {
                yield return new Figure(number.Value, at + number.Index, section, line);
            }

            at += line.Length + 1;
        }
    }

    private static string Blank(string text) => FileText().Replace(text, m => new string('`', m.Length));

    [GeneratedRegex("```.*?```", RegexOptions.Singleline)]
    private static partial Regex Fence();

    /// <summary>Not part of a formula ("P2O5", "4H2O"), a name ("UTF-8", "1A") or a unit ("m-2").</summary>
    [GeneratedRegex(@"(?<![\p{L}\d)]|\p{L}-|\d[.,])-?\b\d+(?:[.,]\d+)*(?![\p{L}\d])")]
    private static partial Regex Number();

    [GeneratedRegex(@"`(\w+)` \((?:default )?([^)]*)\)")]
    private static partial Regex OptionDefault();

    [GeneratedRegex("`[^`]*`|\"[^\"]*\"")]
    private static partial Regex FileText();
}
