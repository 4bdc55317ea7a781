using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Tests.Procedure;

namespace RecipeLint.Rules.Tests.Documents;

/// <summary>Figures of a water analysis held against each other, on files as a laboratory fills them.</summary>
public sealed class UnbalancedWaterTests
{
    private static IReadOnlyList<Finding> Judge(string members) =>
        Workbench.JudgeFiles("unbalanced-water", [("w.water.json", $$"""{"format": 1, {{members}}}""")]);

    /// <summary>Cations 2 meq/L, anions 1 meq/L: 100 (2 - 1) / 3 per cent (Standard Methods, method 1030 E; recalled).</summary>
    [Fact]
    public void AnImbalanceStatesItsSize()
    {
        var finding = Assert.Single(Judge("\"ions\": {\"Ca\": \"2 meq/L\", \"Cl\": \"0.5 meq/L\", \"SO4\": \"0.5 meq/L\"}"));
        Assert.Equal("/ions", finding.Place.Pointer.Value);
        Assert.Equal(100.0 / 3, finding.Values.Single(v => v.Name == "ImbalancePercent").Value, 1e-9);
    }

    [Theory]
    [InlineData("\"ions\": {\"Ca\": \"82 mg/L\", \"Mg\": \"11 mg/L\", \"Na\": \"18 mg/L\", \"HCO3\": \"122 mg/L\", \"SO4\": \"40 mg/L\", \"Cl\": \"30 mg/L\"}", "ions")]
    [InlineData("\"hardness\": \"3 °dH\", \"ions\": {\"Ca\": \"82 mg/L\", \"Mg\": \"11 mg/L\"}", "hardness")]
    [InlineData("\"hardness\": \"20 °dH\", \"ions\": {\"Ca\": \"40 mg/L\", \"Mg\": \"5 mg/L\"}", "hardness")]
    [InlineData("\"hardness\": \"3 °dH\", \"ions\": {\"Ca\": \"82 mg/L\"}", "hardness")]
    [InlineData("\"alkalinity\": \"1 meq/L\", \"ions\": {\"HCO3\": \"250 mg/L\"}", "alkalinity")]
    [InlineData("\"alkalinity\": \"250 mg/L as CaCO3\", \"ions\": {\"HCO3\": \"250 mg/L\"}", "alkalinity")]
    [InlineData("\"alkalinity\": \"6 meq/L\", \"ec\": \"0.1 mS/cm\"", "ec")]
    [InlineData("\"hardness\": \"20 °dH\", \"ec\": \"60 µS/cm\"", "ec")]
    [InlineData("\"ec\": \"2.5 mS/cm\", \"ions\": {\"Ca\": \"40 mg/L\", \"Mg\": \"5 mg/L\", \"Na\": \"10 mg/L\"}", "ec")]
    public void FiguresOfAWaterThatCannotAllBeRight(string members, string at) =>
        Assert.Contains(Judge(members), f => f.Place.Pointer.Value == "/" + at);

    [Theory]
    [InlineData("\"hardness\": \"14 °dH\", \"alkalinity\": \"4.1 meq/L\", \"ec\": \"0.55 mS/cm\", \"ions\": {\"Ca\": \"82 mg/L\", \"Mg\": \"11 mg/L\", \"HCO3\": \"250 mg/L\", \"SO4\": \"45 mg/L\"}")]
    [InlineData("\"hardness\": \"4..6 meq/L\", \"ions\": {\"Ca\": \"80..110 mg/L\", \"Mg\": \"5..9 mg/L\"}")]
    [InlineData("\"hardness\": \"16 °dH\", \"alkalinity\": \"240 mg/L as CaCO3\", \"ec\": \"0.62 mS/cm\"")]
    [InlineData("\"ec\": \"2.2 mS/cm\", \"ions\": {\"Ca\": \"610 mg/L\", \"Mg\": \"0 mg/L\", \"Na\": \"0 mg/L\", \"SO4\": \"1460 mg/L\"}")]
    [InlineData("\"ec\": \"0.01 mS/cm\", \"alkalinity\": \"0.1 meq/L\"")]
    public void FiguresOfAWaterThatAgreeAreSilent(string members) => Assert.Empty(Judge(members));

    /// <summary>A charge balance of half an analysis says nothing: what could not be read is reported where it stands.</summary>
    [Fact]
    public void AnAnalysisThatCouldNotBeReadWholeIsNotJudged() =>
        Assert.Empty(Judge("\"hardness\": \"3 °dH\", \"ions\": {\"Ca\": \"82 mg/L\", \"Mg\": \"11 mg/L\", \"Cl\": \"< 5 mg/L\"}"));
}
