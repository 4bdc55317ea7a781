using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using static RecipeLint.Recipes.Tests.Patching.Bench;

namespace RecipeLint.Recipes.Tests.Patching;

/// <summary>What is written into a file looks like what stands around it.</summary>
public class LayoutTests
{
    /// <summary>A member "n" that is an object of two.</summary>
    [Theory]
    [InlineData("""{"a":1}""", "", """{"a":1,"n":{"x":1,"y":2}}""")]
    [InlineData("""{ "a": 1 }""", "", """{ "a": 1, "n": { "x": 1, "y": 2 } }""")]
    [InlineData("{\t\"a\":\t1,\t\"b\":\t2\t}", "", "{\t\"a\":\t1,\t\"b\":\t2,\t\"n\":\t{\t\"x\":\t1,\t\"y\":\t2\t}\t}")]
    [InlineData("{ \"a\"  :\t1 }", "", "{ \"a\"  :\t1, \"n\":\t{ \"x\":\t1, \"y\":\t2 } }")]
    [InlineData("{\n  \"a\": 1\n}", "", "{\n  \"a\": 1,\n  \"n\": { \"x\": 1, \"y\": 2 }\n}")]
    [InlineData("{\n  \"a\":\n    1\n}", "", "{\n  \"a\":\n    1,\n  \"n\": { \"x\": 1, \"y\": 2 }\n}")]
    [InlineData("{\r\n  \"a\":\r\n    1\r\n}", "", "{\r\n  \"a\":\r\n    1,\r\n  \"n\": { \"x\": 1, \"y\": 2 }\r\n}")]
    [InlineData("{\r  \"a\": 1\r}", "", "{\r  \"a\": 1,\n  \"n\": { \"x\": 1, \"y\": 2 }\r}")]
    [InlineData("{\"a\":1,\n\"b\":2}", "", "{\"a\":1,\n\"b\":2,\n\"n\":{ \"x\":1, \"y\":2 }}")]
    public void AMemberIsSpacedAsItsFile(string before, string pointer, string after) =>
        Assert.Equal(after, Patched(before, new JsonEdit.InsertMember(At(pointer), "n", Pair)));

    [Theory]
    [InlineData("/near", "{\"far\":{\"p\":1,\"q\":2},\n\"near\": { \"p\": 1, \"q\": 2, \"n\": { \"x\": 1, \"y\": 2 } }}")]
    [InlineData("/far", "{\"far\":{\"p\":1,\"q\":2,\"n\":{\"x\":1,\"y\":2}},\n\"near\": { \"p\": 1, \"q\": 2 }}")]
    public void TheNearestObjectOnOneLineIsTheModel(string pointer, string after) =>
        Assert.Equal(
            after,
            Patched("{\"far\":{\"p\":1,\"q\":2},\n\"near\": { \"p\": 1, \"q\": 2 }}", new JsonEdit.InsertMember(At(pointer), "n", Pair)));

    [Fact]
    public void TheModelMayLieDeeperThanTheListAndIsNotLookedForFartherAway() =>
        Assert.Equal(
            "{\n  \"z\": { \"p\": 1 },\n  \"near\": [\n    [ {\"a\":1,\"b\":2} ],\n    {\"x\":1,\"y\":2}\n  ]\n}",
            Patched(
                "{\n  \"z\": { \"p\": 1 },\n  \"near\": [\n    [ {\"a\":1,\"b\":2} ]\n  ]\n}",
                new JsonEdit.InsertElement(At("/near"), 1, Pair)));

    [Fact]
    public void WithoutAModelNearbyTheFileIsOne() =>
        Assert.Equal(
            "{\n\"z\":{\"p\":1,\"q\":2},\n\"near\":[\n3,\n{\"x\":1,\"y\":2}\n]}",
            Patched("{\n\"z\":{\"p\":1,\"q\":2},\n\"near\":[\n3\n]}", new JsonEdit.InsertElement(At("/near"), 1, Pair)));

    /// <summary>An empty list or object over two lines is filled one level deeper than the line it begins on.</summary>
    [Theory]
    [InlineData("{ \"a\": [\n] }", "{ \"a\": [\n  1\n] }")]
    [InlineData("\t{\n    \"a\": [\n]\n}", "\t{\n    \"a\": [\n      1\n    ]\n}")]
    [InlineData("  {\n      \"a\": [\n]\n  }", "  {\n      \"a\": [\n          1\n      ]\n  }")]
    [InlineData("  {\n  \"a\": [\n]\n  }", "  {\n  \"a\": [\n    1\n  ]\n  }")]
    [InlineData("{\n\t\"a\": [\n]\n}", "{\n\t\"a\": [\n\t\t1\n\t]\n}")]
    [InlineData("{\r\n \"a\": [ \r\n]\r\n}", "{\r\n \"a\": [\r\n  1\r\n ]\r\n}")]
    [InlineData("{\n  \"b\": 1,\n  \"a\": [\n],\n      \"b\": 3\n}", "{\n  \"b\": 1,\n  \"a\": [\n    1\n  ],\n      \"b\": 3\n}")]
    [InlineData("{ \"a\": [] }", "{ \"a\": [1] }")]
    [InlineData("{ \"a\": [ \t ] }", "{ \"a\": [1] }")]
    public void AnEmptyListIsFilled(string before, string after) =>
        Assert.Equal(after, Patched(before, new JsonEdit.InsertElement(At("/a"), 0, Number("1"))));

    [Theory]
    [InlineData("{}", "", "{ \"n\": 1 }")]
    [InlineData("{ }", "", "{ \"n\": 1 }")]
    [InlineData("{\n}", "", "{\n  \"n\": 1\n}")]
    [InlineData("[\n\t{\n\t}\n]", "/0", "[\n\t{\n\t\t\"n\": 1\n\t}\n]")]
    [InlineData("{\"a\":{}}", "/a", "{\"a\":{\"n\":1}}")]
    [InlineData("{ /* why */ }", "", "{ \"n\": 1 /* why */ }")]
    [InlineData("\n    \n{\n}", "", "\n    \n{\n  \"n\": 1\n}")]
    [InlineData("{// why\n}", "", "{ \"n\": 1// why\n}")]
    public void AnEmptyObjectIsFilled(string before, string pointer, string after) =>
        Assert.Equal(after, Patched(before, new JsonEdit.InsertMember(At(pointer), "n", Number("1"))));

    [Theory]
    [InlineData("{\n  \"s\": [\n    {\n      \"p\": 1\n    }\n  ]\n}", 0,
        "{\n  \"s\": [\n    {\n      \"x\": 1,\n      \"y\": 2\n    },\n    {\n      \"p\": 1\n    }\n  ]\n}")]
    [InlineData("{\r\n \"s\": [\r\n  {\r\n   \"p\": 1\r\n  }\r\n ]\r\n}", 1,
        "{\r\n \"s\": [\r\n  {\r\n   \"p\": 1\r\n  },\r\n  {\r\n   \"x\": 1,\r\n   \"y\": 2\r\n  }\r\n ]\r\n}")]
    [InlineData("{\n  \"s\": [\n    [\n      1\n    ]\n  ]\n}", 1, "{\n  \"s\": [\n    [\n      1\n    ],\n    { \"x\": 1, \"y\": 2 }\n  ]\n}")]
    public void AnElementIsLaidOutAsItsNeighbour(string before, int index, string after) =>
        Assert.Equal(after, Patched(before, new JsonEdit.InsertElement(At("/s"), index, Pair)));

    [Fact]
    public void WhatIsNoObjectStaysOnOneLineBesideLongNeighbours() =>
        Assert.Equal(
            "[\n  {\n    \"p\": 1\n  },\n  {}\n]",
            Patched("[\n  {\n    \"p\": 1\n  }\n]", new JsonEdit.InsertElement(At(""), 1, new JsonDraft.Object([]))));

    /// <summary>"[5 of them]" in front, in the middle, behind.</summary>
    [Theory]
    [InlineData(0, "[9, 1, 2]")]
    [InlineData(1, "[1, 9, 2]")]
    [InlineData(2, "[1, 2, 9]")]
    public void AnElementStandsWhereItIsAskedFor(int index, string after) =>
        Assert.Equal(after, Patched("[1, 2]", new JsonEdit.InsertElement(At(""), index, Number("9"))));

    [Theory]
    [InlineData("", """{"n":0,"a":1,"b":2}""")]
    [InlineData("a", """{"a":1,"n":0,"b":2}""")]
    [InlineData("b", """{"a":1,"b":2,"n":0}""")]
    [InlineData("no such key", """{"a":1,"b":2,"n":0}""")]
    [InlineData(null, """{"a":1,"b":2,"n":0}""")]
    public void AMemberStandsBehindTheOneItIsAskedFor(string? after, string expected) =>
        Assert.Equal(expected, Patched("""{"a":1,"b":2}""", new JsonEdit.InsertMember(At(""), "n", Number("0"), after)));

    /// <summary>Of two members of one name the last counts, and the tree names it in the place of the first.</summary>
    [Theory]
    [InlineData("", "{\n\"a\":1,\n\"n\":0,\n\"b\":2,\n\"a\":3\n}")]
    [InlineData(null, "{\n\"a\":1,\n\"b\":2,\n\"a\":3,\n\"n\":0\n}")]
    public void FirstAndLastAreThoseOfTheFileAlsoBesideAKeyWrittenTwice(string? after, string expected) =>
        Assert.Equal(expected, Patched("{\n\"a\":1,\n\"b\":2,\n\"a\":3\n}", new JsonEdit.InsertMember(At(""), "n", Number("0"), after)));

    [Fact]
    public void AMemberInFrontTakesALineOfItsOwn() =>
        Assert.Equal(
            "{\n\t\"n\": 0,\n\t\"a\": 1\n}", Patched("{\n\t\"a\": 1\n}", new JsonEdit.InsertMember(At(""), "n", Number("0"), "")));

    [Fact]
    public void OnlyWhatJsonForbidsIsEscaped() =>
        Assert.Equal(
            """{ "a": "µ°<é>&'+/ \"b\" \\ \n\t\u0001" }""",
            Patched("""{ "a": 1 }""", new JsonEdit.ReplaceValue(At("/a"), JsonDraft.Of("µ°<é>&'+/ \"b\" \\ \n\t\u0001"))));

    [Fact]
    public void ListsAndObjectsWithinAValueStandOnItsLine() =>
        Assert.Equal(
            """{ "a": [1, [], { "b": [2, 3] }, {}] }""",
            Patched(
                """{ "a": 1 }""",
                new JsonEdit.ReplaceValue(At("/a"), new JsonDraft.List(
                [
                    Number("1"), new JsonDraft.List([]), JsonDraft.Of(("b", new JsonDraft.List([Number("2"), Number("3")]))),
                    new JsonDraft.Object([]),
                ]))));

    [Fact]
    public void ANewFileHasALineForEachMemberEntryAndMemberOfALongObject()
    {
        var three = new JsonDraft.Object([.. "abc".Select(c => new DraftMember($"{c}", Number("1")))]);
        var four = new JsonDraft.Object([.. "abcd".Select(c => new DraftMember($"{c}", Number("1")))]);
        var content = (JsonDraft.Object)JsonDraft.Of(
            ("format", Number("1")), ("none", new JsonDraft.List([])), ("steps", new JsonDraft.List([three, four])), ("short", three), ("long", four));
        var result = JsonPatcher.Create(new JsonEdit.NewFile(At(""), content));
        const string Expected = """
            {
              "format": 1,
              "none": [],
              "steps": [
                { "a": 1, "b": 1, "c": 1 },
                { "a": 1, "b": 1, "c": 1, "d": 1 }
              ],
              "short": { "a": 1, "b": 1, "c": 1 },
              "long": {
                "a": 1,
                "b": 1,
                "c": 1,
                "d": 1
              }
            }

            """;
        Assert.Equal(Expected.ReplaceLineEndings("\n"), System.Text.Encoding.UTF8.GetString(result.Bytes!));
        Assert.True(result.IsNew);
        Assert.Null(result.Refused);
        Assert.Equal((Name, 0), (result.Before.Path, result.Before.Bytes.Length));
        Assert.Equal(new TextEdit(new ByteSpan(0, 0), Expected.ReplaceLineEndings("\n")), Assert.Single(result.Edits));
    }
}
