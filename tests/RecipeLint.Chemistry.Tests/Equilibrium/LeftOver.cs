using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>How what is left over a deposit stands to each solid: by its activity product, soluble salts by both measures.</summary>
internal static class LeftOver
{
    public static IReadOnlyDictionary<string, double> Indices(SolutionInput input, PrecipitationResult result)
    {
        var salts = SaltVerdicts.Of(input with { Totals = result.Remaining }, result.Final, input.Totals).ToDictionary(v => v.Solid.Name, v => v.Index);
        return result.Final.Solids.ToDictionary(s => s.Solid.Name, s => salts.TryGetValue(s.Solid.Name, out var index) ? index : s.Index);
    }
}
