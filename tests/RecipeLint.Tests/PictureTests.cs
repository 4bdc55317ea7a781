using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Profiles;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Files;
using RecipeLint.Reports.Pictures;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;
using RecipeLint.Tests.Support;
using LoadOptions = RecipeLint.Recipes.Files.LoadOptions;

namespace RecipeLint.Tests;

/// <summary>What a picture shows is what the engine answers, and its table says the same; a page is one file that holds everything.</summary>
public sealed partial class PictureTests
{
    private static readonly Lazy<Facts> Quillmere = new(() => Read("examples/quillmere"));

    private static Facts Read(string path) => Analyzer.Analyse(WorkspaceLoader.Load(
        new DiskFileTree(Repository.Root), [path], new LoadOptions { Profiles = ProfileLibrary.AllNames }));

    private static StockFacts Stock(string name) => Quillmere.Value.Stocks.Single(s => s.Stock.File.EndsWith($"/{name}.stock.json", StringComparison.Ordinal));

    [Theory]
    [InlineData("part-a")]
    [InlineData("part-b")]
    [InlineData("trace")]
    public void PointsOfTheRoomToSaturationAreThoseOfTheSolver(string name)
    {
        var stock = Stock(name);
        var picture = StockPictures.Saturation(stock, "s")!;
        foreach (var celsius in new[] { 0, 7.5, 25, 45 })
        {
            var state = StateSolver.Solve(stock.Chemistry.Mix, celsius);
            var highest = picture.Curves.SelectMany(c => c.Dots).Where(d => d.X == celsius).Max(d => d.Y);
            Assert.Equal(DepositJudgement.HighestIndex(state), highest, 9);

            // Equilibria solved from different starts agree to many digits.
            foreach (var curve in picture.Curves)
            {
                // Hydrates of one salt share their name.
                var dot = curve.Dots.Single(d => d.X == celsius).Y;
                Assert.Contains(
                    DepositJudgement.Indexes(state).Where(i => SolidWords.Called(i.Solid) == curve.Name), i => Math.Abs(i.Index - dot) < 1e-9);
            }
        }

        if (FirstCrystals.Of(stock.Chemistry.Mix, DepositOptions.Of(stock.Settings)).OnCooling is { } point)
        {
            Assert.Contains(picture.Marks, m => m.IsVertical && m.At == point.At.Celsius);
        }
    }

    /// <summary>The foremost curve says how far it may be off, in the picture and in its table; the tank's points too.</summary>
    [Fact]
    public void WhatIsNotKnownExactlyIsDrawn()
    {
        var stock = Stock("part-b");
        var limits = DepositOptions.Of(stock.Settings);
        var picture = StockPictures.Saturation(stock, "s")!;
        Assert.All(picture.Curves[0].Dots, d => Assert.True(d.DoubtUp > 0));
        var state = StateSolver.Solve(stock.Chemistry.Mix, 25);
        var solid = DepositJudgement.Indexes(state).First(i => SolidWords.Called(i.Solid) == picture.Curves[0].Name).Solid;
        var dot = picture.Curves[0].Dots.Single(d => d.X == 25);
        Assert.Equal(DepositJudgement.DoubtOf(state, solid, limits), dot.DoubtUp, 9);
        Assert.Equal(Say.Number(dot.DoubtUp), picture.Table.Rows.Single(r => r[0] == "25")[^1]);

        Assert.All(StockPictures.MixingPh(stock, "m")!.Curves[0].Dots.Skip(1), d => Assert.InRange(d.DoubtUp, 0.05, 0.3));
        var recipe = Quillmere.Value.Recipes.Single();
        Assert.All(RecipePictures.TankPh(recipe)!.Curves[0].Dots, d => Assert.Equal(0.2, d.DoubtUp));
        Assert.All(RecipePictures.TankEc(recipe)!.Curves[0].Dots, d => Assert.Equal(0.05 * d.Y, d.DoubtUp, 12));
    }

    [Fact]
    public void PointsOfTheStrengthAreThoseOfStretch()
    {
        var stock = Stock("part-b");
        var picture = StockPictures.Strength(stock, "s")!;
        foreach (var dot in picture.Curves[0].Dots.Where(d => d.X is 5 or 25))
        {
            var highest = HighestConcentration.Of(
                stock.Chemistry.Mix, new Temperature(dot.X), stock.Stock.Dose?.Value, DepositOptions.Of(stock.Settings));
            Assert.Equal(highest.Factor!.Value, dot.Y);
        }
    }

    [Fact]
    public void TheTankEndsWhereTheRecipeDoes()
    {
        var recipe = Quillmere.Value.Recipes.Single();
        var steps = TankFilling.Of(recipe);
        Assert.Equal(recipe.Doses.Count + 1, steps.Count);
        Assert.Equal(recipe.FinalVolume.Litres, steps[^1].Volume.Litres, 9);
        Assert.Equal(recipe.Chemistry.Tank.Ph, steps[^1].State.Ph, 6);
        Assert.Equal(steps[^1].State.Ph, RecipePictures.TankPh(recipe)!.Curves[0].Dots[^1].Y);
    }

    [Fact]
    public void SharesOfAMetalAddUpAndAreThoseOfTheSolver()
    {
        var recipe = Quillmere.Value.Recipes.Single();
        var mix = recipe.Chemistry.Mix;
        var pictures = ChelatePictures.Of(mix, recipe.Chemistry.Final.Ph, "x", "r");
        Assert.NotEmpty(pictures);
        var iron = pictures.Single(p => p.Key == "r-held-fe3");
        foreach (var row in iron.Curves[0].Dots.Select(d => d.X))
        {
            Assert.Equal(100, iron.Curves.Sum(c => c.Dots.Single(d => d.X == row).Y), 1);
        }

        var state = StateSolver.Solve(mix, new StateRequest(StateMoment.Tank, new Temperature(20), false, []) { SetPh = 6 });
        var agent = state.Chelates.Where(c => c.Metal == Component.FerricIron).MaxBy(c => c.OfMetal)!;
        Assert.Equal(100 * MetalHold.ShareOf(state, Component.FerricIron, agent.Agent), iron.Curves[0].Dots.Single(d => d.X == 6).Y, 9);
    }

    /// <summary>Every error shifted by hand through the engine, combined as roots of sums of squares, ends where the band does.</summary>
    [Theory]
    [InlineData(6)]
    [InlineData(7.5)]
    public void TheBandOfAShareIsThatOfShiftedConstants(double ph)
    {
        var recipe = Quillmere.Value.Recipes.Single();
        var mix = recipe.Chemistry.Mix;
        var iron = ChelatePictures.Of(mix, recipe.Chemistry.Final.Ph, "x", "r").Single(p => p.Key == "r-held-fe3");
        var request = new StateRequest(StateMoment.Tank, new Temperature(20), false, []) { SetPh = ph };
        var state = StateSolver.Solve(mix, request);
        var agent = state.Chelates.Where(c => c.Metal == Component.FerricIron).MaxBy(c => c.OfMetal)!.Agent;
        var share = MetalHold.ShareOf(state, Component.FerricIron, agent);
        var shifts = Components.Metals.Append(Component.Hydrogen)
            .SelectMany(m => Components.Holders.Where(h => mix.Totals[h] > 0).Select(h => (Func<int, ConstantSet>)(sign =>
                ConstantSet.Product.ShiftComplexes(m, h, sign))))
            .Concat(state.Deposits.Where(d => d.Solid.Spread > 0).Select(d => (Func<int, ConstantSet>)(sign =>
                ConstantSet.Product.ShiftSolid(d.Solid.Name, sign * d.Solid.Spread))));
        double down = 0, up = 0;
        foreach (var shift in shifts)
        {
            var moved = new[] { -1, 1 }
                .Select(sign => StateSolver.Solve(mix, request with { Solver = new EquilibriumSolver(shift(sign)) }))
                .Select(s => MetalHold.ShareOf(s, Component.FerricIron, agent) - share)
                .Append(0)
                .ToList();
            down += moved.Min() * moved.Min();
            up += moved.Max() * moved.Max();
        }

        var band = iron.Curves[0].Band.Single(b => b.X == ph);
        Assert.Equal(Math.Max(0, 100 * (share - Math.Sqrt(down))), band.Low, 0.02);
        Assert.Equal(Math.Min(100, 100 * (share + Math.Sqrt(up))), band.High, 0.02);
        Assert.True(band.High > band.Low);
    }

    [Fact]
    public void ABandHoldsItsCurveAndIsSaid()
    {
        var recipe = Quillmere.Value.Recipes.Single();
        var pictures = ChelatePictures.Of(recipe.Chemistry.Mix, recipe.Chemistry.Final.Ph, "x", "r");
        Assert.All(pictures.SelectMany(p => p.Curves), c => Assert.All(
            c.Dots.Zip(c.Band), p => Assert.InRange(p.First.Y, p.Second.Low - 1e-9, p.Second.High + 1e-9)));
        Assert.Contains(pictures, p => p.Table.Rows.Any(r => r.Any(c => c.Contains(" to ", StringComparison.Ordinal))));
    }

    [Fact]
    public void TheTableBehindAPictureSaysTheSame()
    {
        var recipe = Quillmere.Value.Recipes.Single();
        var picture = RecipePictures.Elements(recipe, ElementUncertainty.Of(recipe, Quillmere.Value.FindStock))!;
        Assert.Equal(picture.Table.Rows.Select(r => r[0]), picture.Up.Labels!);
        foreach (var (dot, row) in picture.Curves[0].Dots.Zip(picture.Table.Rows))
        {
            Assert.Equal(recipe.MilligramsPerLitre(row[0]), dot.X);
            Assert.Equal(Say.Number(dot.X), row[1]);
            Assert.Equal(Say.Number(dot.Doubt), row[2]);
        }
    }

    [Theory]
    [InlineData("examples/quillmere/recipes/lettuce.recipe.json")]
    [InlineData("examples/quillmere-first-draft/recipes/spinach.recipe.json")]
    [InlineData("examples/quillmere-first-draft/stocks/part-b.stock.json")]
    [InlineData("examples/quillmere-first-draft/stocks/basil.stock.json")]
    [InlineData("examples/orlinghythe/recipelint.json")]
    public void APageIsOneFileWithoutAddresses(string file)
    {
        using var folder = new Scratch();
        Assert.Equal(0, Cli.Run("report", file, "-o", Path.Combine(folder.Path, "page.html")).Code);
        var text = File.ReadAllText(Path.Combine(folder.Path, "page.html"));
        var page = XDocument.Parse(text.Replace("<!DOCTYPE html>", "", StringComparison.Ordinal));
        Assert.DoesNotContain(page.Descendants(), e => e.Name.LocalName is "link" or "img" or "iframe" or "object");
        Assert.DoesNotContain(page.Descendants().Attributes(), a => a.Name.LocalName is "src" or "style" || (a.Name.LocalName == "href" && !a.Value.StartsWith('#')));
        Assert.DoesNotMatch("url\\((?!#)", text);
        Assert.DoesNotContain("exception", text, StringComparison.OrdinalIgnoreCase);
        var ids = page.Descendants().Attributes("id").Select(a => a.Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
        Assert.All(page.Descendants().Attributes().Where(a => a.Name.LocalName is "aria-labelledby" or "clip-path").SelectMany(a => Id().Matches(a.Value)), m =>
            Assert.Contains(m.Value, ids));
        Assert.Single(page.Descendants("h1"));
    }

    /// <summary>No kind of file has an empty page: a record says what came of the batch, settings what the shop has, a rule what it wants.</summary>
    [Theory]
    [InlineData("examples/fennelwick/batches/b-2026-04-13.batch.json", "Do not use it yet: find out what is in it", "What went in")]
    [InlineData("examples/fennelwick/recipelint.json", "Equipment and sites", "pocket-scale")]
    [InlineData("examples/fennelwick/house-rules/tank-short-of-calcium.rule.json", "HR0001 tank-short-of-calcium", "Examples")]
    [InlineData("examples/fennelwick/products/own.substances.json", "Products", "fennelwick-iron-6")]
    [InlineData("examples/fennelwick/profiles/tomato.profile.json", "Elements in the final solution, mg/L", "Ratios")]
    [InlineData("examples/fennelwick/water/well.water.json", "Ions in charge", "HCO")]
    public void EveryKindOfFileHasItsPage(string file, string heading, string figure)
    {
        using var folder = new Scratch();
        Assert.Equal(0, Cli.Run("report", file, "-o", Path.Combine(folder.Path, "page.html")).Code);
        var text = File.ReadAllText(Path.Combine(folder.Path, "page.html"));
        Assert.Contains(heading, text, StringComparison.Ordinal);
        Assert.Contains(figure, text, StringComparison.Ordinal);
        Assert.DoesNotContain("No recipe of the shop doses this stock", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a.stock.json", "it is one of the files read")]
    [InlineData("/dev/null", "it is a device")]
    [InlineData(".", "it is a folder")]
    [InlineData("b.recipe.json", "its name is that of a file that is read")]
    public void APageNeverGoesWhereItDoesHarm(string target, string reason)
    {
        using var folder = new Scratch();
        var stock = folder.Write("a.stock.json", """{ "format": 1, "makes": "1 L", "steps": [ { "add": "potassium-nitrate", "amount": "10 g" } ] }""");
        var before = File.ReadAllText(stock);
        var answer = Cli.RunIn(folder.Path, null, "report", "a.stock.json", "-o", target);
        Assert.Equal(2, answer.Code);
        Assert.Contains(reason, Assert.Single(answer.Error.TrimEnd('\n').Split('\n')), StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(stock));
    }

    [Fact]
    public void AReportOfABrokenFileSaysWhatIsBroken()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", "{ \"format\": 1, \"makes\": \"1 L\", \"steps\": [ { \"add\": ");
        Assert.Equal(0, Cli.RunIn(folder.Path, null, "report", "a.stock.json", "-o", "page.html").Code);
        var text = File.ReadAllText(Path.Combine(folder.Path, "page.html"));
        Assert.Contains("RL0001", text, StringComparison.Ordinal);
        Assert.Contains("cannot be read far enough", text, StringComparison.Ordinal);
    }

    [Fact]
    public void HostileNamesStayTextOnPages()
    {
        using var folder = new Scratch();
        const string Name = "<script>alert(1)</script>\\u0022 onload=x \\u202E]]>";
        folder.Write("a&<b>.stock.json", $$"""
            { "format": 1, "name": "{{Name}}", "makes": "1 L", "dose": "10 mL/L", "steps": [ { "pour": "0.9 L", "of": "distilled" },
              { "add": "calcium-nitrate-4h2o", "amount": "90 g", "id": "<img src=x>" }, { "add": "magnesium-sulfate-7h2o", "amount": "90 g" }, { "topUp": "1 L" } ] }
            """);
        folder.Write("t.recipe.json", $$"""
            { "format": 1, "name": "{{Name}}", "water": "distilled", "final": "100 L", "doses": [ { "stock": "a&<b>.stock.json", "dose": "10 mL/L" } ] }
            """);
        Assert.Equal(0, Cli.RunIn(folder.Path, null, "report", ".", "-o", "all.html").Code);
        var files = Directory.EnumerateFiles(Path.Combine(folder.Path, "all-files"), "*.html").Append(Path.Combine(folder.Path, "all.html")).ToList();
        Assert.Equal(3, files.Count);
        foreach (var file in files)
        {
            var text = File.ReadAllText(file);
            var page = XDocument.Parse(text.Replace("<!DOCTYPE html>", "", StringComparison.Ordinal));
            Assert.True(page.Descendants("script").Count() <= (file.EndsWith("all.html", StringComparison.Ordinal) ? 1 : 0));
            Assert.DoesNotContain(page.Descendants().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
            Assert.Empty(page.Descendants("img"));
            Assert.DoesNotContain('\u202E', text);
        }
    }

    [Fact]
    public void AFolderGetsAnOverviewAndPagesThatOnlyReplaceThemselves()
    {
        using var folder = new Scratch();
        var target = Path.Combine(folder.Path, "all.html");
        Assert.Equal(0, Cli.Run("report", "examples/quillmere", "-o", target).Code);
        var page = XDocument.Parse(File.ReadAllText(target).Replace("<!DOCTYPE html>", "", StringComparison.Ordinal));
        var links = page.Descendants("a").Attributes("href").Select(a => a.Value).Where(h => !h.StartsWith('#')).ToList();
        Assert.Equal(Quillmere.Value.Workspace.Asked.Count, links.Count);
        Assert.All(links, l => Assert.True(File.Exists(Path.Combine(folder.Path, l)), l));

        // A second run replaces its own; a folder of somebody else's stays as it is.
        Assert.Equal(0, Cli.Run("report", "examples/quillmere", "-o", target).Code);
        folder.Write("other-files/mine.txt", "mine");
        var refused = Cli.Run("report", "examples/quillmere", "-o", Path.Combine(folder.Path, "other.html"));
        Assert.Equal(2, refused.Code);
        Assert.Single(Directory.EnumerateFiles(Path.Combine(folder.Path, "other-files")));
    }

    [Fact]
    public void FiguresOfAPictureAreDrawnWhereTheyBelong()
    {
        // Two points of a curve on linear axes: their distance in the drawing is in proportion.
        var picture = StockPictures.Strength(Stock("part-b"), "s")!;
        var svg = Cli.Run("report", "examples/quillmere/stocks/part-b.stock.json", "-o", Path.Combine(Path.GetTempPath(), "recipelint-drawn.html"));
        Assert.Equal(0, svg.Code);
        var text = File.ReadAllText(Path.Combine(Path.GetTempPath(), "recipelint-drawn.html"));
        File.Delete(Path.Combine(Path.GetTempPath(), "recipelint-drawn.html"));
        var figure = text[text.IndexOf("id=\"stock-strength\"", StringComparison.Ordinal)..];
        var points = Polyline().Match(figure).Groups[1].Value.Split(' ').Select(p => p.Split(','))
            .Select(p => (X: double.Parse(p[0], CultureInfo.InvariantCulture), Y: double.Parse(p[1], CultureInfo.InvariantCulture))).ToList();
        var dots = picture.Curves[0].Dots;
        Assert.Equal(dots.Count, points.Count);
        var scale = (points[^1].Y - points[0].Y) / (dots[^1].Y - dots[0].Y);
        for (var i = 0; i < dots.Count; i++)
        {
            Assert.Equal(points[0].Y + (scale * (dots[i].Y - dots[0].Y)), points[i].Y, 2);
        }
    }

    [GeneratedRegex("[A-Za-z0-9-]+-(?:clip[0-9]+|t|d)\\b")]
    private static partial Regex Id();

    [GeneratedRegex("<polyline class=\"s-first\" points=\"([^\"]*)\"")]
    private static partial Regex Polyline();
}
