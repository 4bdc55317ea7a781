using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

public sealed class ProofTests
{
    private const string PartB = "examples/quillmere/stocks/part-b.stock.json";

    [Fact]
    public void ATechnicianLearnsWhatToWeighAndMeasureAndWhatItShows()
    {
        var answer = Cli.Run("proof", PartB);

        Assert.Equal(0, answer.Code);
        Assert.Empty(answer.Error);
        Assert.Contains("1:100 in distilled water", answer.Out, StringComparison.Ordinal);
        Assert.Contains("mS/cm at 25 °C", answer.Out, StringComparison.Ordinal);
        Assert.Contains("Slips that show", answer.Out, StringComparison.Ordinal);
        Assert.Contains("magnesium sulfate heptahydrate", answer.Out, StringComparison.Ordinal);
        Assert.Contains("No pH meter is declared", answer.Out, StringComparison.Ordinal);
        Assert.All(answer.Out.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    /// <summary>25 g/L of gypsum was an error of the check, and the proof measured on; the order of a single salt said nothing either.</summary>
    [Theory]
    [InlineData("\"calcium-nitrate-4h2o\", \"amount\": \"60 g\" }, { \"add\": \"magnesium-sulfate-7h2o\", \"amount\": \"40 g\"", "RL0101: 24.9")]
    [InlineData("\"potassium-nitrate\", \"amount\": \"250 g\"", "RL0111")]
    public void WhatTheCheckCallsAnErrorIsSaidByProofAndOrder(string held, string said)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", $$"""
            { "format": 1, "name": "A", "makes": "1 L", "dose": "10 mL/L", "keep": { "at": "5..25 °C", "for": "3 months" },
              "steps": [ { "pour": "700 mL", "of": "distilled" }, { "add": {{held}} }, { "topUp": "1 L", "of": "distilled" } ] }
            """);
        var check = Cli.RunIn(scratch.Path, null, "check", "a.stock.json");
        Assert.Contains($"error {said[..6]}", check.Out, StringComparison.Ordinal);

        var proof = Cli.RunIn(scratch.Path, null, "proof", "a.stock.json");
        var order = Cli.RunIn(scratch.Path, null, "order", "a.stock.json");

        Assert.StartsWith($"No reading mends what 'recipelint check' calls wrong in it, {said}", proof.Out, StringComparison.Ordinal);
        Assert.Contains("Slips that show", proof.Out, StringComparison.Ordinal);
        Assert.Contains($"calls wrong in it, {said}", string.Join(' ', order.Out.Split('\n')), StringComparison.Ordinal);
        Assert.Equal(1, order.Code);
        Assert.Equal(1, proof.Code);
        Assert.All(proof.Out.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    /// <summary>Whoever mixes from the sheet is told as well, before the first weight, and no command ends as if all were well.</summary>
    [Theory]
    [InlineData("bench-sheet")]
    [InlineData("stretch")]
    [InlineData("order")]
    [InlineData("proof")]
    public void EveryCommandOnMixingEndsWithOneBesideAnErrorOfTheCheck(string command)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", """
            { "format": 1, "name": "A", "makes": "1 L", "dose": "10 mL/L", "keep": { "at": "5..25 °C", "for": "3 months" },
              "steps": [ { "pour": "700 mL", "of": "distilled" }, { "add": "calcium-nitrate-4h2o", "amount": "60 g" },
                { "add": "magnesium-sulfate-7h2o", "amount": "40 g" }, { "topUp": "1 L", "of": "distilled" } ] }
            """);
        scratch.Write("b.stock.json", """
            { "format": 1, "name": "B", "makes": "1 L", "dose": "10 mL/L", "keep": { "at": "5..25 °C", "for": "3 months" },
              "steps": [ { "pour": "700 mL", "of": "distilled" }, { "add": "potassium-nitrate", "amount": "40 g" },
                { "topUp": "1 L", "of": "distilled" } ] }
            """);

        var (faulty, sound) = (Cli.RunIn(scratch.Path, null, command, "a.stock.json"), Cli.RunIn(scratch.Path, null, command, "b.stock.json"));

        Assert.Equal((1, 0), (faulty.Code, sound.Code));
        Assert.Contains("RL0101", faulty.Out, StringComparison.Ordinal);
        Assert.Equal(1, Cli.RunIn(scratch.Path, null, "check", "a.stock.json").Code);
    }

    /// <summary>What the order and the bench sheet refuse is no stock to weigh and measure either.</summary>
    [Fact]
    public void AStockThatMustNotBeMixedAsWrittenIsNotMeasured()
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", """
            { "format": 1, "name": "Acid", "makes": "10 L",
              "steps": [ { "add": "sulfuric-96", "amount": "3 L", "assay": "96 %" }, { "pour": "6 L" }, { "topUp": "10 L" } ] }
            """);
        var (proof, order) = (Cli.RunIn(scratch.Path, null, "proof", "a.stock.json"), Cli.RunIn(scratch.Path, null, "order", "a.stock.json"));

        Assert.Equal(1, proof.Code);
        Assert.Equal(1, order.Code);
        Assert.Contains("somebody could be hurt", proof.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("1:100", proof.Out, StringComparison.Ordinal);
    }

    /// <summary>What matters fits on one screen; the rest is asked for.</summary>
    [Theory]
    [InlineData("examples/quillmere/stocks/part-a.stock.json")]
    [InlineData("examples/quillmere/stocks/part-b.stock.json")]
    [InlineData("examples/quillmere/stocks/trace.stock.json")]
    [InlineData("examples/quillmere/stocks/molybdate-pre.stock.json")]
    [InlineData("examples/quillmere-first-draft/stocks/trace.stock.json")]
    public void OneScreenHoldsWhatMatters(string stock)
    {
        var (brief, all) = (Cli.Run("proof", stock), Cli.Run("proof", stock, "--all"));

        Assert.InRange(brief.Out.TrimEnd('\n').Split('\n').Length, 8, 40);
        Assert.All(brief.Out.Split('\n'), line => Assert.True(line.Length <= 100, line));
        Assert.True(all.Out.Length > brief.Out.Length);
        Assert.Contains("--all", brief.Out, StringComparison.Ordinal);
    }

    /// <summary>This shop lists scales and no meter: what only a meter would show is not called visible.</summary>
    [Fact]
    public void OnlyTheShopsOwnInstrumentsMakeASlipVisible()
    {
        var answer = Cli.Run("proof", PartB).Out.ReplaceLineEndings(" ");

        Assert.Contains("with the scales and meters that this shop lists", answer, StringComparison.Ordinal);
        Assert.Contains("with an EC meter and a pH meter besides", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("monopotassium-phosphate", "dipotassium-phosphate")]
    [InlineData("monoammonium-phosphate", "diammonium-phosphate")]
    [InlineData("boric-acid", "borax-10h2o")]
    [InlineData("potassium-bicarbonate", "potassium-carbonate")]
    [InlineData("calcium-nitrate-4h2o", "calcium-chloride-2h2o")]
    public void NeighboursOnTheShelfAreTriedOut(string substance, string neighbour)
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", $$"""{"format": 1, "name": "A", "makes": "1 L", "steps": [{"pour": "700 mL"}, {"add": "{{substance}}", "amount": "3 g", "assay": "99 %"}, {"topUp": "1 L"}]}""");

        var answer = Cli.RunIn(folder.Path, null, "proof", "a.stock.json", "--all").Out;

        var name = string.Join(' ', Chemistry.Substances.SubstanceCatalogue.BuiltIn.ById(neighbour)!.Name.Split(' ').Take(2));
        Assert.Contains(name, answer, StringComparison.Ordinal);
    }

    /// <summary>Without its only salt a bottle holds water, and any meter shows that.</summary>
    [Fact]
    public void TheOnlySaltLeftOutShows()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """{"format": 1, "name": "A", "makes": "1 L", "steps": [{"pour": "700 mL"}, {"add": "potassium-nitrate", "amount": "30 g", "assay": "99 %"}, {"topUp": "1 L"}]}""");

        var answer = Cli.RunIn(folder.Path, null, "proof", "a.stock.json").Out;

        Assert.Contains("left out: 1 of 1", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("no potassium nitrate (30 g left out)", answer, StringComparison.Ordinal);
    }

    /// <summary>A bottle that must not be made is not checked, and the exit code says so as with every other command.</summary>
    [Fact]
    public void ADangerousStockIsNotChecked()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", """{"format": 1, "name": "A", "makes": "1 L", "steps": [{"pour": "700 mL"}, {"add": "sodium-hypochlorite-5", "amount": "50 mL"}, {"add": "ammonium-sulfate", "amount": "20 g"}, {"topUp": "1 L"}]}""");

        var answer = Cli.RunIn(folder.Path, null, "proof", "a.stock.json");

        Assert.Equal(1, answer.Code);
        Assert.Contains("chloramines", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("weigh ", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void DeclaredMetersAreUsedInsteadOfAssumedOnes()
    {
        using var folder = new Scratch();
        folder.Write("recipelint.json", """{ "meters": [ { "name": "pen", "measures": "pH", "accuracy": "± 0.02" }, { "name": "ec", "measures": "EC", "accuracy": "± 1 %" } ] }""");
        folder.Write("a.stock.json", Stock);

        var answer = Cli.RunIn(folder.Path, null, "proof", "a.stock.json");

        Assert.Equal(0, answer.Code);
        Assert.DoesNotContain("meter is declared", answer.Out, StringComparison.Ordinal);
        Assert.Contains("No scale is declared", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "meters": [ { "name": "pen", "measures": "taste", "accuracy": "± 0.02" } ] }""")]
    [InlineData("""{ "meters": [ { "name": "pen", "measures": "pH", "accuracy": "± 0.1 g" } ] }""")]
    [InlineData("""{ "meters": [ { "name": "ec", "measures": "EC", "accuracy": "good" } ] }""")]
    public void AMeterThatCannotBeReadIsAFinding(string settings)
    {
        using var folder = new Scratch();
        folder.Write("recipelint.json", settings);
        folder.Write("a.stock.json", Stock);

        Assert.Equal(1, Cli.RunIn(folder.Path, null, "check", ".").Code);
        Assert.Equal(0, Cli.RunIn(folder.Path, null, "proof", "a.stock.json").Code);
    }

    [Fact]
    public void MeasurementsLeadBackToTheSlip()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", Stock);

        var answer = Cli.RunIn(folder.Path, null, "diagnose", "a.stock.json", "--measured", "EC 3.35 mS/cm at 1:100");

        Assert.Equal(0, answer.Code);
        Assert.Contains("too high", answer.Out, StringComparison.Ordinal);
        Assert.Contains("twice the potassium nitrate", answer.Out, StringComparison.Ordinal);
        Assert.All(answer.Out.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    [Fact]
    public void ARightReadingIsCalledSo()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", Stock);

        var answer = Cli.RunIn(folder.Path, null, "diagnose", "a.stock.json", "--measured", "1 L weighs 1.06 kg");

        Assert.Equal(0, answer.Code);
        Assert.Contains("as it should be", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void AConductivityThatNoModelGivesIsSaid()
    {
        using var folder = new Scratch();
        folder.Write("a.stock.json", Stock);

        var answer = Cli.RunIn(folder.Path, null, "diagnose", "a.stock.json", "--measured", "EC 90 mS/cm");

        Assert.Equal(0, answer.Code);
        Assert.Contains("Measure a dilution", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("blue")]
    [InlineData("pH 99")]
    [InlineData("EC 1000 ppm at 1:100")]
    public void AMeasurementThatIsNoneIsOneLineAndWrongUsage(string measured)
    {
        var answer = Cli.Run("diagnose", PartB, "--measured", measured);

        Assert.Equal(2, answer.Code);
        Assert.Empty(answer.Out);
        Assert.Equal(1, answer.Error.Count(c => c == '\n'));
    }

    [Theory]
    [InlineData("proof", "examples/quillmere/recipes/lettuce.recipe.json")]
    [InlineData("proof", "nowhere.stock.json")]
    public void WhatIsNoStockIsOneLine(string command, string file)
    {
        var answer = Cli.Run(command, file);

        Assert.Equal(2, answer.Code);
        Assert.Equal(1, answer.Error.Count(c => c == '\n'));
    }

    private const string Stock = """{ "format": 1, "makes": "1 L", "dose": "10 mL/L", "steps": [ { "pour": "0.7 L", "of": "distilled" }, { "add": "potassium-nitrate", "amount": "120 g" }, { "topUp": "1 L", "of": "distilled" } ] }""";
}
