using System.CommandLine;
using RecipeLint.Advice.Batches;
using RecipeLint.Analysis.Batches;
using RecipeLint.Recipes.Batches;
using RecipeLint.Recipes.Editions;
using RecipeLint.Recipes.Schema;
using RecipeLint.Reports;
using RecipeLint.Reports.BenchSheets;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Reports.Pages;
using RecipeLint.Reports.Show;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Writes a page with verdict, pictures and figures; for a folder an overview and a page for each file.</summary>
internal static class ReportCommand
{
    private const string ListName = "report-files.txt";

    public static Command Build(Surroundings world)
    {
        var paths = new Argument<string[]>("path")
        {
            Description = "A file, or a folder for an overview with a page for each file.",
            Arity = ArgumentArity.OneOrMore,
        };
        var output = new Option<string>("--output", "-o")
        {
            Description = "The page to write, such as page.html. For a folder the pages lie beside it in 'page-files'.",
            HelpName = "file",
            Required = true,
        };
        var config = SharedOptions.Config();
        var mixings = SharedOptions.Mixings();
        var noConfig = SharedOptions.NoConfig();
        var command =
            new Command("report", "Write a page for a browser, phone or printer: findings, pictures and every figure behind them.")
        {
            paths, output, mixings, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var run = Session.Open(world, parsed.GetValue(paths)!, null, parsed.GetValue(config), parsed.GetValue(noConfig));
            var named = parsed.GetValue(output)!;
            var target = OutputFile.Of(world, named, run.Workspace);
            var result = LintEngine.Judge(run.Facts, new EngineOptions { Today = world.Today, Rules = RuleList.All });
            var report = new Report
            {
                Result = result,
                Sources = run.Workspace.Sources,
                FilesChecked = run.Workspace.Asked.Count,
                Asked = [.. run.Workspace.Asked],
                Facts = run.Facts,
                ToolVersion = ToolVersion.Text,
                Mixings = parsed.GetValue(mixings) ?? 0,
            };
            var shop = WithShopsOfBatches(world, run, parsed.GetValue(config), parsed.GetValue(noConfig));
            if (run.Workspace.Asked.Count == 1)
            {
                var page = FilePage.Of(report, run.Workspace.Asked.Single(), null, Other(run, shop, run.Workspace.Asked.Single()));
                target.Write(writer => writer.Write(page));
            }
            else
            {
                WriteFolder(report, run, shop, target);
            }

            world.Out.WriteLine($"wrote {Printable.Show(named)}; open it in a browser");
            return ExitCodes.Clean;
        });
        return command;
    }

    /// <summary>What came of a batch, what the shop's settings and its own rules hold; null for other files.</summary>
    /// <param name="shop">Where what doses a batch is found.</param>
    private static Sheet? Other(Session run, Session shop, string file) => DocumentKinds.FromFileName(file) switch
    {
        DocumentKind.Settings => ShopSheet.Of(run.Facts, file, new HashSet<string> { file }),
        DocumentKind.HouseRule => run.Workspace.SettingsFor(file).HouseRules.FirstOrDefault(r => r.File == file) is { } rule
            ? HouseRuleSheet.Of(rule)
            : null,
        DocumentKind.Batch => shop.Workspace.Batches.FirstOrDefault(b => FullPath(shop, b.File) == FullPath(run, file))
            is { IsComplete: true } batch
                ? OfBatch(shop, batch)
                : null,
        _ => null,
    };

    /// <summary>Null where the file has changed since the batch was mixed from it.</summary>
    private static Sheet? OfBatch(Session shop, BatchDocument batch) => Edition.IsEarlier(shop.Workspace, batch) ? null
        : batch.RecipeFile is not null
            ? BatchForecast.Of(shop.Facts, batch) is TankForecast tank ? TankSheet.Of(tank) : null
        : batch.StockFile is { } stock && shop.Workspace.FindStock(stock) is { } document
            && BatchJudge.Of(shop.Workspace, document, batch, StandardEngine.On(null)) is { } judged
                ? BatchSheet.Of(judged)
                : null;

    private static string FullPath(Session of, string file) => Path.GetFullPath(Path.Combine(of.Workspace.Root, file));

    /// <summary>
    /// What was asked for with everything in the shops of its batch records: what the plants get of a batch stands in recipes that nobody
    /// named. The same run where there are no records.
    /// </summary>
    private static Session WithShopsOfBatches(Surroundings world, Session run, string? config, bool noConfig)
    {
        string[] shops = config is not null || noConfig ? [] :
        [
            .. run.Workspace.Batches.Where(b => run.Workspace.Asked.Contains(b.File))
                .Select(b => run.Workspace.SettingsFor(b.File).File)
                .OfType<string>()
                .Distinct(StringComparer.Ordinal)
                .Select(s => Path.GetDirectoryName(FullPath(run, s))!),
        ];
        return shops.Length == 0 ? run : Session.Open(world, [.. run.Asked, .. shops], null, null, false);
    }

    private static void WriteFolder(Report report, Session run, Session shop, OutputFile target)
    {
        var folder = Path.GetFileNameWithoutExtension(target.FullPath) + "-files";
        var full = Path.Combine(Path.GetDirectoryName(target.FullPath)!, folder);
        var beside = new PageFolder(ListName, "recipelint report", "report");
        beside.Earlier(full, folder);
        var up = "../" + Uri.EscapeDataString(Path.GetFileName(target.FullPath));
        var title = string.Join(", ", run.Asked.Select(ShownName.Of));
        var page = OverviewPage.Of(report, run.Workspace, title is "." or "" ? "All files" : title, Uri.EscapeDataString(folder) + "/");
        beside.Write(
            full,
            folder,
            [
                .. report.Asked.Order(StringComparer.Ordinal)
                    .Select(f => (OverviewPage.PageName(f), FilePage.Of(report, f, up, Other(run, shop, f)))),
            ],
            target.Whole(writer => writer.Write(page)));
    }
}
