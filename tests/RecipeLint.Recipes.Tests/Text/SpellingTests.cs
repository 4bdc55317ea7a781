using CsCheck;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Text;

public sealed class SpellingTests
{
    private static readonly string[] _keys = ["add", "amount", "assay", "adjust", "topUp", "with", "note", "NO3-N", "magnesium-sulfate-7h2o"];

    // The first three pairs are the usual worked examples of the literature on edit distance; the others count by hand.
    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("saturday", "sunday", 3)]
    [InlineData("ca", "abc", 3)]
    [InlineData("amuont", "amount", 1)]
    [InlineData("", "abc", 3)]
    [InlineData("same", "same", 0)]
    public void DistanceCountsEditsAndSwaps(string a, string b, int expected)
    {
        Assert.Equal(expected, EditDistance.Of(a, b));
        Assert.Equal(expected, EditDistance.Of(b, a));
    }

    [Fact]
    public void ALimitChangesNothingBelowIt()
    {
        var word = Gen.Char['a', 'd'].Array[0, 8].Select(c => new string(c));
        Gen.Select(word, word, Gen.Int[0, 8]).Sample((a, b, limit) =>
        {
            var whole = EditDistance.Of(a, b);
            Assert.InRange(whole, Math.Abs(a.Length - b.Length), Math.Max(a.Length, b.Length));
            Assert.Equal(Math.Min(whole, limit + 1), EditDistance.Of(a, b, limit));
        });
    }

    [Theory]
    [InlineData("amout", "amount")]
    [InlineData("asay", "assay")]
    [InlineData("top_up", "topUp")]
    [InlineData("TOPUP", "topUp")]
    [InlineData("no3n", "NO3-N")]
    [InlineData("magnesium sulfate 7 H2O", "magnesium-sulfate-7h2o")]
    [InlineData("magnesium-sulphate-7h2o", "magnesium-sulfate-7h2o")]
    [InlineData("amo", "amount")]
    public void TheNearestWordComesFirst(string word, string expected) => Assert.Equal(expected, Spelling.Nearest(word, _keys)[0]);

    [Theory]
    [InlineData("zinc")]
    [InlineData("")]
    [InlineData("-")]
    [InlineData("x")]
    public void FarWordsSuggestNothing(string word) => Assert.Empty(Spelling.Nearest(word, _keys));

    [Fact]
    public void AVeryLongWordSuggestsNothing() => Assert.Empty(Spelling.Nearest(new string('a', 100_000), [new string('a', 100_000)]));

    [Fact]
    public void EqualsComeInOrdinalOrderAndNoMoreThanAskedFor()
    {
        Assert.Equal(["caa", "cab", "cac"], Spelling.Nearest("cax", ["cad", "cac", "cab", "caa"]));
        Assert.Equal(["caa"], Spelling.Nearest("cax", ["cad", "cac", "cab", "caa"], 1));
    }
}
