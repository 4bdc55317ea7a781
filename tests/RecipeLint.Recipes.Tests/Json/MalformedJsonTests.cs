using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Json;

/// <summary>What stops a text from being JSON, in our words and at its place.</summary>
public sealed class MalformedJsonTests
{
    [Theory]
    [InlineData("", "1:1-1:1", "is empty")]
    [InlineData(" \n\t ", "1:1-1:1", "is empty")]
    [InlineData("{\"a\": 1,\n \"b\": {\n", "2:8-2:8", "in the middle of an object that starts at line 2. 2 brackets are still open")]
    [InlineData("{\"a\":\n [1,\n 2\n\n", "3:3-3:3", "in the middle of a list that starts at line 2")]
    [InlineData("{\"a\": \"é🌱\" \"b\": 2}", "1:12-1:12", "A comma is missing")]
    [InlineData("[1 2]", "1:3-1:5", "a comma is missing")]
    [InlineData("[[1] [2]]", "1:5-1:5", "A comma is missing")]
    [InlineData("[true false]", "1:6-1:6", "A comma is missing")]
    [InlineData("{\"amount\": 24 g, \"b\": 1}", "1:12-1:16", "written in double quotes: \"24 g\"")]
    [InlineData("{\"amount\": 24g}", "1:12-1:15", "written in double quotes: \"24g\"")]
    [InlineData("{\"amount\": 5 °C }", "1:12-1:16", "written in double quotes: \"5 °C\"")]
    [InlineData("{\"a\": 5 %}", "1:7-1:10", "written in double quotes: \"5 %\"")]
    [InlineData("{\"a\" 1}", "1:5-1:5", "A colon and a value are missing after the key \"a\"")]
    [InlineData("{\"a\" = 1}", "1:6-1:7", "A colon belongs here")]
    [InlineData("{\"a\": }", "1:2-1:5", "no value")]
    [InlineData("{\"a\": , \"b\": 1}", "1:7-1:8", "nothing before it")]
    [InlineData("{a: 1}", "1:2-1:3", "A key is written in double quotes: \"a\"")]
    [InlineData("{\"a\": 1, b-c: 1}", "1:10-1:13", "A key is written in double quotes: \"b-c\"")]
    [InlineData("{'a': 1}", "1:2-1:3", "not in '")]
    [InlineData("{“a”: 1}", "1:2-1:3", "typographic")]
    [InlineData("{\"a\": water}", "1:7-1:12", "Text is written in double quotes: \"water\"")]
    [InlineData("{\"a\": True}", "1:7-1:11", "Write true")]
    [InlineData("{\"a\": None}", "1:7-1:11", "no None")]
    [InlineData("{\"a\": NaN}", "1:7-1:10", "no number NaN")]
    [InlineData("{\"a\": -Infinity}", "1:7-1:16", "no number -Infinity")]
    [InlineData("{\"a\": +1}", "1:7-1:9", "no plus sign")]
    [InlineData("{\"a\": .5}", "1:7-1:9", "before the decimal point")]
    [InlineData("{\"a\": 5.}", "1:7-1:9", "after the decimal point")]
    [InlineData("{\"a\": 05}", "1:7-1:9", "no zeros in front")]
    [InlineData("{\"a\": 0x1F}", "1:7-1:11", "decimal digits")]
    [InlineData("{\"a\": 1.2.3}", "1:7-1:12", "one decimal point")]
    [InlineData("{\"a\": 1 000}", "1:8-1:10", "between the digits")]
    [InlineData("{\"a\": 1_000}", "1:8-1:9", "between the digits")]
    [InlineData("{\"a\": \"no end}", "1:7-1:15", "the file ends inside it")]
    [InlineData("{\"a\": \"no end\n}", "1:7-1:14", "closing quote of this text is missing")]
    [InlineData("{\"a\": \"a\tb\"}", "1:9-1:10", "tab")]
    [InlineData("{\"a\": \"a\u0001b\"}", "1:9-1:10", "U+0001")]
    [InlineData("{\"a\": \"C:\\dir\"}", "1:10-1:12", "no escape")]
    [InlineData("{\"a\": \"\\u00g1\"}", "1:8-1:10", "four hexadecimal digits")]
    [InlineData("{\"a\": 1]", "1:8-1:9", "an object that starts at line 1 is open and ends with '}'")]
    [InlineData("{\"a\": 1}}", "1:9-1:10", "one '}' too many")]
    [InlineData("{\"a\": 1},", "1:9-1:10", "ends before this comma")]
    [InlineData("{\"a\": 1}\n{\"b\": 1}", "2:1-2:2", "complete before this")]
    [InlineData("[1,, 2]", "1:4-1:5", "Two commas")]
    [InlineData("[, 1]", "1:2-1:3", "nothing before it")]
    [InlineData("{\"a\":\u00A01}", "1:6-1:7", "U+00A0")]
    [InlineData("{\"a\": 1 # why\n}", "1:9-1:10", "no comments")]
    [InlineData("{\"a\": 1 /* why }", "1:9-1:17", "never ends")]
    [InlineData("{\"a\": 1 / 2}", "1:9-1:10", "'/' does not belong here")]
    [InlineData("{\"a\": 1; \"b\": 2}", "1:8-1:9", "A comma belongs here")]
    [InlineData("[\"a\": 1]", "1:5-1:6", "A list holds values")]
    [InlineData("{\"a\": 1, {\"b\": 2}}", "1:10-1:11", "every value has a key")]
    [InlineData("{: 1}", "1:2-1:3", "key before this colon is missing")]
    [InlineData("]", "1:1-1:2", "nothing is open")]
    public void TheCauseIsNamedInPlainWordsAtItsPlace(string json, string where, string words)
    {
        var result = JsonReading.Read("a", Encoding.UTF8.GetBytes(json));
        var problem = Assert.Single(result.Problems);
        Assert.Equal(ProblemKind.MalformedFile, problem.Kind);
        Assert.Contains(words, problem.Message, StringComparison.Ordinal);
        Assert.Equal(where, Places.Where(result.Source, problem));
        Assert.Null(result.Source.Tree);
    }

    [Fact]
    public void AnUnclosedBracketIsShownBesideTheEnd()
    {
        var result = JsonReading.Read("a", "{\n  \"steps\": [\n    {\"add\": \"x\"}\n}\n"u8.ToArray());
        var problem = Assert.Single(result.Problems);
        Assert.Equal("4:1-4:2", Places.Where(result.Source, problem));
        Assert.Equal("2:12-2:13", Places.Where(result.Source, Assert.Single(problem.Related).Place));
    }

    [Fact]
    public void EveryCutOfADocumentIsToldInsideTheFile()
    {
        var whole = "{\"format\": 1, \"n\": \"µ\\u00b5\\\\\", \"steps\": [{\"add\": -1.5e3, \"x\": true}, [null], {}]} "u8.ToArray();
        Assert.Empty(JsonReading.Read("a", whole).Problems);
        for (var length = 0; length < whole.Length - 1; length++)
        {
            var result = JsonReading.Read("a", whole[..length]);
            Assert.Single(result.Problems);
            Assert.Null(result.Source.Tree);
            Places.AssertAllInside(result);
        }
    }
}
