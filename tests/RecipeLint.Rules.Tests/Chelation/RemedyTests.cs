using System.Globalization;
using RecipeLint.Recipes.Files;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Chelation;

/// <summary>What a message tells to do is computed: done as told, the finding is gone.</summary>
public sealed class RemedyTests
{
    [Fact]
    public void TheMissingAgentMakesAStockWhole()
    {
        const string Iron = "ferrous-sulfate-7h2o 5.56 g";
        var message = Only("chelate-short", Bottles.Stock("iron", Bottles.Add("disodium-edta-2h2o 4.5 g", Iron)));
        Assert.Contains("3.28 g more disodium EDTA dihydrate", message, StringComparison.Ordinal);

        Gone("chelate-short", Bottles.Stock("iron", Bottles.Add("disodium-edta-2h2o 7.78 g", Iron)));
    }

    [Fact]
    public void IronIsProtectedByTheAgentOrTheAcidThatIsNamed()
    {
        const string Iron = "ferrous-sulfate-7h2o 10 g";
        var message = Only("unprotected-ferrous-iron", Bottles.Stock("iron", Bottles.Add(Iron)));
        Assert.Contains("13.9 g of disodium EDTA dihydrate", message, StringComparison.Ordinal);
        Assert.Contains("pH 2.9 first, with about 0.276 mL of sulfuric acid 37 %", message, StringComparison.Ordinal);

        Gone("unprotected-ferrous-iron", Bottles.Stock("iron", Bottles.Add("disodium-edta-2h2o 13.9 g", Iron)));
        Gone("unprotected-ferrous-iron", Bottles.Stock("iron", Bottles.Add("sulfuric-37 0.276 mL", Iron)));
    }

    [Fact]
    public void AWeakPreservativeWorksAtThePhThatIsNamed()
    {
        const string Benzoate = "sodium-benzoate 1 g", Citrate = "tripotassium-citrate-h2o 5 g";
        var message = Only("preservative-too-weak", Bottles.Stock("trace", Bottles.Add(Benzoate, Citrate)));
        var ph = message.Split("Acidify to pH ")[1].Split(',')[0];
        // 3.5 g/L of citrate kept for three months take half as much again as a stock without food.
        Assert.InRange(double.Parse(ph, CultureInfo.InvariantCulture), 4.0, 4.5);

        Gone("preservative-too-weak", Bottles.Stock("trace", Bottles.Add(Benzoate, Citrate) + $$""", {"adjust": "pH {{ph}}", "using": "nitric-38"}"""));
        Only("preservative-too-weak", Bottles.Stock("trace", Bottles.Add(Benzoate, Citrate) + """, {"adjust": "pH 4.9", "using": "nitric-38"}"""));
    }

    [Fact]
    public void TheAcidThatIsNamedKeepsATraceStockClearInTapWater()
    {
        const string Metals = """
            {"add": "manganese-sulfate-h2o", "amount": "1.55 g", "assay": "99 %"}, {"add": "zinc-sulfate-7h2o", "amount": "0.66 g", "assay": "99 %"},
            {"add": "copper-sulfate-5h2o", "amount": "0.2 g", "assay": "99 %"}, {"add": "boric-acid", "amount": "1.72 g", "assay": "99 %"}
            """;
        static (string File, string Json) InAnyWater(string steps) =>
            ("trace.stock.json", $$"""{"format": 1, "name": "Trace", "makes": "1 L", "dose": "1 mL/L", "keep": {"for": "3 months"}, "steps": [{"pour": "700 mL"}, {{steps}}, {"topUp": "1 L"}]}""");
        Assert.Contains("citric acid", Only("no-acid-in-trace-stock", InAnyWater(Metals)), StringComparison.Ordinal);

        // The desk keeps what mends the finding on trial; the amount stands there and nowhere else.
        var (name, json) = InAnyWater(Metals);
        var tree = new MemoryFileTree("/example").AddFolder("/example").Add(name, json);
        var judged = Judged.Of(tree, ["."], ExampleRun.Load, ExampleRun.Engine);
        var desk = new RepairDesk(tree, ExampleRun.Load, ExampleRun.Engine, judged);
        var repairs = judged.Result.Findings.Where(f => f.Rule.Name == "no-acid-in-trace-stock").SelectMany(f => desk.For(f));
        Assert.Contains(repairs, r => r.Name.Contains("citric-acid", StringComparison.Ordinal));
        Gone("no-acid-in-trace-stock", Bottles.Stock("trace", Metals));
    }

    [Theory]
    [InlineData("10 mL/L", "1 g")]
    [InlineData("1 mL/L", "2.2 g")]
    public void AtMostSoMuchPreservativeIsNotTooMuch(string dose, string grams)
    {
        const string Keep = "\"at\": \"5..20 °C\", \"for\": \"3 months\"";
        (string File, string Json) Dosed(string amount) =>
            Bottles.Stock("trace", Bottles.Add("sodium-benzoate " + amount, "citric-acid-h2o 6 g", "potassium-nitrate 20 g"), dose, Keep);
        var message = Only("preservative-too-strong", Dosed(grams));

        Gone("preservative-too-strong", Dosed(message.Split("at most ")[1].Split("/L")[0]));
    }

    private static string Only(string rule, params (string File, string Json)[] documents) =>
        Assert.Single(Of(rule, documents)).Message;

    private static void Gone(string rule, params (string File, string Json)[] documents) => Assert.Empty(Of(rule, documents).Select(f => f.Message));

    private static List<Finding> Of(string rule, (string File, string Json)[] documents)
    {
        var run = Bottles.Written(documents);
        Bottles.Said(run);
        return [.. run.Result.Findings.Where(f => f.Rule.Name == rule)];
    }
}
