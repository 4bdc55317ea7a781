using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>A bottle under gas is not turned over, closed or smelled at: yeast stood first and a turning test was offered below it.</summary>
public sealed class PressureTests
{
    [Theory]
    [InlineData("citric-acid-h2o 20 g, ferrous-sulfate-7h2o 5 g in 1 L", "bubbles, smells of beer", "yeast")]
    [InlineData("citric-acid-h2o 20 g in 1 L", "a yeasty smell, swirls of cream sediment", "yeast")]
    [InlineData("potassium-bicarbonate 20 g, citric-acid-h2o 5 g in 1 L", "foam and bubbles, it hisses", "carbonate-gas")]
    [InlineData("hydrogen-peroxide-12 200 mL in 1 L", "it bulges, tiny bubbles", "peroxide-gas")]
    public void WhereGasIsTheFirstCauseNothingIsShakenClosedWarmedOrSmelled(string mix, string seen, string first)
    {
        var diagnosis = Diagnoser.Of(DiagnosisCase.StockOf(mix), ObservationReader.Read(seen), null);

        Assert.Equal(first, diagnosis.Causes[0].Cause.Id);
        Assert.All(
            [VesselAction.Shake, VesselAction.Cap, VesselAction.Heat, VesselAction.Smell],
            act => Assert.NotNull(diagnosis.Hazards.Forbids(act)));
        Assert.DoesNotContain(Asked(diagnosis), q => q.Act is "shake" or "smell" or "heat" or "cap");
    }

    [Theory]
    [InlineData("sucrose 50 g, potassium-nitrate 50 g in 1 L", "white sediment")]
    [InlineData("sucrose 50 g, potassium-nitrate 50 g in 1 L", "the bottle bulges")]
    [InlineData("citric-acid-h2o 20 g in 1 L", "the bottle bulges and hisses")]
    [InlineData("potassium-nitrate 50 g in 1 L", "the bottle bulges")]
    [InlineData("potassium-bicarbonate 20 g, citric-acid-h2o 5 g in 1 L", "tiny bubbles")]
    public void NobodyIsAskedToSmellWhereItMayBeUnderGas(string mix, string seen) => Assert.DoesNotContain(
        Asked(Diagnoser.Of(DiagnosisCase.StockOf(mix), ObservationReader.Read(seen), null)), q => q.Act == "smell");

    [Theory]
    [InlineData("potassium-nitrate 50 g in 1 L")]
    [InlineData("sucrose 50 g in 1 L")]
    public void ABulgingBottleIsNeverOpened(string mix) => Assert.All(
        Asked(Diagnoser.Of(DiagnosisCase.StockOf(mix), ObservationReader.Read("the bottle bulges"), null)), q => Assert.Null(q.Act));

    /// <summary>Everything that is asked, one question after the other, and every test that would settle a cause.</summary>
    private static List<Question> Asked(BottleDiagnosis diagnosis)
    {
        var asked = new HashSet<string>();
        var all = new List<Question>();
        while (QuestionChooser.Next(diagnosis, asked) is { } next && asked.Add(next.Id))
        {
            all.Add(next);
        }

        all.AddRange(diagnosis.Causes.Select(c => QuestionChooser.Settling(c, diagnosis)?.Test).OfType<Question>());
        return all;
    }
}
