using System.Text;
using RecipeLint.Recipes.Patching;
using static RecipeLint.Recipes.Tests.Patching.Bench;

namespace RecipeLint.Recipes.Tests.Patching;

/// <summary>What is taken out takes one comma along and leaves every comment.</summary>
public class RemovalTests
{
    [Theory]
    [InlineData("[1, 2]", "/0", "[2]")]
    [InlineData("[1 , \t\r\n 2]", "/0", "[2]")]
    [InlineData("[1, 2]", "/1", "[1]")]
    [InlineData("[1 ,\r\n\t 2 ]", "/1", "[1  ]")]
    [InlineData("[1, 2, 3]", "/1", "[1, 3]")]
    [InlineData("[1 /* one */, 2]", "/0", "[ /* one */ 2]")]
    [InlineData("[1 // one\n, 2]", "/0", "[ // one\n 2]")]
    [InlineData("[1, /* two */ 2]", "/1", "[1 /* two */ ]")]
    [InlineData("[1 /* , */, 2]", "/1", "[1 /* , */]")]
    [InlineData("[1, // two\n2]", "/1", "[1 // two\n]")]
    [InlineData("[ 1 ]", "/0", "[]")]
    [InlineData("[\r\n\t1\r\n\t]", "/0", "[]")]
    [InlineData("{ \"a\": 1 }", "/a", "{}")]
    [InlineData("{\n  \"a\": { \"b\": [] }\n}", "/a", "{}")]
    [InlineData("{\n  \"a\": { \"b\": [] }\n}", "/a/b", "{\n  \"a\": {}\n}")]
    [InlineData("[ /* c */ 1 ]", "/0", "[ /* c */  ]")]
    [InlineData("[ 1 /* c */ ]", "/0", "[  /* c */ ]")]
    [InlineData("{ \"a\": 1, \"b\" : 2 }", "/b", "{ \"a\": 1 }")]
    [InlineData("{ \"a\" : [1, {\"c\": 2}], \"b\": 2 }", "/a", "{ \"b\": 2 }")]
    public void OneCommaGoesAlongAndCommentsStay(string before, string pointer, string after) =>
        Assert.Equal(after, Patched(before, new JsonEdit.Remove(At(pointer))));

    [Theory]
    [InlineData("\"k\"  :\t[1, {\"b\": \"}\"}]", "{ \"k\": 2 }")]
    [InlineData("\"k\": /* why */ 1", "{ \"k\": 2 }")]
    [InlineData("\"k\": \"a, b\"", "{ \"k\": 2 }")]
    [InlineData("\"k\": -1.5e3", "{ \"k\": 2 }")]
    public void TheEarlierOfTwoKeysGoesWithItsWholeValue(string first, string after)
    {
        var text = $$"""{ {{first}}, "k": 2 }""";
        Assert.Equal(after, Patched(text, new JsonEdit.Remove(Word(text, "\"k\""))));
    }

    [Fact]
    public void TheLaterOfTwoKeysGoesByItsPlaceToo()
    {
        const string Text = """{ "k": 1, "k": 2 }""";
        Assert.Equal("""{ "k": 1 }""", Patched(Text, new JsonEdit.Remove(Bytes(10, 3))));
    }

    [Theory]
    [InlineData(-3, 7)]
    [InlineData(0, 1)]
    [InlineData(6, 2)]
    [InlineData(14, 2)]
    [InlineData(19, 1)]
    [InlineData(19, 2)]
    public void APlaceThatIsNoKeyIsRefusedWithoutAnError(int start, int length) =>
        Assert.Contains("nothing at", Refusal("""{"k": "a: }", "b":1}""", new JsonEdit.Remove(Bytes(start, length))), StringComparison.Ordinal);

    [Fact]
    public void AColonWithinATextIsNoKeyEither()
    {
        const string Text = """{ "x": "k: }" }""";
        Assert.Contains("nothing at", Refusal(Text, new JsonEdit.Remove(Word(Text, "k"))), StringComparison.Ordinal);
        const string AtTheEnd = "{} // k:";
        Assert.Contains("nothing at", Refusal(AtTheEnd, new JsonEdit.Remove(Word(AtTheEnd, "k"))), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("/b")]
    [InlineData("/a/0")]
    public void TheWholeFileAndWhatIsNotThereCannotBeTakenOut(string pointer) =>
        Assert.Contains("nothing at", Refusal("""{ "a": 1 }""", new JsonEdit.Remove(At(pointer))), StringComparison.Ordinal);

    [Theory]
    [InlineData(" \t\r\n x", 0, 5)]
    [InlineData("// c\nx", 0, 5)]
    [InlineData("// c\rx", 0, 5)]
    [InlineData("// c", 0, 4)]
    [InlineData("/**/x", 0, 4)]
    [InlineData("/* a */ /* b */x", 0, 15)]
    [InlineData("/*/ */x", 0, 6)]
    [InlineData("/* never", 0, 8)]
    [InlineData("/ x", 0, 0)]
    [InlineData("x // y\n z", 1, 8)]
    [InlineData("x", 1, 1)]
    [InlineData("x  ", 1, 3)]
    [InlineData("x", 0, 0)]
    public void BlanksAndCommentsAreSkipped(string text, int from, int to) =>
        Assert.Equal(to, JsonGap.Skip(Encoding.UTF8.GetBytes(text), from));

    [Theory]
    [InlineData(" \t\r\nx", 0, 4)]
    [InlineData("   ", 0, 3)]
    [InlineData("x ", 0, 0)]
    [InlineData("x // y", 1, 2)]
    public void BlanksAloneAreSkipped(string text, int from, int to) =>
        Assert.Equal(to, JsonGap.SkipBlanks(Encoding.UTF8.GetBytes(text), from));

    [Fact]
    public void ACommaIsFoundBehindCommentsAndOnlyThere()
    {
        Assert.Equal(2, JsonGap.CommaBefore(Source("[1, /* , */ 2]"), 12));
        Assert.Null(JsonGap.CommaBefore(Source("[ /* , */ 2]"), 10));
        Assert.Null(JsonGap.CommaBefore(Source("  1"), 2));
        Assert.Null(JsonGap.CommaBefore(Source("1"), 0));
    }

    [Fact]
    public void ABlankIsASpaceATabOrALineEnd()
    {
        Assert.True(JsonGap.IsBlank(" \t\r\n"u8));
        Assert.True(JsonGap.IsBlank([]));
        Assert.False(JsonGap.IsBlank(" . "u8));
        Assert.False(JsonGap.IsBlank("\f"u8));
    }
}
