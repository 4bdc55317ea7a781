using RecipeLint.Recipes;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using Component = RecipeLint.Chemistry.Equilibrium.Component;

namespace RecipeLint.Advice.Slips;

/// <summary>The tap water that may have been taken instead of pure water.</summary>
/// <param name="Reference">How a step names it.</param>
/// <param name="Name">What to call it.</param>
/// <param name="Assumed">True when no water of the workspace is harder than pure.</param>
internal sealed record TapWater(WaterReference Reference, string Name, bool Assumed)
{
    private const string AssumedName = "medium hard tap water";

    /// <summary>mol/L of an ordinary tap water of about 14 °dH and pH near neutral (common practice, no source).</summary>
    private static readonly (string Component, double MolesPerLitre)[] Ordinary =
        [(Component.Calcium, 0.002), (Component.Magnesium, 0.0005), (Component.Sodium, 0.001),
            (Component.Carbonate, 0.004), (Component.Sulfate, 0.0005), (Component.Chloride, 0.001)];

    /// <summary>The hardest analysed water of the workspace, else an assumed one, with the workspace that holds it.</summary>
    public static (TapWater Water, Workspace Workspace) Of(Workspace workspace)
    {
        var hardest = workspace.Waters
            .Where(w => w.File.Length > 0 && w.Values.Count > 0)
            .OrderByDescending(w => w.Values.Where(v => v.Component == Component.Carbonate).Sum(v => v.Concentration.High.MolesPerLitre))
            .ThenBy(w => w.File, StringComparer.Ordinal)
            .FirstOrDefault(w => w.Values.Any(v => v.Component == Component.Carbonate && v.Concentration.High.MolesPerLitre >= 0.001));
        if (hardest is not null)
        {
            return (new TapWater(new WaterReference(hardest.Name, hardest.File), hardest.Name, false), workspace);
        }

        var place = Place.Whole("");
        var water = new WaterDocument
        {
            File = "",
            Name = AssumedName,
            Values = [.. Ordinary.Select(o => new WaterValue(
                o.Component, new Located<string>(o.Component, place), new(new(o.MolesPerLitre), new(o.MolesPerLitre))))],
        };
        return (new TapWater(
            new WaterReference(AssumedName, null), AssumedName, true), workspace with { Waters = [.. workspace.Waters, water] });
    }
}
