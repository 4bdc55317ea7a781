using System.CommandLine;
using System.Globalization;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>What 'check' may be told, and what it was told in one run.</summary>
internal sealed class CheckOptions
{
    private readonly Argument<string[]> _paths = new("path")
    {
        Description = "Files, folders or patterns such as 'stocks/*.stock.json'; '-' reads one file from standard input.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    private readonly Option<string?> _stdinName = new("--stdin-name")
    {
        Description = "The name the text from standard input has, such as stocks/a.stock.json.",
        HelpName = "file",
    };

    private readonly Option<string> _failOn = SharedOptions.FailOn();

    private readonly Option<string?> _baseline = new("--baseline")
    {
        Description = "Report only what is new or worse than in this file; 'recipelint baseline' writes it.",
        HelpName = "file",
    };

    private readonly Option<int> _threads = new("--threads")
    {
        Description = "How many files are judged at once; without it as many as this machine has processors. It changes no finding.",
        HelpName = "n",
    };

    private readonly Option<string?> _since = new("--since")
    {
        Description = "Check only what differs from where this branch left that git revision, and everything that draws on it.",
        HelpName = "revision",
    };

    private readonly Option<bool> _staged = new("--staged")
    {
        Description = "Check what is staged for the next commit, as it is staged, and everything that draws on it.",
    };

    private readonly Option<bool> _watch = new("--watch")
    {
        Description = "Go on: whenever a file is saved, tell what that does to it and to all that draws on it. Ctrl+C ends it.",
    };

    private readonly Option<string?> _shard = new("--shard")
    {
        Description = "Check one part of several, cut by shop so that no finding depends on it; 'recipelint merge' puts the logs together.",
        HelpName = "i/n",
    };

    private readonly Option<bool> _timings =
        new("--timings") { Description = "Say on standard error how long each phase and each rule took." };

    private readonly Option<string?> _asOf = SharedOptions.AsOf();
    private readonly Option<string?> _config = SharedOptions.Config();
    private readonly Option<bool> _noConfig = SharedOptions.NoConfig();

    public ReportOptions Reports { get; } = new();

    public RepairOptions Repairs { get; } = new();

    public void AddTo(Command command)
    {
        _threads.Validators.Add(result =>
        {
            // A text that is no number is the library's to refuse; asking it for the value would throw.
            if (result.Tokens is [var token]
                && (!int.TryParse(token.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count is < 1 or > 256))
            {
                result.AddError($"'--threads' takes a number from 1 to 256, not '{token.Value}'.");
            }
        });
        _shard.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && Shard.Parse(token.Value) is null)
            {
                result.AddError($"'--shard' takes a part and how many there are, such as 2/7, up to {Shard.Most}.");
            }
        });
        command.Add(_paths);
        command.Validators.Add(result =>
        {
            if (result.GetResult(_paths) is not { Tokens.Count: > 0 }
                && result.GetResult(_since) is null && result.GetResult(_staged) is null && result.GetResult(_watch) is null)
            {
                result.AddError($"'check' needs a <path>: {char.ToLowerInvariant(_paths.Description![0])}{_paths.Description[1..]}");
            }

            if (result.GetResult(_since) is not null && result.GetResult(_staged) is not null)
            {
                result.AddError("'--since' and '--staged' exclude each other.");
            }
        });
        Option[] own =
            [_since, _staged, _watch, _failOn, _config, _noConfig, _stdinName, _baseline, _asOf, _threads, _shard, _timings];
        foreach (var option in own)
        {
            command.Add(option);
        }

        Reports.AddTo(command);
        Repairs.AddTo(command);
    }

    public Input Input(Surroundings world, ParseResult parsed) => Shell.Input.Of(
        world, parsed.GetValue(_paths) is { Length: > 0 } paths ? paths : ["."], parsed.GetValue(_stdinName), parsed.GetValue(_config),
        parsed.GetValue(_noConfig));

    public EngineOptions Engine(Surroundings world, ParseResult parsed) =>
        StandardEngine.On(parsed.GetValue(_asOf) is { } day ? SharedOptions.Date("--as-of", day) : world.Today);

    /// <summary>How many files are judged at once.</summary>
    public int AtOnce(ParseResult parsed) => parsed.GetValue(_threads) is var wanted && wanted > 0 ? wanted : Environment.ProcessorCount;

    /// <summary>What has changed, where only that is to be checked; null where everything is.</summary>
    /// <exception cref="UsageException">Git or the revision is missing, or staged files are to be mended.</exception>
    public ChangedFiles? Changes(Input input, ParseResult parsed)
    {
        if (parsed.GetValue(_staged) && Repairs.Of(parsed) is { DryRun: false } wishes && (wishes.Fix || wishes.Apply.Count > 0))
        {
            throw new UsageException(
                "'--staged' judges what is staged; '--fix' and '--apply' write the files beside it. Take one of the two.");
        }

        return parsed.GetValue(_staged) ? ChangedFiles.Of(input, null, AtOnce(parsed))
            : parsed.GetValue(_since) is { } revision ? ChangedFiles.Of(input, revision, AtOnce(parsed))
            : null;
    }

    /// <summary>True when the run goes on until it is stopped.</summary>
    /// <exception cref="UsageException">Something else is asked for that has an end.</exception>
    public bool Watches(Input input, ParseResult parsed) => parsed.GetValue(_watch)
        && (parsed.GetValue(_staged) || parsed.GetValue(_since) is not null || Repairs.Of(parsed).IsAny || Reports.GoesElsewhere(parsed)
            || input.FromStandardInput is not null
            ? throw new UsageException(
                "'--watch' tells of files as text while they change; '--since', '--staged', repairs, other formats, output files and '-' "
                    + "do not go with it.")
            : true);

    /// <summary>1 when a finding is at or above the threshold.</summary>
    public int ExitCode(ParseResult parsed, LintResult result)
    {
        return SharedOptions.Threshold(parsed.GetValue(_failOn)!) is { } least && result.Worst >= least
            ? ExitCodes.Findings
            : ExitCodes.Clean;
    }

    /// <summary>The part of the files to check; null for all.</summary>
    /// <exception cref="UsageException">It is asked for with something that needs all of them.</exception>
    public Shard? Part(ParseResult parsed) =>
        parsed.GetValue(_shard) is not { } text ? null
        : Repairs.Of(parsed).IsAny || Reports.NeedsEverything(parsed) || parsed.GetValue(_staged) || parsed.GetValue(_since) is not null
            ? throw new UsageException(
                "'--shard' goes with reports on all files: no repairs, no statistics, neither csv nor junit, not '--since' or '--staged'.")
        : Shard.Parse(text);

    /// <summary>What takes the time of a run; null unless asked for.</summary>
    public Timings? Timings(ParseResult parsed) => parsed.GetValue(_timings) ? new Timings() : null;

    public string? Baseline(ParseResult parsed) => parsed.GetValue(_baseline);
}
