using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Analysis.Equilibria;

/// <summary>The final solution's chemistry, from the moment it is poured together to its adjusted pH.</summary>
public sealed class RecipeChemistry
{
    private RecipeChemistry(SolutionMix mix, SolutionMix? adjusted, IReadOnlyList<SolutionState> states, bool isComplete)
    {
        Mix = mix;
        AdjustedMix = adjusted;
        States = states;
        IsComplete = isComplete;
    }

    /// <summary>Before the pH is adjusted.</summary>
    public SolutionMix Mix { get; }

    /// <summary>With the reagent that adjusts the pH; null where none is asked for or its amount is not known.</summary>
    public SolutionMix? AdjustedMix { get; }

    /// <summary>Tank, tank in air, and after adjustment where one is made.</summary>
    public IReadOnlyList<SolutionState> States { get; }

    /// <summary>False when the recipe could not be read whole or holds something of unknown composition.</summary>
    public bool IsComplete { get; }

    /// <summary>As poured together, closed: what the carbonates of the water still hold.</summary>
    public SolutionState Tank => State(StateMoment.Tank)!;

    /// <summary>
    /// At rest with the air, as a stirred or circulating tank comes to be within a day or so (common practice, no source).
    /// </summary>
    public SolutionState TankInAir => State(StateMoment.TankInAir)!;

    /// <summary>Null where no adjustment is made.</summary>
    public SolutionState? TankAdjusted => State(StateMoment.TankAdjusted);

    /// <summary>What the plants get: the adjusted solution, else the one at rest with the air.</summary>
    public SolutionState Final => TankAdjusted ?? TankInAir;

    public SolutionState? State(StateMoment moment) => States.FirstOrDefault(s => s.Moment == moment);

    /// <summary>Computes the chemistry of a final solution. Pure; never throws on what a recipe can hold.</summary>
    public static RecipeChemistry Of(RecipeFacts recipe)
    {
        var reagent = recipe.Adjustment is { Amount: not null } adjustment ? adjustment.ComponentMoles : null;
        var whole = SolutionMix.Of(recipe.ComponentMoles, recipe.FinalVolume);
        var before = (reagent is null ? whole : SolutionMix.Of(Poured(recipe), recipe.FinalVolume)) with
        {
            UnreadPerLitre = PhDoubt.Unread(GuessedPh.Parts(recipe), recipe.FinalVolume),
        };
        var doubts = Gaps.Of(
            recipe.IsComplete,
            recipe.Doses.SelectMany(d => d.Stock is { } stock
                ? stock.Additions.Select(a => a.Substance)
                : d.Direct is { } direct ? [direct.Substance] : []));
        var bench = new Temperature(SolutionMix.FilledAtCelsius);
        var tank = StateSolver.Solve(before, new StateRequest(StateMoment.Tank, bench, false, doubts));
        var inAir = StateSolver.Solve(before, new StateRequest(StateMoment.TankInAir, bench, true, doubts) { StartFrom = tank.Clear });
        var states = new List<SolutionState> { tank, inAir };
        if (reagent is not null)
        {
            states.Add(StateSolver.Solve(whole, new StateRequest(StateMoment.TankAdjusted, bench, true, doubts)));
        }

        return new RecipeChemistry(before, reagent is null ? null : whole, states, doubts.Count == 0);
    }

    private static ComponentMoles Poured(RecipeFacts recipe) =>
        Solutions.ComponentMoles.Sum([.. recipe.Doses.Select(d => d.ComponentMoles), .. recipe.Water is { } water
            ? [water.ComponentMoles]
            : Array.Empty<ComponentMoles>()]);
}
