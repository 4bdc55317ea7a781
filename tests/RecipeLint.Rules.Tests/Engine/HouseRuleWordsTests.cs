using System.Text;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Shop;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Engine;

/// <summary>What the message of a house rule makes of facts of every kind, and where its finding stands: FactText, FactPath, HouseRuleDesk.</summary>
public sealed class HouseRuleWordsTests
{
    private const string Stock = """
        {"format": 1, "name": "Trace", "makes": "1 L", "dose": "1 mL/L", "steps": [
          {"pour": "0.7 L"},
          {"add": "manganese-sulfate-h2o", "amount": "0.5 g", "assay": "98 %", "id": "mn"},
          {"add": "boric-acid", "amount": "3 g"},
          {"topUp": "1 L"}]}
        """;

    private static readonly string _facts = """
        {"name": "Trace", "dose_mL_per_L": 1, "locator": {"file": "trace.stock.json", "pointer": ""},
         "additions": [
           {"id": "mn", "mass_g": 0.51234567, "assay_fraction": 0.98, "volume_L": 2, "dose_mL_per_L": 3, "amount_mol": 4, "stirred": true, "dry": false, "none": null,
            "long": "LONG", "list": [1, 2], "more": {"a": 1}, "big": 1e400,
            "locator": {"file": "trace.stock.json", "pointer": "/steps/1"},
            "contributions": [
              {"label": "small", "concentration_mg_per_L": 1, "locator": {"file": "trace.stock.json", "pointer": "/steps/1"}},
              {"label": "large", "concentration_mg_per_L": 2.34567, "locator": {"file": "trace.stock.json", "pointer": "/steps/2"}},
              {"label": "nought", "concentration_mg_per_L": 0, "locator": {"file": "trace.stock.json", "pointer": "/steps/0"}},
              {"label": "nowhere", "concentration_mg_per_L": 9}]}],
         "apart": {"x": {"deep": 7}}}
        """.Replace("LONG", new string('x', 90), StringComparison.Ordinal);

    private static Finding? Find(string property, string message, string within = "additions")
    {
        var must = (within == "additions"
            ? """{"properties": {"additions": {"items": {"properties": {"KEY": false}}}}}"""
            : """{"properties": {"KEY": false}}""").Replace("KEY", property, StringComparison.Ordinal);
        var rule = $$$"""
            {"format": 1, "id": "HR0001", "name": "own", "level": "warning", "looksAt": "stock", "title": "A fact.",
             "must": {{{must}}}, "message": "{{{message}}}", "reason": "So it is."}
            """;
        var files = new MemoryFileTree("/shop").AddFolder("/shop/.git")
            .Add("recipelint.json", "{}"u8.ToArray())
            .Add("house-rules/own.rule.json", Encoding.UTF8.GetBytes(rule))
            .Add("trace.stock.json", Encoding.UTF8.GetBytes(Stock));
        var workspace = WorkspaceLoader.Load(files, ["."], ExampleRun.Load);
        var found = HouseRules.On(Analyzer.Analyse(workspace), "trace.stock.json", HouseRuleScope.Stock, (_, _) => Encoding.UTF8.GetBytes(_facts));
        return Assert.Single(found).Findings!.SingleOrDefault();
    }

    [Theory]
    [InlineData("{0}", "0.5123")]
    [InlineData("{1/id} of {/name}", "mn of Trace")]
    [InlineData("{1/stirred}, {1/dry}, {1/none}", "yes, no, nothing")]
    [InlineData("{1/list} {1/more}", "[1, 2] {\\\"a\\\": 1}")]
    [InlineData("{1/list/1} {1/list/2} {1/list/x}", "2 nothing nothing")]
    [InlineData("{2/0/id} {3/name} {4} {9}", "mn Trace nothing nothing")]
    [InlineData("{/apart/x/deep} {/apart/y} {/additions/0/mass_g}", "7 nothing 0.5123")]
    [InlineData("{word} {} {0x} {1 open", "{word} {} nothing {1 open")]
    [InlineData("{99999999999}", "nothing")]
    [InlineData("{1/big}", "1e400")]
    public void FactsAreToldInWords(string message, string told) =>
        Assert.Equal($"{told.Replace("\\\"", "\"", StringComparison.Ordinal)} So it is.", Find("mass_g", message)!.Message);

    [Fact]
    public void ALongFactIsCut() => Assert.Equal($"{new string('x', 80)}... So it is.", Find("mass_g", "{1/long}")!.Message);

    /// <summary>A fact that was read from a value of a file stands at that value, any other at the nearest thing around it.</summary>
    [Theory]
    [InlineData("mass_g", "additions", "/steps/1/amount")]
    [InlineData("volume_L", "additions", "/steps/1/amount")]
    [InlineData("amount_mol", "additions", "/steps/1/amount")]
    [InlineData("assay_fraction", "additions", "/steps/1/assay")]
    [InlineData("dose_mL_per_L", "additions", "/steps/1")]
    [InlineData("stirred", "additions", "/steps/1")]
    [InlineData("more", "additions", "/steps/1")]
    [InlineData("dose_mL_per_L", "root", "/dose")]
    [InlineData("apart", "root", "")]
    public void AFindingStandsWhereItsFactWasRead(string property, string within, string pointer) =>
        Assert.Equal(("trace.stock.json", pointer), (Find(property, "m", within)!.Place.File, Find(property, "m", within)!.Place.Pointer.Value));

    [Fact]
    public void NumbersAreValuesAndContributorsComeWithTheLargestFirst()
    {
        var finding = Find("mass_g", "m")!;

        Assert.Equal(("mass_g", 0.51234567), (Assert.Single(finding.Values).Name, finding.Values[0].Value));
        Assert.Equal(["large: 2.346 mg/L", "small: 1 mg/L"], finding.Related.Select(r => r.Label));
        Assert.Equal(["/steps/2", "/steps/1"], finding.Related.Select(r => r.Place.Pointer.Value));
        Assert.Empty(Find("stirred", "m")!.Values);
        Assert.Empty(Find("apart", "m", "root")!.Related);
        Assert.Null(Find("missing", "m"));
    }
}
