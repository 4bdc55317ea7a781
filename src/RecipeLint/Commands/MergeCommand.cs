using System.CommandLine;
using System.Text;
using RecipeLint.Reports;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Makes one SARIF log of those that 'check --shard' wrote.</summary>
internal static class MergeCommand
{
    /// <summary>In bytes; a log of the most results with long excerpts stays far below.</summary>
    private const int LargestLog = 50_000_000;

    public static Command Build(Surroundings world)
    {
        var logs = new Argument<string[]>("log")
        {
            Description = "The SARIF logs of all shards of one run, in any order.",
            Arity = ArgumentArity.OneOrMore,
        };
        var output = new Option<string?>("--output", "-o")
        {
            Description = "Write the log to this file instead of standard output.",
            HelpName = "file",
        };
        var failOn = SharedOptions.FailOn();
        var command = new Command("merge", "Put the SARIF logs of 'check --shard' together to the log of the whole run.")
        {
            logs,
            output,
            failOn,
        };
        command.SetAction(parsed => Run(
            world, parsed.GetValue(logs)!, parsed.GetValue(output), SharedOptions.Threshold(parsed.GetValue(failOn)!)));
        return command;
    }

    private static int Run(Surroundings world, string[] paths, string? output, Level? threshold)
    {
        var file = output is null ? null : OutputFile.Of(world, output, null, takesDevice: true);
        var logs = paths.Select(p => (p, Read(world, p))).ToList();
        using var text = new StringWriter { NewLine = "\n" };
        Level? worst;
        bool faults;
        try
        {
            (worst, faults) = SarifReport.Merge(text, logs);
        }
        catch (InvalidDataException exception)
        {
            throw new UsageException(exception.Message + ".");
        }

        if (file is null)
        {
            world.Out.Write(text);
            world.Out.Flush();
        }
        else
        {
            file.Write(writer => writer.Write(text));
        }

        return faults ? ExitCodes.Fault : threshold is { } least && worst >= least ? ExitCodes.Findings : ExitCodes.Clean;
    }

    private static string Read(Surroundings world, string path) =>
        Encoding.UTF8.GetString(NamedFile.Read(world, path, "the log ", LargestLog).AsSpan().TrimStart("\uFEFF"u8));
}
