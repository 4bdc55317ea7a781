using RecipeLint.Advice.Splitting;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Reports.Hazards;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Precipitation;

namespace RecipeLint.Reports.Splitting;

/// <summary>What stands against a part, in words.</summary>
internal static class ObstacleWords
{
    private const int MostNamed = 3;

    public static string Called(Solid solid) => SolidWords.Called(solid);

    /// <summary>The first few obstacles, with who brings the ions of the first.</summary>
    public static string All(RejectedPart rejected)
    {
        var named = rejected.Obstacles.Take(MostNamed).Select(Of).ToList();
        var more = rejected.Obstacles.Count - named.Count;
        return string.Join("; ", named) + (more > 0 ? $"; {more} more" : "");
    }

    public static string First(RejectedPart rejected) => Of(rejected.Obstacles[0]);

    /// <summary>A name as it stands in a list: the trade grade after a comma is left out; a comma inside brackets begins none.</summary>
    public static string Short(string substance)
    {
        var open = 0;
        for (var i = 0; i < substance.Length; i++)
        {
            open += substance[i] switch { '(' => 1, ')' => -1, _ => 0 };
            if (open <= 0 && substance.AsSpan(i).StartsWith(", ", StringComparison.Ordinal))
            {
                return substance[..i];
            }
        }

        return substance;
    }

    /// <summary>"12.3 g/L of gypsum (calcium sulfate) falls out at 25 °C (calcium from X, sulfate from Y)".</summary>
    public static string Of(Obstacle obstacle) => obstacle switch
    {
        Obstacle.Danger d => HazardWords.Short(d.Hazard),
        Obstacle.Deposit d =>
            $"{Say.Grams(d.Mass.GramsPerLitre)}/L of {Called(d.Solid)} falls out at {Celsius(d.At)}{From(d.Suppliers, d.Ions)}",
        Obstacle.TooClose c => $"{Called(c.Solid)} comes too near to crystallising at {Celsius(c.At)}{From(c.Suppliers, c.Ions)}",
        Obstacle.Unpreserved { Strength: > 0 } u =>
            $"at pH {Say.PhShown(u.Ph)} only {Say.Percent(u.Strength)} of the preservative that works is undissociated acid, beside "
                + $"{Say.Number(u.Food.GramsPerLitre)} g/L of {u.FoodCalled}",
        Obstacle.Unpreserved u => $"{Say.Number(u.Food.GramsPerLitre)} g/L of {u.FoodCalled} stands without the preservative",
        Obstacle.TooLittleToWeigh w => $"{Say.Grams(w.Mass.Grams)} of {Short(w.Substance)} is too little for '{w.Scale.Name}'",
        Obstacle.Wrong w => $"'recipelint check' calls it wrong, {w.Finding.Rule.Id}: {w.Finding.Message.TrimEnd('.')}",
        Obstacle.OnlyUntold o => $"nobody states what {Short(o.Substance)} is made of, so nothing of a bottle of it can be computed. Do "
            + "not make a stock of it: dose it from the bottle it came in, last, into the finished, thinned solution, as its label says",
        Obstacle.NotComputed n => n.Reason.TrimEnd('.'),
        _ => "",
    };

    private static string From(IReadOnlyList<string> suppliers, IReadOnlyList<string> ions) => suppliers.Distinct(StringComparer.Ordinal)
        .Count() switch
    {
        0 => "",
        1 => $" ({Say.List(ions.Select(SolidWords.Ion).Distinct(StringComparer.Ordinal))} from {Short(suppliers[0])})",
        _ => $" ({Short(suppliers[0])} meets {Short(suppliers[1])})",
    };

    private static string Celsius(Temperature at) => $"{Say.Number(at.Celsius)} °C";
}
