using RecipeLint.Rules.Engine;

namespace RecipeLint.Workbench.Tests;

/// <summary>Ids and names are never given twice, levels never change by accident, and no rule is without its row.</summary>
public sealed class LedgerTests
{
    private static readonly RuleDescriptor[] _rules = [.. RuleBook.Descriptors];

    private static Ledger Real() => Ledger.Parse(Repository.Find().Read(Ledger.Path));

    private static string Complaint(Func<RuleDescriptor, RuleDescriptor> change, Ledger? ledger = null) =>
        Assert.Single((ledger ?? Real()).Complaints([change(_rules[40]), .. _rules.Where((_, at) => at != 40)]));

    private static Ledger Edited(string was, string becomes)
    {
        var text = Real().ToJson();
        Assert.Contains(was, text, StringComparison.Ordinal);
        return Ledger.Parse(text.Replace(was, becomes, StringComparison.Ordinal));
    }

    [Fact]
    public void TheRulesAreThoseOfTheLedger()
    {
        var complaints = Real().Complaints(_rules);
        Assert.True(complaints.Count == 0, string.Join("\n", complaints));
        Assert.Equal(_rules.Length, Real().Rows.Count(r => r.Retired is null));
    }

    [Fact]
    public void AReusedIdIsNamed() =>
        Assert.Contains($"{_rules[40].Id} belongs to '{_rules[40].Name}' and cannot be given to 'new-thing'", Complaint(r => r with { Name = "new-thing" }), StringComparison.Ordinal);

    [Fact]
    public void TheIdOfARetiredRuleStaysTaken()
    {
        var row = LedgerRowOf(_rules[40]);
        var ledger = Edited(row, row[..^1] + ", \"retired\": \"0.2.0\"}");
        Assert.Contains("cannot be given to", Complaint(r => r, ledger), StringComparison.Ordinal);
        Assert.Empty(ledger.Complaints([.. _rules.Where((_, at) => at != 40)]));
    }

    [Fact]
    public void AChangedLevelIsNamed()
    {
        var other = _rules[40].Level == Level.Note ? Level.Error : Level.Note;
        Assert.Contains($"has level '{Words.Of(_rules[40].Level)}' here and '{Words.Of(other)}' in its rule.json", Complaint(r => r with { Level = other }), StringComparison.Ordinal);
    }

    [Fact]
    public void AChangedCertaintyOrVersionIsNamed()
    {
        Assert.Contains("has certainty", Complaint(r => r with { Certainty = r.Certainty == Certainty.Practice ? Certainty.Computed : Certainty.Practice }), StringComparison.Ordinal);
        Assert.Contains("has since '0.1.0' here and '9.9.9'", Complaint(r => r with { Since = "9.9.9" }), StringComparison.Ordinal);
    }

    [Fact]
    public void ARuleWithoutARowIsNamed()
    {
        var ledger = Edited("    " + LedgerRowOf(_rules[40]) + ",\n", "");
        Assert.Contains($"no row for {_rules[40].Id} '{_rules[40].Name}'", Assert.Single(ledger.Complaints(_rules)), StringComparison.Ordinal);
        Assert.Equal(Real().ToJson(), ledger.With(_rules).ToJson());
    }

    [Fact]
    public void ARuleThatWentKeepsItsRow() =>
        Assert.Contains("has no rule any more", Assert.Single(Real().Complaints([.. _rules.Where((_, at) => at != 40)])), StringComparison.Ordinal);

    [Fact]
    public void RowsAreToldApartByIdAndNameAndStandInOrder()
    {
        var (a, b) = (LedgerRowOf(_rules[40]), LedgerRowOf(_rules[41]));
        Assert.Contains(Edited(b, a).Complaints(_rules), c => c.Contains($"the id {_rules[40].Id} has two rows", StringComparison.Ordinal));
        Assert.Contains(Edited(b, a).Complaints(_rules), c => c.Contains($"the name '{_rules[40].Name}' has two rows", StringComparison.Ordinal));
        Assert.Contains(Edited($"{a},\n    {b}", $"{b},\n    {a}").Complaints(_rules), c => c.Contains("stands after", StringComparison.Ordinal));
    }

    [Fact]
    public void RefreshingNeverChangesARowThatStands()
    {
        var ledger = Edited(LedgerRowOf(_rules[40]), LedgerRowOf(_rules[40] with { Since = "0.0.1" }));
        Assert.Equal(ledger.ToJson(), ledger.With(_rules).ToJson());
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("[")]
    [InlineData("""{"rules": [{"id": "RL0001"}]}""")]
    public void ABrokenLedgerIsSaidInOneLine(string text) =>
        Assert.StartsWith("rules/ledger.json: ", Assert.Throws<BenchException>(() => Ledger.Parse(text)).Message, StringComparison.Ordinal);

    private static string LedgerRowOf(RuleDescriptor rule) =>
        Ledger.Parse("{\"rules\": []}").With([rule]).ToJson().Split('\n').Single(l => l.Contains("\"id\"", StringComparison.Ordinal)).Trim();
}
