using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tanks;
using RecipeLint.Advice.Tests.Diagnosis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>
/// Which tests and rescues each bottle forbids and why, which question is asked next until none is left, and where every solid of every cause
/// stands.
/// </summary>
public sealed class ToldDangersTests
{
    private static readonly string[] _uses = ["acid", "alkali", "edta", "heat", "shake", "filter", "water", "cap", "wipe", "smell", "open", "flame"];

    private static readonly (string Mix, string Seen)[] _bottles =
    [
        ("potassium-nitrate 40 g, monopotassium-phosphate 20 g in 1 L", "white needles"),
        ("calcium-nitrate-4h2o 80 g, magnesium-sulfate-7h2o 40 g in 1 L", "white powder at the bottom"),
        ("sucrose 30 g, potassium-nitrate 20 g in 1 L", "smells of beer, bottle is swollen"),
        ("sucrose 30 g, monoammonium-phosphate 20 g in 1 L", "cloudy, scum on top"),
        ("hydrogen-peroxide-35 50 mL in 1 L", "bubbles"),
        ("sodium-hypochlorite-12.5 50 mL in 1 L", "smells of chlorine"),
        ("potassium-hydroxide 60 g in 1 L", "white flakes"),
        ("potassium-hydroxide 2 g in 1 L", "white flakes"),
        ("nitric-60 300 mL in 1 L", "brown fumes"),
        ("phosphoric-75 60 mL, monopotassium-phosphate 10 g in 1 L", "white flakes"),
        ("nitric-38 20 mL in 1 L", "nothing to see"),
        ("citric-acid-h2o 10 g, potassium-bicarbonate 10 g in 1 L", "hisses, foam"),
        ("potassium-bicarbonate 30 g in 1 L", "bubbles"),
        ("manganese-sulfate-h2o 2 g, citric-acid-h2o 2 g, zinc-sulfate-7h2o 1 g in 1 L", "black sludge, rotten eggs"),
        ("manganese-sulfate-h2o 2 g, citric-acid-h2o 2 g, zinc-sulfate-7h2o 1 g in 1 L", "grey mud"),
        ("ammonium-sulfate 60 g, potassium-carbonate 20 g in 1 L", "stinks of ammonia"),
        ("potassium-silicate-29be 60 mL in 1 L", "jelly"),
        ("sodium-benzoate 2 g, nitric-38 5 mL in 1 L", "pearly flakes"),
        ("fe-dtpa-hna 5 g, potassium-nitrate 40 g in 1 L", "faded, brown mud"),
        ("ferrous-sulfate-7h2o 10 g in 1 L", "rust flakes, dark red"),
        ("potassium-nitrite 5 g in 1 L", "brown fumes"),
        ("humic-acid 10 g, nitric-38 5 mL in 1 L", "black curds"),
        ("potassium-nitrate 200 g, sucrose 50 g in 1 L", "crystals"),
        ("fulvic-acid 10 g in 1 L", "mould"),
    ];

    public static TheoryData<int> Bottles() => [.. Enumerable.Range(0, _bottles.Length)];

    [Theory]
    [MemberData(nameof(Bottles))]
    public void DiagnosisForbidsTheseTestsAndRescues(int bottle)
    {
        var (mix, seen) = _bottles[bottle];
        var diagnosis = Diagnose(mix, seen);
        var text = new ToldText().Line($"{mix}: {seen}");
        text.Hazards(diagnosis.Hazards);
        foreach (var question in DiagnosisData.Questions)
        {
            text.Line($"{question.Id}: {Said(BottleHazards.Refuses(question, diagnosis.Hazards))}");
        }

        foreach (var use in _uses)
        {
            text.Line($"{use}: {Said(BottleHazards.Refuses([use], diagnosis.Hazards))}");
        }

        text.Line($"stops {Said(BottleHazards.Stops(diagnosis.Hazards))}; leave {diagnosis.Hazards.ForLeaving?.Kind}; may hold {string.Join(", ", diagnosis.Hazards.MayHold.Select(h => h.Name))}");
        var asked = new HashSet<string>();
        while (QuestionChooser.Next(diagnosis, asked) is { } next)
        {
            asked.Add(next.Id);
        }

        text.Line($"asked in turn {string.Join(", ", asked)}");
        foreach (var cause in diagnosis.Causes.Take(6))
        {
            var settling = QuestionChooser.Settling(cause, diagnosis);
            text.Line($"{cause.Cause.Id} settled by {settling?.Test.Id}: {settling?.Expected.Say}");
        }

        text.Hold($"diagnosis-dangers-{bottle}");
    }

    private static string Said(Refusal? refusal) => refusal is null ? "" : $"{refusal.Hazard.Kind} {refusal.Hazard.Grade} of {refusal.Hazard.From?.Name} with {refusal.Hazard.With?.Name}; {refusal.Action} {refusal.Reagent?.Name} {refusal.ByReagent}";

    private static readonly (string Mix, string Seen, double? At)[] _standings =
    [
        ("calcium-nitrate-4h2o 80 g, magnesium-sulfate-7h2o 40 g, monopotassium-phosphate 5 g in 1 L", "white", 20),
        ("potassium-nitrate 150 g, potassium-sulfate 40 g in 1 L", "white", null),
        ("potassium-nitrate 150 g, potassium-sulfate 40 g in 1 L", "white", 35),
        ("ferrous-sulfate-7h2o 10 g, citric-acid-h2o 6 g, copper-sulfate-5h2o 1 g in 1 L", "brown", null),
        ("tetrapotassium-pyrophosphate 20 g, magnesium-sulfate-7h2o 3 g in 1 L", "white", null),
        ("calcium-nitrate-4h2o 60 g, fe-dtpa-hna 4 g in 1 L", "I poured lye in, white cloud", null),
        ("dipotassium-phosphate 20 g, potassium-silicate-29be 30 mL in 1 L", "we put vinegar in, jelly", null),
        ("calcium-nitrate-4h2o 60 g, nitric-38 10 mL in 1 L", "baking soda went in, it went white", 10),
        ("sodium-benzoate 3 g, citric-acid-h2o 5 g, borax-10h2o 30 g in 1 L", "flakes", 2),
        ("ferrous-sulfate-7h2o 2 g, disodium-edta-2h2o 3 g, potassium-bicarbonate 4 g in 1 L", "rust", null),
        ("monopotassium-phosphate 200 g, ammonium-sulfate 100 g in 1 L", "crystals", 12),
        ("potassium-silicate-29be 20 mL, calcium-nitrate-4h2o 0.5 g in 1 L", "haze", null),
        ("magnesium-sulfate-7h2o 300 g, potassium-nitrate 60 g in 1 L", "crystals", 8),
    ];

    public static TheoryData<int> Solutions() => [.. Enumerable.Range(0, _standings.Length)];

    [Theory]
    [MemberData(nameof(Solutions))]
    public void DiagnosisSeesEverySolidStandSo(int solution)
    {
        var (mix, seen, at) = _standings[solution];
        var observation = ObservationReader.Read(seen);
        var chemistry = BottleChemistry.Of(DiagnosisCase.StockOf(mix), at is { } celsius ? new Temperature(celsius) : null, observation.PutIn);
        var text = new ToldText().Line($"{mix}: {string.Join(", ", observation.PutIn.Select(p => p.Written))}");
        foreach (var state in chemistry.States)
        {
            text.Line($"{state.Moment} {chemistry.When(state)}, pH {state.Ph:0.00}: {string.Join(", ", chemistry.DepositsAt(state).Select(d => FormattableString.Invariant($"{d.Solid.Name} {d.GramsPerLitre:G3}")))}");
        }

        foreach (var cause in DiagnosisData.Causes)
        {
            var verdict = chemistry.Of(cause);
            if (verdict.Standing is not (Standing.Absent or Standing.Unknown))
            {
                text.Line($"{cause.Id}: {verdict.Standing} {verdict.Solid?.Name} {verdict.Index:0.00} {verdict.GramsPerLitre:G3} g/L {verdict.State?.Moment}, counts {verdict.Counts}, held {verdict.HeldBecause}");
            }
        }

        text.Hold($"diagnosis-standings-{solution}");
    }

    public static TheoryData<string, string[]> Tanks() => new()
    {
        { "feed", ["pH 5.8", "pH 7.4", "pH 8.3", "pH 4.1", "EC 1.3 mS/cm", "EC 2.2 mS/cm", "EC 0.6 mS/cm", "EC 0.9 mS/cm"] },
        { "still", ["pH 7.0", "pH 8.5", "EC 1 mS/cm", "EC 0.4 mS/cm"] },
        { "plain", ["pH 5.6", "pH 7.5", "EC 2 mS/cm"] },
        { "direct", ["pH 7.9", "pH 9", "EC 0.1 mS/cm", "EC 0.5 mS/cm"] },
    };

    [Theory]
    [MemberData(nameof(Tanks))]
    public void TanksReadSoAreExplainedSo(string name, string[] measured)
    {
        var text = new ToldText();
        var recipe = ToldShop.Recipe(name);
        foreach (var one in measured)
        {
            var (measurement, error) = Advice.Slips.Measurement.Read(one, recipe.FinalVolume);
            Assert.True(measurement is not null, error);
            var reading = TankReadings.Of(recipe, measurement);
            text.Line($"{one} beside {reading.Computed:0.000} ± {reading.HalfWidth:0.000}, fits {reading.Fits}");
            foreach (var (how, slips) in new[] { ("explains", reading.Explaining), ("nearest", reading.Nearest) })
            {
                foreach (var slip in slips)
                {
                    text.Line($"  {how} {slip.Value:0.000}: {slip.Words}");
                }
            }
        }

        text.Hold($"tanks-read-{name}");
    }

    /// <summary>Where lime falls out, any more alkalinity reads the same: four amounts at once would tell nobody anything.</summary>
    [Fact]
    public void TanksThatReadAlikeAreExplainedByTheLeastAlkalinity()
    {
        var recipe = ToldShop.Recipe("still");
        var (measurement, _) = Advice.Slips.Measurement.Read("EC 1 mS/cm", recipe.FinalVolume);
        var explaining = TankReadings.Of(recipe, measurement!).Explaining;
        Assert.Equal(explaining.Count, explaining.Select(e => Math.Round(e.Value!.Value, 2)).Distinct().Count());
    }

    [Theory]
    [InlineData(6.0, true)]
    [InlineData(6.001, false)]
    [InlineData(5.0, true)]
    [InlineData(4.999, false)]
    public void TanksFitUpToTheirHalfWidth(double read, bool fits)
    {
        var (measurement, _) = Advice.Slips.Measurement.Read("pH 6", new Volume(1));
        Assert.Equal(fits, new TankReading(measurement! with { Value = read }, 5.5, 0.5, [], []).Fits);
        Assert.False(new TankReading(measurement!, null, 9, [], []).Fits);
    }

    [Theory]
    [InlineData("feed", null)]
    [InlineData("feed", 8.0)]
    [InlineData("still", null)]
    [InlineData("direct", null)]
    public void TanksSeeEverySolidStandSo(string name, double? at)
    {
        var chemistry = TankChemistry.Of(ToldShop.Recipe(name), at is { } celsius ? new Temperature(celsius) : null);
        var text = new ToldText();
        foreach (var moment in Enum.GetValues<TankMoment>())
        {
            text.Line($"{moment}, {TankDiagnoser.Where(moment)}: {string.Join(", ", chemistry.DepositsAt(moment).Select(d => FormattableString.Invariant($"{d.Solid.Name} {d.GramsPerLitre:G3}")))}");
        }

        foreach (var cause in TankData.Causes)
        {
            var (verdict, moment) = chemistry.Of(cause);
            var pure = Enum.GetValues<TankMoment>().Select(m => FormattableString.Invariant($"{chemistry.WithPureWater(cause, m):G3}"));
            text.Line($"{cause.Cause.Id}: {verdict.Standing} {verdict.Solid?.Name} {verdict.Index:0.00} {verdict.GramsPerLitre:G3} g/L, {moment}; pure {string.Join(" ", pure)}");
        }

        text.Hold($"tanks-standings-{name}-{at}");
    }

    private static BottleDiagnosis Diagnose(string mix, string seen) => Diagnoser.Of(DiagnosisCase.StockOf(mix), ObservationReader.Read(seen), null);
}
