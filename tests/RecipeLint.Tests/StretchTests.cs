using System.Globalization;
using System.Text.RegularExpressions;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

/// <summary>How strong and how weak a stock may be made, from outside.</summary>
public sealed partial class StretchTests
{
    private static Answer Run(string text)
    {
        using var scratch = new Scratch();
        scratch.Write("a.stock.json", text);
        return Cli.RunIn(scratch.Path, null, "stretch", "a.stock.json");
    }

    /// <summary>
    /// Potassium nitrate alone: 12.0 % by mass saturated at 0 °C, 24.2 % at 20 °C (CRC Handbook, 98th ed.). Their densities, 1.076 and 1.163
    /// g/mL, come from the table of solutions in the same handbook (recalled): 129 and 281 g in a litre, against the 100 g of the file.
    /// </summary>
    [Theory]
    [InlineData("0 °C", 129)]
    [InlineData("20 °C", 281)]
    public void ASaltStretchesToItsSolubility(string at, double gramsPerLitre)
    {
        var answer = Run("""
            {"format": 1, "makes": "1 L", "dose": "10 mL/L", "keep": {"at": "5..25 °C"}, "steps": [{"pour": "800 mL"},
              {"add": "potassium-nitrate", "amount": "100 g", "assay": "100 %"}, {"topUp": "1 L"}]}
            """);
        Assert.Equal(0, answer.Code);
        var row = answer.Out.Split('\n').Single(l => l.TrimStart(' ', '*').StartsWith(at, StringComparison.Ordinal));
        Assert.Contains("potassium nitrate", row, StringComparison.Ordinal);
        var highest = double.Parse(Dilution().Match(row).Groups[1].Value, CultureInfo.InvariantCulture);

        // A salt counts as too close from 15 % of its index below saturation on, so the answer lies below the handbook's and never above.
        Assert.InRange(highest, 0.7 * gramsPerLitre, 1.02 * gramsPerLitre);
    }

    [Fact]
    public void ItSaysWhatStopsItBothWays()
    {
        var answer = Cli.Run("stretch", "examples/quillmere/stocks/trace.stock.json");
        Assert.Equal(0, answer.Code);
        Assert.Contains("Highest: 1:", answer.Out, StringComparison.Ordinal);
        Assert.Contains("sorbic acid falls out at 8 °C", answer.Out, StringComparison.Ordinal);
        Assert.Contains("preservative-too-weak", answer.Out, StringComparison.Ordinal);
        Assert.Contains("below-scale-resolution", answer.Out, StringComparison.Ordinal);
        Assert.All(answer.Out.Split('\n'), l => Assert.True(l.Length <= 100, l));
    }

    [Fact]
    public void WhatIsTooStrongAlreadySaysSo()
    {
        var answer = Run("""
            {"format": 1, "makes": "1 L", "dose": "10 mL/L", "steps": [{"pour": "800 mL"}, {"add": "calcium-nitrate-4h2o", "amount": "60 g"},
              {"add": "magnesium-sulfate-7h2o", "amount": "40 g"}, {"topUp": "1 L"}]}
            """);
        Assert.Equal(1, answer.Code);
        Assert.Contains("too strong already", answer.Out, StringComparison.Ordinal);
        Assert.Contains("gypsum", answer.Out, StringComparison.Ordinal);
    }

    /// <summary>Iron(II) with nothing that holds it: whatever the strength, the air takes it; held by EDTA or used up at once it does not.</summary>
    [Theory]
    [InlineData("90 days", "", true)]
    [InlineData("90 days", """{"add": "disodium-edta-2h2o", "amount": "4 g"},""", false)]
    [InlineData("10 days", "", false)]
    [InlineData("90 days", """{"add": "potassium-hydroxide", "amount": "0.1 g"},""", true)]
    public void OfIronThatTheAirTakesItSaysTheCondition(string kept, string agent, bool taken)
    {
        var answer = Run($$"""
            {"format": 1, "makes": "1 L", "dose": "10 mL/L", "keep": {"at": "15..25 °C", "for": "{{kept}}"}, "steps": [{"pour": "800 mL"},
              {{agent}} {"add": "ferrous-sulfate-7h2o", "amount": "2.5 g"}, {"topUp": "1 L"}]}
            """);
        Assert.Equal(taken ? 1 : 0, answer.Code);
        var text = answer.Out.ReplaceLineEndings(" ");
        Assert.Equal(taken ? 2 : 1, text.Split("Air turns it to iron(III)").Length);
        Assert.Equal(taken, text.Contains("only until the air has oxidised the iron", StringComparison.Ordinal));
        Assert.Equal(taken, text.Contains("use it up within 14 days", StringComparison.Ordinal));
        Assert.All(answer.Out.Split('\n'), l => Assert.True(l.Length <= 100, l));
    }

    [Fact]
    public void WithoutADoseItSpeaksOfTimes() => Assert.Contains(
        " x",
        Run("""{"format": 1, "makes": "1 L", "steps": [{"pour": "800 mL"}, {"add": "potassium-nitrate", "amount": "50 g"}, {"topUp": "1 L"}]}""").Out,
        StringComparison.Ordinal);

    [Fact]
    public void AnEmptyStockIsToldNotThrown()
    {
        var answer = Run("""{"format": 1, "makes": "1 L", "steps": [{"pour": "800 mL"}, {"topUp": "1 L"}]}""");
        Assert.Equal(0, answer.Code);
        Assert.Contains("nothing in this solution", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("examples/quillmere/recipes/lettuce.recipe.json")]
    [InlineData("examples/quillmere/stocks")]
    [InlineData("no-such.stock.json")]
    public void WhatIsNoStockIsOneLineAndWrongUsage(string path)
    {
        var answer = Cli.Run("stretch", path);
        Assert.Equal(2, answer.Code);
        Assert.Empty(answer.Out);
        Assert.Equal(1, answer.Error.Count(c => c == '\n'));
    }

    [GeneratedRegex(@"1:([\d.]+)")]
    private static partial Regex Dilution();
}
