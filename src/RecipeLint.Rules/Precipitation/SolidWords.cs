using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Rules.Precipitation;

/// <summary>Solids and ions as the findings call them, for reports that speak of the same things.</summary>
public static class SolidWords
{
    /// <summary>"gypsum (calcium sulfate)"; the name of the constants where no finding speaks of it.</summary>
    public static string Called(Solid solid) => solid.Called;

    /// <summary>"calcium" for "Ca+2"; the component itself where it has no word.</summary>
    public static string Ion(string component) => IonWords.Of(component);
}
