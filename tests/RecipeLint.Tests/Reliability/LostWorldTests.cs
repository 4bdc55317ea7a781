using System.Diagnostics;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>A process whose folder, standard output or standard error is gone or full ends with a code of ours, at most one line, and no trace of a stack.</summary>
public sealed class LostWorldTests
{
    private const string Stock = """{"format": 1, "makes": "1 L", "steps": [{"pour": "500 mL"}, {"add": "KNO3", "amount": "5 g"}, {"topUp": "1 L"}]}""";

    /// <summary>
    /// Each ended as a crash with exit code 134; with all three closed it ended with 0, and without standard input it waited for ever, because
    /// the runtime has something of its own there.
    /// </summary>
    /// <param name="script">$P is the program.</param>
    /// <param name="said">The whole of standard error; null where it is lost.</param>
    [Theory]
    [InlineData("$P check a.stock.json >&-", "recipelint: standard output cannot be written: it is closed or its disk is full.")]
    [InlineData("$P --version > /dev/full", "recipelint: standard output cannot be written: it is closed or its disk is full.")]
    [InlineData(
        "$P check a.stock.json --fix > /dev/full",
        "recipelint: a.stock.json: nothing to fix.\nrecipelint: standard output cannot be written: it is closed or its disk is full.")]
    [InlineData("$P check nope 2> /dev/full", null)]
    [InlineData("$P check a.stock.json <&- >&- 2>&-", null)]
    [InlineData("$P check - --stdin-name a.stock.json <&-", "recipelint: standard input cannot be read: it is closed.")]
    [InlineData("$P language-server <&-", "recipelint: standard input cannot be read: it is closed.")]
    [InlineData("mkdir gone; cd gone; rmdir ../gone; $P check .", "recipelint: the folder that this was started in is gone.")]
    public void EndsInOrder(string script, string? said)
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using var scratch = new Scratch();
        scratch.Write("a.stock.json", Stock);
        var program = $"exec dotnet exec '{Path.Combine(AppContext.BaseDirectory, "recipelint.dll")}'";
        using var shell = Process.Start(new ProcessStartInfo("bash", ["-c", $"P=\"{program}\"; {script.Replace("$P", "eval $P", StringComparison.Ordinal)}"])
        {
            WorkingDirectory = scratch.Path,
            RedirectStandardError = true,
        })!;
        var error = shell.StandardError.ReadToEnd();
        shell.WaitForExit();
        Assert.True(shell.ExitCode == 2, $"exit code {shell.ExitCode}: {error}");
        Assert.Equal(said is null ? "" : said + "\n", error);
    }
}
