using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Files that once passed without a word, or with too mild a one, and what has to be said of them.</summary>
public sealed class SilentHarmTests
{
    private const string Keep = """ "dose": "1:100", "keep": {"at": "10..25 °C", "for": "2 months", "light": "dark"} """;

    /// <summary>As mixed: 0.18 mol/L of lye has pH 13.3, phosphoric acid of 0.29 mol/L 1.4; the air and the leaf come later.</summary>
    [Theory]
    [InlineData("potassium-hydroxide", "100 g", "corrosive")]
    [InlineData("phosphoric-85", "200 mL", "corrosive")]
    [InlineData("hydrogen-peroxide-35", "2 L", "hydrogen peroxide")]
    [InlineData("sodium-hypochlorite-12.5", "1 L", "available chlorine")]
    [InlineData("copper-sulfate-5h2o", "300 g", "7.64 g/L Cu")]
    [InlineData("urea", "2 kg", "200 g/L of urea")]
    [InlineData("sodium-chloride", "500 g", "19.7 g/L Na")]
    [InlineData("boric-acid", "200 g", "3.5 g/L B")]
    public void ASprayThatBurnsIsAnError(string substance, string amount, string words)
    {
        var answer = Check("spray.recipe.json", Spray(substance, amount));

        Assert.Equal(1, answer.Code);
        Assert.Contains("error RL0520 spray-burns-leaves", answer.Out, StringComparison.Ordinal);
        Assert.Contains(words, Flowing(answer.Out), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("urea", "50 g")]
    [InlineData("magnesium-sulfate-7h2o", "200 g")]
    [InlineData("calcium-chloride-2h2o", "50 g")]
    [InlineData("boric-acid", "10 g")]
    [InlineData("zinc-sulfate-7h2o", "30 g")]
    [InlineData("manganese-sulfate-h2o", "30 g")]
    [InlineData("potassium-bicarbonate", "50 g")]
    [InlineData("potassium-silicate-29be", "5 mL")]
    [InlineData("potassium-nitrate", "400 g")]
    public void AUsualSprayIsNone(string substance, string amount) =>
        Assert.DoesNotContain("spray-burns-leaves", Check("spray.recipe.json", Spray(substance, amount)).Out, StringComparison.Ordinal);

    [Theory]
    [InlineData("potassium-hydroxide", "40 g", "")]
    [InlineData("nitric-60", "60 mL", """, "adjust": {"pH": "5.8", "using": "nitric-38"}""")]
    public void ATankInWhichRootsDieIsAnError(string substance, string amount, string adjust)
    {
        var answer = Check("r.recipe.json", Feed($$"""{"add": "{{substance}}", "amount": "{{amount}}"}, {{Usual}}""", adjust));

        Assert.Equal(1, answer.Code);
        Assert.Contains("error RL0509 ph-outside-window", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("sodium-hypochlorite-12.5", "200 mL", "hydrogen-peroxide-35", "100 mL")]
    [InlineData("copper-sulfate-5h2o", "2 g", "hydrogen-peroxide-35", "100 mL")]
    [InlineData("fe-dtpa-liquid-6", "20 mL", "hydrogen-peroxide-3", "100 mL")]
    public void WhatMustNotMeetIsNotSplitIntoPartsOfOneTank(string one, string much, string other, string more)
    {
        var answer = Run("s.stock.json", Stock(one, much, other, more), "split", "s.stock.json");

        Assert.Equal(1, answer.Code);
        Assert.Contains("is not split", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Part A", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>0.2 mg/L of copper from half a gram in a hundred litres; tomato has no limit of its own, peppers stand 1 mg/L.</summary>
    [Fact]
    public void NoRepairPassesWhatHarms()
    {
        var file = Feed("""{"add": "copper-sulfate-5h2o", "amount": "2 g"}, """ + Usual);
        var answer = Run("r.recipe.json", file, "check", "r.recipe.json", "--repairs");

        Assert.Contains("error RL0503 element-toxic", answer.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("more-copper", answer.Out, StringComparison.Ordinal);
        var applied = Run("r.recipe.json", file, "check", "r.recipe.json", "--apply", "RL0501:more-copper-sulfate-5h2o");
        Assert.DoesNotContain("208 mg/L", applied.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ARepairSaysWhatItTakesOutOfTheBottle()
    {
        var answer = Flowing(Run(
            "s.stock.json", Stock("hydrogen-peroxide-3", "100 mL", "fe-dtpa-liquid-6", "20 mL"), "check", "s.stock.json", "--repairs").Out);

        Assert.Contains("Leave hydrogen peroxide 3 % out.", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("What is in the bottle stays the same.", answer, StringComparison.Ordinal);
        Assert.Contains("hydrogen peroxide 3 % 101 -> 0 g/L", answer, StringComparison.Ordinal);
    }

    [Fact]
    public void ARepairThatTakesTheSulfurAwayStandsApart()
    {
        var answer = Flowing(Run(
            "s.stock.json", Stock("calcium-nitrate-4h2o", "100 g", "magnesium-sulfate-7h2o", "50 g"), "check", "s.stock.json", "--repairs").Out);
        var (apart, swap) = (answer.IndexOf("These give the plants something else", StringComparison.Ordinal),
            answer.IndexOf("use-magnesium-nitrate-6h2o", StringComparison.Ordinal));

        Assert.InRange(apart, 0, swap);
        Assert.True(answer.IndexOf("RL0101:own-bottle", StringComparison.Ordinal) is > 0 and var own && own < apart);
    }

    [Theory]
    [InlineData("KMnO4 5 g + hydrochloric acid 31 % 50 mL in 1 L", "chlorine")]
    [InlineData("Na2S 10 g + vinegar 5 % 100 mL in 1 L", "hydrogen sulfide")]
    [InlineData("NaNO2 20 g + hydrochloric acid 31 % 50 mL in 1 L", "nitr")]
    [InlineData("NaNO2 20 g + HCl 31 % 50 mL in 1 L", "nitr")]
    [InlineData("KMnO4 5 g + glycerol 10 g", "catch fire")]
    public void WhatIsNamedByItsFormulaIsWarnedOf(string mix, string danger)
    {
        using var scratch = new Scratch();
        var answer = Cli.RunIn(scratch.Path, null, "dissolve", mix);

        Assert.NotEqual(0, answer.Code);
        Assert.Contains(danger, Flowing(answer.Out + answer.Error), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("potash", "potassium-carbonate", "potassium-chloride", "potassium-sulfate")]
    [InlineData("lime", "calcium-carbonate", "calcium-hydroxide")]
    public void AWordForSeveralThingsIsAsked(string word, params string[] meant)
    {
        var answer = Check("s.stock.json", Stock(word, "10 g", "potassium-nitrate", "10 g"));

        Assert.Equal(1, answer.Code);
        Assert.Contains("ambiguous-substance", answer.Out, StringComparison.Ordinal);
        Assert.All(meant, m => Assert.Contains(m, answer.Out, StringComparison.Ordinal));
        Assert.DoesNotContain("potassium-hydroxide", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void AWholeFeedWithoutCalciumIsAnError()
    {
        var answer = Check("r.recipe.json", Feed(Usual.Replace("\"calcium-nitrate-4h2o\", \"amount\": \"90 g\"", "\"potassium-nitrate\", \"amount\": \"30 g\"", StringComparison.Ordinal)
            + ", " + Traces));

        Assert.Equal(1, answer.Code);
        Assert.Contains("error RL0506 element-missing", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("humic-acid", "100 mL", "phosphoric-85", "20 mL")]
    [InlineData("humic-acid", "50 mL", "calcium-nitrate-4h2o", "50 g")]
    public void AnExtractOfWhichNothingStaysIsAnError(string one, string much, string other, string more) =>
        Assert.Contains("error RL0119", Check("s.stock.json", Stock(one, much, other, more)).Out, StringComparison.Ordinal);

    /// <summary>Iron(II) in phosphoric acid rusts out within the two months it is kept: what a check calls an error no command praises.</summary>
    [Theory]
    [InlineData("order")]
    [InlineData("stretch")]
    public void WhatACheckCallsAnErrorEveryCommandSays(string command)
    {
        var answer = Run("s.stock.json", Stock("phosphoric-85", "10 mL", "ferrous-sulfate-7h2o", "10 g"), command, "s.stock.json");

        Assert.Contains("Air turns it to iron(III)", Flowing(answer.Out), StringComparison.Ordinal);
        Assert.DoesNotContain("Stays clear even eight times as strong", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void NoStockIsStretchedPastItsVessel()
    {
        var answer = Run("s.stock.json", """
            {"format": 1, "name": "s", "makes": "1 L", "keep": {"at": "10..25 °C"}, "steps": [{"pour": "0.6 L", "of": "distilled"},
              {"add": "hydrogen-peroxide-12", "amount": "300 mL"}, {"topUp": "1 L", "of": "distilled"}]}
            """, "stretch", "s.stock.json");

        Assert.DoesNotContain("8 x", answer.Out, StringComparison.Ordinal);
        Assert.Contains("3.33 x", answer.Out, StringComparison.Ordinal);
        Assert.Contains("no room is left for water", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("urea", "100 g", "25..35 °C", "6 months", "RL0308")]
    [InlineData("hydrogen-peroxide-35", "900 mL", "5..35 °C", "12 months", "warning RL0710")]
    public void WhatGoesWhileItIsKeptIsSaid(string substance, string amount, string at, string time, string rule)
    {
        var answer = Check("s.stock.json", $$"""
            {"format": 1, "name": "s", "makes": "1 L", "keep": {"at": "{{at}}", "for": "{{time}}", "light": "dark"},
             "steps": [{"pour": "50 mL", "of": "distilled"}, {"add": "{{substance}}", "amount": "{{amount}}"}, {"topUp": "1 L", "of": "distilled"}]}
            """);

        Assert.Contains(rule, answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("4", "error RL0038")]
    [InlineData("9.5", "warning RL0038")]
    [InlineData("7.6", null)]
    public void APhThatItsBicarbonateCannotHaveIsSaid(string ph, string? finding)
    {
        var answer = Check("w.water.json", $$"""{"format": 1, "name": "w", "pH": {{ph}}, "ions": {"Ca": "100 mg/L", "HCO3": "300 mg/L"} }""");

        Assert.Equal(finding is not null, answer.Out.Contains("RL0038", StringComparison.Ordinal));
        Assert.Contains(finding ?? "", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void NitriteInAFeedIsSaid()
    {
        using var scratch = new Scratch();
        scratch.Write("own.substances.json", """{"format": 1, "substances": [{"id": "salt-n", "name": "Sodium nitrite", "formula": "NaNO2"}]}""");
        scratch.Write("r.recipe.json", Feed("""{"add": "salt-n", "amount": "5 g"}, """ + Usual));
        Assert.Contains("nitrogen as nitrite", Flowing(Cli.RunIn(scratch.Path, null, "check", ".").Out), StringComparison.Ordinal);
    }

    private const string Usual = """
        {"add": "calcium-nitrate-4h2o", "amount": "90 g"}, {"add": "potassium-nitrate", "amount": "40 g"},
        {"add": "monopotassium-phosphate", "amount": "20 g"}, {"add": "magnesium-sulfate-7h2o", "amount": "45 g"}
        """;

    private const string Traces = """
        {"add": "fe-dtpa-liquid-6", "amount": "3 g"}, {"add": "mn-edta", "amount": "0.4 g"}, {"add": "zn-edta", "amount": "0.15 g"},
        {"add": "boric-acid", "amount": "0.17 g"}, {"add": "sodium-molybdate-2h2o", "amount": "0.012 g"}, {"add": "cu-edta", "amount": "0.04 g"}
        """;

    private static string Spray(string substance, string amount) => $$"""
        {"format": 1, "name": "s", "water": "reverse-osmosis", "final": "10 L", "volume": "made up", "givenTo": "leaves",
         "doses": [{"add": "{{substance}}", "amount": "{{amount}}"}]}
        """;

    private static string Feed(string doses, string more = "") => $$"""
        {"format": 1, "name": "r", "crop": "tomato", "water": "reverse-osmosis", "final": "100 L", "volume": "made up",
         "doses": [{{doses}}]{{more}} }
        """;

    private static string Stock(string one, string much, string other, string more) => $$"""
        {"format": 1, "name": "s", "makes": "1 L", {{Keep}}, "steps": [{"pour": "0.6 L", "of": "distilled"},
          {"add": "{{one}}", "amount": "{{much}}"}, {"add": "{{other}}", "amount": "{{more}}"}, {"stir": "until clear"},
          {"topUp": "1 L", "of": "distilled"}]}
        """;

    private static Answer Check(string file, string text) => Run(file, text, "check", file);

    private static Answer Run(string file, string text, params string[] arguments)
    {
        using var scratch = new Scratch();
        scratch.Write(file, text);
        return Cli.RunIn(scratch.Path, null, arguments);
    }

    /// <summary>A text without the line breaks of its page.</summary>
    private static string Flowing(string text) =>
        string.Join(' ', text.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
}
