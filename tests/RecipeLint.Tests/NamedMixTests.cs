using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>Two things named in a line without amounts: what they can do to people comes before any question about them.</summary>
public sealed class NamedMixTests
{
    /// <summary>A text nobody would pour together is not searched name by name: ten thousand of them took ten seconds.</summary>
    [Fact]
    public void ALineOfThousandsOfNamesIsOneUsageError()
    {
        foreach (var joint in new[] { " and ", " + ", ", ", " with " })
        {
            var answer = Cli.Run("dissolve", string.Join(joint, Enumerable.Range(0, 5000).Select(i => $"name{i}")));

            Assert.Equal(2, answer.Code);
            Assert.Empty(answer.Out);
        }
    }

    [Theory]
    [InlineData("chlorine free", "bleach + vinegar")]
    [InlineData("chlorine free", "pool chlorine, citric acid")]
    [InlineData("chlorine free", "Bleach with phosphoric acid")]
    [InlineData("chlorine free", "bleach 5 mL + vinegar in 1 L")]
    [InlineData("chlorine free", "toilet bleach & descaler")]
    [InlineData("chlorine free", "calcium hypochlorite; pH down")]
    [InlineData("chlorine free", "vinegar into bleach")]
    [InlineData("chloramines, poisonous gases", "bleach and ammonia")]
    [InlineData("chloramines, poisonous gases", "urea + pool shock")]
    [InlineData("chloramines, poisonous gases", "NaOCl + (NH4)2SO4")]
    [InlineData("brown nitrogen oxides free", "nitric acid + citric acid")]
    [InlineData("brown nitrogen oxides free", "sodium nitrite, phosphoric acid")]
    [InlineData("brown nitrogen oxides free", "sugar, HNO3")]
    [InlineData("gives off ammonia", "caustic soda + ammonium sulfate")]
    [InlineData("gives off ammonia", "KOH, monoammonium phosphate")]
    [InlineData("hydrogen sulfide free", "lime sulfur + citric acid")]
    [InlineData("gives off oxygen", "hydrogen peroxide + iron sulphate")]
    [InlineData("hydrogen cyanide free", "potassium cyanide + vinegar")]
    [InlineData("sulfur dioxide free", "metabisulfite and citric acid")]
    [InlineData("carbon dioxide", "baking soda + vinegar")]
    [InlineData("sets hydrogen free", "aluminium foil, caustic soda")]
    [InlineData("can burn fiercely", "saltpetre + sugar")]
    [InlineData("can burn fiercely", "KNO3, charcoal, sulfur")]
    [InlineData("can burn fiercely", "potassium nitrate and sulphur powder")]
    [InlineData("can burn fiercely", "ammonium nitrate + diesel")]
    [InlineData("can burn fiercely", "calcium nitrate with sawdust")]
    [InlineData("can burn fiercely", "icing sugar into sodium nitrate")]
    public void WhatTwoThingsCanDoComesBeforeTheirAmounts(string danger, string line)
    {
        foreach (var command in new[] { "dissolve", "check", "order", "split", "show", "proof" })
        {
            var answer = Cli.Run(command, line);

            Assert.Equal(1, answer.Code);
            var flowing = Flowing(answer.Out);
            Assert.Contains(danger, flowing, StringComparison.Ordinal);
            Assert.Contains("Safety data sheets and your local codes decide", flowing, StringComparison.Ordinal);
            Assert.Contains("as they are bought", flowing, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("bleach + vinegar")]
    [InlineData("nitric acid + citric acid")]
    public void OfWhatIsLeftAloneNobodyAsksTheAmount(string line) => Assert.Equal("", Cli.Run("dissolve", line).Error);

    [Fact]
    public void WordsApartAreReadTogether()
    {
        Assert.Equal(1, Cli.Run("dissolve", "bleach", "+", "vinegar").Code);
        Assert.Equal(1, Cli.Run("bleach", "vinegar").Code);
        Assert.Contains("chlorine", Cli.Run("check", "bleach", "vinegar").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("calcium nitrate + potassium nitrate")]
    [InlineData("potassium nitrate, citric acid")]
    [InlineData("magnesium sulfate and monopotassium phosphate")]
    [InlineData("urea + ammonium sulfate")]
    [InlineData("iron DTPA + EDTA")]
    [InlineData("potassium sorbate + citric acid")]
    [InlineData("seaweed extract + humic acid")]
    [InlineData("boric acid, borax")]
    [InlineData("bleach")]
    [InlineData("bleach + water")]
    [InlineData("foozle + sand")]
    [InlineData("sugar + magnesium sulfate")]
    [InlineData("calcium nitrate, sucrose in 1 L")]
    [InlineData("saltpetre + sugar in water")]
    [InlineData("potassium nitrate + iron DTPA")]
    [InlineData("potassium sulfate + sulfur")]
    public void HarmlessThingsAreAskedForTheirAmounts(string line)
    {
        var answer = Cli.Run("dissolve", line);

        Assert.Equal(2, answer.Code);
        Assert.Equal("", answer.Out);
        Assert.NotEqual("", answer.Error);
    }

    /// <summary>Ordinary words of a command line that is wrong in another way are no substances.</summary>
    [Theory]
    [InlineData("check", "examples", "--threads", "many")]
    [InlineData("check", "acid-stocks")]
    [InlineData("explain", "chlorine-at-the-rots")]
    [InlineData("show", "nothing-here", "nor-there")]
    [InlineData("diagnose", "missing.stock.json", "--seen", "white powder", "--at", "cold")]
    [InlineData("check", "stocks/bleach.stock.json", "stocks/acid.stock.json")]
    public void OtherMistakesAreNoDanger(params string[] arguments) => Assert.Equal(2, Cli.Run(arguments).Code);

    [Fact]
    public void NoStockFileIsWrittenOfWhatNobodyShouldMix()
    {
        using var scratch = new Scratch();
        var answer = Cli.RunIn(
            scratch.Path, null, "init", "--from", "sodium-hypochlorite-5 50 mL, vinegar-5 100 mL in 1 L");

        Assert.Equal(1, answer.Code);
        Assert.Contains("chlorine", answer.Out, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(scratch.Path));
    }

    private static string Flowing(string text) => string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
