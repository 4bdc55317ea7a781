using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>Figures in the reasons of a diagnosis.</summary>
public sealed class DiagnosisWordsTests
{
    [Theory]
    [InlineData(0.0124, "12 mg")]
    [InlineData(0.0999, "100 mg")]
    [InlineData(0.1, "0.1 g")]
    [InlineData(1.256, "1.26 g")]
    [InlineData(9.99, "9.99 g")]
    [InlineData(10, "10 g")]
    [InlineData(123.4, "123 g")]
    public void GramsAreToldAsAScaleShowsThem(double grams, string words) => Assert.Equal(words, DiagnosisWords.Grams(grams));

    [Theory]
    [InlineData(0.5, "3.2 times")]
    [InlineData(1, "10 times")]
    [InlineData(3, "1000 times")]
    [InlineData(3.01, "more than a thousand times")]
    public void AnIndexIsToldAsSoManyTimes(double index, string words) => Assert.Equal(words, DiagnosisWords.Times(index));

    [Theory]
    [InlineData("potassium-nitrate 100 g in 1 L", "at 20 °C")]
    [InlineData("potassium-nitrate 100 g in 1 L", "at 10 °C")]
    [InlineData("potassium-nitrate 100 g in 1 L", "at 30 °C")]
    [InlineData("sulfamic-acid 50 g in 1 L", "once part of the sulfamic acid has turned to ammonium and sulfate")]
    [InlineData("tetrapotassium-pyrophosphate 50 g in 1 L", "once part of the pyrophosphate has turned to orthophosphate")]
    [InlineData("ferrous-sulfate-7h2o 50 g in 1 L", "once the air has oxidised the iron")]
    public void AStateIsToldByItsTemperatureOrByWhatBecameOfIt(string mix, string words)
    {
        var place = Place.Whole("a.stock.json");
        var stock = Bench.Analyse([DiagnosisCase.StockOf(mix).Stock with
        {
            Keep = new Keeping(
                new(Bench.Read("10..30 °C", Due.Temperatures).Temperatures, place), new(Bench.Read("12 months", Due.Duration).Duration, place), null),
        }]).Stocks.Single();
        var chemistry = BottleChemistry.Of(stock, null);

        Assert.Contains(words, chemistry.States.Select(chemistry.When));
    }
}
