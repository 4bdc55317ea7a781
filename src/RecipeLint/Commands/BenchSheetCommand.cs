using System.CommandLine;
using RecipeLint.Advice.Batches;
using RecipeLint.Advice.Order;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Editions;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Schema;
using RecipeLint.Reports;
using RecipeLint.Reports.BenchSheets;
using RecipeLint.Reports.ComputedFacts;
using RecipeLint.Reports.Show;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Writes one page for whoever mixes a batch.</summary>
internal static class BenchSheetCommand
{
    public static Command Build(Surroundings world)
    {
        var file = new Argument<string>("file") { Description = "A stock file." };
        var batch = new Option<string?>("--batch")
        {
            Description = "How much is made, such as \"2 L\". Left out: what the file makes.",
            HelpName = "volume",
        };
        var order = new Option<string>("--order")
        {
            Description = "Steps as the file has them, or in the best order that 'recipelint order' finds.",
            DefaultValueFactory = _ => "file",
            HelpName = "file|best",
        };
        order.AcceptOnlyFromAmong("file", "best");
        var output = new Option<string?>("--output", "-o")
        {
            Description = "Write a page to print to this file; else the sheet is printed as text.",
            HelpName = "file",
        };
        var actual = new Option<string?>("--actual")
        {
            Description = "A batch record (*.batch.json): what the plants get of what was really weighed; use, mend or discard.",
            HelpName = "file",
        };
        var begun = new Option<string?>("--record")
        {
            Description = "Begin a batch record in this new file (*.batch.json), to be filled in; takes a recipe too, for a tank.",
            HelpName = "file",
        };
        var width = SharedOptions.Width();
        var color = SharedOptions.Color();
        var config = SharedOptions.Config();
        var noConfig = SharedOptions.NoConfig();
        var command = new Command(
            "bench-sheet", "Write one page for who mixes: weights as the scale shows them, what to expect, when to stop, what to check.")
        {
            file, batch, order, actual, begun, output, width, color, config, noConfig,
        };
        command.SetAction(parsed => (parsed.GetValue(begun), parsed.GetValue(actual)) switch
        {
            ({ } fresh, null) when parsed.GetValue(output) is null => Begin(
                world, parsed.GetValue(file)!, fresh, parsed.GetValue(batch), parsed.GetValue(config), parsed.GetValue(noConfig)),
            ({ }, _) => throw new UsageException("'--record' begins a record and does nothing else: leave out '--actual' and '--output'."),
            (null, { } record) when parsed.GetValue(batch) is null => Judge(
                world, parsed.GetValue(file)!, record, parsed.GetValue(output), Options(parsed), parsed.GetValue(config),
                parsed.GetValue(noConfig)),
            (null, { }) => throw new UsageException("'--batch' and '--actual' do not go together: the record says how much was made."),
            _ => Write(
                world,
                StockInput.Open(world, "bench-sheet", parsed.GetValue(file)!, parsed.GetValue(config), parsed.GetValue(noConfig)),
                parsed.GetValue(order) == "best", parsed.GetValue(batch), parsed.GetValue(output), Options(parsed)),
        });
        return command;

        TextOptions Options(ParseResult parsed) => new(world.UseColor(parsed.GetValue(color)!), world.Width(parsed.GetValue(width)));
    }

    private static int Write(Surroundings world, StockInput input, bool inBestOrder, string? batch, string? output, TextOptions options)
    {
        var stock = inBestOrder ? Ordered(input) : input.Stock;
        var sheet = BenchSheet.Of(input.Workspace, stock, Batch(batch, stock.Volume)).Checked(input.Workspace, stock, world.Today);
        if (output is not null)
        {
            OutputFile.Of(world, output, input.Workspace).Write(writer => writer.Write(BenchSheetPage.Of(sheet, ToolVersion.Text)));
            world.Out.WriteLine($"wrote {Printable.Show(output)}; open it in a browser and print it");
        }
        else
        {
            BenchSheetText.Write(world.Out, sheet, options);
            world.Out.Flush();
        }

        return ExitCodes.OfAdvice(sheet.Refused.Count > 0, sheet.Objections);
    }

    /// <summary>The same stock mixed in the best order; as it is where none is better.</summary>
    private static StockFacts Ordered(StockInput input) => OrderedStock.Of(MixingOrder.Of(input.Stock)) is { } ordered
        ? Analyzer.AnalyseStock(input.Workspace.With(ordered), ordered.File) ?? input.Stock
        : input.Stock;

    /// <summary>Writes a record that is still to be filled in, beside nothing that is there.</summary>
    private static int Begin(Surroundings world, string path, string record, string? batch, string? config, bool noConfig)
    {
        if (DocumentKinds.FromFileName(record) != DocumentKind.Batch)
        {
            throw new UsageException($"'{record}' is no name of a batch record: it ends in .batch.json.");
        }

        var run = Session.Open(world, [path], null, config, noConfig);
        var file = run.Workspace.Asked.Count == 1 ? run.Workspace.Asked.Single() : null;
        var makes = file is null ? null
            : run.Workspace.FindStock(file)?.Makes?.Value ?? run.Workspace.FindRecipe(file)?.Final?.Value;
        if (file is null || makes is not { } volume)
        {
            throw new UsageException(
                $"'{path}' is no stock or recipe whose volume can be read, so no record of it is begun. 'recipelint check {path}' says "
                    + "why.");
        }

        var full = Path.GetFullPath(record, world.CurrentDirectory);
        var folder = Path.GetDirectoryName(full)!;
        var way = Path.GetRelativePath(folder, Path.GetFullPath(Path.Combine(run.Workspace.Root, file))).Replace('\\', '/');
        NewFiles.Write(
            world,
            folder,
            Path.GetDirectoryName(record) ?? "",
            [(Path.GetFileName(full), BegunRecord.Of(run.Workspace, file, way, batch is null ? null : Batch(batch, volume), world.Today))]);
        return ExitCodes.Clean;
    }

    /// <summary>What the record comes to, against everything in the shop that doses the stock.</summary>
    private static int Judge(
        Surroundings world, string path, string record, string? output, TextOptions text, string? config, bool noConfig)
    {
        var alone = Session.Open(world, [path], null, config, noConfig);
        if (alone.Workspace.Asked is not { Count: 1 } asked || alone.Workspace.FindStock(asked.Single()) is null)
        {
            throw StockInput.OneFile(alone, "bench-sheet", "stock file", [DocumentKind.Stock]);
        }

        var all = Session.WithShopOf(world, alone, path, config, noConfig);
        var run = Session.Open(world, [.. all.Asked, record], null, config, noConfig);
        var fromRecord = Session.Open(world, [record], null, config, noConfig).Workspace;
        if (fromRecord.Batches is not [var told] || run.Workspace.Batches.FirstOrDefault(b => SameFile(run, b.File, fromRecord, told.File))
            is not { } batch)
        {
            throw new UsageException($"'{record}' is no batch record that can be read; the name of one ends in .batch.json.");
        }

        if (batch.Recipe is not null)
        {
            throw new UsageException(
                $"'{record}' is the record of a tank, not of a bottle; 'recipelint show {record}' says what came of it.");
        }

        var stock = run.Workspace.Stocks.FirstOrDefault(s => SameFile(run, s.File, alone.Workspace, asked.Single()))!;
        if (batch.StockFile != stock.File)
        {
            throw new UsageException(
                $"'{record}' is the record of '{batch.StockFile ?? batch.Stock?.Value ?? "no stock"}', not of '{stock.File}'.");
        }

        if (Edition.IsEarlier(run.Workspace, batch))
        {
            throw new UsageException(BatchWords.Earlier(record, batch));
        }

        if (!batch.IsComplete)
        {
            throw new UsageException($"'{record}' cannot be read whole. 'recipelint check {record}' says why.");
        }

        var judged = BatchJudge.Of(run.Workspace, stock, batch, StandardEngine.On(null))
            ?? throw new UsageException($"the volume of '{stock.File}' cannot be read. 'recipelint check' says why.");
        var sheet = BatchSheet.Of(judged);
        if (output is not null)
        {
            OutputFile.Of(world, output, run.Workspace).Write(writer => writer.Write(BatchSheetPage.Of(sheet, ToolVersion.Text)));
            world.Out.WriteLine($"wrote {Printable.Show(output)}; open it in a browser and print it");
        }
        else
        {
            SheetText.Write(world.Out, sheet, text);
            world.Out.Flush();
        }

        return judged.Fate == BatchFate.Use ? ExitCodes.Clean : ExitCodes.Findings;
    }

    private static bool SameFile(Session run, string file, Recipes.Workspace other, string name) =>
        Path.GetFullPath(Path.Combine(run.Workspace.Root, file)) == Path.GetFullPath(Path.Combine(other.Root, name));

    private static Volume Batch(string? text, Volume makes)
    {
        if (text is null)
        {
            return makes;
        }

        if (!QuantityReader.TryRead(text, Due.Volume, out var quantity, out var fault))
        {
            throw new UsageException($"The batch '{text}' cannot be used. {fault.Message}");
        }

        // More than a truck or less than a spoon is a slip of the unit (common practice, no source).
        return quantity.Low == quantity.High && quantity.Low is >= 0.01 and <= 20_000
            ? new Volume(quantity.Low)
            : throw new UsageException($"The batch '{text}' cannot be used: it takes one volume from 10 mL to 20 m³.");
    }
}
