using System.Text;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Chemistry.Tests.Readings;

/// <summary>What is answered to what people write for a substance: it, several, or what is near.</summary>
public sealed class LookupReadingTests
{
    /// <summary>Of lookups.list, a text each line.</summary>
    [Fact]
    public void EveryTextIsAnsweredSo()
    {
        var text = new StringBuilder();
        foreach (var line in Hold.List("lookups.list")) Write(text, line);
        Hold.As("lookups.txt", text);
    }

    /// <summary>A slip of each kind in every id: a letter left out, doubled, turned round with its neighbour, another.</summary>
    [Theory]
    [InlineData("left out")]
    [InlineData("doubled")]
    [InlineData("turned")]
    [InlineData("another")]
    public void ASlipInEveryIdIsAnsweredSo(string kind)
    {
        var text = new StringBuilder();
        var place = 0;
        foreach (var id in SubstanceCatalogue.BuiltIn.Ids)
        {
            var at = 1 + (5 * place++ % (id.Length - 2));
            Write(text, kind switch
            {
                "left out" => id.Remove(at, 1),
                "doubled" => id.Insert(at, id[at].ToString()),
                "turned" => id[..at] + id[at + 1] + id[at] + id[(at + 2)..],
                _ => id[..at] + (id[at] == 'x' ? 'q' : 'x') + id[(at + 1)..],
            });
        }

        Hold.As($"slips-{kind.Replace(' ', '-')}.txt", text);
    }

    [Fact]
    public void ALongTextIsNotHeldAgainstAnything()
    {
        static SubstanceLookup Find(int length) => SubstanceCatalogue.BuiltIn.Find("urea".PadRight(length, '-'));
        Assert.IsType<SubstanceLookup.Found>(Find(SubstanceCatalogue.MaxTextLength));
        Assert.Empty(Assert.IsType<SubstanceLookup.Unknown>(Find(SubstanceCatalogue.MaxTextLength + 1)).Suggestions);
    }

    [Fact]
    public void NoStrengthGivesNoFactor()
    {
        var pure = SubstanceCatalogue.BuiltIn.ById("potassium-nitrate")!;
        Assert.Equal(2, SubstanceCatalogue.HydrateFactor(pure with { Strength = new(0.5) }, pure)!.Value, 1e-12);
        Assert.Null(SubstanceCatalogue.HydrateFactor(pure with { Strength = new(0) }, pure));
        Assert.Null(SubstanceCatalogue.HydrateFactor(pure, pure with { Strength = new(0) }));
        Assert.Null(SubstanceCatalogue.HydrateFactor(pure with { Formula = null }, pure));
        Assert.Null(SubstanceCatalogue.HydrateFactor(pure, pure with { Formula = null }));
    }

    [Theory]
    [InlineData("", "", 0)]
    [InlineData("abc", "abc", 0)]
    [InlineData("abc", "", 3)]
    [InlineData("", "abc", 3)]
    [InlineData("abc", "abd", 1)]
    [InlineData("abc", "acb", 1)]
    [InlineData("abc", "bac", 1)]
    [InlineData("abcd", "badc", 2)]
    [InlineData("abc", "abcd", 1)]
    [InlineData("abc", "xabc", 1)]
    [InlineData("ca", "abc", 3)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("aaaa", "bbbb", 4)]
    public void SlipsAreCounted(string a, string b, int slips)
    {
        Assert.Equal(slips, EditDistance.Of(a, b));
        Assert.Equal(slips, EditDistance.Of(b, a));
        for (var limit = 0; limit < 6; limit++) Assert.Equal(Math.Min(slips, limit + 1), EditDistance.Of(a, b, limit));
    }

    [Theory]
    [InlineData("7732-18-5", true, true)]
    [InlineData("7732-18-4", true, false)]
    [InlineData("50-00-0", true, true)]
    [InlineData("1234567-12-3", true, false)]
    [InlineData("12345678-12-3", false, false)]
    [InlineData("5-00-0", false, false)]
    [InlineData("7732-18-x", false, false)]
    [InlineData("7732-1x-5", false, false)]
    [InlineData("x732-18-5", false, false)]
    [InlineData("7732x18-5", false, false)]
    [InlineData("7732-18x5", false, false)]
    [InlineData("", false, false)]
    public void ACasNumberHasAShapeAndACheckDigit(string text, bool shape, bool valid) =>
        Assert.Equal((shape, valid), (CasNumber.HasShape(text), CasNumber.IsValid(text)));

    [Theory]
    [InlineData("sodium nitrate", true, false)]
    [InlineData("Sodium-Nitrate", true, false)]
    [InlineData("NaNO3", true, true)]
    [InlineData("nano3", false, false)]
    [InlineData("Na", true, true)]
    [InlineData("Fe2(SO4)3", true, true)]
    [InlineData("Ca3(PO4)2", true, true)]
    [InlineData("sodium nitrote", false, false)]
    public void KnownNamesAreKnown(string text, bool known, bool formula) =>
        Assert.Equal((known, formula), (KnownNames.BuiltIn.IsKnown(text), KnownNames.BuiltIn.IsFormula(text)));

    [Theory]
    [InlineData("Sulphate", true)]
    [InlineData("nitrate", true)]
    [InlineData("nitrat", false)]
    public void SingleWordsAreKnown(string word, bool known) => Assert.Equal(known, KnownNames.BuiltIn.IsWord(word));

    [Fact]
    public void WordsAreLettersInOneSpelling() =>
        Assert.Equal(["iron", "ii", "sulfate", "h", "o"], KnownNames.WordsOf("Iron(II) sulphate 7H2O"));

    [Fact]
    public void NamesOfTheListAreInOrderAndOnce()
    {
        Assert.Equal(KnownNames.BuiltIn.Names.Distinct().Order(StringComparer.Ordinal), KnownNames.BuiltIn.Names);
        Assert.Contains("nitrate", KnownNames.BuiltIn.Words);
    }

    private static void Write(StringBuilder text, string written) => text.Append($"[{written}] ").Append(SubstanceCatalogue.BuiltIn.Find(written) switch
    {
        SubstanceLookup.Found found => found.Substance.Id,
        SubstanceLookup.Ambiguous several => $"one of {string.Join(", ", several.Candidates.Select(c => c.Id))}",
        SubstanceLookup.Unknown { Suggestions: { Count: > 0 } near } => $"near {string.Join(", ", near)}",
        _ => "unknown",
    }).Append('\n');
}
