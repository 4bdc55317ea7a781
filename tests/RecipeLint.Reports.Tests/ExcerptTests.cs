using CsCheck;

namespace RecipeLint.Reports.Tests;

public sealed class ExcerptTests
{
    private static readonly Gen<string> _piece = Gen.OneOf("a", "salt ", "\t", "水", "🥒", "e\u0301", "\u202E", "\u001b", "é", "⚠\uFE0F", "\"", "x{}");

    [Fact]
    public void ACutLineFitsAndMarksWhatWasMarked()
    {
        var cases =
            from before in _piece.Array[0, 80]
            from inside in _piece.Array[0, 60]
            from after in _piece.Array[0, 80]
            from width in Gen.Int[20, 100]
            select (Before: string.Concat(before), Inside: string.Concat(inside), After: string.Concat(after), Width: width);
        cases.Sample(c =>
        {
            var excerpt = Excerpt.Of(c.Before + c.Inside + c.After, c.Before.Length, c.Before.Length + c.Inside.Length, c.Width);
            Assert.InRange(DisplayWidth.Of(excerpt.Text), 0, c.Width);
            Assert.True(excerpt.Length >= 1 && excerpt.Offset >= 0);
            Assert.True(excerpt.Offset + excerpt.Length <= c.Width + 1, "the mark leaves the line");
            if (excerpt.Whole)
            {
                var shownBefore = Printable.Show(c.Before.Replace("\t", "  ", StringComparison.Ordinal));
                Assert.Equal(DisplayWidth.Of(shownBefore), excerpt.Offset);
                Assert.StartsWith(shownBefore, excerpt.Text, StringComparison.Ordinal);
            }
        });
    }

    [Fact]
    public void TheMarkOfACutLineStandsUnderItsText()
    {
        var line = new string('a', 300) + "TARGET" + new string('b', 3000);
        var excerpt = Excerpt.Of(line, 300, 306, 60);
        Assert.Equal("TARGET", excerpt.Text.Substring(excerpt.Offset, excerpt.Length));
        Assert.StartsWith("…a", excerpt.Text, StringComparison.Ordinal);
        Assert.EndsWith("b…", excerpt.Text, StringComparison.Ordinal);
        Assert.Equal(60, excerpt.Text.Length);
    }

    [Fact]
    public void WrappedLinesFitAndKeepEveryWord()
    {
        var cases =
            from words in Gen.OneOf("a", "salt", "水素水素", "calcium-nitrate-4h2o", "🥒🥒🥒🥒🥒🥒🥒🥒🥒🥒🥒🥒🥒🥒🥒", "e\u0301e\u0301").Array[0, 60]
            from width in Gen.Int[2, 100]
            select (Text: string.Join(' ', words), Width: width);
        cases.Sample(c =>
        {
            var lines = TextWrap.Wrap(c.Text, c.Width);
            Assert.All(lines, l => Assert.InRange(DisplayWidth.Of(l), 0, c.Width));
            Assert.Equal(c.Text.Replace(" ", "", StringComparison.Ordinal), string.Concat(lines).Replace(" ", "", StringComparison.Ordinal));
        });
    }

    [Fact]
    public void ANumberAndItsUnitStayOnOneLine()
    {
        var cases =
            from words in Gen.OneOf("a", "salt", "calcium", "7.67 g/L", "±25 %", "4.3", "(8 °C)", "200 mL,", "2.4 × 10^-5 g/L").Array[0, 40]
            from width in Gen.Int[16, 100]
            select (Text: string.Join(' ', words), Width: width);
        cases.Sample(c =>
        {
            var lines = TextWrap.Wrap(c.Text, c.Width);
            Assert.All(lines, l => Assert.InRange(DisplayWidth.Of(l), 0, c.Width));
            Assert.Equal(c.Text, string.Join(' ', lines));
            Assert.All(lines, l => Assert.False(l.StartsWith("g/L", StringComparison.Ordinal) || l.StartsWith('%') || l.StartsWith("°C", StringComparison.Ordinal) || l.StartsWith("mL", StringComparison.Ordinal) || l.StartsWith('×') || l.StartsWith("10^", StringComparison.Ordinal), l));
        });
    }
}
