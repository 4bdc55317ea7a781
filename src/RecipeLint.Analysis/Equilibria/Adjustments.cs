using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>pH adjustments as facts.</summary>
internal static class Adjustments
{
    /// <summary>What an adjustment takes at bench temperature; where that cannot be known, why.</summary>
    /// <param name="reagent">Null when none is named or its name does not resolve.</param>
    /// <param name="moles">What is in the vessel.</param>
    /// <param name="water">Water in the vessel.</param>
    public static PhAdjustmentFacts Of(
        string id,
        Place place,
        double? targetPh,
        Substance? reagent,
        ComponentMoles moles,
        Mass water,
        bool openToAir,
        AssumptionList assumptions)
    {
        if (reagent is null || targetPh is not { } target)
        {
            return new PhAdjustmentFacts(id, place, targetPh, reagent, null, reagent is null ? "no reagent is named" : "no pH is stated");
        }

        var demand = PhDemand.Find(moles, water, reagent, target, new Temperature(SolutionMix.FilledAtCelsius), openToAir);
        if (demand.Reason is { } reason)
        {
            assumptions.Add(
                "ph-adjustment", $"How much '{reagent.Id}' the pH takes is not known: what it brings is left out. {reason}", place);
        }
        else
        {
            assumptions.AddUndeclaredAssay(reagent);
        }

        return new PhAdjustmentFacts(id, place, target, reagent, demand.Mass, demand.Reason)
        {
            Volume = demand.Volume,
            PhBefore = demand.PhBefore,
            Elements = demand.Elements,
            ComponentMoles = demand.ComponentMoles,
        };
    }
}
