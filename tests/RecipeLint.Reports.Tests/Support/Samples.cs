using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Tests.Support;

/// <summary>Reports over invented files. Places are byte ranges found by their text, so that the tests owe nothing to a reader.</summary>
internal static class Samples
{
    public const string PartB = """
        {
          "format": 1,
          "name": "Part B",
          "makes": "2 L",
          "steps": [
            {"pour": "1.4 L", "of": "distilled"},
            {"add": "calcium-nitrate-4h2o", "amount": "200 g"},
            {"add": "magnesium-sulfate-7h2o", "amount": "100 g", "note": "für die Gurken 🥒 水"},
            {"topUp": "2 L"}
          ]
        }

        """;

    public const string Tank = """
        {
          "format": 1,
          "final": "200 L",
          "doses": [
            {"stock": "part-b.stock.json", "dose": "10 mL/L"}
          ]
        }

        """;

    public static RuleDescriptor Rule(
        string id = "RL9101", string name = "calcium-meets-sulfate", Level level = Level.Error, Certainty certainty = Certainty.Estimate, string? explanation = null) => new()
        {
            Id = id,
            Name = name,
            Family = "samples",
            Title = "Calcium and sulfate stand in one concentrated part.",
            Level = level,
            Certainty = certainty,
            Scope = RuleScope.Stock,
            Since = "0.1.0",
            Explanation = new Lazy<string>(explanation ?? Explanation),
        };

    public const string Explanation = """
        # Calcium and sulfate in one part

        ## What it finds

        A part that holds *both* calcium and sulfate above what [gypsum](https://example.org/gypsum) leaves dissolved. It is
        **not** about the tank.

        ## Why it matters

        - White needles settle.
        - They do not come back
          into solution.

        1. First cloud
        2. then crust

        | Salt | Solubility in water at 25 °C | Remark |
        |---|---:|---|
        | `CaSO4·2H2O` | 2.4 g/L | *invented for the test* |

        ```json
        {"add": "calcium-nitrate-4h2o", "amount": "200 g"}
        ```

        > Keep calcium in part A.
        """;

    public static SourceFile File(string path, string text) => new(path, Encoding.UTF8.GetBytes(text));

    /// <summary>The place of the first occurrence of a text in a file.</summary>
    public static Place At(SourceFile file, string text)
    {
        var whole = Encoding.UTF8.GetString(file.Bytes);
        var start = whole.IndexOf(text, StringComparison.Ordinal);
        Assert.True(start >= 0, $"'{text}' is not in {file.Path}.");
        return new Place(file.Path, JsonPointer.Root, Range: new ByteSpan(Encoding.UTF8.GetByteCount(whole[..start]), Encoding.UTF8.GetByteCount(text)));
    }

    public static Finding Finding(RuleDescriptor rule, Place place, string message, string idPath = "steps/x", params RelatedPlace[] related) => new()
    {
        Rule = rule,
        Level = rule.Level,
        Certainty = rule.Certainty,
        Place = place,
        IdPath = idPath,
        Told = new(message),
        Related = related,
    };

    public static Report Report(IEnumerable<Finding> findings, params SourceFile[] sources) => new()
    {
        Result = new LintResult { Findings = [.. findings], Suppressed = [], Faults = [] },
        Sources = sources.ToDictionary(s => s.Path),
        FilesChecked = sources.Length,
        Rules = [Rule(), Rule("RL9102", "never-fires", Level.Note, Certainty.Practice)],
        ToolVersion = "0.1.0",
    };

    /// <summary>Two files, findings of every level and certainty, related places in the same and in another file.</summary>
    public static Report Mixed()
    {
        var partB = File("shop/part-b.stock.json", PartB);
        var tank = File("shop/tank.recipe.json", Tank);
        Finding[] findings =
        [
            Finding(
                Rule("RL9103", "dose-far-from-label", Level.Note, Certainty.Practice),
                At(tank, "\"10 mL/L\""),
                "The dose is 10 mL/L, the label of most parts says 5 mL/L. Nothing breaks by it. Compare with the label.",
                "doses/part-b/dose"),
            Finding(
                Rule("RL9104", "target-far-off", Level.Warning, Certainty.Computed),
                At(tank, "\"200 L\""),
                "Magnesium ends at 49.3 mg/L, 23 % above the target of 40 mg/L. The dose and the stock were written for different tanks, which is how a crop slowly goes off. Dose 8.1 mL/L or weigh 81 g of magnesium-sulfate-7h2o.",
                "final",
                new RelatedPlace(At(partB, "\"100 g\""), "the magnesium comes from here")),
            Finding(
                Rule(),
                At(partB, "\"magnesium-sulfate-7h2o\""),
                "Calcium 0.42 mol/L and sulfate 0.20 mol/L stand in one part; gypsum leaves about 0.015 mol/L of each in solution. White needles will settle within days and clog the injector. Move the magnesium sulfate to another part.",
                "steps/magnesium-sulfate-7h2o/add",
                new RelatedPlace(At(partB, "\"calcium-nitrate-4h2o\""), "the calcium comes from here"),
                new RelatedPlace(At(tank, "{\"stock\": \"part-b.stock.json\", \"dose\": \"10 mL/L\"}"), "dosed from here")) with
            {
                Measured = new Measured("ion product", 0.084, 0.0002, "mol²/L²"),
                Values = [new NamedValue("calcium", 0.42, "mol/L"), new NamedValue("sulfate", 0.2, "mol/L")],
            },
        ];
        return Report(findings, partB, tank) with
        {
            Assumptions = ["No assay is given, so salts count as 100 % pure.", "Water is taken as pure.", "Water is taken as pure."],
        };
    }

    public static Report WithSuppressed()
    {
        var report = Mixed();
        var finding = report.Result.Findings[0];
        var place = finding.Place;
        var suppression = new Suppression(place, finding.Rule.Name, place.File, null, "The label of this shop says 10 mL/L.", null, null);
        return report with
        {
            Result = report.Result with
            {
                Findings = [.. report.Result.Findings.Skip(1)],
                Suppressed = [new SuppressedFinding(finding, suppression)],
            },
        };
    }

    public static Report Clean() => Report([], File("part-b.stock.json", PartB), File("tank.recipe.json", Tank));

    public static Report Faulty() => Clean() with
    {
        Result = new LintResult
        {
            Findings = [],
            Suppressed = [],
            Faults = [new RuleFault("RL9101", "calcium-meets-sulfate", "part-b.stock.json", new InvalidOperationException("no such \u001b[2Jthing"))],
        },
    };

    /// <summary>Names and texts made to hurt a terminal, a build log or a parser.</summary>
    public static Report Hostile()
    {
        var name = "a\u001b[31mb\n::stop-commands::x\u202Ec\u009B 100% #?[1](2).stock.json";
        var file = File(name, "{\"k\u202Ee\ty\": \"\u009B\u200B水🥒e\u0301 {0}\", \"a\": 1}");
        var command = File("::set-env name=x::y", "{}");
        return Report(
            [
                Finding(
                    Rule(),
                    At(file, "\"a\": 1"),
                    "Message \u0007with \u001b]8;;x\u001b\\ and \uD800 a lone half, {0} braces, a [link](http://example.org) and\nnew line.",
                    "ke\u202Ey",
                    new RelatedPlace(At(file, "\"\u009B\u200B水🥒e\u0301 {0}\""), "##[group]lab]el \\ ::x"),
                    new RelatedPlace(At(command, "{}"), "::error::y")),
                Finding(Rule(), At(command, "{}"), "::add-mask::x and ##vso[task.complete]."),
                Finding(Rule(), Place.Whole("not-read.stock.json"), "This file was not read."),
                Finding(Rule(), Place.Whole(command.Path), ""),
            ],
            file,
            command);
    }

    public static IEnumerable<(string Name, Report Report)> All() =>
    [
        ("mixed", Mixed()), ("suppressed", WithSuppressed()), ("clean", Clean()), ("faulty", Faulty()), ("hostile", Hostile()), ("edges", Edges()),
    ];

    /// <summary>Empty file, span at the end, span over lines, whole file, a very long line, CR and CRLF ends, bytes that are not UTF-8.</summary>
    public static Report Edges()
    {
        var empty = File("empty.stock.json", "");
        var windows = File("windows.stock.json", "{\r\n  \"a\": {\r\n    \"b\": 1\r\n  }\r\n}\r\n");
        var oldMac = File("old.stock.json", "{\r  \"a\": 1\r}");
        var oneLine = File("line.stock.json", "{\"n\": [" + string.Concat(Enumerable.Repeat("\"水é🥒 salt\", ", 2000)) + "\"x\"], \"last\": \"here\"}");
        var broken = new SourceFile("latin.stock.json", [.. "{\"a\": \"caf"u8, 0xE9, .. "\", \"b\": 2}"u8]);
        var warning = Rule(level: Level.Warning, certainty: Certainty.Computed);
        return Report(
            [
                Finding(warning, Place.Whole(empty.Path) with { Range = new ByteSpan(0, 0) }, "The file is empty."),
                Finding(warning, At(windows, "{\r\n    \"b\": 1\r\n  }"), "An object over three lines."),
                Finding(warning, At(windows, "\"b\""), "A key inside it.", "b"),
                Finding(warning, At(windows, "\"a\": {\r\n    \"b\": 1\r\n  }\r\n}\r\n") with { Range = new ByteSpan(0, 10_000) }, "All of it and more.", "all"),
                Finding(warning, Place.Whole(oldMac.Path) with { Range = new ByteSpan(12, 0) }, "At the very end."),
                Finding(warning, At(oldMac, "1"), "A number."),
                Finding(warning, At(oneLine, "\"here\""), "Far to the right.", "far"),
                Finding(warning, Place.Whole(oneLine.Path) with { Range = new ByteSpan(0, 40_000) }, "A huge region.", "huge"),
                Finding(warning, Place.Whole(broken.Path) with { Range = new ByteSpan(10, 1) }, "A byte that is not UTF-8."),
            ],
            empty, windows, oldMac, oneLine, broken);
    }
}
