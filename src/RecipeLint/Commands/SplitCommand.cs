using System.CommandLine;
using System.Text;
using RecipeLint.Advice.Splitting;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Shop;
using RecipeLint.Reports.Splitting;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Preservation;
using RecipeLint.Rules.Weighing;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Proposes stock parts for a recipe or for one stock that holds everything, and writes them when asked.</summary>
internal static class SplitCommand
{
    public static Command Build(Surroundings world)
    {
        var file = new Argument<string>("file") { Description = "A recipe, or one stock with everything in it." };
        var parts = new Option<int?>("--parts")
        {
            Description = "Make exactly so many parts, 1 to 5; left out, as few as stay clear.",
            HelpName = "number",
        };
        var strength = new Option<string?>("--strength")
        {
            Description =
                "The dose the main parts are made for, such as 1:200 or \"5 mL/L\"; left out, the strongest usual one from 1:100 to 1:250.",
            HelpName = "dose",
        };
        var at = new Option<string?>("--at")
        {
            Description = "Storage temperatures, such as \"5..30 °C\"; left out, those of the present stocks or of the shop.",
            HelpName = "temperatures",
        };
        var batch = new Option<string?>("--batch")
        {
            Description = "What each main part makes, such as \"10 L\"; left out, what the final volume of the recipe takes.",
            HelpName = "volume",
        };
        var rejected = new Option<bool>("--rejected") { Description = "List every part that was given up, with what falls out of it." };
        var write = new Option<string?>("--write")
        {
            Description = "Write the parts and a recipe that doses them into this folder; nothing is overwritten.",
            HelpName = "folder",
        };
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();
        var command = new Command("split", "Propose as few stock parts for a recipe as stay clear, as strong as they can be.")
        {
            file, parts, strength, at, batch, rejected, write, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var request = new SplitRequest
            {
                Parts = parsed.GetValue(parts) is { } count ? ReadParts(count) : null,
                Strength = parsed.GetValue(strength) is { } dose ? ReadStrength(dose) : null,
                At = parsed.GetValue(at) is { } span ? ReadSpan(span) : null,
                Batch = parsed.GetValue(batch) is { } volume ? ReadVolume(volume) : null,
                ListRejected = parsed.GetValue(rejected),
                Today = world.Today,
            };
            var load = new LoadOptions
            {
                ConfigFile = parsed.GetValue(config),
                NoConfig = parsed.GetValue(noConfig),
                Profiles = ProfileLibrary.AllNames,
            };
            return Run(world, request, parsed.GetValue(file)!, parsed.GetValue(write), load);
        });
        return command;
    }

    private static int Run(Surroundings world, SplitRequest request, string path, string? folder, LoadOptions load)
    {
        var run = Session.Open(world, [path], null, load.ConfigFile, load.NoConfig);
        if (run.Workspace.Asked.Count != 1)
        {
            throw StockInput.OneFile(run, "split", "recipe or stock file", [DocumentKind.Recipe, DocumentKind.Stock]);
        }

        var (proposal, final) = Propose(run, request);
        if (proposal.Failure is { } failure)
        {
            throw new UsageException($"'{path}' cannot be split: {failure}.");
        }

        world.Out.Write(SplitReport.Write(proposal));
        if (proposal.Plan is null)
        {
            world.Out.Flush();
            return ExitCodes.OfAdvice(isRefused: true, []);
        }

        if (folder is not null)
        {
            Write(world, run, proposal, final, folder, load);
        }

        return ExitCodes.OfAdvice(isRefused: false, proposal.Plan.Parts.SelectMany(p => p.Objections));
    }

    private static (SplitProposal Proposal, Volume Final) Propose(Session run, SplitRequest request)
    {
        var file = run.Workspace.Asked.Single();
        var tuned = request with { Limits = LimitsOf(run.Workspace.SettingsFor(file)) };
        if (run.Facts.FindRecipe(file) is { } recipe)
        {
            return (Splitter.Of(recipe, run.Workspace, tuned), recipe.FinalVolume);
        }

        if (run.Facts.FindStock(file) is { } stock)
        {
            var proposal = Splitter.Of(stock, run.Workspace, tuned);
            return (proposal, proposal.Final?.FinalVolume ?? stock.Volume);
        }

        throw new UsageException($"'{file}' is neither a recipe nor a stock, or its volume cannot be read. 'recipelint check' says why.");
    }

    /// <summary>The limits that the rules of the shop judge with, so that no part is proposed that they would reject.</summary>
    private static SplitLimits LimitsOf(ShopSettings shop)
    {
        var tuning = RuleTuning.Read(shop);
        var weighing = WeighingNeeds.Of(tuning);
        return new SplitLimits
        {
            Deposits = DepositOptions.Of(shop),
            DisplaySteps = weighing.DisplaySteps,
            WeighingUncertainty = weighing.Uncertainty,
            Preserving = PreservationNeeds.Of(tuning),
        };
    }

    private static void Write(Surroundings world, Session run, SplitProposal proposal, Volume final, string folder, LoadOptions options)
    {
        var file = run.Workspace.Asked.Single();
        var target = Path.GetFullPath(folder, world.CurrentDirectory);
        var isRecipe = file.EndsWith(".recipe.json", StringComparison.Ordinal);
        var name = isRecipe
            ? Path.GetFileName(file)
            : Path.GetFileName(file).Replace(".stock.json", ".recipe.json", StringComparison.Ordinal);
        var files = PartFileText.Of(
            proposal,
            name,
            isRecipe ? run.Workspace.Sources[file].Bytes.ToArray() : null,
            final,
            water => Path.GetRelativePath(target, Path.Combine(run.Workspace.Root, water)).Replace('\\', '/'));
        NewFiles.Refuse(target, folder, files.Select(f => f.Name));
        Refuse(world, files, target, options);
        NewFiles.Write(world, target, folder, [.. files.Select(f => (f.Name, f.Text))]);
    }

    /// <summary>Reads and judges the new files before they stand on the disk: what would be rejected is not written.</summary>
    private static void Refuse(Surroundings world, IReadOnlyList<WrittenFile> files, string target, LoadOptions options)
    {
        var tree = world.Files(world.CurrentDirectory);
        foreach (var written in files)
        {
            tree = new OverlayFileTree(tree, Path.Combine(target, written.Name).Replace('\\', '/'), Encoding.UTF8.GetBytes(written.Text));
        }

        var workspace = WorkspaceLoader.Load(tree, [.. files.Select(f => Path.Combine(target, f.Name))], options);
        var worst = LintEngine.Judge(Analyzer.Analyse(workspace), new EngineOptions { Today = world.Today, Rules = RuleList.All }).Findings
            .FirstOrDefault(f => f.Level == Level.Error && f.Place.File.EndsWith(".stock.json", StringComparison.Ordinal));
        if (worst is not null)
        {
            throw new UsageException($"the parts would not pass the check in that folder, so nothing was written: {worst.Message}");
        }
    }

    private static int ReadParts(int count) =>
        count is >= 1 and <= Splitter.MostParts
            ? count
            : throw new UsageException($"'--parts {count}' cannot be used; 1 to {Splitter.MostParts} parts can be made.");

    private static Dose ReadStrength(string text)
    {
        if (!QuantityReader.TryRead(text, Due.Dose, out var quantity, out var fault))
        {
            throw new UsageException($"The strength '{text}' cannot be used. {fault.Message}");
        }

        return quantity.Dose.Dilution is >= 2 and <= 5000
            ? quantity.Dose
            : throw new UsageException($"'{text}' is no dose of a stock; 1:2 to 1:5000 can be looked at.");
    }

    private static Interval<Temperature> ReadSpan(string text)
    {
        if (!QuantityReader.TryRead(text, Due.Temperatures, out var quantity, out var fault))
        {
            throw new UsageException($"The temperatures '{text}' cannot be used. {fault.Message}");
        }

        var (low, high) = quantity.Temperatures;
        return low.Celsius >= SolutionInput.LowestCelsius && high.Celsius <= SolutionInput.HighestCelsius && low <= high
            ? new Interval<Temperature>(low, high)
            : throw new UsageException($"'{text}' is outside the range of the model, 0 to 45 °C.");
    }

    private static Volume ReadVolume(string text)
    {
        if (!QuantityReader.TryRead(text, Due.Volume, out var quantity, out var fault))
        {
            throw new UsageException($"The volume '{text}' cannot be used. {fault.Message}");
        }

        return quantity.Volume.Litres is > 0 and < 1e6
            ? quantity.Volume
            : throw new UsageException($"'{text}' is no volume that a part is made in.");
    }
}
