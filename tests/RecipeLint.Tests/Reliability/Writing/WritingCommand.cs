namespace RecipeLint.Tests.Reliability.Writing;

/// <summary>A command that writes, over a folder in which it works when nothing is in the way.</summary>
/// <param name="Name">As the table calls it.</param>
/// <param name="Files">What stands in the folder before.</param>
internal sealed record WritingCommand(string Name, IReadOnlyDictionary<string, string> Files, params string[] Arguments)
{
    private const string Cloudy = """{"format": 1, "makes": "1 L", "steps": [{"pour": "500 mL", "of": "distilled"}, {"add": "calcium-nitrate-4h2o", "amount": "100 g"}, {"add": "potassium-sulfate", "amount": "50 g"}, {"topUp": "1 L", "of": "distilled"}]}""";
    private const string Clear = """{"format": 1, "makes": "1 L", "steps": [{"pour": "500 mL", "of": "distilled"}, {"add": "potassium-nitrate", "amount": "50 g"}, {"topUp": "1 L", "of": "distilled"}]}""";

    private const string Bag = "Invented bag 4-18-38\n\noxide\n4 %\n\n\n18 %\n38 %\n\n0.8 %\n12 %\n0.4 %\n\n\n\n0.1 %\n\nEDTA\nlabel\nh319\n";

    private static readonly string _fixable = Clear.Replace("\"distilled\"}, {\"add", "\"distilled\",}, {\"add", StringComparison.Ordinal);

    /// <summary>What comes from standard input.</summary>
    public string Answers { get; init; } = "";

    /// <summary>A path where something else may stand in the way: a folder for a file, a file for a folder. Null where the file is itself an input.</summary>
    public string? Occupied { get; init; }

    /// <summary>A path that somebody else may save or make while the command reads; null where a report replaces whatever was there.</summary>
    public string? Meanwhile { get; init; }

    /// <summary>Takes seconds, so that twenty at once run with RECIPELINT_LONG=1 only.</summary>
    public bool IsSlow { get; init; }

    public static IReadOnlyList<WritingCommand> All { get; } =
    [
        new("check --output", Shop(Cloudy), "check", ".", "--output", "report.txt") { Occupied = "report.txt" },
        new("check --output and two --also", Shop(Cloudy), "check", ".", "--output", "report.txt", "--also", "sarif:log.sarif", "--also", "csv:rows.csv") { Occupied = "rows.csv" },
        new("check --fix", new Dictionary<string, string> { ["a.stock.json"] = _fixable, ["b.stock.json"] = _fixable }, "check", ".", "--fix") { Meanwhile = "b.stock.json" },
        new("check --apply", Shop(Cloudy), "check", ".", "--apply", "RL0101:own-bottle-potassium-sulfate") { Meanwhile = "a.stock.json" },
        new("init, a shop", Shop(), "init", "shop") { Occupied = "shop" },
        new("init --from", Shop(), "init", "--from", "KNO3 100 g in 2 L") { Occupied = "first.stock.json" },
        new("init --water", Shop(), "init", "--water") { Answers = "rain\n\n\n0.1 mS/cm\n", Occupied = "rain.water.json", Meanwhile = "rain.water.json" },
        new("init --product", Shop(), "init", "--product") { Answers = Bag, Occupied = "invented-bag-4-18-38.substances.json", Meanwhile = "invented-bag-4-18-38.substances.json" },
        new("init --profile", Shop(), "init", "--profile") { Answers = "Winter lettuce\nleafy-greens\nown trials\n1.2..1.8 mS/cm\n5.6..6.2\n120..180 mg/L\n", Occupied = "winter-lettuce.profile.json", Meanwhile = "winter-lettuce.profile.json" },
        new("split --write", Shop(Cloudy), "split", "a.stock.json", "--write", "parts") { Occupied = "parts", Meanwhile = "parts/part-b.stock.json" },
        new("handbook --output", Shop(), "handbook", "--output", "book") { Occupied = "book", IsSlow = true },
        new("handbook --exercises", Shop(), "handbook", "--exercises", "week") { Occupied = "week", IsSlow = true },
        new("import", new Dictionary<string, string> { ["t.csv"] = "substance;amount;part\nKNO3;1 g;A\nKNO3;2 g;B\n" }, "import", "t.csv", "--makes", "1 L", "--into", "made") { Occupied = "made", Meanwhile = "made/b.stock.json" },
        new("import --remember", new Dictionary<string, string> { ["t.csv"] = "substance;amount\nKNO3;1 g\n" }, "import", "t.csv", "--makes", "1 L", "--remember", "m.json") { Occupied = "m.json", Meanwhile = "m.json" },
        new("accept", Shop(Cloudy, ("recipelint.json", """{"rules": {}}""")), "accept", "a.stock.json", "RL0101", "--because", "a test") { Meanwhile = "recipelint.json" },
        new("accept, the first", Shop(Cloudy), "accept", "a.stock.json", "RL0101", "--because", "a test") { Occupied = "recipelint.json", Meanwhile = "recipelint.json" },
        new("baseline update", Shop(Cloudy, ("recipelint.baseline.json", """{"format": 1, "findings": []}""")), "baseline", "update", ".") { Meanwhile = "recipelint.baseline.json" },
        new("baseline update, the first", Shop(Cloudy), "baseline", "update", ".") { Occupied = "recipelint.baseline.json" },
        new("baseline prune", Shop(Clear, ("recipelint.baseline.json", """{"format": 1, "findings": [{"rule": "RL0101", "file": "a.stock.json", "at": "x"}]}""")), "baseline", "prune", ".") { Meanwhile = "recipelint.baseline.json" },
        new("learn", Shop(), "learn", "week") { Answers = "1\n", Occupied = "week", Meanwhile = "week/score.json", IsSlow = true },
        new("report, a file", Shop(Cloudy), "report", "a.stock.json", "--output", "page.html") { Occupied = "page.html" },
        new("report, a folder", Shop(Cloudy, ("b.stock.json", Clear)), "report", ".", "--output", "page.html") { Occupied = "page-files", IsSlow = true },
        new("label --output", Shop(Clear), "label", "a.stock.json", "--output", "label.svg") { Occupied = "label.svg" },
        new("bench-sheet --output", Shop(Clear), "bench-sheet", "a.stock.json", "--output", "sheet.html") { Occupied = "sheet.html" },
        new("bench-sheet --record", Shop(Clear), "bench-sheet", "a.stock.json", "--record", "monday.batch.json") { Occupied = "monday.batch.json", Meanwhile = "monday.batch.json" },
        new("compare --output", new Dictionary<string, string> { ["old/a.stock.json"] = Clear, ["new/a.stock.json"] = Cloudy }, "compare", "old", "new", "--output", "changes.txt") { Occupied = "changes.txt" },
        new("editor", Shop(), "editor", "--for", "vscode") { Occupied = ".vscode" },
        new("merge --output", new Dictionary<string, string> { ["a.sarif"] = "" }, "merge", "a.sarif", "--output", "all.sarif") { Occupied = "all.sarif" },
    ];

    private static Dictionary<string, string> Shop(string stock, params (string Path, string Text)[] more)
    {
        var files = more.ToDictionary(m => m.Path, m => m.Text, StringComparer.Ordinal);
        files["a.stock.json"] = stock;
        return files;
    }

    private static Dictionary<string, string> Shop() => [];
}

/// <summary>What is in the way.</summary>
internal enum WritingFault
{
    FullDisk,
    ReadOnlyFolder,
    SomethingInItsPlace,
    SavedMeanwhile,
    TwoAtOnce,
    TwentyAtOnce,
    ReaderLeaves,
    Killed,
}
