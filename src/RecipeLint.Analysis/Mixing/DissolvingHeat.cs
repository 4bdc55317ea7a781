using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Mixing;

/// <summary>What dissolving salts does to the temperature of the water, where their heats of solution are known.</summary>
public static class DissolvingHeat
{
    private static readonly Lazy<Dictionary<string, HeatOfSolution>> Heats = new(() =>
        HeatOfSolution.All.GroupBy(h => FormulaParser.Parse(h.Formula).Hill).ToDictionary(g => g.Key, g => g.First()));

    /// <summary>The heat of a weighed solid; null for a liquid, an aliquot and a salt without a known heat.</summary>
    public static HeatOfSolution? Of(AdditionFacts addition) =>
        addition is { ThroughAliquot: false, Substance: { Form: PhysicalForm.Solid, Formula: { } formula } }
            ? Heats.Value.GetValueOrDefault(formula.Hill)
            : null;

    /// <summary>
    /// Temperature change when the additions with a known heat dissolve without exchange with the room; null when none has one.
    /// </summary>
    /// <param name="waterGrams">Poured water in the vessel.</param>
    /// <param name="startCelsius">Before they go in.</param>
    public static BatchTemperature? Change(IEnumerable<AdditionFacts> additions, double waterGrams, double startCelsius)
    {
        var known = additions
            .Select(a => (Addition: a, Heat: Of(a)))
            .Where(a => a.Heat is not null)
            .Select(a => new DissolvedMass(a.Heat!.Formula, VesselContents.PureGrams(a.Addition)))
            .ToList();
        return known.Count == 0 ? null : BatchTemperature.AfterDissolving(known, waterGrams, startCelsius);
    }
}
