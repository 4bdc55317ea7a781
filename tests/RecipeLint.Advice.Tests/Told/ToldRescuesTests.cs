using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tests.Diagnosis;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>What every rescue and every change comes to in a bottle, tried in the engine before it is said.</summary>
public sealed class ToldRescuesTests
{
    private static readonly (string Mix, string Seen, double? At)[] _bottles =
    [
        ("calcium-nitrate-4h2o 20 g, monopotassium-phosphate 10 g in 1 L", "white powder", 20),
        ("calcium-nitrate-4h2o 80 g, magnesium-sulfate-7h2o 40 g in 1 L", "white needles", null),
        ("potassium-nitrate 170 g, potassium-sulfate 40 g in 1 L", "crystals", 8),
        ("sodium-benzoate 3 g, nitric-38 3 mL in 1 L", "pearly flakes", null),
        ("ferrous-sulfate-7h2o 10 g, monopotassium-phosphate 5 g in 1 L", "rust flakes", null),
        ("potassium-silicate-29be 40 mL, calcium-nitrate-4h2o 2 g in 1 L", "white flocs", null),
        ("disodium-edta-2h2o 10 g, nitric-38 10 mL in 1 L", "white sand", null),
        ("fe-dtpa-hna 5 g, potassium-hydroxide 2 g in 1 L", "brown mud", null),
        ("copper-sulfate-5h2o 3 g, potassium-bicarbonate 3 g in 1 L", "blue-green flocs", 20),
        ("borax-10h2o 60 g in 1 L", "crystals", 5),
    ];

    private static readonly string[] _kept = ["pyro", "slowly", "soft", "glass", "trace", "acid"];

    /// <summary>Acid is no rescue of what is more acid already than any stock is made: to pour it 'to pH 2' would be to pour lye.</summary>
    [Fact]
    public void DiagnosisTriesNoAcidWhereItIsMoreAcidThanThat()
    {
        var diagnosis = Diagnoser.Of(ToldShop.Stock("acid"), ObservationReader.Read("white crystals"), null);
        Assert.True(diagnosis.Chemistry.Mixing.Ph < 2);
        Assert.All(
            diagnosis.Causes.Where(c => c.Cause.Rescue == Rescue.Acid && c.Solid.Standing > Standing.Close),
            c => Assert.False(BottleAdvice.Of(diagnosis.Chemistry, c).Trial?.Helps));
    }

    public static TheoryData<int> Bottles() => [.. Enumerable.Range(0, _bottles.Length)];

    [Theory]
    [MemberData(nameof(Bottles))]
    public void DiagnosisTriesTheseRescues(int bottle)
    {
        var (mix, seen, at) = _bottles[bottle];
        Hold(DiagnosisCase.StockOf(mix), seen, at, mix, $"diagnosis-rescues-{bottle}");
    }

    public static TheoryData<string> Kept() => [.. _kept];

    [Theory]
    [MemberData(nameof(Kept))]
    public void DiagnosisTriesTheseRescuesInTheShop(string name) => Hold(ToldShop.Stock(name), "white crystals", null, name, $"diagnosis-rescues-of-{name}");

    private static void Hold(StockFacts stock, string seen, double? at, string name, string file)
    {
        var diagnosis = Diagnoser.Of(stock, ObservationReader.Read(seen), at is { } celsius ? new Temperature(celsius) : null);
        var text = new ToldText().Line($"{name}: {seen}; unknown {diagnosis.Unknown?.IsAll}; {string.Join(", ", diagnosis.Chemistry.States.Select(s => $"{s.Moment} {diagnosis.Chemistry.When(s)}"))}");
        foreach (var cause in diagnosis.Causes.Where((c, i) => i < 12 || c.Solid.Standing <= Standing.Close))
        {
            var advice = BottleAdvice.Of(diagnosis.Chemistry, cause);
            text.Line($"{cause.Cause.Id} {cause.Solid.Standing} ({cause.Cause.Rescue}): lost {string.Join(", ", advice.Losses.Select(l => FormattableString.Invariant($"{l.Key} {l.PerLitre.GramsPerLitre:G3} {l.Share:0.000}")))}; of {string.Join(", ", advice.Suppliers.Select(s => s.Name))}")
                .Line($"  near {advice.Nearest?.Factor:G3} {advice.Nearest?.Temperature?.Celsius:0.#} °C pH {advice.Nearest?.Ph:0.0}; highest {advice.Highest?.Factor:G3}; {Said(advice.Trial)}; change {Said(advice.ChangeTrial)}");
            if (advice.Water is { } water)
            {
                text.Line($"  water {water.Before.Litres:G4} to {water.After.Litres:G4} L in {water.Vessel} of {water.Holds?.Litres}, weakened {water.Weakened} {water.Preservative?.Name} {water.Preservative?.GramsPerLitre:G3}");
            }
        }

        text.Hold(file);
    }

    private static string Said(Analysis.Judgement.StateTrial? trial) => trial is null ? "not tried"
        : FormattableString.Invariant($"helps {trial.Helps} at pH {trial.Ph:0.0}, {trial.Mass.GramsPerLitre:G3} g/L, instead {trial.Instead?.Name}, harm {trial.Harm?.Name}");
}
