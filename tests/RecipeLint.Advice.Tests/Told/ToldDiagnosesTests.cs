using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tests.Diagnosis;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>Whole answers to descriptions of bottles: the ranking with every reason, the test that settles it, what saves the bottle.</summary>
public sealed class ToldDiagnosesTests
{
    private const int Told = 4;

    /// <summary>So many descriptions a file, so that each is answered quickly.</summary>
    private const int Together = 12;

    private static readonly (string Name, IReadOnlyList<DiagnosisCase> Cases)[] _sets =
    [
        ("shed", ShedCases.All), ("growers", GrowerCases.All), ("everyday", EverydayCases.All), ("textbook", TextbookCases.All),
    ];

    public static TheoryData<string, int> Parts()
    {
        var data = new TheoryData<string, int>();
        foreach (var (name, cases) in _sets)
        {
            for (var at = 0; at * Together < cases.Count; at++)
            {
                data.Add(name, at);
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Parts))]
    public void DiagnosisGivesTheseCausesWithTheseReasons(string set, int part)
    {
        var text = new ToldText();
        foreach (var one in _sets.Single(s => s.Name == set).Cases.Skip(part * Together).Take(Together))
        {
            Write(text, one);
        }

        text.Hold($"diagnosis-{set}-{part}");
    }

    private static void Write(ToldText text, DiagnosisCase one)
    {
        var diagnosis = one.Diagnose();
        text.Line($"# {one.Mix}: {one.Seen} ({one.After}, {one.At})");
        text.Line($"  read {string.Join(", ", diagnosis.Observation.Signs.Select(s => s.Say))}; not {string.Join(", ", diagnosis.Observation.Unknown)}");
        text.Hazards(diagnosis.Hazards);
        foreach (var ranked in diagnosis.Causes.Take(Told))
        {
            var solid = ranked.Solid;
            text.Line($"  {ranked.Share:0.000} {ranked.Cause.Id} {ranked.Likeliness}, {solid.Standing} {solid.Solid?.Name} {solid.GramsPerLitre:G4} g/L {solid.State?.Moment} {solid.Index:0.00}");
            text.Evidence(ranked);
        }

        if (QuestionChooser.Settling(diagnosis.Causes[0], diagnosis) is var (test, expected))
        {
            text.Line($"  settled by {test.Id}: {expected.Say}");
        }

        Write(text, BottleAdvice.Of(diagnosis.Chemistry, diagnosis.Causes[0]));
        text.Line($"  asked {QuestionChooser.Next(diagnosis, new HashSet<string>())?.Id}; listed {BottleDiagnosis.Listed(diagnosis.Causes).Count}");
    }

    private static void Write(ToldText text, BottleAdvice advice)
    {
        text.Line($"  lost {string.Join(", ", advice.Losses.Select(l => FormattableString.Invariant($"{l.Key} {l.PerLitre.GramsPerLitre:G3} g/L {l.Share:0.000}")))}");
        text.Line($"  of {string.Join(", ", advice.Suppliers.Select(s => s.Name))}");
        if (advice.Nearest is { } near)
        {
            text.Line($"  clear at {near.Factor:G3} times, 1:{near.Dilution}, {near.Temperature?.Celsius:0.#} °C, pH {near.Ph:0.0}");
        }

        if (advice.Highest is { } highest)
        {
            text.Line($"  at most {highest.Factor:G3} times");
        }

        foreach (var (name, trial) in new[] { ("rescue", advice.Trial), ("change", advice.ChangeTrial) })
        {
            if (trial is not null)
            {
                text.Line($"  {name} helps {trial.Helps} at pH {trial.Ph:0.0}; instead {trial.Instead?.Name} {trial.Mass.GramsPerLitre:G3} g/L; harm {trial.Harm?.Name}");
            }
        }

        if (advice.Water is { } water)
        {
            text.Line($"  water to {water.After.Litres:G3} of {water.Before.Litres:G3} L, in {water.Vessel} of {water.Holds?.Litres:G3} L, weakened {water.Weakened}, {water.Preservative?.Name} {water.Preservative?.GramsPerLitre:G3}");
        }
    }
}
