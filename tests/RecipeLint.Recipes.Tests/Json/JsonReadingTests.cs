using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Json;

public sealed class JsonReadingTests
{
    private static JsonReadResult Read(string text) => JsonReading.Read("a.stock.json", Encoding.UTF8.GetBytes(text));

    private static Problem Single(JsonReadResult result, ProblemKind kind)
    {
        var problem = Assert.Single(result.Problems);
        Assert.Equal(kind, problem.Kind);
        Places.AssertAllInside(result);
        return problem;
    }

    [Fact]
    public void ADocumentBecomesATreeWithSpans()
    {
        const string Text = """{ "makes" : "2 L", "steps": [ {"add": "x"}, 12.50, true, false, null ] }""";
        var result = Read(Text);
        Assert.Empty(result.Problems);
        var root = result.Source.Tree!.Root;
        Assert.Equal(JsonKind.Object, root.Kind);
        Assert.Equal(["makes", "steps"], root.Members.Select(m => m.Name));
        Assert.Equal(Text, result.Source.Excerpt(root.Span));

        var makes = root["makes"]!;
        Assert.Equal(("2 L", "/makes"), (makes.Text, makes.Pointer.Value));
        Assert.Equal("\"makes\"", result.Source.Excerpt(makes.KeySpan!.Value));
        Assert.Equal("\"2 L\"", result.Source.Excerpt(makes.Span));

        var steps = root["steps"]!;
        Assert.Equal([JsonKind.Object, JsonKind.Number, JsonKind.True, JsonKind.False, JsonKind.Null], steps.Items.Select(i => i.Kind));
        Assert.Equal(["""{"add": "x"}""", "12.50", "true", "false", "null"], steps.Items.Select(i => result.Source.Excerpt(i.Span)));
        Assert.Equal("12.50", steps.Items[1].Text);
        Assert.Equal("/steps/0/add", steps.Items[0]["add"]!.Pointer.Value);
    }

    [Fact]
    public void PointersLeadBackToTheirValueAndFallBackToTheNearestAncestor()
    {
        var source = Read("""{"a/b": {"c~d": ["x", {"": 1}]}}""").Source;
        var pointer = new JsonPointer("/a~1b/c~0d/1/");
        Assert.Equal("1", source.Tree!.Find(pointer)!.Text);
        Assert.Equal(pointer, source.Tree.Find(pointer)!.Pointer);
        Assert.Equal("\"\"", source.Excerpt(source.Tree.SpanOf(pointer, PlacePart.Key)));
        Assert.Null(source.Tree.Find(new JsonPointer("/a~1b/nothing")));
        Assert.Equal("""{"c~d": ["x", {"": 1}]}""", source.Excerpt(source.Tree.SpanOf(new JsonPointer("/a~1b/nothing/2"), PlacePart.Key)));
        Assert.Equal("""["x", {"": 1}]""", source.Excerpt(source.Tree.SpanOf(new JsonPointer("/a~1b/c~0d/7"), PlacePart.Value)));
    }

    [Theory]
    [InlineData("""["\u0041\n\t\"\\\/\b\f\r"]""", "A\n\t\"\\/\b\f\r")]
    [InlineData("""["\ud83c\udf31\u00B5"]""", "🌱µ")]
    [InlineData("""["\u0000"]""", "\0")]
    [InlineData("[\"µ°±🌱\"]", "µ°±🌱")]
    public void EscapesAreUndone(string json, string expected)
    {
        var result = Read(json);
        Assert.Empty(result.Problems);
        Assert.Equal(expected, result.Source.Tree!.Root.Items[0].Text);
    }

    [Theory]
    [InlineData("{\"a\": 1,\n \"a\": 2}", "2:2-2:5")]
    [InlineData("{\"a\": 1,\r \"a\": 2}", "2:2-2:5")]
    [InlineData("{\"a\": 1,\r\n \"a\": 2}", "2:2-2:5")]
    [InlineData("{\"a\": \"é\", \"a\": 2}", "1:12-1:15")]
    [InlineData("{\"a\": \"中\", \"a\": 2}", "1:12-1:15")]
    [InlineData("{\"a\": \"🌱\", \"a\": 2}", "1:13-1:16")]
    [InlineData("{\"a\": \"é中🌱\",\r\n\"b\":\"🌱\", \"a\": 2}", "2:11-2:14")]
    public void PlacesCountLinesByAnyLineEndAndColumnsInUtf16(string json, string where)
    {
        var result = Read(json);
        Assert.Equal(where, Places.Where(result.Source, Single(result, ProblemKind.DuplicateKey)));
    }

    [Fact]
    public void AKeyWrittenDifferentlyIsTheSameKeyAndEachRepeatNamesTheFirst()
    {
        var result = Read("""{"ab": 1, "\u0061b": 2, "ab": 3}""");
        Assert.Equal([ProblemKind.DuplicateKey, ProblemKind.DuplicateKey], result.Problems.Select(p => p.Kind));
        Assert.Equal(["1:11-1:20", "1:25-1:29"], result.Problems.Select(p => Places.Where(result.Source, p)));
        Assert.All(result.Problems, p => Assert.Equal("1:2-1:6", Places.Where(result.Source, Assert.Single(p.Related).Place)));
        Assert.Equal("3", result.Source.Tree!.Root["ab"]!.Text);
    }

    [Fact]
    public void SameKeyInDifferentObjectsIsNoDuplicate() => Assert.Empty(Read("""{"a": {"a": 1}, "b": [{"a": 1}, {"a": 1}]}""").Problems);

    [Fact]
    public void AByteOrderMarkIsToldAndLeftOut()
    {
        var result = JsonReading.Read("a", [0xEF, 0xBB, 0xBF, .. "{\"a\":1,\"a\":2}"u8]);
        Assert.Equal([ProblemKind.WrongEncoding, ProblemKind.DuplicateKey], result.Problems.Select(p => p.Kind));
        Assert.Equal("1:1-1:1", Places.Where(result.Source, result.Problems[0]));
        Assert.Equal("1:8-1:11", Places.Where(result.Source, result.Problems[1]));
        Assert.True(result.Source.HadByteOrderMark);
        Assert.Equal((byte)'{', result.Source.Bytes[0]);
    }

    public static TheoryData<string, bool, bool> WideEncodings() => new()
    {
        { "UTF-16", false, true }, { "UTF-16", false, false }, { "UTF-16", true, true }, { "UTF-16", true, false },
        { "UTF-32", false, true }, { "UTF-32", false, false }, { "UTF-32", true, true }, { "UTF-32", true, false },
    };

    [Theory]
    [MemberData(nameof(WideEncodings))]
    public void Utf16AndUtf32AreNamed(string name, bool bigEndian, bool mark)
    {
        Encoding encoding = name == "UTF-16" ? new UnicodeEncoding(bigEndian, mark) : new UTF32Encoding(bigEndian, mark);
        foreach (var text in new[] { "{\"format\": 1}", "{}" })
        {
            var result = JsonReading.Read("a", [.. encoding.GetPreamble(), .. encoding.GetBytes(text)]);
            Assert.Contains(name, Single(result, ProblemKind.WrongEncoding).Message, StringComparison.Ordinal);
            Assert.Null(result.Source.Tree);
        }
    }

    [Fact]
    public void TheFirstByteThatIsNotUtf8IsPointedAtWithWhatItMayMean()
    {
        // "4 µL" and "5 °C" as the Windows code page 1252 writes them.
        var result = JsonReading.Read("a", [.. "{\"ä\": \"4 "u8, 0xB5, .. "L\", \"b\": \"5 "u8, 0xB0, .. "C\"}"u8]);
        var problem = Single(result, ProblemKind.WrongEncoding);
        Assert.Equal("1:10-1:11", Places.Where(result.Source, problem));
        Assert.Contains("B5", problem.Message, StringComparison.Ordinal);
        Assert.Contains("'µ'", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void HalfASurrogatePairIsToldAndTheRestIsStillRead()
    {
        var result = Read("""{"a": "x\ud83c\udf31\ud83cy\udf31", "b": 1, "b": 2}""");
        Assert.Equal(
            [ProblemKind.WrongEncoding, ProblemKind.WrongEncoding, ProblemKind.DuplicateKey], result.Problems.Select(p => p.Kind));
        Assert.Equal(["\\ud83c", "\\udf31"], result.Problems.Take(2).Select(p => result.Source.Excerpt(result.Source.Resolve(p.Place))));
        Assert.Equal("x🌱\uFFFDy\uFFFD", result.Source.Tree!.Root["a"]!.Text);
    }

    [Fact]
    public void AZeroByteIsToldAtItsPlace()
    {
        var result = JsonReading.Read("a", [.. "{\"a\": 1"u8, 0, .. "}"u8]);
        Assert.Equal("1:8-1:9", Places.Where(result.Source, Single(result, ProblemKind.WrongEncoding)));
    }

    [Fact]
    public void CommentsAreToldWithTheirNoteAndDoNotStopTheReading()
    {
        var result = Read("// top \"secret\"\n{\"a\": 1, /* in\nside */ \"a\": 2}\n//");
        Assert.Equal(
            [ProblemKind.CommentInFile, ProblemKind.CommentInFile, ProblemKind.DuplicateKey, ProblemKind.CommentInFile],
            result.Problems.Select(p => p.Kind));
        Assert.Equal(["1:1-1:16", "2:10-3:8", "3:9-3:12", "4:1-4:3"], result.Problems.Select(p => Places.Where(result.Source, p)));
        Assert.Equal(["\"note\": \"top \\\"secret\\\"\""], result.Problems[0].Suggestions);
        Assert.Equal("2", result.Source.Tree!.Root["a"]!.Text);
    }

    [Theory]
    [InlineData("[1, 2,]", "1:6-1:7")]
    [InlineData("{\"a\": 1\n,\n}", "2:1-2:2")]
    [InlineData("{\"a\": [1, {\"b\": \",\" , } ]}", "1:21-1:22")]
    public void ATrailingCommaIsToldAndDoesNotStopTheReading(string json, string where)
    {
        var result = Read(json);
        Assert.Equal(where, Places.Where(result.Source, Single(result, ProblemKind.MalformedFile)));
        Assert.NotNull(result.Source.Tree);
    }

    [Fact]
    public void ACommaBeforeACommentIsStillATrailingComma()
    {
        var result = Read("[1, // one\n /* two */ ]");
        Assert.Equal(
            [ProblemKind.CommentInFile, ProblemKind.CommentInFile, ProblemKind.MalformedFile], result.Problems.Select(p => p.Kind));
        Assert.Equal("1:3-1:4", Places.Where(result.Source, result.Problems[2]));
    }

    // Utf8JsonReader, told to hand out comments, takes most of these without a word.
    [Theory]
    [InlineData("{\"a\": 1 //,\n \"b\": 2}", "1:8-1:8", "comma is missing")]
    [InlineData("[1 /* , */ 2]", "1:3-1:3", "comma is missing")]
    [InlineData("[[] /**/ {}]", "1:4-1:4", "comma is missing")]
    [InlineData("[1, /**/ , 2]", "1:10-1:11", "Two commas")]
    [InlineData("[/**/ , 2]", "1:7-1:8", "nothing before it")]
    [InlineData("{\"a\": // 1\n}", "1:2-1:5", "no value")]
    [InlineData("{\"a\": 1 /**/ ]", "1:14-1:15", "closes nothing")]
    [InlineData("[1 /**/ }", "1:9-1:10", "closes nothing")]
    [InlineData("{/**/ 1}", "1:7-1:8", "double quotes")]
    [InlineData("{\"a\": 1, /**/ {}}", "1:15-1:16", "every value has a key")]
    [InlineData("{\"a\" /**/ : 1}", "1:5-1:11", "between a key and its colon")]
    [InlineData("[] /**/ []", "1:9-1:10", "complete before this")]
    [InlineData("[] /**/ ,", "1:9-1:10", "ends before this comma")]
    public void ACommentMakesNothingElseRight(string json, string where, string words)
    {
        var result = Read(json);
        var problem = Assert.Single(result.Problems, p => p.Kind == ProblemKind.MalformedFile);
        Assert.Contains(words, problem.Message, StringComparison.Ordinal);
        Assert.Equal(where, Places.Where(result.Source, problem));
        Assert.Null(result.Source.Tree);
    }

    [Fact]
    public void SixtyFourLevelsAreReadAndOneMoreIsTold()
    {
        Assert.NotNull(Read(new string('[', 64) + new string(']', 64)).Source.Tree);
        var tooDeep = Read(new string('[', 65) + new string(']', 65));
        Assert.Equal("1:65-1:66", Places.Where(tooDeep.Source, Single(tooDeep, ProblemKind.MalformedFile)));
        Assert.Contains("64", tooDeep.Problems[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TheSizeLimitIsInclusive()
    {
        var bytes = "[1, 2]"u8.ToArray();
        Assert.Empty(JsonReading.Read("a", bytes, sizeLimit: 6).Problems);
        var result = JsonReading.Read("a", bytes, sizeLimit: 5);
        Assert.Null(result.Source.Tree);
        Assert.Equal([6.0, 5.0], Single(result, ProblemKind.FileTooLarge).Values.Select(v => v.Value));
    }

    [Theory]
    [InlineData("1e400")]
    [InlineData("-1e999999999")]
    [InlineData("100000000000000000000000000000000000000000000000000000000000000000000000000001")]
    public void OutsizedNumbersKeepTheirLiteral(string number)
    {
        var result = Read($"[{number}]");
        Assert.Empty(result.Problems);
        Assert.Equal(number, result.Source.Tree!.Root.Items[0].Text);
        Assert.Equal($"[{number}]", Encoding.UTF8.GetString(result.Source.Bytes));
    }
}
