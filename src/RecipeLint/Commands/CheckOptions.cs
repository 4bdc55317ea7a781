using System.CommandLine;
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
        Arity = ArgumentArity.OneOrMore,
    };

    private readonly Option<string?> _stdinName = new("--stdin-name")
    {
        Description = "The name the text from standard input has, such as stocks/a.stock.json.",
        HelpName = "file",
    };

    private readonly Option<string> _failOn = new("--fail-on")
    {
        Description = "Lowest level that makes the exit code 1, itself included.",
        DefaultValueFactory = _ => "error",
        HelpName = "error|warning|note|never",
    };

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

    private readonly Option<string?> _asOf = SharedOptions.AsOf();
    private readonly Option<string?> _config = SharedOptions.Config();
    private readonly Option<bool> _noConfig = SharedOptions.NoConfig();

    public ReportOptions Reports { get; } = new();

    public RepairOptions Repairs { get; } = new();

    public void AddTo(Command command)
    {
        _failOn.AcceptOnlyFromAmong("error", "warning", "note", "never");
        _threads.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is < 1 or > 256)
            {
                result.AddError("'--threads' takes a number from 1 to 256.");
            }
        });
        command.Add(_paths);
        foreach (var option in new Option[] { _failOn, _config, _noConfig, _stdinName, _baseline, _asOf, _threads })
        {
            command.Add(option);
        }

        Reports.AddTo(command);
        Repairs.AddTo(command);
    }

    public Input Input(Surroundings world, ParseResult parsed) => Shell.Input.Of(
        world, parsed.GetValue(_paths)!, parsed.GetValue(_stdinName), parsed.GetValue(_config), parsed.GetValue(_noConfig));

    public EngineOptions Engine(Surroundings world, ParseResult parsed) =>
        StandardEngine.On(parsed.GetValue(_asOf) is { } day ? SharedOptions.Date("--as-of", day) : world.Today);

    /// <summary>How many files are judged at once.</summary>
    public int AtOnce(ParseResult parsed) => parsed.GetValue(_threads) is var wanted && wanted > 0 ? wanted : Environment.ProcessorCount;

    public string? Baseline(ParseResult parsed) => parsed.GetValue(_baseline);

    public string FailOn(ParseResult parsed) => parsed.GetValue(_failOn)!;
}
