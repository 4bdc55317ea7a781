using System.Diagnostics;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests.Reliability;

/// <summary>Where and when the program runs changes nothing of what it says: no variable but those that the README names is heard.</summary>
public sealed class EnvironmentTests
{
    private static readonly (string Name, string Value)[] _none = [];

    private static readonly (string Name, string Value)[][] _elsewhere =
    [
        [("TZ", "Pacific/Kiritimati"), ("LANG", "tr_TR.UTF-8"), ("LC_ALL", "tr_TR.UTF-8"), ("LC_NUMERIC", "de_DE.UTF-8")],
        [("TZ", "Pacific/Pago_Pago"), ("LANG", "ar_SA.UTF-8"), ("LC_ALL", "ar_SA.UTF-8"), ("LANGUAGE", "ar")],
        [
            ("TZ", ":/nowhere"), ("HOME", "/nowhere"), ("USER", "somebody"), ("HOSTNAME", "elsewhere"), ("EDITOR", "false"), ("PAGER", "false"), ("TMPDIR", "/nowhere"),
            ("http_proxy", "http://127.0.0.1:1"), ("HTTPS_PROXY", "http://127.0.0.1:1"), ("XDG_CONFIG_HOME", "/nowhere"), ("SOURCE_DATE_EPOCH", "1"), ("RECIPELINT_LEVEL", "error"),
            ("DEBUG", "1"), ("VERBOSE", "1"),
        ],
    ];

    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    public void TimeZonesLanguagesAndStrangeVariablesChangeNoByte(string format)
    {
        using var scratch = new Scratch();
        Directory.CreateDirectory(Path.Combine(scratch.Path, ".git"));
        foreach (var file in Directory.GetFiles(Path.Combine(Repository.Root, "rules", "precipitation", "calcium-with-sulfate"), "*.json", SearchOption.AllDirectories))
        {
            var relative = Path.GetRelativePath(Path.Combine(Repository.Root, "rules", "precipitation"), file);
            scratch.Write(relative, File.ReadAllText(file));
        }

        var here = Run(scratch.Path, format, _none);
        Assert.True(here.Code == 1 && here.Out.Contains("RL0101", StringComparison.Ordinal), $"exit code {here.Code}: {here.Out}");
        Assert.All(_elsewhere, variables => Assert.Equal(here, Run(scratch.Path, format, variables)));
    }

    private static (int Code, string Out) Run(string folder, string format, (string Name, string Value)[] variables)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "recipelint.dll");
        var start = new ProcessStartInfo("dotnet", ["exec", program, "check", ".", "--format", format, "--as-of", "2026-03-01"])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in variables)
        {
            start.Environment[name] = value;
        }

        using var run = Process.Start(start)!;
        var error = run.StandardError.ReadToEndAsync();
        var output = run.StandardOutput.ReadToEnd();
        run.WaitForExit();
        return (run.ExitCode, output + error.Result);
    }
}
