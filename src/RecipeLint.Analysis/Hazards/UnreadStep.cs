using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Hazards;

/// <summary>
/// A step of a stock or a dose of a recipe that could not be read whole, as far as what it says tells what goes in.
/// </summary>
/// <param name="Index">Number of the step or dose.</param>
/// <param name="Written">What is to go in, as the file says.</param>
/// <param name="Items">What the name can mean, at its strongest; empty where nobody can tell.</param>
/// <param name="IsNameless">True when it counts as contents nobody can name.</param>
internal sealed record UnreadStep(int Index, string Written, IReadOnlyList<Held> Items, bool IsNameless)
{
    private const string ReagentOfPh = "the reagent of its pH";

    /// <summary>Every step that could not be read whole, in the order of the file.</summary>
    public static IReadOnlyList<UnreadStep> Of(StockFacts stock) => stock.Derived.Of(stock, Read);

    /// <summary>
    /// Every dose that could not be read whole, the reagent of the pH, and what could not be read of the stocks that are dosed.
    /// </summary>
    public static IReadOnlyList<UnreadStep> Of(RecipeFacts recipe) => recipe.Derived.Of(recipe, Read);

    private static IReadOnlyList<UnreadStep> Read(RecipeFacts recipe)
    {
        var read = recipe.Doses.DistinctBy(d => d.Id, StringComparer.Ordinal).ToDictionary(d => d.Id, StringComparer.Ordinal);
        var unread = new List<UnreadStep>();
        foreach (var (index, dose) in recipe.Recipe.Doses.Index())
        {
            if (read.TryGetValue(dose.Id, out var known))
            {
                unread.AddRange(known.Stock is { } stock ? Of(stock).Select(u => u.Dosed(index, known.Volume / stock.Volume)) : []);
            }
            else
            {
                unread.Add(dose switch
                {
                    DirectDose direct => Added(index, direct.What.Value, direct.Substance, direct.Amount, direct.Place, recipe.FinalVolume),
                    StockDose stock => new UnreadStep(index, stock.Stock.Value, [], true),
                    _ => new UnreadStep(index, dose.Id, [], true),
                });
            }
        }

        if (recipe.Recipe.Adjust is { Reagent: null })
        {
            unread.Add(new UnreadStep(recipe.Recipe.Doses.Count, ReagentOfPh, [], true));
        }

        return unread;
    }

    /// <summary>The part of it that comes into a tank with a dose of its stock.</summary>
    private UnreadStep Dosed(int index, double share) =>
        this with { Index = index, Items = [.. Items.Select(i => Held.Of(i.Substance, i.Grams * share, i.Place))] };

    private static IReadOnlyList<UnreadStep> Read(StockFacts stock)
    {
        var aliquots = stock.Aliquots.Select(a => a.Place).ToHashSet();
        var unread = new List<UnreadStep>();
        foreach (var (index, step) in stock.Stock.Steps.Index())
        {
            var lost = step switch
            {
                AddStep add when add.Substance is null || add.Amount is null =>
                    Added(index, add.What.Value, add.Substance, add.Amount, add.Place, new Volume(1)),
                AliquotStep aliquot when !aliquots.Contains(aliquot.Place) => new UnreadStep(index, aliquot.What.Value, [], true),
                AdjustStep { Reagent: null } => new UnreadStep(index, ReagentOfPh, [], true),
                _ => null,
            };
            if (lost is not null)
            {
                unread.Add(lost);
            }
        }

        return unread;
    }

    /// <summary>Of a name nobody knows a volume counts as water.</summary>
    private static double GramsOf(Portion portion, Substance named, Volume batch) =>
        PortionMass.Of(portion, named with { Form = PhysicalForm.Liquid }, batch)?.Mass.Grams ?? 1;

    /// <summary>
    /// A name of several hydrates or strengths is the strongest of them; an amount that could not be read counts with a gram: that it is
    /// there decides. What reacts and is of unknown strength or amount counts as contents nobody can name as well.
    /// </summary>
    private static UnreadStep Added(
        int index, string what, Substance? substance, Located<Portion>? amount, Place place, Volume batch)
    {
        var meant = substance ?? (SubstanceCatalogue.BuiltIn.Find(what) is SubstanceLookup.Ambiguous several
            ? several.Candidates.MaxBy(c => c.Strength.Value)
            : null);
        if (meant is null)
        {
            // A name that nobody catalogues can still say what it does to others.
            return new UnreadStep(
                index, what,
                HazardRoles.Named(what) is { } named
                    ? [Held.Of(named, amount is { } some ? GramsOf(some.Value, named, batch) : 1, place)]
                    : [],
                true);
        }

        var held = Held.Of(meant, amount is { } known ? PortionMass.Of(known.Value, meant, batch)?.Mass.Grams ?? 1 : 1, place);
        return new UnreadStep(index, what, [held], held.IsNameless || held.Roles.Overlaps(HazardGate.Reactive));
    }
}
