using System.Text;
using RecipeLint.Shell;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

public sealed class DiagnoseTests
{
    private const string Gypsum = "examples/quillmere-first-draft/stocks/part-b.stock.json";
    private const string Clear = "examples/quillmere/stocks/part-b.stock.json";

    [Fact]
    public void AGrowerLearnsWhatTheNeedlesAreAndWhatToDo()
    {
        var answer = Cli.Run("diagnose", Gypsum, "--seen", "white needles, no fizz with vinegar", "--after", "2 weeks", "--at", "6 °C");

        Assert.Equal(0, answer.Code);
        Assert.Empty(answer.Error);
        Assert.Contains("1  Gypsum", answer.Out, StringComparison.Ordinal);
        var flowing = string.Join(' ', answer.Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("g/L of it falls out at 6 °C", flowing, StringComparison.Ordinal);
        Assert.Contains("g/L Ca (74.5 % of it)", flowing, StringComparison.Ordinal);
        Assert.Contains("1:20 instead of 1:100", flowing, StringComparison.Ordinal);
        Assert.All(answer.Out.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    [Fact]
    public void WordsThatAreNotKnownAreNamedAndLeftOut()
    {
        var answer = Cli.Run("diagnose", Gypsum, "--seen", "white neeedles frobnicated");

        Assert.Equal(0, answer.Code);
        Assert.Contains("I do not know the word 'frobnicated'; left out.", answer.Out, StringComparison.Ordinal);
        Assert.Contains("'neeedles' as 'needl", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hmm, strange", false)]
    [InlineData("since two weeks", false)]
    [InlineData("it floats but it does not float", true)]
    public void VagueAndContradictoryWordsGiveAQuestion(string seen, bool listed)
    {
        var answer = Cli.Run("diagnose", Gypsum, "--seen", seen);

        Assert.Equal(0, answer.Code);
        Assert.Contains("What would tell more:", answer.Out, StringComparison.Ordinal);
        Assert.Equal(listed, answer.Out.Contains("1  ", StringComparison.Ordinal));
        Assert.Equal(!listed, answer.Out.Contains("No cause is listed", StringComparison.Ordinal));
    }

    [Fact]
    public void WhoeverWasHitIsAskedNothing()
    {
        var answer = Cli.Run("diagnose", Gypsum, "--seen", "it splashed in my eye");

        Assert.Equal(1, answer.Code);
        Assert.Contains("Rinse at once", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("What would tell more", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("1  ", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>What hit somebody describes no deposit, and what ran when describes nothing by itself.</summary>
    [Theory]
    [InlineData("powder got in my eyes", 1)]
    [InlineData("white powder flew into my face", 1)]
    [InlineData("the dosing pump ran dry", 0)]
    [InlineData("EC goes up every day", 0)]
    public void OfWhatTellsNothingNoCauseIsListed(string seen, int code)
    {
        var answer = Cli.Run("diagnose", Gypsum, "--seen", seen);

        Assert.Equal(code, answer.Code);
        Assert.Contains("No cause is listed", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("1  ", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>
    /// What a feed can do does not tell that it did: no cause is listed for what feeds it or could fall out, but for something of it that was
    /// seen.
    /// </summary>
    [Theory]
    [InlineData("it got hot", false)]
    [InlineData("it got warm", false)]
    [InlineData("green slime on the walls in the light", true)]
    public void ACauseNeedsASignOfItsOwn(string seen, bool listed)
    {
        var answer = Cli.Run("diagnose", "examples/quillmere/recipes/lettuce.recipe.json", "--seen", seen);

        Assert.InRange(answer.Code, 0, 1);
        Assert.Equal(listed, answer.Out.Contains("  Algae", StringComparison.Ordinal));
        Assert.Equal(!listed, answer.Out.Contains("No cause is listed", StringComparison.Ordinal));
        Assert.Equal(listed, answer.Out.Contains("\n1  ", StringComparison.Ordinal));
    }

    /// <summary>Contents nobody can name: danger first, and neither cause nor test nor rescue.</summary>
    [Theory]
    [InlineData("diagnose", "--seen", "white needles")]
    [InlineData("stretch")]
    [InlineData("order")]
    [InlineData("proof")]
    public void NothingIsAdvisedOfWhatNobodyCanName(string command, params string[] told)
    {
        using var scratch = new Scratch();
        scratch.Write("a.substances.json", """{"format": 1, "substances": [{"id": "mystery", "name": "Mystery", "form": "liquid", "density": "1.1 g/mL", "unknownComposition": true}]}""");
        foreach (var steps in new[] { """{"add": "never-heard-of", "amount": "10 mL"}""", """{"add": "mystery", "amount": "10 mL"}""" })
        {
            scratch.Write("a.stock.json", $$"""{"format": 1, "name": "A", "makes": "1 L", "dose": "10 mL/L", "steps": [{{steps}}, {"topUp": "1 L", "of": "distilled"}]}""");

            var answer = Cli.RunIn(scratch.Path, null, [command, "a.stock.json", .. told]);

            Assert.Equal(1, answer.Code);
            Assert.Contains("is not known, so nothing is advised of this stock", string.Join(' ', answer.Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
            Assert.DoesNotContain("There is nothing in this solution", answer.Out, StringComparison.Ordinal);
            Assert.DoesNotContain("1  ", answer.Out, StringComparison.Ordinal);
            Assert.DoesNotContain("What would tell more", answer.Out, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void BesideWhatNobodyCanNameNothingIsWarmedAndNoAcidPutIn()
    {
        using var scratch = new Scratch();
        scratch.Write("a.substances.json", """{"format": 1, "substances": [{"id": "mystery", "name": "Mystery", "form": "liquid", "density": "1.1 g/mL", "unknownComposition": true}]}""");
        scratch.Write("a.stock.json", """{"format": 1, "name": "A", "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "800 mL", "of": "distilled"}, {"add": "mystery", "amount": "10 mL"}, {"add": "potassium-nitrate", "amount": "100 g"}, {"topUp": "1 L", "of": "distilled"}]}""");

        var answer = Cli.RunIn(scratch.Path, null, "diagnose", "a.stock.json", "--seen", "white needles at the bottom");

        Assert.Contains("Mystery may react in a way that cannot be foreseen", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Warm ", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("acid on", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("vinegar on", answer.Out, StringComparison.Ordinal);
        Assert.Equal(2, Cli.RunIn(scratch.Path, null, "split", "a.stock.json").Code);
    }

    [Fact]
    public void ContradictionsAreSaid()
    {
        var answer = Cli.Run("diagnose", Gypsum, "--seen", "needles. no needles");

        Assert.Contains("'needles' and 'no needles' contradict each other; both are left out.", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ABottleAsItShouldBeIsCalledSo()
    {
        var answer = Cli.Run("diagnose", Clear, "--seen", "clear, no deposit, no smell", "--after", "1 month");

        Assert.Equal(0, answer.Code);
        Assert.Contains("Nothing looks wrong", answer.Out, StringComparison.Ordinal);
        Assert.Contains("1  Nothing wrong", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void QuestionsAreAskedAndAnswersByNumberOrInWordsLeadToTheCause()
    {
        var answer = Asked(Gypsum, "white stuff\nneedles\n\n\nit stays\n");

        Assert.Equal(0, answer.Code);
        Assert.Contains("What do you see in the bottle?", answer.Out, StringComparison.Ordinal);
        Assert.Contains("1  Gypsum", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void TheEndOfTheAnswersEndsTheAsking()
    {
        var answer = Asked(Gypsum, "");

        Assert.Equal(0, answer.Code);
        Assert.Contains("rests on the recipe alone", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ATerminalIsAskedWithoutBeingTold()
    {
        var (output, error) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        var world = new Surroundings(output, error, () => new MemoryStream(Encoding.UTF8.GetBytes("white needles\n")), Reports.Tests.Support.Repository.Root, _ => null, true, Cli.Today)
        {
            InIsTerminal = true,
        };

        Assert.Equal(0, CommandLine.Run(["diagnose", Gypsum], world));
        Assert.Contains("What do you see in the bottle?", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void NothingGivenAndNoTerminalIsOneLineAndWrongUsage() => Refused("--seen", "diagnose", Gypsum);

    [Theory]
    [InlineData("warm", "'warm'")]
    [InlineData("4..8 °C", "one temperature")]
    [InlineData("300 °C", "-40 to 45 °C")]
    public void AnUnusableTemperatureIsOneLine(string at, string part) => Refused(part, "diagnose", Gypsum, "--seen", "white", "--at", at);

    [Fact]
    public void ARecipeIsDiagnosedAsTankAndLines()
    {
        var answer = Cli.Run("diagnose", "examples/quillmere/recipes/lettuce.recipe.json", "--seen", "slime in the drippers");

        Assert.Equal(0, answer.Code);
        Assert.Contains("Tank, lines and drippers", answer.Out, StringComparison.Ordinal);
        Assert.All(answer.Out.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    [Fact]
    public void AFileThatIsNotThereIsOneLine() => Refused("does not exist", "diagnose", "nowhere.stock.json", "--seen", "white");

    [Fact]
    public void ControlCharactersInWordsDoNotReachTheTerminal()
    {
        var answer = Cli.Run("diagnose", Gypsum, "--seen", "white needles \u001b[31mevilword\u202e");

        Assert.Equal(0, answer.Code);
        Assert.DoesNotContain("\u001b", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("\u202e", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void TheSameWordsGiveTheSameAnswer() =>
        Assert.Equal(
            Cli.Run("diagnose", Gypsum, "--seen", "milky cloud").Out,
            Cli.Run("diagnose", Gypsum, "--seen", "milky cloud").Out);

    private static Answer Asked(string file, string answers) =>
        Cli.RunIn(Reports.Tests.Support.Repository.Root, Encoding.UTF8.GetBytes(answers), "diagnose", file, "--ask");

    private static void Refused(string part, params string[] arguments)
    {
        var answer = Cli.Run(arguments);

        Assert.Equal(2, answer.Code);
        Assert.Empty(answer.Out);
        Assert.Contains(part, answer.Error, StringComparison.Ordinal);
        Assert.Equal(1, answer.Error.Count(c => c == '\n'));
    }
}
