using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Patching;

public class JsonPatcherTests
{
    private const string File = "a.stock.json";

    private const string Stock = "{\n  \"format\": 1,\n  \"steps\": [\n    { \"pour\": \"1 L\" },\n    { \"add\": \"urea\", \"amount\": \"5 g\" }\n  ]\n}\n";

    [Fact]
    public void AValueChangesAndNothingElse() =>
        Assert.Equal(Stock.Replace("5 g", "6 g"), Patch(Stock, new JsonEdit.ReplaceValue(At("/steps/1/amount"), JsonDraft.Of("6 g"))));

    [Fact]
    public void AKeyChangesItsName() =>
        Assert.Equal(Stock.Replace("amount", "with"), Patch(Stock, new JsonEdit.RenameKey(At("/steps/1/amount"), "with")));

    [Fact]
    public void ANewStepFollowsTheOneLineStyleOfItsNeighbours() =>
        Assert.Equal(
            Stock.Replace("\"5 g\" }", "\"5 g\" },\n    { \"topUp\": \"2 L\" }"),
            Patch(Stock, new JsonEdit.InsertElement(At("/steps"), 2, JsonDraft.Of(("topUp", JsonDraft.Of("2 L"))))));

    [Fact]
    public void WindowsLineEndsAndTabsStay()
    {
        var windows = Stock.Replace("\n", "\r\n").Replace("  ", "\t");
        Assert.Equal(
            windows.Replace("\"format\": 1,", "\"format\": 1,\r\n\t\"makes\": \"2 L\","),
            Patch(windows, new JsonEdit.InsertMember(At(""), "makes", JsonDraft.Of("2 L"), "format")));
    }

    [Fact]
    public void AStepOnSeveralLinesBegetsOneOnSeveralLines()
    {
        var text = "{\n\t\"steps\": [\n\t\t{\n\t\t\t\"pour\": \"1 L\"\n\t\t}\n\t]\n}";
        Assert.Equal(
            "{\n\t\"steps\": [\n\t\t{\n\t\t\t\"pour\": \"1 L\"\n\t\t},\n\t\t{\n\t\t\t\"topUp\": \"2 L\",\n\t\t\t\"note\": \"n\"\n\t\t}\n\t]\n}",
            Patch(text, new JsonEdit.InsertElement(At("/steps"), 1, JsonDraft.Of(("topUp", JsonDraft.Of("2 L")), ("note", JsonDraft.Of("n"))))));
    }

    [Fact]
    public void ACompactFileStaysCompact() =>
        Assert.Equal(
            """{"format":1,"steps":[{"pour":"1 L"},{"topUp":"2 L"}]}""",
            Patch("""{"format":1,"steps":[{"pour":"1 L"}]}""", new JsonEdit.InsertElement(At("/steps"), 1, JsonDraft.Of(("topUp", JsonDraft.Of("2 L"))))));

    [Theory]
    [InlineData("/steps/0", "{ \"pour\": \"1 L\" },\n    ")]
    [InlineData("/steps/1", ",\n    { \"add\": \"urea\", \"amount\": \"5 g\" }")]
    [InlineData("/format", "\"format\": 1,\n  ")]
    [InlineData("/steps/1/amount", ", \"amount\": \"5 g\"")]
    public void WhatIsTakenOutTakesItsCommaAlong(string pointer, string gone) =>
        Assert.Equal(Stock.Replace(gone, ""), Patch(Stock, new JsonEdit.Remove(At(pointer))));

    [Fact]
    public void MovingAStepKeepsCommasAndIndentation() =>
        Assert.Equal(
            "{\n  \"format\": 1,\n  \"steps\": [\n    { \"add\": \"urea\", \"amount\": \"5 g\" },\n    { \"pour\": \"1 L\" }\n  ]\n}\n",
            Patch(Stock, JsonEdit.Move(At("/steps"), 0, 1, 2)));

    [Theory]
    [InlineData("{\n  \"format\": 1, // why not\n  \"makes\": \"1 L\"\n}", "{\n  \"format\": 1,\n  \"makes\": \"1 L\",\n  \"note\": \"why not\"\n}")]
    [InlineData("{\n  // first\n  \"format\": 1\n}", "{\n  \"format\": 1,\n  \"note\": \"first\"\n}")]
    [InlineData("{ \"steps\": [\n  { \"pour\": \"1 L\" }, // cold\n  { \"stir\": \"well\" }\n] }", "{ \"steps\": [\n  { \"pour\": \"1 L\", \"note\": \"cold\" },\n  { \"stir\": \"well\" }\n] }")]
    [InlineData("{ \"steps\": [\r\n  /* the\r\n   * salt */\r\n  { \"pour\": \"1 L\" }\r\n] }", "{ \"steps\": [\r\n  { \"pour\": \"1 L\", \"note\": \"the salt\" }\r\n] }")]
    [InlineData("{ \"note\": \"old\" } // new", "{ \"note\": \"old new\" }")]
    [InlineData("{ \"format\": 1 /**/ }", "{ \"format\": 1 }")]
    public void ACommentBecomesTheNoteOfWhatItSpeaksOf(string before, string after)
    {
        var comment = JsonReading.Read(File, Encoding.UTF8.GetBytes(before)).Problems.Single(p => p.Kind == ProblemKind.CommentInFile);
        Assert.Equal(after, Patch(before, new JsonEdit.CommentToNote(comment.Place)));
    }

    [Fact]
    public void TheEarlierOfTwoMembersOfOneNameCanBeTakenOut()
    {
        const string twice = """{ "makes": { "a": [1, 2] }, "format": 1, "makes": "2 L" }""";
        var key = new Place(File, new JsonPointer("/makes"), PlacePart.Key, new ByteSpan(2, 7));
        Assert.Equal("""{ "format": 1, "makes": "2 L" }""", Patch(twice, new JsonEdit.Remove(key)));
    }

    [Fact]
    public void AMarkStaysUnlessItIsDropped()
    {
        var marked = "\uFEFF" + Stock;
        Assert.StartsWith("\uFEFF", Patch(marked, new JsonEdit.ReplaceValue(At("/format"), new JsonDraft.Literal("2"))));
        Assert.Equal(Stock, Patch(marked, new JsonEdit.DropByteOrderMark(At(""))));
    }

    [Fact]
    public void OverlappingChangesAreRefused()
    {
        var result = Apply(Stock, new JsonEdit.Remove(At("/steps/1")), new JsonEdit.ReplaceValue(At("/steps/1/amount"), JsonDraft.Of("6 g")));
        Assert.Null(result.Bytes);
        Assert.Contains("overlap", result.Refused, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/nothing")]
    [InlineData("/steps/7")]
    [InlineData("/format/deeper")]
    public void APlaceThatIsNotThereIsRefused(string pointer) =>
        Assert.NotNull(Apply(Stock, new JsonEdit.ReplaceValue(At(pointer), JsonDraft.Of("x"))).Refused);

    [Fact]
    public void AResultThatIsNoJsonIsRefused() =>
        Assert.NotNull(Apply(Stock, new JsonEdit.ReplaceText(At("") with { Range = new ByteSpan(0, 1) }, "")).Refused);

    [Fact]
    public void WhatIsNoJsonIsNotPatched() =>
        Assert.NotNull(Apply("{ \"format\": ", new JsonEdit.ReplaceValue(At("/format"), JsonDraft.Of("x"))).Refused);

    private static Place At(string pointer) => new(File, new JsonPointer(pointer));

    private static PatchResult Apply(string text, params JsonEdit[] edits) =>
        JsonPatcher.Apply(JsonReading.Read(File, Encoding.UTF8.GetBytes(text)).Source, edits);

    private static string Patch(string text, params JsonEdit[] edits)
    {
        var result = Apply(text, edits);
        Assert.Null(result.Refused);
        return Encoding.UTF8.GetString(result.Bytes!);
    }
}
