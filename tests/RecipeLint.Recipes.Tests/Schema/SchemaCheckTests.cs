using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;
using RecipeLint.Recipes.Tests.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Schema;

/// <summary>One cause gives one problem, at its place, in our words.</summary>
public sealed class SchemaCheckTests
{
    private static (SourceFile Source, IReadOnlyList<Problem> Problems) Check(DocumentKind kind, string json)
    {
        var read = JsonReading.Read("shop/a.json", Encoding.UTF8.GetBytes(json));
        var problems = SchemaCheck.Check(kind, read.Source);
        Places.AssertAllInside(read.Source, problems);
        return (read.Source, problems);
    }

    private static Problem AssertSingle(DocumentKind kind, string json, ProblemKind problem, string excerpt)
    {
        var (source, problems) = Check(kind, json);
        var single = Assert.Single(problems);
        Assert.Equal(problem, single.Kind);
        Assert.Equal(excerpt, source.Excerpt(source.Resolve(single.Place)));
        return single;
    }

    private static string Stock(string steps) => $$"""{"format": 1, "makes": "2 L", "steps": [{{steps}}]}""";

    private static string Recipe(string more, string doses = """{"stock": "a.stock.json"}""") =>
        $$"""{"format": 1, "final": "200 L", "doses": [{{doses}}]{{more}}}""";

    private static string Substance(string members) => $$"""{"format": 1, "substances": [{{{members}}}]}""";

    public static TheoryData<DocumentKind, string> Good() => new()
    {
        { DocumentKind.Stock, Stock("""{"stir": "until clear"}""") },
        {
            DocumentKind.Stock,
            """
            {"$schema": "../schema/stock.schema.json", "format": 1, "name": "Trace", "makes": "2 L", "dose": "1 mL/L", "use": "bench", "vessel": "bottle", "note": "n",
             "keep": {"at": "4..30 °C", "for": "6 months", "light": "dark", "note": "n"},
             "label": {"contents": "c", "dilution": "d", "date": "d", "hazard": "h", "keepApart": "k", "colour": "blue", "note": "n"},
             "steps": [{"pour": "1.4 L", "of": "rain.water.json", "with": "jug", "id": "a", "note": "n"}, {"add": "x", "amount": "1 g", "assay": "99 %", "with": "s", "id": "b", "note": "n"},
              {"adjust": "pH 3.0", "using": "koh-10", "id": "c", "note": "n"}, {"topUp": "2 L", "of": "rain", "id": "d", "note": "n"}, {"stir": "s", "id": "e", "note": "n"},
              {"filter": "f", "note": "n"}, {"warm": "to 40 °C"}, {"cool": "c"}, {"rest": "r"}, {"rinse": "beaker twice with 20 mL distilled"}]}
            """
        },
        {
            DocumentKind.Recipe,
            Recipe(
                """
                , "name": "n", "crop": "lettuce", "stage": "s", "water": "rain", "volume": "added to", "adjust": {"pH": 5.8, "using": "x", "note": "n"},
                "targets": {"N": "150 mg/L ± 10 %", "NO3-N": "1 mg/L", "EC": "2.0 mS/cm", "pH": "5.8 ± 0.2", "note": "n"}
                """,
                """
                {"stock": "a.stock.json", "dose": "1:100", "with": "x", "strokes": 4, "id": "a", "note": "n"}, {"stock": "b.stock.json", "amount": "2 L"},
                {"add": "KNO3", "amount": "5 mmol/L", "assay": "99 %", "with": "s", "id": "b", "note": "n"}
                """)
        },
        { DocumentKind.Water, """{"format": 1, "ec": "0.5 mS/cm"}""" },
        { DocumentKind.Water, """{"format": 1, "hardness": "14 °dH", "pH": "7.2..7.8", "date": "d", "source": "s", "name": "n", "note": "n"}""" },
        { DocumentKind.Water, """{"format": 1, "pH": 7.6, "ions": {"Ca": "82 mg/L", "NO3-N": "1 mg/L", "note": "n"}}""" },
        { DocumentKind.Substances, """{"format": 1, "substances": []}""" },
        { DocumentKind.Substances, Substance("\"id\": \"a\", \"formula\": \"KCl\", \"assay\": \"98 %\", \"molarMass\": \"74.55 g/mol\", \"aliases\": [\"b\"], \"cas\": \"7447-40-7\", \"kind\": \"salt\"") },
        { DocumentKind.Substances, Substance("\"id\": \"a\", \"strengthOf\": \"nitric-acid\", \"strength\": \"38 % w/w\", \"density\": \"1.23 g/mL\", \"hazards\": [\"H272\", \"EUH071\"]") },
        {
            DocumentKind.Substances,
            Substance(
                """
                "id": "a", "form": "liquid", "density": "1.35 g/mL", "impurities": {"Cd": "5 mg/kg", "Se": "1 mg/kg", "note": "n"}, "certificate": "c", "colour": "red",
                "label": {"basis": "oxide", "percent": "w/v", "nitrogen": {"total": "16.5 %", "nitrate": "14.5 %", "ammonium": "1 %", "urea": "1 %"}, "P2O5": "1 %", "K2O": "1 %", "CaO": "1 %",
                 "MgO": "1 %", "SO3": "1 %", "Fe": {"total": "6 %", "chelated": "5 %", "orthoOrtho": "4.8 %"}, "Mn": "1 %", "chelatedWith": "EDTA", "note": "n"}
                """)
        },
        { DocumentKind.Substances, Substance("\"id\": \"a\", \"label\": {\"basis\": \"element\", \"N\": \"15 %\", \"P\": \"1 %\", \"Fe\": \"6 %\"}") },
        { DocumentKind.Substances, Substance("\"id\": \"a\", \"unknownComposition\": true, \"drop\": \"0.05 mL ± 20 %\"") },
        { DocumentKind.Profile, """{"format": 1}""" },
        {
            DocumentKind.Profile,
            """
            {"format": 1, "name": "p", "extends": "lettuce", "source": "s", "practice": false, "note": "n", "EC": "1.2..1.8 mS/cm", "pH": "5.6..6.2",
             "elements": {"N": {"deficientBelow": "80 mg/L", "range": "120..180 mg/L", "upTo": "220 mg/L", "toxicAbove": "400 mg/L", "source": "s", "note": "n"}, "note": "n"},
             "ratios": [{"of": "K", "to": "Ca+Mg", "by": "meq", "range": "0.5..1", "source": "s", "note": "n"}],
             "stages": {"note": "n", "heading": {"EC": "1..2 mS/cm", "pH": "5.5..6", "elements": {"K": {"range": "1..2 mmol/L"}}, "note": "n"}}}
            """
        },
        { DocumentKind.Settings, "{}" },
        {
            DocumentKind.Settings,
            """
            {"note": "n", "profile": "lettuce", "houseRules": ["house-rules"], "sites": [{"name": "s", "at": "4..28 °C"}], "vessels": [{"name": "v", "capacity": "2 L", "tare": "180 g"}],
             "scales": [{"name": "s", "readability": "0.01 g", "capacity": "500 g", "repeatability": "0.015 g", "minimumWeight": "0.5 g", "note": "n"}],
             "measures": [{"name": "c", "kind": "cylinder", "capacity": "100 mL", "readability": "1 mL", "tolerance": "± 0.5 %"}],
             "rules": {"note": "n", "a": "off", "RL1001": {"level": "error", "limit": 0.5, "unit": "g", "strict": true, "note": "n"}},
             "suppressions": [{"rule": "a", "file": "f", "at": "steps/edta", "reason": "r", "accepted": 1.4, "expires": "2027-03-01", "note": "n"}]}
            """
        },
        {
            DocumentKind.Batch, """
            {"format": 1, "stock": "part-a.stock.json", "batch": "2 L", "made": "2026-03-01", "by": "the trainee",
             "steps": [{"add": "boric-acid", "amount": "2.01 g", "lot": "17"}], "readings": [{"pH": 3.4}], "note": "a bag opened anew"}
            """
        },
    };

    [Theory]
    [MemberData(nameof(Good))]
    public void DocumentsAsDescribedHaveNoProblem(DocumentKind kind, string json) => Assert.Empty(Check(kind, json).Problems.Select(p => p.Message));

    [Theory]
    [InlineData("""{"add": "x", "amout": "3 g"}""", "\"amout\"", "amount")]
    [InlineData("""{"ad": "x", "amount": "3 g", "assay": "99 %"}""", "\"ad\"", "add")]
    [InlineData("""{"topup": "2 L"}""", "\"topup\"", "topUp")]
    [InlineData("""{"adjust": "pH 3", "usin": "koh"}""", "\"usin\"", "using")]
    [InlineData("""{"stir": "s", "comment": "c"}""", "\"comment\"", "note")]
    [InlineData("""{"pour": "1 L", "off": "rain"}""", "\"off\"", "of")]
    public void AnUnknownKeyInAStepIsOneProblemWithItsLikelyMeaning(string step, string excerpt, string meant)
    {
        var problem = AssertSingle(DocumentKind.Stock, Stock(step), ProblemKind.UnknownKey, excerpt);
        Assert.Equal(PlacePart.Key, problem.Place.Part);
        Assert.Equal(meant, problem.Suggestions[0]);
        Assert.Contains($"Did you mean \"{meant}\"", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{"topUp": "2 L", "amount": "3 L"}""", "\"amount\"", "Known are \"of\", \"id\" and \"note\"")]
    [InlineData("""{"shake": "well"}""", "\"shake\"", "\"stir\"")]
    [InlineData("""{"stir": "a", "stri": "b"}""", "\"stri\"", "\"stir\" is there already")]
    public void AKeyThatMeansNothingHereIsToldWithWhatIsKnown(string step, string excerpt, string words)
    {
        var problem = AssertSingle(DocumentKind.Stock, Stock(step), ProblemKind.UnknownKey, excerpt);
        Assert.Empty(problem.Suggestions);
        Assert.Contains(words, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AMisspeltRequiredKeyIsNotMissingAsWell() =>
        AssertSingle(DocumentKind.Stock, """{"format": 1, "make": "2 L", "steps": [{"stir": "s"}]}""", ProblemKind.UnknownKey, "\"make\"");

    [Fact]
    public void KeysWithSlashesAndEscapesAreFound() =>
        Assert.Contains("a/b~c", AssertSingle(DocumentKind.Settings, """{"a\/b~\u0063": 1}""", ProblemKind.UnknownKey, """
            "a\/b~\u0063"
            """).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("""{"add": "x", "amount": "1 g", "pour": "1 L"}""", "\"pour\"")]
    [InlineData("""{"stir": "s", "rest": "r"}""", "\"rest\"")]
    [InlineData("""{"topUp": "1 L", "stir": "s"}""", "\"stir\"")]
    public void AStepWithTwoVerbsIsOneProblemThatShowsBoth(string step, string excerpt)
    {
        var problem = AssertSingle(DocumentKind.Stock, Stock(step), ProblemKind.WrongShape, excerpt);
        Assert.Single(problem.Related);
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{"note": "n"}""")]
    [InlineData("""{"amount": "1 g", "id": "a"}""")]
    public void AStepWithoutAVerbListsTheVerbs(string step) =>
        Assert.Contains("\"add\", \"pour\"", AssertSingle(DocumentKind.Stock, Stock(step), ProblemKind.MissingKey, "{").Message, StringComparison.Ordinal);

    public static TheoryData<DocumentKind, string, string, string> Missing() => new()
    {
        { DocumentKind.Stock, """{"format": 1, "steps": [{"stir": "s"}]}""", "\"makes\"", "\"2 L\"" },
        { DocumentKind.Stock, Stock("""{"add": "x"}"""), "\"amount\"", "\"24 g\"" },
        { DocumentKind.Stock, Stock("""{"adjust": "pH 3"}"""), "\"using\"", "\"koh-10\"" },
        { DocumentKind.Recipe, Recipe("", """{"add": "x"}"""), "\"amount\"", "\"2 L\"" },
        { DocumentKind.Recipe, Recipe("", "{}"), "\"stock\" or \"add\"", "" },
        { DocumentKind.Recipe, Recipe(""", "adjust": {"pH": 5.8}"""), "\"using\"", "" },
        { DocumentKind.Water, """{"format": 1}""", "\"ions\", \"hardness\", \"alkalinity\" or \"EC\"", "" },
        { DocumentKind.Substances, Substance("\"id\": \"a\""), "\"formula\", \"strengthOf\"", "" },
        { DocumentKind.Substances, Substance("\"formula\": \"KCl\""), "\"id\"", "" },
        { DocumentKind.Substances, Substance("\"id\": \"a\", \"strengthOf\": \"x\", \"strength\": \"1 % w/w\""), "\"density\"", "\"1.23 g/mL\"" },
        { DocumentKind.Substances, Substance("\"id\": \"a\", \"label\": {\"N\": \"1 %\"}"), "\"basis\"", "" },
        { DocumentKind.Settings, """{"scales": [{"name": "s"}]}""", "\"readability\"", "\"0.01 g\"" },
        { DocumentKind.Settings, """{"suppressions": [{"rule": "r", "file": "f"}]}""", "\"reason\"", "" },
    };

    [Theory]
    [MemberData(nameof(Missing))]
    public void AMissingKeyIsToldAtItsObject(DocumentKind kind, string json, string key, string example)
    {
        var problem = AssertSingle(kind, json, ProblemKind.MissingKey, "{");
        Assert.Contains(key, problem.Message, StringComparison.Ordinal);
        Assert.Contains(example, problem.Message, StringComparison.Ordinal);
    }

    public static TheoryData<DocumentKind, string, string> WithoutUnit() => new()
    {
        { DocumentKind.Stock, """{"format": 1, "makes": 2, "steps": [{"stir": "s"}]}""", "2" },
        { DocumentKind.Stock, Stock("""{"add": "x", "amount": 24.5}"""), "24.5" },
        { DocumentKind.Stock, Stock("""{"pour": 1.4}"""), "1.4" },
        { DocumentKind.Stock, Stock("""{"topUp": 1e400}"""), "1e400" },
        { DocumentKind.Recipe, Recipe(""", "targets": {"N": 150}"""), "150" },
        { DocumentKind.Recipe, Recipe(""", "targets": {"EC": 2}"""), "2" },
        { DocumentKind.Water, """{"format": 1, "ec": 0.55}""", "0.55" },
        { DocumentKind.Water, """{"format": 1, "ions": {"Ca": 82}}""", "82" },
        { DocumentKind.Substances, Substance("\"id\": \"a\", \"label\": {\"basis\": \"oxide\", \"Fe\": 6}"), "6" },
        { DocumentKind.Substances, Substance("\"id\": \"a\", \"formula\": \"KCl\", \"impurities\": {\"Se\": 5}"), "5" },
        { DocumentKind.Settings, """{"scales": [{"name": "s", "readability": 0.01}]}""", "0.01" },
    };

    [Theory]
    [MemberData(nameof(WithoutUnit))]
    public void ABareNumberWhereAQuantityIsDueHasNoUnit(DocumentKind kind, string json, string number) =>
        Assert.Contains("unit", AssertSingle(kind, json, ProblemKind.NumberWithoutUnit, number).Message, StringComparison.Ordinal);

    public static TheoryData<DocumentKind, string, string, string> Wrong() => new()
    {
        { DocumentKind.Stock, "[]", "[", "must be an object" },
        { DocumentKind.Stock, "\"x\"", "\"x\"", "must be an object" },
        { DocumentKind.Stock, Stock("\"stir\""), "\"stir\"", "Entry 1 of \"steps\" must be an object" },
        { DocumentKind.Stock, Stock(""), "[", "at least 1 entry" },
        { DocumentKind.Stock, """{"format": 2, "makes": "1 L", "steps": [{"stir": "s"}]}""", "2", "a newer form of this file; this program reads 1" },
        { DocumentKind.Stock, """{"format": "1", "makes": "1 L", "steps": [{"stir": "s"}]}""", "\"1\"", "whole number" },
        { DocumentKind.Stock, """{"format": 1, "makes": null, "steps": [{"stir": "s"}]}""", "null", "says nothing" },
        { DocumentKind.Stock, """{"format": 1, "makes": {"L": 1}, "steps": [{"stir": "s"}]}""", "{", "not an object" },
        { DocumentKind.Stock, Stock("""{"adjust": 3.0, "using": "koh"}"""), "3.0", "\"pH 3.0\"" },
        { DocumentKind.Stock, Stock("""{"add": "", "amount": "1 g"}"""), "\"\"", "is empty" },
        { DocumentKind.Stock, Stock("""{"stir": "s", "id": "A b"}"""), "\"A b\"", "does not have the form" },
        { DocumentKind.Stock, Stock("""{"stir": "s", "note": 1}"""), "1", "text" },
        { DocumentKind.Stock, """{"format": 1, "makes": "1 L", "keep": {"light": "drak"}, "steps": [{"stir": "s"}]}""", "\"drak\"", "Did you mean \"dark\"" },
        { DocumentKind.Recipe, Recipe(""", "volume": "madeup" """), "\"madeup\"", "Did you mean \"made up\"" },
        { DocumentKind.Recipe, Recipe("", """{"stock": "a", "strokes": 0}"""), "0", "at least 1" },
        { DocumentKind.Recipe, Recipe("", """{"stock": "a", "strokes": 1.5}"""), "1.5", "whole number" },
        { DocumentKind.Recipe, Recipe("", """{"stock": "a", "strokes": 1e999999999}"""), "1e999999999", "at most" },
        { DocumentKind.Recipe, Recipe("", """{"stock": "a", "dose": "1:100", "amount": "2 L"}"""), "\"amount\"", "do not go together" },
        { DocumentKind.Recipe, Recipe("", """{"stock": "a", "add": "b"}"""), "\"add\"", "do not go together" },
        { DocumentKind.Recipe, Recipe(""", "targets": {"pH": true}"""), "true", "text in double quotes or a number" },
        { DocumentKind.Water, """{"format": 1, "ec": "1 mS/cm", "pH": 1e400}""", "1e400", "more than can be computed with" },
        { DocumentKind.Substances, Substance("\"id\": \"a\", \"formula\": \"KCl\", \"label\": {\"basis\": \"oxide\"}"), "\"label\"", "do not go together" },
        { DocumentKind.Substances, Substance("\"id\": \"a\", \"label\": {\"basis\": \"oxide\", \"P2O5\": \"1 %\", \"P\": \"1 %\"}"), "\"P\"", "do not go together" },
        { DocumentKind.Substances, Substance("\"id\": \"a\", \"formula\": \"KCl\", \"cas\": \"7447407\""), "\"7447407\"", "does not have the form" },
        { DocumentKind.Settings, """{"rules": {"a": "warn"}}""", "\"warn\"", "Did you mean \"warning\"" },
        { DocumentKind.Settings, """{"rules": {"a": {"level": "warn"}}}""", "\"warn\"", "Did you mean \"warning\"" },
        { DocumentKind.Settings, """{"rules": {"a": 1}}""", "1", "text in double quotes or an object" },
        { DocumentKind.Settings, """{"rules": {"a": {"x": []}}}""", "[", "not a list" },
        { DocumentKind.Settings, """{"suppressions": [{"rule": "r", "file": "f", "reason": "x", "expires": "1.3.2027"}]}""", "\"1.3.2027\"", "2027-03-01" },
        { DocumentKind.Settings, """{"houseRules": 5}""", "5", "text in double quotes or a list" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void AWrongValueIsOneProblem(DocumentKind kind, string json, string excerpt, string words) =>
        Assert.Contains(words, AssertSingle(kind, json, ProblemKind.WrongShape, excerpt).Message, StringComparison.Ordinal);

    [Fact]
    public void ManyCausesAreToldEachOnceInTheOrderOfTheFile()
    {
        const string Json = """
            {"format": 1, "maks": "2 L", "steps": [
              {"add": "x", "amount": 3},
              {"pour": "1 L", "ofs": "rain"},
              {"rest": true},
              {}]}
            """;
        var (source, problems) = Check(DocumentKind.Stock, Json);
        Assert.Equal(
            [ProblemKind.UnknownKey, ProblemKind.NumberWithoutUnit, ProblemKind.UnknownKey, ProblemKind.WrongShape, ProblemKind.MissingKey],
            problems.Select(p => p.Kind));
        Assert.Equal(["1:15-1:21", "2:26-2:27", "3:19-3:24", "4:12-4:16", "5:3-5:4"], problems.Select(p => Places.Where(source, p)));
        Assert.Equal(["/maks", "/steps/0/amount", "/steps/1/ofs", "/steps/2/rest", "/steps/3"], problems.Select(p => p.Place.Pointer.Value));
    }

    [Fact]
    public void CommentsTrailingCommasAndHalfPairsDoNotHideTheShape() =>
        AssertSingle(DocumentKind.Stock, """
            {"format": 1, /* c */ "makes": 2, "name": "\ud800", "steps": [{"stir": "s"},],}
            """, ProblemKind.NumberWithoutUnit, "2");

    [Fact]
    public void OfADuplicateTheLastOneIsHeldAgainstTheSchema() =>
        AssertSingle(DocumentKind.Stock, """{"format": 1, "makes": 1, "makes": 2, "steps": [{"stir": "s"}]}""", ProblemKind.NumberWithoutUnit, "2");

    [Fact]
    public void AFileThatIsNoJsonHasNoShape() => Assert.Empty(Check(DocumentKind.Stock, "{").Problems);

    [Fact]
    public void TooManyEntriesKeysOrValuesAreToldInsteadOfEvaluated()
    {
        var entries = AssertSingle(DocumentKind.Stock, Stock(string.Join(",", Enumerable.Repeat("{}", 1001))), ProblemKind.WrongShape, "{");
        Assert.Equal("/steps/1000", entries.Place.Pointer.Value);
        var keys = "{" + string.Join(",", Enumerable.Range(0, 1001).Select(i => $"\"k{i}\": {i}")) + "}";
        AssertSingle(DocumentKind.Settings, keys, ProblemKind.WrongShape, "1000");
        var values = $"[{string.Join(",", Enumerable.Repeat($"[{string.Join(",", Enumerable.Repeat("0", 999))}]", 21))}]";
        Assert.Contains("20,000", AssertSingle(DocumentKind.Settings, values, ProblemKind.WrongShape, "0").Message, StringComparison.Ordinal);
        Assert.Equal(101, Check(DocumentKind.Stock, Stock(string.Join(",", Enumerable.Repeat("{}", 1000)))).Problems.Count);
    }
}
