using RecipeLint.Recipes.Patching;
using static RecipeLint.Recipes.Tests.Patching.Bench;

namespace RecipeLint.Recipes.Tests.Patching;

/// <summary>A comment becomes the note of what it speaks of, and nothing is left of it.</summary>
public class CommentMoveTests
{
    private static string Moved(string text, string comment) => Patched(text, new JsonEdit.CommentToNote(Word(text, comment)));

    private static string Refused(string text, string comment) => Refusal(text, new JsonEdit.CommentToNote(Word(text, comment)));

    [Theory]
    [InlineData("{ \"a\": 1 } // x", "// x", "{ \"a\": 1, \"note\": \"x\" }")]
    [InlineData("{ \"a\": 1 } /* x */", "/* x */", "{ \"a\": 1, \"note\": \"x\" }")]
    [InlineData("{ \"a\": 1 } /*x*/", "/*x*/", "{ \"a\": 1, \"note\": \"x\" }")]
    [InlineData("{ \"a\": 1 /* one\n * two\n *\r\n\r\n ** three */ }", "/* one\n * two\n *\r\n\r\n ** three */", "{ \"a\": 1, \"note\": \"one two three\" }")]
    [InlineData("{ \"a\": 1 } // b\tc", "// b\tc", "{ \"a\": 1, \"note\": \"b c\" }")]
    [InlineData("{ \"a\": 1 } // say \"b\\c\" µ", "// say \"b\\c\" µ", "{ \"a\": 1, \"note\": \"say \\\"b\\\\c\\\" µ\" }")]
    [InlineData("{ \"a\": 1 } // /* x */", "// /* x */", "{ \"a\": 1, \"note\": \"/* x */\" }")]
    public void TheWordsAreKeptWithoutTheirSigns(string before, string comment, string after) => Assert.Equal(after, Moved(before, comment));

    [Theory]
    [InlineData("{}//", "//", "{}")]
    [InlineData("{} /**/", "/**/", "{}")]
    [InlineData("{} /* \n * \r\n */", "/* \n * \r\n */", "{}")]
    [InlineData("//\n{}", "//", "{}")]
    [InlineData("  //\t \r\n{}", "//\t ", "{}")]
    [InlineData("//\r{}", "//", "{}")]
    [InlineData("{\n  \"a\": 1 \t//\n}", "//", "{\n  \"a\": 1\n}")]
    [InlineData("{\r\n  \"a\": 1, \t//\r\n  \"b\": 2\r\n}", "//", "{\r\n  \"a\": 1,\r\n  \"b\": 2\r\n}")]
    [InlineData("{\n  \"a\": 1,\n\t //\n  \"b\": 2\n}", "//", "{\n  \"a\": 1,\n  \"b\": 2\n}")]
    [InlineData("{\n  /**/ \"a\": 1\n}", "/**/", "{\n   \"a\": 1\n}")]
    [InlineData("/**/ {}", "/**/", " {}")]
    [InlineData("{}\n  //", "//", "{}\n")]
    [InlineData("[1, /**/ 2]", "/**/", "[1, /**/ 2]")]
    public void AnEmptyCommentGoesAndALineOfItsOwnGoesWithIt(string before, string comment, string after)
    {
        if (before[0] == '[')
        {
            // A list has no note; the comment stays, whatever is in it.
            Assert.Contains("nothing at", Refused(before, comment), StringComparison.Ordinal);
            return;
        }

        Assert.Equal(after, Moved(before, comment));
    }

    [Theory]
    [InlineData("{ \"s\": [\n  { \"p\": 1 }, // c\n  { \"q\": 2 }\n] }", "{ \"s\": [\n  { \"p\": 1, \"note\": \"c\" },\n  { \"q\": 2 }\n] }")]
    [InlineData("{ \"s\": [\n  { \"p\": 1 },\n  // c\n  { \"q\": 2 }\n] }", "{ \"s\": [\n  { \"p\": 1 },\n  { \"q\": 2, \"note\": \"c\" }\n] }")]
    [InlineData("{ \"s\": [\r  { \"p\": 1 },\r  // c\r  { \"q\": 2 }\r] }", "{ \"s\": [\r  { \"p\": 1 },\r  { \"q\": 2, \"note\": \"c\" }\r] }")]
    [InlineData("{ \"s\": [\n  { \"p\": 1 }\n  // c\n] }", "{ \"s\": [\n  { \"p\": 1 }\n], \"note\": \"c\" }")]
    [InlineData("{ \"s\": [\n  1, // c\n  2\n] }", "{ \"s\": [\n  1,\n  2\n], \"note\": \"c\" }")]
    [InlineData("{ \"s\": [\n  1, // c\n  { \"q\": 2 }\n] }", "{ \"s\": [\n  1,\n  { \"q\": 2, \"note\": \"c\" }\n] }")]
    [InlineData("{ \"s\": [ { \"o\": { \"p\": 1 // c\n } } ] }", "{ \"s\": [ { \"o\": { \"p\": 1, \"note\": \"c\"\n } } ] }")]
    [InlineData("{ \"s\": [ { \"l\": [ 1 // c\n ] } ] }", "{ \"s\": [ { \"l\": [ 1\n ], \"note\": \"c\" } ] }")]
    [InlineData("{ \"o\": { \"p\": 1 } // c\n}", "{ \"o\": { \"p\": 1 }, \"note\": \"c\"\n}")]
    [InlineData("{ \"a\": \"text // c\", \"b\": 1 // c\n}", "{ \"a\": \"text // c\", \"b\": 1, \"note\": \"c\"\n}")]
    public void ItGoesToTheObjectItSpeaksOf(string before, string after)
    {
        var start = before.LastIndexOf("// c", StringComparison.Ordinal);
        Assert.Equal(after, Patched(before, new JsonEdit.CommentToNote(Bytes(start, 4))));
    }

    [Fact]
    public void ItMayTouchWhatItSpeaksOf() =>
        Assert.Equal("{ \"s\": [{ \"q\": 2, \"note\": \"c\" } ] }", Moved("{ \"s\": [ /* c */{ \"q\": 2 } ] }", "/* c */"));

    [Fact]
    public void ANoteThatIsThereIsContinued() =>
        Assert.Equal("{ \"note\": \"old \\\"a\\\" new\" }", Moved("{ \"note\": \"old \\\"a\\\"\" } // new", "// new"));

    [Theory]
    [InlineData("{ \"note\": 1 } // x", "// x")]
    [InlineData("{ \"note\": [\"a\"] } // x", "// x")]
    [InlineData("[{ \"a\": 1 } // x\n]", "// x")]
    [InlineData("1 // x", "// x")]
    [InlineData("{} /*/ x */", "/*/")]
    [InlineData("{} // x", "/")]
    public void WhatCannotBeMovedIsRefused(string before, string comment) => Assert.NotEmpty(Refused(before, comment));

    [Fact]
    public void APlaceWithoutItsBytesOrBeyondTheFileIsRefused()
    {
        const string Text = "{} // x";
        Assert.Contains("nothing at", Refusal(Text, new JsonEdit.CommentToNote(At(""))), StringComparison.Ordinal);
        Assert.Contains("nothing at", Refusal(Text, new JsonEdit.CommentToNote(Bytes(3, 5))), StringComparison.Ordinal);
    }
}
