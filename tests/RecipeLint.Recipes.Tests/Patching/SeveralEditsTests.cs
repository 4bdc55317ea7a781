using System.Text;
using CsCheck;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using static RecipeLint.Recipes.Tests.Patching.Bench;

namespace RecipeLint.Recipes.Tests.Patching;

/// <summary>Changes that go together, changes that do not, and what is said then.</summary>
public class SeveralEditsTests
{
    [Fact]
    public void NeighboursMayBothGo() =>
        Assert.Equal("[3]", Patched("[1, 2, 3]", new JsonEdit.Remove(At("/0")), new JsonEdit.Remove(At("/1"))));

    [Fact]
    public void WhatComesInFrontOfAnElementMeetsItsNewValue() =>
        Assert.Equal(
            "[9, 5, 2]",
            Patched("[1, 2]", new JsonEdit.ReplaceValue(At("/0"), Number("5")), new JsonEdit.InsertElement(At(""), 0, Number("9"))));

    [Fact]
    public void TwoMembersMayComeToOnePlaceInTheOrderAskedFor() =>
        Assert.Equal(
            """{"a":1,"c":3,"b":2}""",
            Patched("""{"a":1}""", new JsonEdit.InsertMember(At(""), "c", Number("3")), new JsonEdit.InsertMember(At(""), "b", Number("2"))));

    [Fact]
    public void TwoMembersMayComeInFrontToo() =>
        Assert.Equal(
            """{"c":3,"b":2,"a":1}""",
            Patched(
                """{"a":1}""", new JsonEdit.InsertMember(At(""), "c", Number("3"), ""), new JsonEdit.InsertMember(At(""), "b", Number("2"), "")));

    [Fact]
    public void TwoElementsMayComeInFrontToo() =>
        Assert.Equal(
            "[9, 8, 1]", Patched("[1]", new JsonEdit.InsertElement(At(""), 0, Number("9")), new JsonEdit.InsertElement(At(""), 0, Number("8"))));

    [Fact]
    public void EditsMayComeInAnyOrder() =>
        Assert.Equal(
            """{ "µ": 7, "b": [], "d": 4 }""",
            Patched(
                """{ "µ": 1, "b": [2], "c": 4 }""",
                new JsonEdit.RenameKey(At("/c"), "d"), new JsonEdit.ReplaceValue(At("/µ"), Number("7")), new JsonEdit.Remove(At("/b/0"))));

    [Theory]
    [InlineData("{}")]
    [InlineData("{ }")]
    public void TwoCannotFillOneEmptyPlace(string text) =>
        Assert.Contains(
            "overlap",
            Refusal(text, new JsonEdit.InsertMember(At(""), "b", Number("2")), new JsonEdit.InsertMember(At(""), "c", Number("3"))),
            StringComparison.Ordinal);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void BareTextDoesNotShareAPlaceWithAMember(bool first)
    {
        JsonEdit[] edits = [new JsonEdit.ReplaceText(Bytes(6, 0), " "), new JsonEdit.InsertMember(At(""), "b", Number("2"))];
        Assert.Contains("overlap", Refusal("""{"a":1}""", first ? edits : [.. edits.Reverse()]), StringComparison.Ordinal);
    }

    [Fact]
    public void TwoBareTextsDoNotShareAPlace() =>
        Assert.Contains(
            "overlap",
            Refusal("{}", new JsonEdit.ReplaceText(Bytes(1, 0), " "), new JsonEdit.ReplaceText(Bytes(1, 0), "\t")),
            StringComparison.Ordinal);

    [Fact]
    public void ATextMayBeReplacedInsideAnotherOnlyOnce() =>
        Assert.Contains(
            "overlap",
            Refusal("[ 1 ]", new JsonEdit.ReplaceText(Bytes(1, 2), " "), new JsonEdit.ReplaceText(Bytes(2, 1), "2")),
            StringComparison.Ordinal);

    [Fact]
    public void TheSameKeyTwiceIsRefused()
    {
        Assert.Contains(
            "same key",
            Refusal("""{"a":1}""", new JsonEdit.InsertMember(At(""), "b", Number("2")), new JsonEdit.InsertMember(At(""), "b", Number("3"))),
            StringComparison.Ordinal);
        Assert.Contains(
            "same key",
            Refusal("""{"a":1,"b":2}""", new JsonEdit.RenameKey(At("/a"), "c"), new JsonEdit.RenameKey(At("/b"), "c")),
            StringComparison.Ordinal);
    }

    [Fact]
    public void AKeyThatStoodTwiceBeforeDoesNotHinderOthers() =>
        Assert.Equal(
            """{"a":1,"a":2,"b":4,"c":5}""",
            Patched(
                """{"a":1,"a":2,"b":3}""", new JsonEdit.ReplaceValue(At("/b"), Number("4")), new JsonEdit.InsertMember(At(""), "c", Number("5"))));

    [Fact]
    public void OneOfTwoKeysGoesWhileAnotherIsWritten()
    {
        const string Text = """{"a":1,"a":2,"b":3}""";
        Assert.Equal("""{"a":2,"b":4}""", Patched(Text, new JsonEdit.Remove(Bytes(1, 3)), new JsonEdit.ReplaceValue(At("/b"), Number("4"))));
    }

    [Fact]
    public void ARenamedKeyIsTheOneOfThePlace()
    {
        Assert.Equal("""{"b":1,"a":2}""", Patched("""{"a":1,"a":2}""", new JsonEdit.RenameKey(At("/a") with { Range = new ByteSpan(1, 3) }, "b")));
        Assert.Equal("""{"a":1,"b":2}""", Patched("""{"a":1,"a":2}""", new JsonEdit.RenameKey(At("/a"), "b")));
    }

    [Fact]
    public void TheWholeDocumentCanBeReplaced() =>
        Assert.Equal("\n[2]\n", Patched("\n{\"a\":1}\n", new JsonEdit.ReplaceValue(At(""), new JsonDraft.List([Number("2")]))));

    public static TheoryData<string, JsonEdit> Misfits() => new()
    {
        { "no member", new JsonEdit.RenameKey(At(""), "b") },
        { "an element", new JsonEdit.RenameKey(At("/l/0"), "b") },
        { "a list", new JsonEdit.InsertMember(At("/l"), "b", Number("1")) },
        { "an object", new JsonEdit.InsertElement(At(""), 0, Number("1")) },
        { "nothing", new JsonEdit.InsertElement(At("/x"), 0, Number("1")) },
        { "before the list", new JsonEdit.InsertElement(At("/l"), -1, Number("1")) },
        { "behind the list", new JsonEdit.InsertElement(At("/l"), 3, Number("1")) },
        { "an object in order", new JsonEdit.Reorder(At(""), [0]) },
        { "too short", new JsonEdit.Reorder(At("/l"), [0]) },
        { "too long", new JsonEdit.Reorder(At("/l"), [0, 1, 2]) },
        { "one twice", new JsonEdit.Reorder(At("/l"), [0, 0]) },
        { "one too far", new JsonEdit.Reorder(At("/l"), [1, 2]) },
        { "text without a place", new JsonEdit.ReplaceText(At(""), "x") },
        { "text before the file", new JsonEdit.ReplaceText(Bytes(-1, 1), "x") },
        { "text behind the file", new JsonEdit.ReplaceText(Bytes(12, 2), "x") },
        { "a mark that is not there", new JsonEdit.DropByteOrderMark(At("")) },
        { "a file that is there", new JsonEdit.NewFile(At(""), (JsonDraft.Object)Pair) },
    };

    [Theory]
    [MemberData(nameof(Misfits))]
    public void WhatDoesNotFitIsRefusedWithItsPlace(string what, JsonEdit edit)
    {
        Assert.NotEmpty(what);
        Assert.Equal(
            $"There is nothing at '{edit.At.Pointer}' of '{Name}' that could be changed so.", Refusal("""{"l": [3, 4]}""", edit));
    }

    [Fact]
    public void TextIsReplacedUpToTheLastByte()
    {
        Assert.Equal("{\"l\":1}\n", Patched("{\"l\":1}\r", new JsonEdit.ReplaceText(Bytes(7, 1), "\n")));
        Assert.Equal("[1]", Patched("[2]", new JsonEdit.ReplaceText(Bytes(0, 3), "[1]")));
    }

    [Fact]
    public void AnOrderAsItIsChangesNothing()
    {
        var result = Apply("[1, 2]", new JsonEdit.Reorder(At(""), [0, 1]));
        Assert.Equal("[1, 2]", Encoding.UTF8.GetString(result.Bytes!));
        Assert.Empty(result.Edits);
    }

    [Fact]
    public void ATextReplacedByNothingWhereNothingStandsIsNoEdit() =>
        Assert.Empty(Apply("[1, 2]", new JsonEdit.ReplaceText(Bytes(1, 0), "")).Edits);

    [Fact]
    public void ElementsChangePlacesAndCommasStay() =>
        Assert.Equal(
            "[ { \"b\": 2 } /* first */,\n 3, // second\n 1 ]",
            Patched("[ 1 /* first */,\n { \"b\": 2 }, // second\n 3 ]", new JsonEdit.Reorder(At(""), [1, 2, 0])));

    [Fact]
    public void WhatIsNoJsonCanBeMendedByTextOnly()
    {
        const string Broken = """{"a": 1,, "b": 2}""";
        Assert.Equal("""{"a": 1, "b": 2}""", Patched(Broken, new JsonEdit.ReplaceText(Bytes(8, 1), "")));
        Assert.Equal(
            $"'{Name}' cannot be read as JSON.",
            Refusal(Broken, new JsonEdit.ReplaceText(Bytes(8, 1), ""), new JsonEdit.ReplaceValue(At("/a"), Number("2"))));
        Assert.Equal($"'{Name}' would no longer be JSON.", Refusal(Broken, new JsonEdit.ReplaceText(Bytes(0, 1), "[")));
        Assert.Equal($"'{Name}' would no longer be JSON.", Refusal("\uFEFF" + Broken, new JsonEdit.DropByteOrderMark(At(""))));
        Assert.Equal(
            """{"a": 1, "b": 2}""",
            Patched("\uFEFF" + Broken, new JsonEdit.DropByteOrderMark(At("")), new JsonEdit.ReplaceText(Bytes(8, 1), "")));
    }

    [Fact]
    public void ADroppedMarkIsNoEditOfBytes()
    {
        var result = Apply("\uFEFF{}", new JsonEdit.DropByteOrderMark(At("")));
        Assert.Empty(result.Edits);
        Assert.Equal("{}"u8.ToArray(), result.Bytes);
        Assert.False(result.IsNew);
        Assert.True(result.Before.HadByteOrderMark);
    }

    [Fact]
    public void ManyEditsCanBeUndoneTogether()
    {
        var source = Source("""{ "µ": "µµ", "b": 2, "c": [1, 2] }""");
        var result = JsonPatcher.Apply(
            source,
            [
                new JsonEdit.ReplaceValue(At("/µ"), JsonDraft.Of("a")), new JsonEdit.Remove(At("/b")),
                new JsonEdit.InsertElement(At("/c"), 2, JsonDraft.Of("µ")), new JsonEdit.RenameKey(At("/c"), "longer"),
            ]);
        Assert.Equal("""{ "µ": "a", "longer": [1, 2, "µ"] }""", Encoding.UTF8.GetString(result.Bytes!));
        Assert.Equal(Encoding.UTF8.GetString(source.Bytes), Encoding.UTF8.GetString(JsonPatcher.Join(result.Bytes!, result.Reversed())));
    }

    [Fact]
    public void ChangesOfSeparateValuesDoNotDisturbEachOther() => Gen.Int[0, 50].Array[1, 12].Sample(
        values =>
        {
            var text = "{ " + string.Join(", ", values.Select((v, i) => $"\"k{i}\": {v}")) + " }";
            var edits = values.Select((v, i) => (JsonEdit)(v % 3 == 0
                ? new JsonEdit.RenameKey(At($"/k{i}"), $"n{i}")
                : new JsonEdit.ReplaceValue(At($"/k{i}"), Number($"{v * v}"))));
            var expected = "{ " + string.Join(", ", values.Select((v, i) => v % 3 == 0 ? $"\"n{i}\": {v}" : $"\"k{i}\": {v * v}")) + " }";
            var result = Apply(text, [.. edits.OrderBy(e => e.At.Pointer.Value.Length % 3)]);
            Assert.Equal(expected, Encoding.UTF8.GetString(result.Bytes!));
            Assert.Equal(text, Encoding.UTF8.GetString(JsonPatcher.Join(result.Bytes!, result.Reversed())));
        },
        iter: 300);
}
