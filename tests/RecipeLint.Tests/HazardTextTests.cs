using System.Globalization;
using System.Text;
using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tanks;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Analysis.Tests.Support;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.OneLine;
using RecipeLint.Reports.Diagnosis;
using RecipeLint.Reports.Hazards;
using RecipeLint.Reports.Tests.Support;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Tests;

/// <summary>All that is said of hazards, tests and rescues, on one page to be read through.</summary>
public sealed class HazardTextTests
{
    [Fact]
    public void EveryTextStandsOnThePage()
    {
        var page = new StringBuilder("# Hazards, tests and rescues: every text once\n\n");
        page.Append(HazardText.Deference).Append("\n\n## Hazards\n\n");
        foreach (var text in HazardText.All)
        {
            Kind(page, text);
        }

        page.Append("## From which amount\n\n| limit | value | what | source |\n|---|---|---|---|\n");
        foreach (var limit in HazardData.Limits)
        {
            page.Append(CultureInfo.InvariantCulture, $"| {limit.Name} | {limit.Value} {limit.Unit} | {limit.What} | {limit.Source} ({limit.Confidence}) |\n");
        }

        page.Append("\n## What each substance does\n\n| roles | why | source | substances |\n|---|---|---|---|\n");
        foreach (var row in HazardData.Rows)
        {
            var behaving = SubstanceCatalogue.BuiltIn.Substances.Where(s => s.BehavesAs == row.Id).Select(s => s.Id).Order(StringComparer.Ordinal);
            page.Append(CultureInfo.InvariantCulture, $"| {string.Join(", ", row.Roles)} | {row.Why} | {row.Source} ({row.Confidence}) | {string.Join(", ", behaving)} |\n");
        }

        page.Append("\n## Questions and bench tests\n\n");
        foreach (var question in DiagnosisData.Questions)
        {
            page.Append(CultureInfo.InvariantCulture, $"- {question.Ask} {question.Caution}{(question.Act is null ? "" : $" [asks the gate: {question.Act}]")}\n");
        }

        page.Append("\n## Rescues and changes\n\n");
        foreach (var cause in DiagnosisData.Causes)
        {
            page.Append(CultureInfo.InvariantCulture, $"- {cause.Name}. Save it: {cause.RescueSay}{Uses(cause.RescueUses)}{Tried(cause.RescueWarm, "heat")} Change: {cause.Change}{Uses(cause.ChangeUses)}{Tried(cause.ChangeAcid, "acid")}\n");
        }

        page.Append("\n## Rescues and changes of tanks, lines and drippers\n\n");
        foreach (var cause in TankData.Causes.Select(c => c.Cause))
        {
            page.Append(CultureInfo.InvariantCulture, $"- {cause.Name}. Clear it: {cause.RescueSay}{Uses(cause.RescueUses)}{Tried(cause.RescueWarm, "heat")} Change: {cause.Change}{Uses(cause.ChangeUses)}{Tried(cause.ChangeAcid, "acid")}\n");
        }

        Repository.AssertGolden("../../RecipeLint.Tests/Tables/hazard-texts.md", page.ToString());
    }

    /// <summary>A part that is printed only where the gate allows the act and the engine has found that it helps.</summary>
    private static string Tried(string text, string act) => text.Length == 0 ? "" : $" {text} [asks the gate: {act}; said only where it was tried and helps]";

    /// <summary>A text that names a dangerous act has to say so to the gate.</summary>
    [Fact]
    public void EveryRescueThatNamesAnActAsksTheGateForIt()
    {
        (string Use, string[] Words)[] acts =
        [
            ("acid", ["acid dissolves", "Any acid", "Acidify", "acidify", "inegar or", "with vinegar", "bring the pH down", "Acid dissolves", "acid, dissolves", "cid takes", "weak acid", "lower pH", "Bring the pH down",
                "trong acid dissolves", "trong acid takes", "trong acid or", "boric acid", "phosphate acid", "phosphate low", "manganese acidic", "anew with acid", "Acid,", "Acid before",
                "Acid clears", "acid after it"]),
            ("alkali", ["ydroxide above", "lkali dissolves", "ydroxide or bicarbonate", "ydroxide dissolves", "ydroxide turns", "put lye in"]),
            ("heat", ["Warm it", "on warming", "warm the vessel", "warm the water", "Thaw"]),
            ("filter", ["Filter it", "Filter the", "or filter", "filter it", "filter each", "through a cloth", "Filter,"]),
            ("wipe", ["ipe it off", "wipe the thread"]),
            ("open", ["lid off, in moving air", "loosen the cap a quarter turn", "is let off"]),
            ("cap", ["lose the cap", "Close it tight", "frost comes, and close"]),
            ("shake", ["urn the bottle over", "urn it over", "hake well", "Stir longer", "Stir on", "stir, wait", "with stirring"]),
        ];
        foreach (var cause in DiagnosisData.Causes.Concat(TankData.Causes.Select(c => c.Cause)))
        {
            Assert.All(acts.Where(a => a.Words.Any(w => cause.RescueSay.Contains(w, StringComparison.Ordinal))), a => Assert.Contains(a.Use, cause.RescueUses));
            Assert.All(acts.Where(a => a.Words.Any(w => cause.Change.Contains(w, StringComparison.Ordinal))), a => Assert.Contains(a.Use, cause.ChangeUses));
        }
    }

    /// <summary>A bottle that bulges is never opened by one text and forbidden by the next.</summary>
    [Fact]
    public void NoTextOpensABottleThatBulges()
    {
        string[] opening = ["let off", "pressure off", "gas off", "quarter turn", "loosen", "lid off", "leave it open", "open it"];
        var texts = HazardText.All.SelectMany(t => new[] { t.First, t.Help, t.Instead })
            .Concat(DiagnosisData.Causes.Concat(TankData.Causes.Select(c => c.Cause)).SelectMany(c => new[] { c.RescueSay, c.Change }))
            .Distinct(StringComparer.Ordinal);
        var opened = texts.Where(t => t.Contains("bulg", StringComparison.Ordinal) || t.Contains("glass under pressure", StringComparison.Ordinal))
            .SelectMany(t => t.Split(". "))
            .Where(s => opening.Any(o => s.Contains(o, StringComparison.OrdinalIgnoreCase)))
            .Where(s => !s.Contains("neither b", StringComparison.Ordinal) && !s.StartsWith("An open one", StringComparison.Ordinal)
                && !s.StartsWith("If it is open leave it open", StringComparison.Ordinal) && !s.StartsWith("Loosened", StringComparison.Ordinal)).ToList();
        Assert.True(opened.Count == 0, string.Join('\n', opened));
    }

    /// <summary>The same of a whole answer, whatever is in the bottle.</summary>
    [Theory]
    [InlineData("50 g sucrose in 1 L")]
    [InlineData("100 g potassium-carbonate in 1 L")]
    [InlineData("100 mL hydrogen-peroxide-12 in 1 L")]
    [InlineData("20 g urea, 50 g potassium-nitrate in 1 L")]
    [InlineData("30 mL sodium-hypochlorite-5 in 1 L")]
    public void NoAnswerOnABulgingBottleOpensIt(string mix)
    {
        var answer = string.Join(' ', DiagnosisReport.Write(Diagnoser.Of(StockOf(mix), ObservationReader.Read("the bottle bulges"), null), null)
            .Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("bulg", answer, StringComparison.Ordinal);
        Assert.All(
            answer.Split(". ").Where(s => s.Contains("quarter turn", StringComparison.Ordinal) || s.Contains("pressure off", StringComparison.Ordinal)
                || s.Contains("gas off", StringComparison.Ordinal) || s.Contains("lid off", StringComparison.Ordinal)),
            s => Assert.Contains("neither b", s, StringComparison.Ordinal));
    }

    /// <summary>Who is told to warm a bottle is told how, and what never.</summary>
    [Fact]
    public void WarmingAlwaysNamesBathCapAndNoFlame()
    {
        var warming = DiagnosisData.Causes.Concat(TankData.Causes.Select(c => c.Cause)).Where(c => c.RescueUses.Contains("heat")).ToList();
        Assert.True(warming.Count > 10);
        Assert.All(warming, c =>
        {
            Assert.Contains("bath of water of at most 45 °C", c.RescueSay, StringComparison.Ordinal);
            Assert.Contains("cap loose", c.RescueSay, StringComparison.Ordinal);
            Assert.Contains("never on a flame", c.RescueSay, StringComparison.Ordinal);
        });
        var answer = DiagnosisReport.Write(Diagnoser.Of(StockOf("300 g potassium-nitrate in 1 L"), ObservationReader.Read("white needles after a cold night"), null), null);
        Assert.Contains("never on a flame", string.Join(' ', answer.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    /// <summary>A limit has one owner: where a rule has an option for it, the two are equal.</summary>
    [Theory]
    [InlineData("hypochlorite-with-acid", "chlorineFrom", "chlorineFrom")]
    [InlineData("hypochlorite-with-ammonium", "chlorineFrom", "chlorineFrom")]
    [InlineData("nitric-with-organic", "nitricFrom", "nitricFrom")]
    [InlineData("nitric-with-organic", "organicFrom", "nitricOrganicFrom")]
    [InlineData("oxidiser-with-organic", "peroxideFrom", "peroxideFrom")]
    [InlineData("oxidiser-with-organic", "hypochloriteFrom", "hypochloriteFrom")]
    [InlineData("oxidiser-with-organic", "organicFrom", "organicFrom")]
    [InlineData("oxidiser-with-organic", "combustibleFrom", "combustibleFrom")]
    public void LimitsOfTheGateAreTheDefaultsOfTheRules(string rule, string option, string limit) => Assert.Equal(
        HazardData.Limits.Single(l => l.Name == limit).Value,
        double.Parse(RuleBook.Find(rule)!.Options.Single(o => o.Name == option).Default, CultureInfo.InvariantCulture));

    [Fact]
    public void EverySignOfAHazardIsASignOfTheDiagnosis() =>
        Assert.All(HazardText.All.SelectMany(t => t.Signs), sign => Assert.Equal(sign, Vocabulary.Sign(sign).Id));

    /// <summary>Every bench test and the smelling name what the gate is asked.</summary>
    [Fact]
    public void EveryTestAsksTheGate() => Assert.All(
        DiagnosisData.Questions.Where(q => q.IsTest || q.Id == "smell"),
        q =>
        {
            Assert.NotNull(q.Act);
            const string Reagent = "reagent:";
            if (q.Act.StartsWith(Reagent, StringComparison.Ordinal))
            {
                Assert.NotNull(SubstanceCatalogue.BuiltIn.ById(q.Act[Reagent.Length..]));
            }
        });

    private static StockFacts StockOf(string mix)
    {
        var (line, fault) = OneLineMix.Read(mix, SubstanceCatalogue.BuiltIn);
        Assert.True(line is not null, fault);
        var steps = line.Items.Select(item => Bench.Add(item.Substance.Id, item.AmountText)).ToArray();
        return Bench.Analyse([Bench.Stock("a.stock.json", line.VolumeText!, steps)]).Stocks.Single();
    }

    private static void Kind(StringBuilder page, HazardText text)
    {
        page.Append(CultureInfo.InvariantCulture, $"### {text.Name}\n\n");
        foreach (var grade in Enum.GetValues<HazardGrade>())
        {
            var hazard = new Hazard(text.Kind, grade, Held.Of(Bench.Substance("potassium-nitrate"), 1), Held.Of(Bench.Substance("vinegar-5"), 1), "", 0, 0, "");
            var forbidden = Enum.GetValues<VesselAction>().Where(hazard.Forbids).Select(a => a.ToString()).Concat(hazard.ForbidsPutting ? ["anything put in"] : []);
            page.Append(CultureInfo.InvariantCulture, $"- {grade}: {Listed(forbidden, "nothing forbidden")}{(hazard.IsForLeaving ? ". Leave it" : "")}.\n");
        }

        page.Append(CultureInfo.InvariantCulture, $"- One ... with another {text.Happens}.\n- One {text.Happens}, {text.When}.\n- You may notice {text.Notice}.\n");
        page.Append(CultureInfo.InvariantCulture, $"- {text.First}\n- {text.Help}\n- {text.Instead}\n- Source: {text.Source} ({text.Confidence}). Signs: {Listed(text.Signs, "none")}.\n\n");
        Assert.NotEmpty(HazardWords.Refused(new Refusal(new Hazard(text.Kind, HazardGrade.Present, null, null, "", 0, 0, ""), VesselAction.Order, null, false)));
    }

    private static string Listed(IEnumerable<string> words, string none) => string.Join(", ", words.DefaultIfEmpty(none));

    private static string Uses(IReadOnlyList<string> uses) => uses.Count == 0 ? "" : $" [asks the gate: {string.Join(", ", uses)}]";
}
