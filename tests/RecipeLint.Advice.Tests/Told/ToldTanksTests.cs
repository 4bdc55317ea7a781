using RecipeLint.Advice.Tanks;
using RecipeLint.Advice.Tests.Agreement;
using RecipeLint.Advice.Tests.Tanks;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>Whole answers to what was seen in tank, lines and drippers: the ranking with every reason, and what acid or pure water does.</summary>
public sealed class ToldTanksTests
{
    private const int Told = 3;

    private const int Together = 9;

    /// <summary>Tanks that differ in their water, in what sets their pH and in what they hold; all invented.</summary>
    private static readonly string[] _shops =
    [
        "tests/RecipeLint.Rules.Tests/Mutations/tarnhollow",
        "examples/quillmere",
        "examples/fennelwick",
        "rules/precipitation/tank-precipitate/failing-hard-water-not-adjusted",
        "rules/chelation/ferrous-iron-in-feed/failing-from-a-sour-bottle",
        "tests/RecipeLint.Tests/Spoken/osierbeck",
    ];

    /// <summary>One thing of each sort, asked of every tank.</summary>
    private static readonly string[] _anywhere =
    [
        "white crust on the drippers, fizzes with vinegar", "rusty brown floc in the tank after a week", "slime in the lines, smells foul",
        "white cloud as soon as part b went in", "smells like a pool", "white salt around the drip, dissolves in water",
        "gel flakes after the acid went in", "white haze in the tank after the lye", "nothing to see, clear as always",
    ];

    public static TheoryData<int> Parts() => [.. Enumerable.Range(0, (TankDiagnosisTests.Words.Count + Together - 1) / Together)];

    public static TheoryData<int> Shops() => [.. Enumerable.Range(0, _shops.Length)];

    [Theory]
    [MemberData(nameof(Parts))]
    public void TanksAndLinesGiveTheseCausesWithTheseReasons(int part)
    {
        var text = new ToldText();
        foreach (var seen in TankDiagnosisTests.Words.Skip(part * Together).Take(Together))
        {
            Write(text, TankDiagnosisTests.Well, seen, null);
        }

        text.Hold($"tanks-{part}");
    }

    [Theory]
    [MemberData(nameof(Shops))]
    public void TanksOfEveryShopGiveTheseCauses(int shop)
    {
        var text = new ToldText();
        foreach (var recipe in Bottle.FactsOf(_shops[shop]).Recipes)
        {
            foreach (var seen in _anywhere)
            {
                Write(text, recipe, seen, shop % 2 == 0 ? null : 12);
            }
        }

        text.Hold($"tanks-of-{_shops[shop].Split('/')[^1]}");
    }

    private static void Write(ToldText text, RecipeFacts recipe, string seen, double? celsius)
    {
        var diagnosis = TankDiagnoser.Of(recipe, ObservationReader.Read(seen), celsius is { } at ? new Temperature(at) : null);
        text.Line($"# {recipe.Recipe.Name}: {seen}");
        text.Line($"  read {string.Join(", ", diagnosis.Observation.Signs.Select(s => s.Say))}; not {string.Join(", ", diagnosis.Observation.Unknown)}");
        text.Hazards(diagnosis.Hazards);
        foreach (var cause in diagnosis.Causes.Take(Told))
        {
            var ranked = cause.Ranked;
            text.Line($"  {ranked.Share:0.000} {ranked.Cause.Id} {ranked.Likeliness} {ranked.HasReason}, {ranked.Solid.Standing} {ranked.Solid.Solid?.Name} {ranked.Solid.GramsPerLitre:G4} g/L");
            text.Line($"    {cause.Moment}, pure {cause.WithPureWater:G4}, clear at pH {cause.Acid?.ClearPh:0.00}, helps {cause.Acid?.Helps}, harm {cause.Acid?.Harm?.Name}");
            text.Evidence(ranked);
        }
    }
}
