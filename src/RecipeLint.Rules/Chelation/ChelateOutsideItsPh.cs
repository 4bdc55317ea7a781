using System.Collections.Immutable;
using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Chelation;

/// <summary>An iron chelate in a stock or feed whose pH it does not stand.</summary>
public sealed class ChelateOutsideItsPh : WorkspaceRule, IProposesRepairs
{
    /// <summary>Share of the iron below which an agent is not looked at.</summary>
    private const double NotableShare = 0.1;

    public override string Name => "chelate-outside-its-ph";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context) =>
        facts.Stocks.Select(s => Stock(s, context.For(s.Stock.File)))
            .Concat(facts.Recipes.Select(r => Recipe(r, context.For(r.Recipe.File))))
            .OfType<Finding>();

    private static Finding? Stock(StockFacts stock, RuleContext context)
    {
        var state = stock.Chemistry.Aged ?? stock.Chemistry.Mixing;
        if (!stock.IsComplete || !state.IsSolved || Iron.Supplier(stock) is not { } supplier)
        {
            return null;
        }

        var iron = Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres;
        var held = Iron.HeldShare(state, iron);
        var ph = Rounding.SixDigits(stock.Chemistry.Mixing.Ph);
        foreach (var window in Windows(stock.ComponentMoles))
        {
            if (window.Agent == "citrate")
            {
                continue;
            }

            if (ph > window.Highest)
            {
                return Finding(
                    context,
                    supplier.Place,
                    $"'{stock.Stock.Name}' comes to pH {Say.Number(Math.Round(ph, 2))}, and Fe-{window.Agent} holds to about pH {Say.Number(window.Highest)}. "
                    + "Hydroxide then takes the iron from the chelating agent, and the bottle rusts from within while it is kept. "
                    + $"Keep the chelate in a part between pH 4 and {Say.Number(window.HighFrom)}, away from the alkali, or bring this stock there with an acid.",
                    ("pH", ph, window.Highest),
                    held);
            }

            // The acids of EDTA and DTPA fall out as solids of their own, which the rules on deposits speak of.
            var low = window.AcidSettles ? window.LowFrom : window.Lowest;
            if (ph < low && (window.AcidSettles || held < context.Number("leastHeld") / 100))
            {
                return Finding(
                    context,
                    supplier.Place,
                    $"'{stock.Stock.Name}' comes to pH {Say.Number(Math.Round(ph, 2))}, and Fe-{window.Agent} needs at least pH {Say.Number(low)} in a stock: {Say.Percent(held)} of the iron is still held. "
                    + $"The acid sets {window.Agent} free, and as a free acid it is hardly soluble: a brown sticky floc settles and the liquid loses its colour. "
                    + "Put the chelate into the calcium part, or leave the acid out of this one.",
                    ("pH", ph, low),
                    held,
                    ph < window.Lowest ? null : Level.Note);
            }
        }

        return null;
    }

    private static Finding? Recipe(RecipeFacts recipe, RuleContext context)
    {
        var state = Iron.Feed(recipe);
        if (!recipe.IsComplete || !state.IsSolved || Iron.Supplier(recipe) is not { } dose)
        {
            return null;
        }

        var iron = Iron.Moles(recipe.ComponentMoles) / recipe.FinalVolume.Litres;
        var held = Rounding.SixDigits(Iron.HeldShare(state, iron));
        var ph = Rounding.SixDigits(state.Ph);
        var lost = held < context.Number("leastHeld") / 100;
        var window = Windows(recipe.ComponentMoles).Where(w => ph > (lost ? w.HighFrom : w.Highest)).MinBy(w => w.Highest);
        if (window is null || (lost && Robbery.Of(recipe, state, held, context.Number("leastHeld") / 100) is not null))
        {
            return null;
        }

        var better = ChelateWindow.HoldingAt(ph).FirstOrDefault(w => w.Highest > window.Highest);
        var other = better is null ? "" : $", or use Fe-{better.Agent}, which holds to pH {Say.Number(better.HighFrom)}";
        var limit = lost ? window.HighFrom : window.Highest;
        var message = (lost
                ? $"The solution comes to pH {Say.Number(Math.Round(ph, 2))} and its iron is Fe-{window.Agent}, good to pH {Limits(window)}: only {Say.Percent(held)} of {Say.Number(iron * Iron.GramsPerMole * 1000)} mg/L iron is still held. "
                : $"The solution comes to pH {Say.Number(Math.Round(ph, 2))} and its iron is Fe-{window.Agent}, by its makers good to pH {Limits(window)}; by the constants {Say.Percent(held)} of it is still held. ")
            + "Above that hydroxide takes the iron and calcium the chelating agent; new leaves turn yellow although enough iron went in. "
            + $"Bring the solution to pH 5.5 to 6{other}.";
        return Finding(context, recipe.Adjustment?.Place ?? dose.Entry.Place, message, ("pH", ph, limit), held, lost ? null : Level.Note);
    }

    private static string Limits(ChelateWindow window) =>
        window.HighFrom == window.Highest ? Say.Number(window.Highest) : $"{Say.Number(window.HighFrom)} to {Say.Number(window.Highest)}";

    /// <summary>Windows of the agents that hold a notable part of the iron, the widest last.</summary>
    internal static IEnumerable<ChelateWindow> Windows(ImmutableSortedDictionary<string, double> moles) =>
        Iron.Holders(moles).Where(h => h.Share >= NotableShare).Select(h => ChelateWindow.Of(h.Name)).OrderBy(w => w.Highest);

    private static Finding Finding(
        RuleContext context, Place place, string message, (string Name, double Value, double Limit) measured, double held, Level? level = null) =>
        context.Find(place, message, level) with
        {
            Measured = new Measured(measured.Name, measured.Value, measured.Limit, ""),
            Values = [new NamedValue(measured.Name, measured.Value, ""), new NamedValue("iron still held", held * 100, "%")],
        };

    /// <summary>Another pH, or a chelate that stands this one.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.RecipeOf(finding) is { } recipe)
        {
            foreach (var acid in new[] { recipe.Adjustment?.Reagent?.Id, "nitric-38", "phosphoric-59" }.OfType<string>().Distinct(StringComparer.Ordinal))
            {
                yield return Waters.Adjust(context, recipe, 5.8, acid);
            }

            foreach (var other in Iron.Additions(recipe).SelectMany(a => Additions.OtherIron(context, a)))
            {
                yield return other;
            }
        }

        if (context.StockOf(finding) is { } bottle && context.AdditionAt(bottle, finding.Place) is { } supplier)
        {
            foreach (var move in OtherPart.Moves(context, bottle, supplier))
            {
                yield return move;
            }

            var acidic = bottle.Chemistry.Mixing is { IsSolved: true, Ph: < 7 };
            foreach (var addition in bottle.Additions.Where(a => !a.ThroughAliquot && a.Substance.Kind == (acidic ? SubstanceKind.Acid : SubstanceKind.Base)))
            {
                yield return Additions.Less(context, addition);
            }

            foreach (var acid in acidic ? [] : Additions.Acid(context, bottle, 4.5))
            {
                yield return acid;
            }

            foreach (var other in Additions.OtherIron(context, supplier))
            {
                yield return other;
            }
        }
    }
}
