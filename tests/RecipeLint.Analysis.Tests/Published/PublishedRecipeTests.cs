using RecipeLint.Analysis.Profiles;

namespace RecipeLint.Analysis.Tests.Published;

/// <summary>
/// Published solutions computed from their own salts. The citation stands in each *.published.json; "recalled" there means that the salts or
/// the element figures were recalled from the work and not read again.
/// </summary>
public sealed class PublishedRecipeTests
{
    public static TheoryData<string> Recipes => [.. PublishedRecipe.Ids];

    [Theory]
    [MemberData(nameof(Recipes))]
    public void ElementsFollowFromThePublishedSaltsWithinTheRoundingOrDifferByWhatIsStated(string id)
    {
        var recipe = PublishedRecipe.Read(id);

        Assert.NotEmpty(recipe.Citation);
        Assert.True(recipe.Facts.IsComplete);
        foreach (var figure in recipe.Figures)
        {
            var computed = figure.Computed(recipe.Facts);
            var difference = computed - figure.Value;
            var percent = 100 * difference / figure.Value;
            if (recipe.BeyondRoundingPercent.TryGetValue(figure.Key, out var stated))
            {
                Assert.True(Math.Abs(difference) > figure.Rounding, $"{id}: {figure.Key} follows after all ({computed:G6} {figure.Unit}).");
                Assert.True(Math.Abs(percent - stated) <= 0.1, $"{id}: {figure.Key} differs by {percent:0.00} %, stated {stated} %.");
            }
            else
            {
                Assert.True(
                    Math.Abs(difference) <= figure.Rounding,
                    $"{id}: {figure.Key} is printed as {figure.Printed} {figure.Unit}, the salts give {computed:G6} ({percent:0.00} %).");
            }
        }

        Assert.Empty(recipe.BeyondRoundingPercent.Keys.Except(recipe.Figures.Select(f => f.Key)));
    }

    /// <summary>
    /// Solutions that crops were grown in stay clear of the harmful and, for what they hold, of the deficient bounds of the generic profile.
    /// Media for plant tissue and single stocks or lines of a sheet are no feeds.
    /// </summary>
    [Fact]
    public void PublishedFeedsLieInsideTheOuterBoundsOfTheGenericProfile()
    {
        string[] noFeeds = ["gamborg-b5", "murashige-skoog-1962", "hoagland-arnon-1938-molybdenum", "johnson-type-micronutrient-stock", "teaching-sheet-fe-eddha"];
        foreach (var recipe in PublishedRecipe.Ids.Except(noFeeds).Select(PublishedRecipe.Read))
        {
            foreach (var (key, fact) in recipe.Facts.Elements)
            {
                var range = ProfileLibrary.Generic.Find(key);
                var found = fact.Concentration.MilligramsPerLitre;
                Assert.False(found > range?.ToxicAbove, $"{recipe.Id}: {key} {found:G4} mg/L");
                Assert.False(found < range?.DeficientBelow, $"{recipe.Id}: {key} {found:G4} mg/L");
            }
        }
    }

    /// <summary>How many there are, those read on both sides counted apart from those recalled on one.</summary>
    [Fact]
    public void ReadAndRecalledRecipesAreCountedApart()
    {
        var all = PublishedRecipe.Ids.Select(PublishedRecipe.Read).ToList();

        Assert.Equal(3, all.Count(r => !r.Recalled));
        Assert.Equal(15, all.Count(r => r.Recalled));
    }

    // protocols.io wg6fbze, "Nutrient solution for rice hydroponics culture", 1000x stock A: g/L printed beside mol/L.
    [Theory]
    [InlineData("ammonium-sulfate", 0.6753, 89.23, 0.01)]
    [InlineData("monopotassium-phosphate", 0.3225, 43.89, 0.01)]
    [InlineData("potassium-hydroxide", 0.702, 39.39, 0.01)]
    [InlineData("citric-acid-h2o", 0.0708, 14.87, 0.01)]
    [InlineData("ferric-chloride-6h2o", 0.0356, 9.62, 0.01)]
    [InlineData("manganese-chloride-4h2o", 0.0094742, 1.88, 0.01)]
    [InlineData("ammonium-heptamolybdate-4h2o", 0.0000749, 0.0925, 0.0001)]
    [InlineData("zinc-sulfate-7h2o", 0.0001521, 0.0437, 0.0001)]
    [InlineData("boric-acid", 0.0189, 1.17, 0.01)]
    [InlineData("copper-sulfate-5h2o", 0.0001553, 0.0388, 0.0001)]
    public void MassesOfAPublishedStockFollowFromItsMolarities(string substance, double molesPerLitre, double gramsPerLitre, double lastDigit)
    {
        var facts = Support.Bench.RecipeOf("1 L", Support.Bench.Direct(substance, FormattableString.Invariant($"{molesPerLitre * 1000:0.#######} mmol/L")));

        Assert.Equal(gramsPerLitre, facts.Doses.Single().Direct!.Mass.Grams, lastDigit);
    }
}
