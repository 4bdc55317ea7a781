using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CsCheck;

namespace RecipeLint.Reports.Tests;

public sealed partial class UnifiedDiffTests
{
    [Fact]
    public void OneChangedLineShowsWithThreeLinesAroundIt() => Assert.Equal(
        "diff --git a/s/a.json b/s/a.json\n--- a/s/a.json\n+++ b/s/a.json\n@@ -2,7 +2,7 @@\n 2\n 3\n 4\n-5\n+five\n 6\n 7\n 8\n",
        Diff("1\n2\n3\n4\n5\n6\n7\n8\n9\n", "1\n2\n3\n4\nfive\n6\n7\n8\n9\n"));

    [Fact]
    public void AMissingLineEndIsSaid() =>
        Assert.EndsWith("@@ -1 +1 @@\n-a\n\\ No newline at end of file\n+a\n", Diff("a", "a\n"), StringComparison.Ordinal);

    [Fact]
    public void ANewFileComesFromNowhere() =>
        Assert.StartsWith("diff --git a/s/a.json b/s/a.json\nnew file mode 100644\n--- /dev/null\n+++ b/s/a.json\n@@ -0,0 +1,2 @@\n+a\n", Diff("", "a\nb\n", isNew: true), StringComparison.Ordinal);

    [Fact]
    public void NothingChangedPrintsNothing() => Assert.Empty(Diff("a\r\nb", "a\r\nb"));

    [Theory]
    [InlineData("with blank.json", "--- a/with blank.json\t\n")]
    [InlineData("line\nend.json", "--- \"a/line\\012end.json\"\n")]
    [InlineData("quo\"te.json", "--- \"a/quo\\\"te.json\"\n")]
    public void AwkwardNamesAreWrittenAsGitReadsThem(string path, string expected)
    {
        using var writer = new StringWriter();
        UnifiedDiff.Write(writer, path, "a"u8.ToArray(), "b"u8.ToArray());
        Assert.Contains(expected, writer.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void ApplyingItGivesTheNewFile() => Gen.Select(Gen.Int[0, 5].Array[0, 60], Gen.Int[0, 5].Array[0, 60], Gen.Bool, Gen.Bool, Gen.Bool).Sample(
        (left, right, windows, leftEnds, rightEnds) =>
        {
            string Text(int[] lines, bool ends) => string.Join(windows ? "\r\n" : "\n", lines) + (ends ? "\n" : "");
            var (before, after) = (Text(left, leftEnds), Text(right, rightEnds));
            Assert.Equal(after, Apply(before, Diff(before, after)));
        },
        iter: 5_000);

    [Fact]
    public void ThousandsOfChangedLinesTakeNoTime()
    {
        var (before, after) = (string.Concat(Enumerable.Range(0, 20_000).Select(i => $"a{i}\n")), string.Concat(Enumerable.Range(0, 20_000).Select(i => $"b{i}\n")));
        Assert.Equal(after, Apply(before, Diff(before, after)));
    }

    private static string Diff(string before, string after, bool isNew = false)
    {
        using var writer = new StringWriter();
        UnifiedDiff.Write(writer, "s/a.json", Encoding.UTF8.GetBytes(before), Encoding.UTF8.GetBytes(after), isNew);
        return writer.ToString();
    }

    /// <summary>What patch does: takes the old lines a hunk names and puts its own in their place, checking that they are those it expects.</summary>
    private static string Apply(string before, string difference)
    {
        var old = Lines(before);
        var result = new StringBuilder();
        var at = 0;
        var body = Lines(difference);
        for (var i = 0; i < body.Count; i++)
        {
            if (Header().Match(body[i]) is { Success: true } hunk)
            {
                var count = hunk.Groups[2].Success ? Number(hunk.Groups[2]) : 1;
                var start = Number(hunk.Groups[1]) - (count == 0 ? 0 : 1);
                result.AppendJoin("", old.GetRange(at, start - at));
                at = start;
            }
            else if (i > 2 && body[i][0] is ' ' or '-' or '+')
            {
                var line = i + 1 < body.Count && body[i + 1][0] == '\\' ? body[i][1..].TrimEnd('\n') : body[i][1..];
                if (body[i][0] != '+')
                {
                    Assert.Equal(old[at++], line);
                }

                result.Append(body[i][0] == '-' ? "" : line);
            }
        }

        return result.AppendJoin("", old.Skip(at)).ToString();
    }

    private static int Number(Group group) => int.Parse(group.Value, CultureInfo.InvariantCulture);

    private static List<string> Lines(string text)
    {
        var lines = text.Split('\n').Select(l => l + "\n").ToList();
        var last = lines[^1].TrimEnd('\n');
        lines.RemoveAt(lines.Count - 1);
        return last.Length > 0 || text.Length > 0 && !text.EndsWith('\n') ? [.. lines, last] : lines;
    }

    [GeneratedRegex(@"^@@ -(\d+)(?:,(\d+))? \+\d+(?:,\d+)? @@")]
    private static partial Regex Header();
}
