using RecipeLint.Analysis;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Advice.Order;

/// <summary>One addition that can be moved: a substance, an aliquot or a pH adjustment.</summary>
/// <param name="Index">Its place among the additions of the file, from 0.</param>
/// <param name="Stage">
/// Additions keep their stage: how much a pH adjustment takes depends on what is in by then, so nothing is moved past one.
/// </param>
public sealed record OrderUnit(int Index, Step Step, IReadOnlyList<AdditionFacts> Additions, string Name, int Stage)
{
    private static readonly string[] Metals =
    [
        Component.FerricIron, Component.FerrousIron, Component.Copper, Component.Zinc, Component.Manganese,
    ];

    private static readonly string[] Agents =
    [
        Component.Edta, Component.Dtpa, Component.Hedta, Component.Eddha, Component.Idha, Component.Citrate, Component.Gluconate,
    ];

    /// <summary>A salt of a metal that a chelate or acid holds.</summary>
    public bool BringsMetal => !BringsAgent && Additions.Any(a => Metals.Any(m => a.ComponentMoles.GetValueOrDefault(m) > 0)
        && !Agents.Any(g => a.ComponentMoles.GetValueOrDefault(g) > 0));

    /// <summary>A chelating agent without a metal of its own.</summary>
    public bool BringsAgent => Additions.Any(a =>
        Agents.Any(g => a.ComponentMoles.GetValueOrDefault(g) > 0) && !Metals.Any(m => a.ComponentMoles.GetValueOrDefault(m) > 0));

    public bool BringsCalcium => Additions.Any(a => a.ComponentMoles.GetValueOrDefault(Component.Calcium) > 0);

    /// <summary>Phosphate, sulfate and whatever else makes a solid with calcium: it must not be poured onto that.</summary>
    public bool BringsCalciumsPartner =>
        Additions.Any(a => Components.PartnersOf(Component.Calcium).Any(p => a.ComponentMoles.GetValueOrDefault(p) > 0));

    public bool IsAcid => Additions.Any(a => a.Substance.Kind == SubstanceKind.Acid);

    /// <summary>A weighed solid.</summary>
    public AdditionFacts? Salt =>
        Additions.Count == 1 && Additions[0] is { ThroughAliquot: false, Substance.Form: PhysicalForm.Solid } salt ? salt : null;

    /// <summary>Everything of a stock that can be moved, in the order of the file.</summary>
    public static IReadOnlyList<OrderUnit> Of(StockFacts stock)
    {
        var units = new List<OrderUnit>();
        var stage = 0;
        foreach (var step in stock.Stock.Steps)
        {
            var additions = stock.Additions.Where(a => a.Place == step.Place).ToList();
            switch (step)
            {
                case AddStep { Substance: { } substance } when additions.Count > 0:
                    units.Add(new OrderUnit(units.Count, step, additions, substance.Name, stage));
                    break;
                case AliquotStep aliquot when additions.Count > 0:
                    units.Add(new OrderUnit(units.Count, step, additions, aliquot.What.Value, stage));
                    break;
                case AdjustStep { Reagent: { } reagent } when stock.Adjustments.Any(a => a.Place == step.Place && a.Amount is not null):
                    units.Add(new OrderUnit(units.Count, step, [], reagent.Name, stage + 1));
                    stage += 2;
                    break;
                default:
                    break;
            }
        }

        return units;
    }
}
