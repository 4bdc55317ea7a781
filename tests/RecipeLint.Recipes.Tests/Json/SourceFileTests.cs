using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Json;

/// <summary>Offsets, lines and columns of one file, and the tree that can be let go.</summary>
public sealed class SourceFileTests
{
    private const string Name = "a.stock.json";

    // Lines: "{é", "", "🌱 x", "}" and an empty last one; ends of all three kinds.
    private const string Mixed = "{é\r\n\r🌱 x\n}\n";

    private static SourceFile Of(string text) => new(Name, Encoding.UTF8.GetBytes(text));

    private static SourceFile Read(string text) => JsonReading.Read(Name, Encoding.UTF8.GetBytes(text)).Source;

    [Theory]
    [InlineData(-5, 1, 1)]
    [InlineData(0, 1, 1)]
    [InlineData(1, 1, 2)]
    [InlineData(3, 1, 3)]
    [InlineData(5, 2, 1)]
    [InlineData(6, 3, 1)]
    [InlineData(10, 3, 3)]
    [InlineData(12, 3, 5)]
    [InlineData(13, 4, 1)]
    [InlineData(14, 4, 2)]
    [InlineData(15, 5, 1)]
    [InlineData(99, 5, 1)]
    public void AnOffsetIsALineAndAColumnInUtf16(int offset, int line, int column) =>
        Assert.Equal(new LinePosition(line, column), Of(Mixed).ToPosition(offset));

    [Theory]
    [InlineData(0, 3, 0)]
    [InlineData(-1, 1, 0)]
    [InlineData(1, 1, 0)]
    [InlineData(1, 0, 0)]
    [InlineData(1, 2, 1)]
    [InlineData(1, 3, 3)]
    [InlineData(1, 9, 3)]
    [InlineData(2, 1, 5)]
    [InlineData(2, 4, 5)]
    [InlineData(3, 1, 6)]
    [InlineData(3, 3, 10)]
    [InlineData(3, 4, 11)]
    [InlineData(3, 99, 12)]
    [InlineData(4, 2, 14)]
    [InlineData(5, 1, 15)]
    [InlineData(5, 2, 15)]
    [InlineData(6, 1, 15)]
    public void APositionIsAnOffsetAndNeverLeavesItsLine(int line, int column, int offset) =>
        Assert.Equal(offset, Of(Mixed).ToOffset(new LinePosition(line, column)));

    [Fact]
    public void LinesAreGivenWithoutTheirEnds()
    {
        var source = Of(Mixed);
        Assert.Equal(5, source.LineCount);
        Assert.Equal(["{é", "", "🌱 x", "}", ""], Enumerable.Range(1, 5).Select(source.Line));
        Assert.Equal(1, Of("").LineCount);
        Assert.Equal(2, Of("a\r").LineCount);
        Assert.Equal(2, Of("a\r\n").LineCount);
        Assert.Equal(3, Of("\n\r").LineCount);
    }

    [Theory]
    [InlineData(1, 2, "bc")]
    [InlineData(-2, 4, "ab")]
    [InlineData(2, 9, "cd")]
    [InlineData(9, 3, "")]
    [InlineData(3, -2, "")]
    public void AnExcerptStaysInsideTheFile(int start, int length, string text) =>
        Assert.Equal(text, Of("abcd").Excerpt(new ByteSpan(start, length)));

    [Fact]
    public void APlaceOfAFileThatIsNoJsonIsItsBeginningUnlessItNamesItsBytes()
    {
        var source = Read("[1,,2]");
        Assert.Equal(new ByteSpan(0, 0), source.Resolve(Place.Whole(Name)));
        Assert.Equal(new ByteSpan(2, 3), source.Resolve(Place.Whole(Name) with { Range = new ByteSpan(2, 3) }));
        Assert.Equal(new LineSpan(new LinePosition(1, 3), new LinePosition(1, 6)), source.ToLines(new ByteSpan(2, 3)));
    }

    [Fact]
    public void ATreeThatWasLetGoIsMadeAgain()
    {
        var whole = Read("{ \"a\": [1, 2] }");
        var light = whole.WithoutTree();
        Assert.NotSame(whole, light);
        Assert.True(JsonDifference.IsSame(whole.Tree!.Root, light.Tree!.Root));
        Assert.Same(light.Tree, light.Tree);
        Assert.True(light.IsPlain);
        Assert.Equal(whole.Path, light.Path);

        var marked = JsonReading.Read(Name, [0xEF, 0xBB, 0xBF, .. "[1, /**/ 2,]"u8]).Source;
        var lighter = marked.WithoutTree();
        Assert.True(lighter.HadByteOrderMark);
        Assert.False(lighter.IsPlain);
        Assert.Equal(Encoding.UTF8.GetString(marked.DecodableBytes.Span), Encoding.UTF8.GetString(lighter.DecodableBytes.Span));
        Assert.Equal("[1,      2 ]", Encoding.UTF8.GetString(lighter.DecodableBytes.Span));
    }

    [Fact]
    public void WhatHasNoTreeOrNumbersBeyondStaysAsItIs()
    {
        var broken = Read("[1");
        Assert.Same(broken, broken.WithoutTree());
        Assert.Null(broken.Tree);
        var beyond = Read("[1e999]");
        Assert.Same(beyond, beyond.WithoutTree());
        Assert.Equal("1e999", Assert.Single(beyond.BeyondNumbers).Text);
        Assert.False(beyond.IsPlain);
        Assert.True(Read("[1e9]").IsPlain);
        Assert.False(Read("[1] //").IsPlain);
    }

    /// <summary>What the second reader gets, of the same length, in place of a number.</summary>
    [Theory]
    [InlineData("123456789012345", "123456789012345")]
    [InlineData("1234567890123456", "9999999999999   ")]
    [InlineData("-1234567890123456", "-9999999999999   ")]
    [InlineData("1e15", "1e15")]
    [InlineData("1.1e15", "999999")]
    [InlineData("1.1E15", "999999")]
    [InlineData("-2e15", "-9999")]
    [InlineData("1e-15", "1e-15")]
    [InlineData("9e-16", "0    ")]
    [InlineData("-9e-16", "0     ")]
    [InlineData("0.0000000000000001", "0                 ")]
    [InlineData("1.23456789012345678901234567890123456789", "1.23456789012345678901234567890123456789")]
    [InlineData("1.5000000000000000000000000000000000000000", "1.5                                       ")]
    [InlineData("1e999", "99999")]
    public void ANumberBeyondReasonIsTamedForTheSecondReader(string literal, string tamed) =>
        Assert.Equal($"[{tamed}]", Encoding.UTF8.GetString(Read($"[{literal}]").DecodableBytes.Span));

    [Fact]
    public void HalfAPairAndACommentAreTakenOutForTheSecondReaderOnly()
    {
        var source = Read("[\"\\ud83c\", // c\n1,]");
        Assert.Equal("[\"\\uFFFD\",     \n1 ]", Encoding.UTF8.GetString(source.DecodableBytes.Span));
        Assert.Equal("[\"\\ud83c\", // c\n1,]", Encoding.UTF8.GetString(source.Bytes));
    }

    [Fact]
    public void TheFirstDifferenceIsTheSmallestValueThatSaysSomethingElse()
    {
        var before = Read("""{ "a": 1, "b": { "c": [1, 2, { "d": "x" }], "e": true } }""").Tree!.Root;
        string First(string now) => JsonDifference.First(before, Read(now).Tree!.Root).Pointer.Value;

        Assert.Equal("", First("""{ "b": { "e": true, "c": [1, 2, { "d": "x" }] }, "a": 1 }"""));
        Assert.Equal("/a", First("""{ "a": 2, "b": 1 }"""));
        Assert.Equal("/b/c/2/d", First("""{ "a": 1, "b": { "c": [1, 2, { "d": "y" }], "e": true } }"""));
        Assert.Equal("/b/c/1", First("""{ "a": 1, "b": { "c": [1, "2", { "d": "x" }], "e": true } }"""));
        Assert.Equal("/b/c/3", First("""{ "a": 1, "b": { "c": [1, 2, { "d": "x" }, 4], "e": true } }"""));
        Assert.Equal("/b/c", First("""{ "a": 1, "b": { "c": [1, 2], "e": true } }"""));
        Assert.Equal("/b/f", First("""{ "a": 1, "b": { "f": 1, "c": [1, 2, { "d": "x" }], "e": true } }"""));
        Assert.Equal("/b", First("""{ "a": 1, "b": { "c": [1, 2, { "d": "x" }] } }"""));
        Assert.Equal("", First("""[1]"""));
        Assert.Equal("", JsonDifference.First(null, before).Pointer.Value);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(13)]
    [InlineData(40)]
    public void AMemberIsFoundAmongFewAndAmongMany(int count)
    {
        var text = "{" + string.Join(",", Enumerable.Range(0, count).Select(i => $"\"k{i}\":{i}")) + $",\"k{count - 1}\":{count}}}";
        var read = JsonReading.Read(Name, Encoding.UTF8.GetBytes(text));
        var root = read.Source.Tree!.Root;
        Assert.Equal(count, root.Members.Count);
        Assert.Equal(ProblemKind.DuplicateKey, Assert.Single(read.Problems).Kind);
        Assert.Equal("0", root["k0"]!.Text);
        Assert.Equal($"{count}", root[$"k{count - 1}"]!.Text);
        Assert.Null(root[$"k{count}"]);
        Assert.Null(root["k0"]!["k0"]);
    }

    [Fact]
    public void AValueMadeByHandKnowsItsPlaceAndThoseBelowIt()
    {
        var item = new JsonItem(JsonKind.Text, new JsonPointer("/a/0"), new ByteSpan(3, 4)) { Text = "x" };
        Assert.Equal(("/a/0", new ByteSpan(3, 4), "x"), (item.Pointer.Value, item.Span, item.Text));
        Assert.Null(item.KeySpan);
        Assert.Null(item["x"]);
    }

    [Theory]
    [InlineData("/l/01", true)]
    [InlineData("/l/+1", false)]
    [InlineData("/l/-1", false)]
    [InlineData("/l/ 1", false)]
    [InlineData("/l/1", true)]
    [InlineData("/l/2", false)]
    [InlineData("/l/1/x", false)]
    [InlineData("", true)]
    public void AnElementIsFoundByDigitsAlone(string pointer, bool found) =>
        Assert.Equal(found, Read("""{ "l": [3, 4] }""").Tree!.Find(new JsonPointer(pointer)) is not null);

    [Fact]
    public void ProblemsOverTheLimitAreCountedOncePerKindAtTheFirstLeftOut()
    {
        var list = new ProblemList();
        for (var i = 0; i < ProblemList.LimitPerKind + 2; i++)
        {
            Assert.Equal(i >= ProblemList.LimitPerKind, list.IsFull(ProblemKind.WrongShape));
            list.Add(new Problem(ProblemKind.WrongShape, Place.Whole(Name).Child(i), "m"));
        }

        list.Skip(ProblemKind.WrongShape, () => throw new InvalidOperationException("asked for once only"));
        list.Add(new Problem(ProblemKind.DuplicateKey, Place.Whole(Name), "d"));
        var told = list.Close();
        Assert.Equal(ProblemList.LimitPerKind + 2, told.Count);
        Assert.Equal("d", told[^2].Message);
        Assert.Equal(("From here on 3 more of the same kind are not listed.", "/100"), (told[^1].Message, told[^1].Place.Pointer.Value));
    }
}
