using System.CommandLine;
using RecipeLint.Commands;
using RecipeLint.Reports;
using RecipeLint.Reports.Dissolve;
using RecipeLint.Shell;

namespace RecipeLint;

/// <summary>Arguments in, exit code out; everything else is the commands' business.</summary>
internal static class CommandLine
{
    /// <summary>Characters of what is said on standard error.</summary>
    private const int LongestLine = 1000;

    public static int Run(string[] arguments, Surroundings world)
    {
        try
        {
            // Elsewhere an argument may hold half a character, which no file can.
            return Invoke(Root(world), [.. arguments.Select(Printable.WellFormed)], world);
        }
        catch (UsageException exception)
        {
            return Refuse(arguments, exception.Message, world);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // Of a file the runtime says which; what is denied or full without a name is standard output.
            var what = exception.GetType() is var type && (type == typeof(UnauthorizedAccessException) || type == typeof(IOException))
                && !exception.Message.Contains('\'', StringComparison.Ordinal)
                ? StandardStreams.LostOutput
                : exception.Message;
            world.Error.WriteLine("recipelint: " + Printable.Show(OneLine(what)));
            return ExitCodes.Usage;
        }
#pragma warning disable CA1031 // The last line of defence: a fault of ours becomes one line and exit code 3, never a stack trace.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            var what = Printable.Show(OneLine(exception.GetType().Name + ": " + exception.Message));
            world.Error.WriteLine($"recipelint: internal fault ({what}). This is a defect of RecipeLint, not of your files.");
            return ExitCodes.Fault;
        }
    }

    private static int Invoke(RootCommand root, string[] arguments, Surroundings world)
    {
        // A file name that starts with "@" must stay a file name.
        var parsed = root.Parse(WrongArguments.Understood(arguments), new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (WrongArguments.Problem(root, parsed) is { } problem)
        {
            return Refuse(arguments, problem, world);
        }

        return parsed.Invoke(new InvocationConfiguration
        {
            EnableDefaultExceptionHandler = false,
            Output = world.Out,
            Error = world.Error,
        });
    }

    /// <summary>Why it cannot be carried out; what could hurt somebody of what was named comes before any question about it.</summary>
    private static int Refuse(string[] arguments, string problem, Surroundings world)
    {
        var dangers = NamedTogether.Dangers(arguments);
        world.Out.Write(DissolveReport.Unweighed(dangers));
        if (dangers is not [{ IsForLeaving: true }, ..])
        {
            world.Error.WriteLine("recipelint: " + Printable.Show(OneLine(problem)));
        }

        return dangers.Count > 0 ? ExitCodes.Findings : ExitCodes.Usage;
    }

    private static RootCommand Root(Surroundings world)
    {
        var root = new RootCommand(
            """
            RecipeLint reads nutrient stocks and recipes before anyone mixes them and says what will go wrong,
            by how much, why, and what to change.

            Examples:
              recipelint check .                        every stock and recipe below this folder
              recipelint check recipes/lettuce.recipe.json --fail-on warning
              recipelint check . --format sarif --output findings.sarif
              recipelint explain calcium-with-sulfate   why a rule exists and what to do
              recipelint explain RL0101 --for stocks/a.stock.json   with the numbers of that file
              recipelint diagnose stocks/b.stock.json --seen "white needles" --after "2 weeks" --at "6 °C"
              recipelint show recipes/lettuce.recipe.json   what the plants get
              recipelint list substances iron           what files may name
              recipelint proof stocks/b.stock.json      what to weigh and measure after mixing
              recipelint init --from "Ca(NO3)2.4H2O 200 g, KNO3 100 g in 2 L"

            Exit codes: 0 nothing at or above the threshold, 1 findings, advice refused because somebody could be hurt,
            or advice asked about a stock that check calls an error, 2 wrong usage or unreadable input, 3 internal fault.
            """)
        {
            CheckCommand.Build(world),
            ExplainCommand.Build(world),
            HandbookCommand.Build(world),
            LearnCommand.Build(world),
            RulesCommand.Build(world),
            FactsCommand.Build(world),
            ShowCommand.Build(world),
            ListCommand.Build(world),
            ReportCommand.Build(world),
            CompareCommand.Build(world),
            BenchSheetCommand.Build(world),
            LabelCommand.Build(world),
            DissolveCommand.Build(world),
            DiagnoseCommand.Build(world),
            SplitCommand.Build(world),
            ProofCommand.Build(world),
            ScoreCommand.Build(world),
            OrderCommand.Build(world),
            StretchCommand.Build(world),
            InitCommand.Build(world),
            ImportCommand.Build(world),
            SettingsCommand.Build(world),
            AcceptCommand.Build(world),
            BaselineCommand.Build(world),
            MergeCommand.Build(world),
            DoctorCommand.Build(world),
            EditorCommand.Build(world),
            LanguageServerCommand.Build(world),
        };
        root.Add(CompletionCommand.Build(world, root));
        root.Add(CompletionCommand.BuildManual(world, root));
        return root;
    }

    /// <summary>On one line, and the middle left out where somebody's name or text fills pages.</summary>
    private static string OneLine(string text)
    {
        var line = string.Join(' ', text.Split(['\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries));
        return line.Length > LongestLine ? $"{line[..(LongestLine / 2)]} ... {line[^(LongestLine / 2)..]}" : line;
    }
}
