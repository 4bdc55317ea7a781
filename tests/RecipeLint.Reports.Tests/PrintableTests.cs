using System.Text;

namespace RecipeLint.Reports.Tests;

public sealed class PrintableTests
{
    [Theory]
    [InlineData("\u001b[2J", "\\u001B[2J")]
    [InlineData("a\nb\r\tc", "a\\u000Ab\\u000D\\u0009c")]
    [InlineData("\u009B31m", "\\u009B31m")]
    [InlineData("\u007F\u0085", "\\u007F\\u0085")]
    [InlineData("\u202Eabc\u202C\u2066\u200F\u061C", "\\u202Eabc\\u202C\\u2066\\u200F\\u061C")]
    [InlineData("a\u200B\u200D\uFEFF\u00AD\u2060b", "a\\u200B\\u200D\\uFEFF\\u00AD\\u2060b")]
    [InlineData("\u2028\u2029", "\\u2028\\u2029")]
    [InlineData("\u3164\u115F", "\\u3164\\u115F")]
    [InlineData("\U000E0041", "\\u{E0041}")]
    [InlineData("µS/cm · 5 °C, Ca²⁺ e\u0301 水 🥒", "µS/cm · 5 °C, Ca²⁺ e\u0301 水 🥒")]
    public void ShowsWhatATerminalWouldActOn(string text, string shown) => Assert.Equal(shown, Printable.Show(text));

    [Fact]
    public void NothingShownIsAHazardForAnyCodeUnit()
    {
        for (var unit = 0; unit <= 0xFFFF; unit++)
        {
            var shown = Printable.Show("a" + (char)unit + "b");
            Assert.DoesNotContain(shown.EnumerateRunes(), Printable.IsHazard);
            Assert.DoesNotContain('\uFFFD', unit == 0xFFFD ? "" : shown);
        }
    }

    [Theory]
    [InlineData("::stop-commands::x", "\\u003A:stop-commands::x")]
    [InlineData("  ::error::y", "  \\u003A:error::y")]
    [InlineData("file ##[group]x ##vso[task]", "file \\u0023#[group]x \\u0023#vso[task]")]
    [InlineData("a.json:1:2: error ::", "a.json:1:2: error ::")]
    public void ALineIsNoCommandOfABuildServer(string line, string guarded) => Assert.Equal(guarded, Printable.GuardLine(line));

    /// <summary>Facts, because an attribute cannot hold a lone surrogate.</summary>
    [Fact]
    public void LoneSurrogatesAreShownOrReplaced()
    {
        Assert.Equal("x\\uD800y\\uDC00", Printable.Show("x\uD800y\uDC00"));
        Assert.Equal("a\uFFFD", Printable.WellFormed("a\uD800"));
        Assert.Equal("\uFFFD\uD83E\uDD52", Printable.WellFormed("\uDC00\uD83E\uDD52"));
    }

    [Theory]
    [InlineData("salt", 4)]
    [InlineData("°µ·²⁺é", 6)]
    [InlineData("e\u0301", 1)]
    [InlineData("水素", 4)]
    [InlineData("ﾊﾝ", 2)]
    [InlineData("Ａ", 2)]
    [InlineData("🥒", 2)]
    [InlineData("⚠\uFE0F", 2)]
    [InlineData("⚠", 1)]
    [InlineData("한글", 4)]
    [InlineData("𠀀", 2)]
    [InlineData("", 0)]
    public void WidthCountsColumns(string text, int columns) => Assert.Equal(columns, DisplayWidth.Of(text));

    [Fact]
    public void WidthIsNeverNegativeNorAboveTwo()
    {
        for (var value = 0; value <= 0x10FFFF; value++)
        {
            if (Rune.IsValid(value))
            {
                Assert.InRange(DisplayWidth.Of(new Rune(value)), 0, 2);
            }
        }
    }
}
