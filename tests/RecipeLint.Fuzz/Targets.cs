using System.Text;
using RecipeLint.Advice.Slips;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.OneLine;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Rules;

namespace RecipeLint.Fuzz;

/// <summary>Every door, cheap ones first.</summary>
internal static class Targets
{
    private static readonly IReadOnlyDictionary<string, byte[]> _noFiles = new Dictionary<string, byte[]>();
    private static readonly Volume _litre = new(1);
    private static readonly string[] _rules = [.. RuleList.All.Select(r => r.Name)];

    private static readonly Due[] _dues =
    [
        Due.Mass, Due.Volume, Due.Portion, Due.Dose, Due.Temperatures, Due.Duration, Due.Assay, Due.Strength, Due.Content, Due.Density, Due.MolarMass, Due.Conductivity, Due.Ph, Due.PhStep, Due.Analyte, Due.Hardness,
    ];

    public static IReadOnlyList<FuzzTarget> All { get; } =
    [
        new("quantities", random =>
        {
            var text = random.Next(3) == 0 ? Words.Text(random, Words.Numbers, Words.Units, Words.Pieces) : Words.Quantity(random);
            var due = Words.Pick(random, _dues);
            return new Execution(() => text, () => ReadQuantity(text, due));
        }),
        new("formulas", random =>
        {
            var text = random.Next(3) == 0 ? Words.Text(random, Words.Formulas, Words.Pieces, Words.Numbers) : Words.Scratch(random, Words.Pick(random, Words.Formulas));
            return new Execution(() => text, () => ReadFormula(text));
        }),
        new("reader", random =>
        {
            var file = Words.Pick(random, Words.Pick(random, Corpus.Instance.Shops).Files);
            var bytes = ShopMutator.Bytes(random, file.Bytes);
            return new Execution(() => Corpus.Text(bytes), () => ReadBytes(bytes));
        }),
        new("documents", random =>
        {
            var files = ShopMutator.Mutate(random, Words.Pick(random, Corpus.Instance.Shops));
            return new Execution(() => ProgramRun.Shown(files, []), () => ReadDocuments(files));
        }),
        new("words", random =>
        {
            var text = Words.Text(random, Words.Signs, Words.Signs, Words.Signs, Words.Pieces, Words.Numbers);
            return new Execution(() => text, () =>
            {
                _ = ObservationReader.Read(text);
                _ = TimeWords.Read(text);
                _ = Measurement.Read(text, _litre);
            });
        }),
        new("mixes", random =>
        {
            var text = MixLine(random);
            return new Execution(() => text, () =>
            {
                var (mix, error) = OneLineMix.Read(text, SubstanceCatalogue.BuiltIn);
                Promise(mix is not null || !string.IsNullOrWhiteSpace(error), "neither mix nor reason");
            });
        }),
        new("dissolve", random => ProgramRun.Of(_noFiles, ["dissolve", MixLine(random), .. Some(random, "--at", Words.Quantity(random)), .. Some(random, "--ph", Words.Pick(random, Words.Numbers)), .. Flag(random, "--open"), .. Flag(random, "--full")])),
        new("check", random => OverShop(random, _ => true, (_, _) => ["check", ".", .. Words.Pick(random, [], ["--format", "sarif"], ["--quiet"], new[] { "--no-config" })])),
        new("repairs", random => OverShop(random, _ => true, (_, _) => ["check", ".", "--repairs"])),
        new("fix", random => OverShop(random, _ => true, (_, _) => ["check", ".", "--fix", "--dry-run"])),
        new("explain", random => OverShop(random, IsDocument, (random, file) => ["explain", Words.Pick(random, _rules), "--for", file])),
        new("facts", random => OverShop(random, IsMix, (random, file) => ["facts", file, .. Flag(random, "--full")])),
        new("show", random => OverShop(random, IsDocument, (random, file) => ["show", file, .. Some(random, "--width", "40")])),
        new("order", random => OverShop(random, IsStock, (_, file) => ["order", file])),
        new("proof", random => OverShop(random, IsStock, (_, file) => ["proof", file])),
        new("diagnose", random => OverShop(random, IsStock, (random, file) => ["diagnose", file, "--seen=" + Words.Text(random, Words.Signs, Words.Signs, Words.Pieces), .. Some(random, "--after", Words.Pick(random, Words.Signs)), .. Some(random, "--measured", Words.Pick(random, Words.Signs) + Words.Quantity(random)), .. Some(random, "--at", Words.Quantity(random))])),
        new("stretch", random => OverShop(random, IsStock, (_, file) => ["stretch", file])),
        new("split", random => OverShop(random, IsMix, (random, file) => ["split", file, .. Some(random, "--parts", Words.Pick(random, "1", "2", "3", "5")), .. Some(random, "--strength", Words.Quantity(random)), .. Some(random, "--batch", Words.Quantity(random)), .. Flag(random, "--rejected")])),
        new("tank", random => OverShop(random, IsRecipe, (random, file) => ["diagnose", file, "--seen=" + Words.Text(random, Words.Signs, Words.Signs, Words.Pieces), .. Some(random, "--measured", Words.Pick(random, Words.Signs) + Words.Quantity(random))])),
        new("formats", random => OverShop(random, _ => true, (random, _) => ["check", ".", "--format", Words.Pick(random, "json", "markdown", "github", "junit", "csv"), .. Flag(random, "--statistics"), .. Some(random, "--width", "40")])),
        new("sheets", random => OverShop(random, IsStock, (random, file) => ["bench-sheet", file, .. Some(random, "--batch", Words.Quantity(random)), .. Some(random, "--width", "60")])),
        new("labels", random => OverShop(random, IsStock, (random, file) => ["label", file, .. Some(random, "--format", "html"), .. Some(random, "--batch", Words.Text(random, Words.Pieces)), .. Some(random, "--size", "74x52"), .. Some(random, "--copies", Words.Pick(random, Words.Numbers))])),
        new("compare", random => OverTwo(random)),
        new("settings", random => OverShop(random, IsDocument, (random, file) => ["settings", file, .. Flag(random, "--all")])),
        new("lists", random => OverShop(random, _ => true, (random, _) => ["list", Words.Pick(random, "substances", "profiles", "units", "rules", "equipment"), Words.Text(random, Words.Formulas, Words.Pieces, Words.Units), .. Some(random, "--shop", ".")])),
        new("house-rules", random => ProgramRun.Of(ShopMutator.Mutate(random, Words.Pick(random, Corpus.Instance.HouseRuled)), Words.Pick(random, ["check", "."], new[] { "rules", "--test", "." }))),
        new("tables", TableRuns.Tables),
        new("import", TableRuns.Text),
        new("workbooks", TableRuns.Workbook),
        new("batches", Batches),
        new("merge", LogRuns.Of),
        new("asked", random => OverShop(random, IsMix, (random, file) => ["diagnose", file, "--ask", .. Some(random, "--seen", Words.Pick(random, Words.Signs))], Answers)),
        new("forms", random => DiskRun.Of(_noFiles, Answers(random), [], "init", ".", Words.Pick(random, "--product", "--water", "--profile"))),
        new("accept", random => LivingRuns.Accept(random, Words.Pick(random, Corpus.Instance.Shops))),
        new("baseline", random => LivingRuns.Baseline(random, Words.Pick(random, Corpus.Instance.Shops))),
        new("learn", LivingRuns.Learn),
        new("writing", Writing),
        new("editor", random => EditorRun.Of(random, Words.Pick(random, Corpus.Instance.Shops))),
    ];

    public static IReadOnlyList<FuzzTarget> Named(string names) => names == "all" ? All : [.. names.Split(',').SelectMany(n => All.Where(t => t.Name == n))];

    /// <summary>Lines as somebody answers questions, or as somebody fills a pipe.</summary>
    public static string Answers(Random random)
    {
        var lines = new StringBuilder();
        for (var left = random.Next(0, 40); left > 0; left--)
        {
            lines.Append(random.Next(5) switch
            {
                0 => "",
                1 => Words.Pick(random, "yes", "no", "y", "n", "?", "1", "2", "3", "4", "show", "next", "stop", "oxide", "element", "liquid", "solid", "w/v", "generic"),
                2 => Words.Quantity(random),
                3 => Words.Pick(random, Words.Numbers) + " " + Words.Pick(random, "%", "mg/L", "mS/cm", "% w/w", "mg/L as CaCO3", ""),
                _ => Words.Text(random, Words.Signs, Words.Formulas, Words.Pieces),
            }).Append(Words.Pick(random, "\n", "\n", "\n", "\r\n"));
        }

        return lines.ToString();
    }

    /// <summary>Records of batches, judged, graded and held against their stocks.</summary>
    private static Execution Batches(Random random)
    {
        var files = ShopMutator.Mutate(random, Words.Pick(random, Corpus.Instance.Batched));
        string Named(string ending) => Words.Pick(random, [.. files.Keys.Where(k => k.EndsWith(ending, StringComparison.Ordinal)).DefaultIfEmpty("gone" + ending)]);
        return ProgramRun.Of(files, random.Next(5) switch
        {
            0 => ["score", ".", .. Some(random, "--format", "json"), .. Some(random, "--width", "40")],
            1 => ["bench-sheet", Named(".stock.json"), "--actual", Named(".batch.json")],
            2 => ["explain", Words.Pick(random, "RL0615", "RL0616", "RL0617"), "--for", Named(".batch.json")],
            3 => ["facts", Named(".batch.json")],
            _ => ["check", ".", .. Some(random, "--format", Words.Pick(random, "json", "sarif"))],
        });
    }

    /// <summary>What is written is whole, and only what was asked for is touched.</summary>
    private static Execution Writing(Random random)
    {
        var files = ShopMutator.Mutate(random, Words.Pick(random, Corpus.Instance.Shops));
        var stock = Words.Pick(random, [.. files.Keys.Where(IsStock).DefaultIfEmpty("gone.stock.json")]);
        return random.Next(7) switch
        {
            0 => DiskRun.Of(files, "", ["out"], "check", ".", "--output", "out", "--format", Words.Pick(random, "text", "sarif", "json")),
            1 => DiskRun.Of(files, "", ["a", "b"], "check", ".", "--also", "json:a", "--also", "csv:b"),
            2 => DiskRun.Of(files, "", [.. files.Keys], "check", ".", "--fix"),
            3 => DiskRun.Of(files, "", [.. files.Keys, "*"], "check", ".", "--apply", Words.Pick(random, _rules)),
            4 => DiskRun.Of(files, "", ["*"], "split", stock, "--write", "parts"),
            5 => DiskRun.Of(files, "", ["out"], "label", stock, "--output", "out"),
            _ => DiskRun.Of(files, "", ["out"], "bench-sheet", stock, "--output", "out"),
        };
    }

    private static Execution OverShop(Random random, Func<string, bool> serves, Func<Random, string, string[]> arguments, Func<Random, string>? answers = null)
    {
        var shop = Words.Pick(random, Corpus.Instance.Shops);
        while (!shop.Files.Any(f => serves(f.Path)))
        {
            shop = Words.Pick(random, Corpus.Instance.Shops);
        }

        var files = ShopMutator.Mutate(random, shop);
        var file = Words.Pick(random, [.. files.Keys.Where(serves).DefaultIfEmpty("gone.stock.json")]);
        return ProgramRun.Answering(files, answers?.Invoke(random) ?? "", arguments(random, file));
    }

    /// <summary>A file of a shop against the same file after some changes.</summary>
    private static Execution OverTwo(Random random)
    {
        var shop = Words.Pick(random, Corpus.Instance.Shops);
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var (folder, version) in new[] { ("old", ShopMutator.Mutate(random, shop)), ("new", ShopMutator.Mutate(random, shop)) })
        {
            foreach (var (path, bytes) in version)
            {
                files[$"{folder}/{path}"] = bytes;
            }
        }

        return ProgramRun.Of(files, ["compare", "old", "new", .. Some(random, "--format", Words.Pick(random, "markdown", "html", "json"))]);
    }

    private static bool IsRecipe(string path) => path.EndsWith(".recipe.json", StringComparison.Ordinal);

    private static bool IsStock(string path) => path.EndsWith(".stock.json", StringComparison.Ordinal);

    private static bool IsMix(string path) => IsStock(path) || path.EndsWith(".recipe.json", StringComparison.Ordinal);

    private static bool IsDocument(string path) => IsMix(path) || path.EndsWith(".water.json", StringComparison.Ordinal);

    private static string[] Some(Random random, string option, string value) => random.Next(2) == 0 ? [] : [option + "=" + value];

    private static string[] Flag(Random random, string option) => random.Next(2) == 0 ? [] : [option];

    private static string MixLine(Random random)
    {
        var line = new StringBuilder();
        for (var left = random.Next(1, 5); left > 0; left--)
        {
            var (name, amount) = (Words.Pick(random, Words.Formulas), Words.Quantity(random));
            if (random.Next(2) == 0)
            {
                amount = Words.Pick(random, "1 g/L", "0.5 g/L", "200 g", "1e300 g/L", "1e-300 g/L", "1000 kg/L", "0 g", "3 mmol/L", "10 g");
            }

            line.Append(random.Next(2) == 0 ? $"{amount} {name}" : $"{name} {amount}").Append(left == 1 ? "" : Words.Pick(random, " + ", ", ", "; ", " "));
        }

        var text = line + (random.Next(2) == 0 ? " in " + Words.Pick(random, "1 L", "2 L", "0 L", "1e-300 L", "1e300 L", Words.Quantity(random)) : "");
        return random.Next(4) == 0 ? Words.Scratch(random, text) : text;
    }

    private static void ReadQuantity(string text, Due due)
    {
        if (!QuantityReader.TryRead(text, due, out var quantity, out var fault))
        {
            Promise(!string.IsNullOrWhiteSpace(fault.Message) && !fault.Message.Contains("NaN", StringComparison.Ordinal) | text.Contains("NaN", StringComparison.Ordinal), "a fault without a message");
            return;
        }

        Promise(quantity is not null, "neither quantity nor fault");
        Promise(!quantity!.ToString().Contains("NaN", StringComparison.Ordinal) && !quantity.ToString().Contains('∞'), "a quantity that is no number: " + quantity);
    }

    private static void ReadFormula(string text)
    {
        if (FormulaParser.TryParse(text, out var formula, out var error))
        {
            Promise(double.IsFinite(formula.MolarMass.GramsPerMole), "a molar mass that is no number");
        }
        else
        {
            Promise(error.Position >= 0 && error.Position <= text.Length && error.Reason.Length > 0, "an error outside the text");
        }
    }

    private static void ReadBytes(byte[] bytes)
    {
        var result = JsonReading.Read("a.stock.json", bytes);
        Promise(result.Source.Tree is not null || result.Problems.Count > 0, "nothing read and nothing said");
    }

    private static void ReadDocuments(Dictionary<string, byte[]> files)
    {
        var workspace = WorkspaceLoader.Load(ProgramRun.Tree(files), ["."], new LoadOptions { Profiles = ProfileLibrary.AllNames });
        foreach (var problem in workspace.Problems)
        {
            Promise(problem.Message.Length is > 0 and < 5000, "a problem without a message, or with an endless one");
            Promise(workspace.Sources.ContainsKey(problem.Place.File), "a problem in a file that was not read");
        }
    }

    private static void Promise(bool kept, string broken)
    {
        if (!kept)
        {
            throw new BrokenPromiseException(broken);
        }
    }
}
