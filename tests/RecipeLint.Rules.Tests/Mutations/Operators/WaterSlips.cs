using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Tests.Mutations.Operators;

/// <summary>The analysis of the source water, copied wrongly.</summary>
internal static class WaterSlips
{
    internal static IEnumerable<Mutant> Of(CleanShop shop)
    {
        foreach (var water in shop.Workspace.Waters)
        {
            var root = shop.Root(water.File);
            foreach (var ion in root["ions"]!.Members)
            {
                string[] words = [ion.Name, ElementOf(ion.Name), water.Name];
                foreach (var (slip, text) in new[]
                {
                    ("water value ten times", Slips.Times(ion.Value.Text, 10)), ("water value a tenth", Slips.Times(ion.Value.Text, 0.1)),
                    ("water value in meq", ion.Value.Text.Replace("mg/L", "meq/L", StringComparison.Ordinal)), ("water value in g", ion.Value.Text.Replace("mg/L", "g/L", StringComparison.Ordinal)),
                })
                {
                    var mutant = Slips.Value(shop, slip, water.File, ion.Value, Slips.Quoted(text), ion.Name, words);

                    // Which figure of an analysis is wrong, nobody can tell: the list of them is the place.
                    yield return mutant with { Places = [.. mutant.Places, Place.Whole(water.File).Child("ions")] };
                }
            }

            yield return Slips.Value(shop, "water EC in another unit", water.File, root["EC"]!, Slips.Quoted(root["EC"]!.Text.Replace("mS/cm", "S/m", StringComparison.Ordinal)), "EC", ["EC", "conductivity", water.Name]);
        }
    }

    /// <summary>What a target or a range calls it.</summary>
    private static string ElementOf(string ion) => ion switch
    {
        "SO4" => "S",
        "NO3" => "N",
        "HCO3" => "alkalinity",
        _ => ion,
    };
}
