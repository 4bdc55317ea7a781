using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Recipes.Tests.Documents;

public sealed class NutrientsTests
{
    [Fact]
    public void EverySaltOfferedIsInTheCatalogueAndBringsTheElement()
    {
        foreach (var (word, symbol, bearers) in Nutrients.All)
        {
            Assert.False(SubstanceCatalogue.BuiltIn.Find(word) is not SubstanceLookup.Unknown, $"'{word}' is a substance of the catalogue.");
            Assert.NotEmpty(bearers);
            Assert.All(bearers, id => Assert.Contains(new Element(symbol), SubstanceCatalogue.BuiltIn.ById(id)!.Content.Elements));
        }
    }
}
