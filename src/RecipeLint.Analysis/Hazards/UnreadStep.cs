using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Analysis.Hazards;

/// <summary>A step of a stock that could not be read whole, as far as what it says tells what goes in.</summary>
/// <param name="Index">Number of the step.</param>
/// <param name="Written">What is to go in, as the file says.</param>
/// <param name="Items">What the name can mean, at its strongest; empty where nobody can tell.</param>
/// <param name="IsNameless">True when it counts as contents nobody can name.</param>
internal sealed record UnreadStep(int Index, string Written, IReadOnlyList<Held> Items, bool IsNameless)
{
    /// <summary>Every step that could not be read whole, in the order of the file.</summary>
    public static IReadOnlyList<UnreadStep> Of(StockFacts stock) => stock.Derived.Of(stock, Read);

    private static IReadOnlyList<UnreadStep> Read(StockFacts stock)
    {
        var aliquots = stock.Aliquots.Select(a => a.Place).ToHashSet();
        var unread = new List<UnreadStep>();
        foreach (var (index, step) in stock.Stock.Steps.Index())
        {
            var lost = step switch
            {
                AddStep add when add.Substance is null || add.Amount is null => Added(index, add),
                AliquotStep aliquot when !aliquots.Contains(aliquot.Place) => new UnreadStep(index, aliquot.What.Value, [], true),
                AdjustStep { Reagent: null } => new UnreadStep(index, "the reagent of its pH", [], true),
                _ => null,
            };
            if (lost is not null)
            {
                unread.Add(lost);
            }
        }

        return unread;
    }

    /// <summary>
    /// A name of several hydrates or strengths is the strongest of them; an amount that could not be read counts with a gram: that it is
    /// there decides. What reacts and is of unknown strength or amount counts as contents nobody can name as well.
    /// </summary>
    private static UnreadStep Added(int index, AddStep add)
    {
        var meant = add.Substance ?? (SubstanceCatalogue.BuiltIn.Find(add.What.Value) is SubstanceLookup.Ambiguous several
            ? several.Candidates.MaxBy(c => c.Strength.Value)
            : null);
        if (meant is null)
        {
            return new UnreadStep(index, add.What.Value, [], true);
        }

        var held = Held.Of(meant, add.Amount is { } amount ? PortionMass.Of(amount.Value, meant, new(1))?.Mass.Grams ?? 1 : 1, add.Place);
        return new UnreadStep(index, add.What.Value, [held], held.IsNameless || held.Roles.Overlaps(HazardGate.Reactive));
    }
}
