using System.Globalization;
using System.Text;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;
using RecipeLint.Rules.Workings;

namespace RecipeLint.Rules.Tests.Corners;

/// <summary>
/// What all rules say of small invented shops that stand at bounds, in corners and where several things are wrong at once: every word and
/// figure, and what the repairs of the first finding of each rule, level and key write. A file X.shop holds the files of one shop, each behind a
/// line "--- path"; rules that are named in its first line show how they are worked out, where they fire and where they are silent. With
/// RECIPELINT_UPDATE=1 the answers are written anew; read them before keeping them.
/// </summary>
public sealed class CornerTests
{
    private static readonly string _folder = Path.Combine(RuleFolder.Repository, "tests", "RecipeLint.Rules.Tests", "Corners");

    private static string[] Names { get; } =
        [.. Directory.GetFiles(_folder, "*.shop").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    public static TheoryData<string> Shops() => [.. Names];

    [Theory]
    [MemberData(nameof(Shops))]
    public void AShopHearsThis(string shop)
    {
        var (rules, files) = Read(shop);
        var workspace = WorkspaceLoader.Load(files, ["."], ExampleRun.Load);
        var facts = Analyzer.Analyse(workspace);
        var result = LintEngine.Judge(facts, ExampleRun.Engine);
        Assert.Empty(result.Faults.Select(f => f.Message));

        var text = new StringBuilder();
        var desk = new RepairDesk(files, ExampleRun.Load, ExampleRun.Engine, new Judged(workspace, facts, result));
        var mended = new HashSet<(string Rule, Level Level, string? Key)>();
        foreach (var finding in result.Findings)
        {
            SaidTests.Write(text, finding);
            foreach (var repair in mended.Add((finding.Rule.Name, finding.Level, finding.Place.Pointer.Tokens is [.., var key] ? key : null)) ? desk.For(finding) : [])
            {
                Write(text, files, repair);
            }
        }

        foreach (var rule in RuleList.All.Where(r => rules.Contains(r.Name)))
        {
            foreach (var file in workspace.Sources.Keys.Order(StringComparer.Ordinal))
            {
                SaidTests.Write(text, RuleOnFile.Of(facts, rule, file, ExampleRun.Engine.Today));
            }
        }

        Hold(shop, text.ToString());
    }

    [Fact]
    public void EveryAnswerHasItsShop() =>
        Assert.Equal(Names, Directory.GetFiles(_folder, "*.txt").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal));

    private static (IReadOnlyCollection<string> Rules, MemoryFileTree Files) Read(string shop)
    {
        var parts = ("\n" + File.ReadAllText(Path.Combine(_folder, shop + ".shop")).ReplaceLineEndings("\n")).Split("\n--- ");
        var files = new MemoryFileTree("/corner").AddFolder("/corner/.git");
        foreach (var part in parts.Skip(1))
        {
            var end = part.IndexOf('\n', StringComparison.Ordinal);
            files.Add(part[..end], Encoding.UTF8.GetBytes(part[(end + 1)..].TrimEnd() + "\n"));
        }

        var named = parts[0].Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries);
        Assert.Empty(named.Except(RuleList.All.Select(r => r.Name)));
        return (named, files);
    }

    private static void Write(StringBuilder text, MemoryFileTree files, VerifiedRepair repair)
    {
        text.Append(CultureInfo.InvariantCulture, $"  > {repair.Name} ({repair.Repair.Kind})\n");
        foreach (var line in RepairText.Lines(repair))
        {
            text.Append(CultureInfo.InvariantCulture, $"    {line}\n");
        }

        foreach (var (file, patch) in repair.Patches.OrderBy(p => p.Key, StringComparer.Ordinal))
        {
            Write(text, file, Lines(files.Read(files.FullPath(file), int.MaxValue).Bytes), Lines(patch.Bytes));
        }
    }

    /// <summary>Lines that go and lines that come.</summary>
    private static void Write(StringBuilder text, string file, string[] before, string[] after)
    {
        var same = before.Zip(after).TakeWhile(p => p.First == p.Second).Count();
        var end = before.Reverse().Zip(after.Reverse()).TakeWhile(p => p.First == p.Second).Count();
        end = Math.Min(end, Math.Min(before.Length, after.Length) - same);
        text.Append(CultureInfo.InvariantCulture, $"    {file}\n");
        foreach (var (sign, lines) in new[] { ('-', before), ('+', after) })
        {
            foreach (var line in lines.Skip(same).Take(lines.Length - same - end))
            {
                text.Append(CultureInfo.InvariantCulture, $"    {sign} {line.Trim()}\n");
            }
        }
    }

    private static string[] Lines(byte[]? bytes) => bytes is null ? [] : Encoding.UTF8.GetString(bytes).Split('\n');

    private static void Hold(string shop, string said)
    {
        var path = Path.Combine(_folder, shop + ".txt");
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            File.WriteAllText(path, said);
        }

        Assert.Equal(File.Exists(path) ? File.ReadAllText(path).ReplaceLineEndings("\n") : "", said);
    }
}
