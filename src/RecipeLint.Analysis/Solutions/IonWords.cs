using ModelComponents = RecipeLint.Chemistry.Equilibrium.Components;

namespace RecipeLint.Analysis.Solutions;

/// <summary>Ions as a grower calls them.</summary>
public static class IonWords
{
    public static string Of(string component) => ModelComponents.Word(component);
}
