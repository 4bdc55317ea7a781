using System.Text;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Documents;

/// <summary>Single values: what is read, and where exactly the finger is put on what is not.</summary>
public sealed class FieldReaderTests
{
    private static InMemoryShop Shop(string steps) =>
        InMemoryShop.Of(("a.stock.json", $$"""{"format": 1, "makes": "1 L", "steps": [{{steps}}]}"""));

    /// <summary>Characters of one, two, three and four bytes before the place and in it.</summary>
    [Theory]
    [InlineData("24 «handfuls»")]
    [InlineData("24\u00A0«handfuls»")]
    [InlineData("24\u202F«häänd𝄞fuls»")]
    [InlineData("24 «𝄞𝄞»")]
    [InlineData("24 g «or so, 𝄞»")]
    public void ThePlaceInsideATextIsThatOfItsBytes(string amount)
    {
        var workspace = Shop($$"""{"add": "boric-acid", "amount": "{{amount.Replace("«", "", StringComparison.Ordinal).Replace("»", "", StringComparison.Ordinal)}}"}""").Load();
        var problem = Assert.Single(workspace.Problems);
        var source = workspace.Sources["a.stock.json"];
        var span = source.Resolve(problem.Place);
        var marked = amount[(amount.IndexOf('«', StringComparison.Ordinal) + 1)..amount.IndexOf('»', StringComparison.Ordinal)];
        Assert.Equal(marked, Encoding.UTF8.GetString(source.DecodableBytes.Slice(span.Start, span.Length).Span));
    }

    [Theory]
    [InlineData("\"amount\": true")]
    [InlineData("\"amount\": {}")]
    [InlineData("\"amount\": null")]
    [InlineData("\"amount\": [\"1 g\"]")]
    public void AValueOfTheWrongKindIsReportedOnce(string member)
    {
        var problem = Assert.Single(Shop($$"""{"add": "boric-acid", {{member}}}""").Load().Problems);
        Assert.Equal((ProblemKind.WrongShape, "/steps/0/amount"), (problem.Kind, problem.Place.Pointer.Value));
    }

    [Theory]
    [InlineData("5.8", 5.8)]
    [InlineData("\"5.8\"", 5.8)]
    [InlineData("1e1", 10.0)]
    [InlineData("1e400", null)]
    [InlineData("-1e400", null)]
    public void ABareNumberIsAPh(string written, double? value)
    {
        var workspace = InMemoryShop.Of(("r.recipe.json", $$"""{"format": 1, "final": "1 L", "doses": [{"add": "KNO3", "amount": "1 g"}], "adjust": {"pH": {{written}}, "using": "koh-10"} }""")).Load();
        Assert.Equal(value, workspace.Recipes[0].Adjust!.Target?.Value);
        Assert.Equal(value is null ? 1 : 0, workspace.Problems.Count);
        Assert.All(workspace.Problems, p => Assert.Equal("/adjust/pH", p.Place.Pointer.Value));
    }

    [Theory]
    [InlineData("2026-03-01", true)]
    [InlineData("2028-02-29", true)]
    [InlineData("2027-02-29", false)]
    [InlineData("2026-3-1", false)]
    [InlineData("01.03.2026", false)]
    public void ADayIsADay(string day, bool read)
    {
        var batch = Assert.Single(InMemoryShop.Of(
            ("a.stock.json", """{"format": 1, "makes": "1 L", "steps": []}"""),
            ("1.batch.json", $$"""{"format": 1, "stock": "a.stock.json", "made": "{{day}}"}""")).Load().Batches);
        Assert.Equal(read, batch.Made is not null);
        Assert.All(batch.Made is { } made ? [made] : Array.Empty<Located<DateOnly>>(), m => Assert.Equal("/made", m.Place.Pointer.Value));
    }

    /// <summary>An edge of the range that is read: 200 characters are, 201 are refused unread.</summary>
    [Theory]
    [InlineData(200, true)]
    [InlineData(201, false)]
    public void ALongTextIsRefusedUnread(int length, bool read)
    {
        var amount = "24" + new string(' ', length - 3) + "g";
        Assert.Equal(length, amount.Length);
        var step = Assert.IsType<AddStep>(Shop($$"""{"add": "boric-acid", "amount": "{{amount}}"}""").Load().Stocks[0].Steps[0]);
        Assert.Equal(read, step.Amount is not null);
        var settings = InMemoryShop.Of(("recipelint.json", $$"""
            {"measures": [{"name": "x", "kind": "jug", "tolerance": "± 1{{new string(' ', length - 5)}}mL"}]}
            """)).Load();
        Assert.Equal(read, settings.SettingsFor("a.stock.json").FindMeasure("x")?.Tolerance is not null);
        Assert.Equal(read ? 0 : 1, settings.Problems.Count);
    }

    [Theory]
    [InlineData("\"meters\": [{\"name\": \"x\", \"measures\": \"pH\", \"accuracy\": «\"± much\"»}]", "'± 0.1'")]
    [InlineData("\"meters\": [{\"name\": \"x\", \"measures\": \"EC\", \"accuracy\": «\"± much\"»}]", "'± 0.02 mS/cm'")]
    [InlineData("\"measures\": [{\"name\": \"x\", \"kind\": \"jug\", \"tolerance\": «\"± much\"»}]", "'± 0.1 mL'")]
    public void AToleranceThatIsNoneIsToldHowItIsWritten(string member, string example)
    {
        var problem = Assert.Single(InMemoryShop.Of(
            ("recipelint.json", $"{{ {member.Replace("«", "", StringComparison.Ordinal).Replace("»", "", StringComparison.Ordinal)} }}")).Load().Problems);
        Assert.Contains(example.Trim('\''), problem.Message, StringComparison.Ordinal);
    }
}
