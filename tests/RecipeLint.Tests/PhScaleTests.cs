using System.Text.RegularExpressions;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>
/// A computed pH beyond the scale of a meter says no more than that it is a strong acid or lye: every command says on which side it lies, and
/// none prints a figure that nobody can read off a meter.
/// </summary>
public sealed partial class PhScaleTests
{
    private const string Acid = """
        {"format": 1, "name": "Acid", "makes": "1 L", "dose": "1 mL/L", "keep": {"at": "5..25 °C", "for": "90 days"}, "steps": [
          {"pour": "300 mL", "of": "distilled"}, {"add": "nitric-60", "amount": "600 g"}, {"add": "magnesium-nitrate-6h2o", "amount": "50 g"},
          {"add": "citric-acid-h2o", "amount": "5 g"}, {"topUp": "1 L", "of": "distilled"}]}
        """;

    private const string Tank = """
        {"format": 1, "name": "Tank", "crop": "lettuce", "water": "distilled", "final": "10 L", "volume": "made up", "doses": [
          {"add": "nitric-60", "amount": "6 kg"}]}
        """;

    [Theory]
    [InlineData("check", ".", "--repairs")]
    [InlineData("check", ".", "--format", "csv")]
    [InlineData("show", "acid.stock.json")]
    [InlineData("show", "tank.recipe.json")]
    [InlineData("proof", "acid.stock.json", "--all")]
    [InlineData("order", "acid.stock.json")]
    [InlineData("stretch", "acid.stock.json")]
    [InlineData("diagnose", "acid.stock.json", "--seen", "white crystals")]
    public void NoCommandPrintsAPhBelowZero(params string[] command)
    {
        using var scratch = new Scratch();
        scratch.Write("acid.stock.json", Acid);
        scratch.Write("tank.recipe.json", Tank);

        var answer = Cli.RunIn(scratch.Path, null, command);

        Assert.InRange(answer.Code, 0, 1);
        Assert.NotEmpty(answer.Out);
        Assert.DoesNotMatch(BelowZero(), answer.Out);
    }

    /// <summary>What got sourer beyond the scale is no other figure of pH; what came from the scale is said with the side it went to.</summary>
    [Theory]
    [InlineData("400 g", false)]
    [InlineData("1 g", true)]
    public void AComparisonTellsOnlyWhatAMeterTells(string before, bool isRow)
    {
        using var scratch = new Scratch();
        scratch.Write("old/acid.stock.json", Acid.Replace("600 g", before, StringComparison.Ordinal));
        scratch.Write("new/acid.stock.json", Acid);

        var answer = Cli.RunIn(scratch.Path, null, "compare", "old", "new");

        Assert.InRange(answer.Code, 0, 1);
        Assert.DoesNotMatch(BelowZero(), answer.Out);
        Assert.Equal(isRow, answer.Out.Contains("below 0", StringComparison.Ordinal));
    }

    /// <summary>The rule on the pH of a stock, the figures of a repair and the table of figures each say it.</summary>
    [Fact]
    public void WhatIsSaidInsteadIsTheSideOfTheScale()
    {
        using var scratch = new Scratch();
        scratch.Write("acid.stock.json", Acid);

        var check = string.Join(' ', Cli.RunIn(scratch.Path, null, "check", ".").Out.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        var csv = Cli.RunIn(scratch.Path, null, "check", ".", "--format", "csv").Out;

        Assert.Contains("comes to pH below 0, outside", check, StringComparison.Ordinal);
        Assert.Contains(",pH,mixing,below 0,,", csv, StringComparison.Ordinal);
        Assert.Contains(",density,mixing,1.", csv, StringComparison.Ordinal);
    }

    /// <summary>"pH -0.49", "pH 0.3 -> -0.2" and the cell after "pH".</summary>
    [GeneratedRegex(@"pH\W{0,4}(mixing|coldest storage|warmest storage|tank|tank in air)?[ ,|:]*([0-9.]+ -> )?-[0-9]")]
    private static partial Regex BelowZero();
}
