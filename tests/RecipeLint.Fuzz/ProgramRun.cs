using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using RecipeLint.Recipes.Files;
using RecipeLint.Shell;

namespace RecipeLint.Fuzz;

/// <summary>The real command line over files in memory, and what it promises whatever stands in them.</summary>
internal static partial class ProgramRun
{
    /// <summary>NaNO3 is sodium nitrate.</summary>
    [GeneratedRegex("""\bNaN\b|∞|\bInfinity\b""", RegexOptions.CultureInvariant)]
    private static partial Regex NonNumber();

    [GeneratedRegex("""\\u([0-9a-fA-F]{4})""", RegexOptions.CultureInvariant)]
    private static partial Regex Escape();

    public static Execution Of(IReadOnlyDictionary<string, byte[]> files, params string[] arguments) => Answering(files, "", arguments);

    /// <param name="answers">What comes from standard input.</param>
    public static Execution Answering(IReadOnlyDictionary<string, byte[]> files, string answers, params string[] arguments) =>
        new(() => Shown(files, arguments) + answers, () => Run(files, answers, arguments));

    /// <returns>The exit code and standard output, once both were judged.</returns>
    public static (int Code, string Output) Run(IReadOnlyDictionary<string, byte[]> files, string answers, string[] arguments)
    {
        var tree = Tree(files);
        return Judged(files, arguments, answers, "/shop", world => world with { Files = _ => tree });
    }

    /// <summary>Runs the command line and holds what it says against what is promised.</summary>
    public static (int Code, string Output) Judged(
        IReadOnlyDictionary<string, byte[]> files, string[] arguments, string answers, string folder, Func<Surroundings, Surroundings> over)
    {
        var (output, error) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        var world = new Surroundings(
            output, error, () => new MemoryStream(Encoding.UTF8.GetBytes(answers)), folder, _ => null, false, new DateOnly(2026, 3, 1));
        var code = CommandLine.Run(arguments, over(world));
        Judge(code, output.ToString(), error.ToString(), [.. arguments, answers], files);
        return (code, output.ToString());
    }

    /// <summary>A word may stand in the input as its escapes.</summary>
    private static string Unescaped(string text) =>
        Escape().Replace(text, m => ((char)Convert.ToInt32(m.Groups[1].Value, 16)).ToString());

    public static MemoryFileTree Tree(IReadOnlyDictionary<string, byte[]> files)
    {
        var tree = new MemoryFileTree("/shop");
        foreach (var (path, bytes) in files)
        {
            tree.Add(path, bytes);
        }

        return tree;
    }

    private static void Judge(int code, string output, string error, string[] arguments, IReadOnlyDictionary<string, byte[]> files)
    {
        if (code is not (0 or 1 or 2))
        {
            throw new BrokenPromiseException($"{arguments[0]}: exit code {code}: {error}");
        }

        if (!arguments.Contains("--statistics")
            && error.Split('\n')[..^1].FirstOrDefault(l => !l.StartsWith("recipelint: ", StringComparison.Ordinal) || l.Any(char.IsControl)) is { } odd)
        {
            throw new BrokenPromiseException($"{arguments[0]}: a line on standard error is not ours\n{odd}");
        }

        if (code == 2 && (error.Count(c => c == '\n') != 1 || error.Contains("Exception", StringComparison.Ordinal)))
        {
            throw new BrokenPromiseException($"{arguments[0]}: exit code 2 without one clear line\n{error}");
        }

        foreach (var text in (string[])[output, error])
        {
            if (NonNumber().Match(text) is { Success: true } word
                && !arguments.Any(a => a.Contains(word.Value, StringComparison.Ordinal))
                && arguments[0] != "import"
                && !files.Any(f => Unescaped(Corpus.Text(f.Value)).Contains(word.Value, StringComparison.Ordinal)))
            {
                throw new BrokenPromiseException(
                    $"{arguments[0]}: says {word.Value}\n{text[Math.Max(0, word.Index - 150)..Math.Min(text.Length, word.Index + 50)]}");
            }
        }

        if (output.Length > 0 && code != 2 && (arguments.Any(a => a is "sarif" or "json" or "--format=json") || arguments[0] is "facts" or "merge"))
        {
            using var parsed = JsonDocument.Parse(output);
        }
        else if (!arguments.Contains("--dry-run") && Body(output, arguments).FirstOrDefault(c => (char.IsControl(c) && c != '\n') || c is '\u202e' or '\u2066') is var control and not '\0')
        {
            throw new BrokenPromiseException($"{arguments[0]}: control character U+{(int)control:X4} in the output");
        }

        if (output.Any(c => char.IsSurrogate(c)) && !IsWhole(output))
        {
            throw new BrokenPromiseException($"{arguments[0]}: half a surrogate pair in the output");
        }
    }

    /// <summary>Lines of CSV end with CR LF (RFC 4180).</summary>
    private static string Body(string output, string[] arguments) =>
        arguments.Contains("csv") ? output.Replace("\r\n", "\n", StringComparison.Ordinal) : output;

    private static bool IsWhole(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                i++;
            }
            else if (char.IsSurrogate(text[i]))
            {
                return false;
            }
        }

        return true;
    }

    public static string Shown(IReadOnlyDictionary<string, byte[]> files, string[] arguments)
    {
        var text = new StringBuilder().AppendJoin(' ', arguments.Select(a => $"'{a}'")).Append('\n');
        foreach (var (path, bytes) in files)
        {
            text.Append("== ").Append(path).Append('\n').Append(Encoding.UTF8.GetString(bytes)).Append('\n');
        }

        return text.ToString();
    }
}
