using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Tests.Support;

internal static class Waters
{
    /// <summary>A made-up tap water: 2 mmol/L Ca and 4 mmol/L hydrogen carbonate, which balance.</summary>
    public static WaterDocument Tap(double calciumHigh = 0.002)
    {
        var place = Place.Whole("tap.water.json");
        return new WaterDocument
        {
            File = "tap.water.json",
            Name = "tap",
            Values =
            [
                new WaterValue("Ca+2", new Located<string>("Ca", place.Child("ions").Child("Ca")), new(new(0.002), new(calciumHigh))),
                new WaterValue("CO3-2", new Located<string>("HCO3", place.Child("ions").Child("HCO3")), new(new(0.004), new(0.004))),
            ],
        };
    }
}
