using System.Buffers;
using System.Text.Json;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Reports.ComputedFacts;

namespace RecipeLint.Analysis.Tests.Uncertainty;

/// <summary>The uncertainties as the facts document prints them; that they fit the schema is proved with the rest of the document.</summary>
public sealed class UncertaintyDocumentTests
{
    [Fact]
    public void TheDocumentPrintsWhatWasComputedWithEveryShare()
    {
        var facts = Quillmere.Facts;
        var computed = ElementUncertainty.Of(facts.Recipes[0], facts.FindStock);
        using var document = JsonDocument.Parse(Write(facts, facts.Recipes[0].Recipe.File));
        var printed = document.RootElement.GetProperty("uncertainty").GetProperty("elements");

        Assert.Equal(computed.Elements.Keys, printed.EnumerateObject().Select(p => p.Name));
        foreach (var (key, element) in computed.Elements)
        {
            var row = printed.GetProperty(key);
            Assert.Equal(element.RelativeExpanded, row.GetProperty("expanded_fraction").GetDouble());
            Assert.Equal(1, row.GetProperty("shares").EnumerateArray().Sum(s => s.GetProperty("variance_fraction").GetDouble()), 9);
        }
    }

    /// <summary>3.15 g on a scale that reads 0.01 g and repeats to 1.5 steps: u² = (1.5² + 2/12 + 1/3) d², by hand.</summary>
    [Fact]
    public void AWeighingCarriesItsScaleAndItsUncertainty()
    {
        using var document = JsonDocument.Parse(Write(Quillmere.Facts, "molybdate-pre.stock.json"));
        var weighing = Assert.Single(document.RootElement.GetProperty("uncertainty").GetProperty("weighings").EnumerateArray());

        Assert.Equal("pocket-scale", weighing.GetProperty("scale").GetString());
        Assert.Equal("within capacity", weighing.GetProperty("load").GetString());
        Assert.Equal(0.01 * Math.Sqrt(2.25 + (1.0 / 6) + (1.0 / 3)), weighing.GetProperty("standard_g").GetDouble(), 12);
        Assert.Equal(2 * 0.01 * Math.Sqrt(2.75) / 3.15, weighing.GetProperty("expanded_fraction").GetDouble(), 12);
    }

    private static string Write(Facts facts, string file)
    {
        var output = new ArrayBufferWriter<byte>();
        Assert.True(FactsWriter.TryWrite(facts, file, output));
        return System.Text.Encoding.UTF8.GetString(output.WrittenSpan);
    }
}
