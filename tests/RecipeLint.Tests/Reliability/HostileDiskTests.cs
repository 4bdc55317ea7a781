using System.Diagnostics;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>
/// What only a disk can hold against the program: pipes, devices and links that loop, lead nowhere or out. Named they are refused in one line; in
/// a folder they are passed over, because only regular files are read.
/// </summary>
public sealed class HostileDiskTests
{
    private const string Good = """{"format": 1, "makes": "1 L", "steps": [{"pour": "500 mL", "of": "distilled"}, {"add": "potassium-nitrate", "amount": "50 g"}, {"topUp": "1 L", "of": "distilled"}]}""";

    /// <param name="made">Shell commands that make it, in a folder with a good 'a.stock.json'.</param>
    /// <param name="asked">What is checked.</param>
    /// <param name="code">Exit code.</param>
    /// <param name="said">Words of the answer.</param>
    [Theory]
    [InlineData("mkfifo p.stock.json", "p.stock.json", 2, "neither a regular file")]
    [InlineData("mkfifo p.stock.json", ".", 0, "1 file")]
    [InlineData("ln -s /dev/zero z.stock.json", "z.stock.json", 2, "neither a regular file")]
    [InlineData("ln -s /dev/zero recipelint.json", ".", 0, "1 file")]
    [InlineData("ln -s l.stock.json l.stock.json", "l.stock.json", 2, "l.stock.json")]
    [InlineData("ln -s none n.stock.json", "n.stock.json", 2, "n.stock.json")]
    [InlineData("mkdir f; ln -s ../f f/f", ".", 0, "1 file")]
    [InlineData("ln -s / root", ".", 0, "1 file")]
    [InlineData("ln -s /proc/kmsg k.stock.json", "k.stock.json", 2, "k.stock.json")]
    [InlineData("ln -s /proc/kmsg k.stock.json; rmdir .git", ".", 0, "1 file")]
    [InlineData("ln -s /proc/kmsg k.stock.json; rmdir .git", "k.stock.json", 2, "neither a regular file")]
    [InlineData("ln -s /proc/kmsg .gitignore; rmdir .git", ".", 0, "1 file")]
    [InlineData("mkdir d.stock.json", "d.stock.json", 2, "no stock")]
    [InlineData("printf '@b' > args", "@args", 2, "@args")]
    [InlineData("mkfifo w.water.json; printf '%s' '{\"format\": 1, \"final\": \"10 L\", \"water\": \"w.water.json\", \"doses\": []}' > r.recipe.json", "r.recipe.json", 1, "w.water.json")]
    public void IsAFindingOrOneClearLine(string made, string asked, int code, string said)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using var scratch = new Scratch();
        scratch.Write("a.stock.json", Good);
        using (var shell = Process.Start(new ProcessStartInfo("bash", ["-c", "mkdir .git; " + made]) { WorkingDirectory = scratch.Path })!)
        {
            shell.WaitForExit();
            Assert.Equal(0, shell.ExitCode);
        }

        var watch = Stopwatch.StartNew();
        var answer = Cli.RunIn(scratch.Path, null, "check", asked);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(60), $"took {watch.Elapsed}");
        Assert.True(answer.Code == code, $"exit code {answer.Code}: {answer.Error}{answer.Out}");
        Assert.Equal(code == 2 ? 1 : 0, answer.Error.Count(c => c == '\n'));
        Assert.Contains(said, answer.Error + answer.Out, StringComparison.Ordinal);
    }
}
