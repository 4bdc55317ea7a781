using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Chelation;

/// <summary>A chelating agent that was put in for the iron and is too little of it, where the iron left over falls out.</summary>
public sealed class ChelateShort : StockRule, IProposesRepairs
{
    /// <summary>Dose of a stock that states none (common practice, no source).</summary>
    private const double UsualDose = 0.01;

    public override string Name => "chelate-short";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var iron = Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres;
        var agent = Iron.ChelatorMoles(stock.ComponentMoles) / stock.Volume.Litres;
        var ratio = iron > 0 ? Rounding.SixDigits(agent / iron) : 0;
        if (!stock.IsComplete || iron <= 0 || ratio < Iron.IntendedShare || ratio >= context.Number("leastRatio"))
        {
            yield break;
        }

        var (component, name) = Iron.Chelators.MaxBy(c => stock.ComponentMoles.GetValueOrDefault(c.Component));
        var bottle = stock.Chemistry.Aged ?? stock.Chemistry.Mixing;
        if (!bottle.IsSolved || stock.SuppliersOf(component).FirstOrDefault() is not { } source || Iron.Supplier(stock) is not { } supplier)
        {
            yield break;
        }

        var settled = Iron.RustShare(bottle, iron);
        var (feedPh, loose) = Feed(stock, context);
        var limit = context.Number("leastLost") / 100;
        if (Rounding.SixDigits(Math.Max(settled, loose)) < limit)
        {
            yield break;
        }

        var missing = ((context.Number("usualRatio") * iron) - agent) * stock.Volume.Litres;
        var inBottle = settled >= limit
            ? $"{Say.Grams(Iron.RustGramsPerLitre(bottle))}/L of {Iron.RustCalled(bottle)} settles in the bottle"
            : "the bottle may stay clear";
        var message = $"'{stock.Stock.Name}' holds {Say.Number(agent * 1000)} mmol/L {name} for {Say.Number(iron * 1000)} mmol/L iron, {Say.Number(ratio)} for each iron. "
            + $"What is left over has no holder once the air has turned it to iron(III): {inBottle}, and in a feed at pH {Say.Number(Math.Round(feedPh, 2))} {Say.Percent(loose)} of the iron is not held and falls out. "
            + $"Bring the agent to {context.Word("usualRatio")} for each iron: {Missing(context, component, name, missing)} for {Say.Litres(stock.Volume.Litres)}, or use less iron.";
        yield return context.Find(source.Place, message) with
        {
            Related = supplier.Id == source.Id ? [] : [new RelatedPlace(supplier.Place, "brings the iron")],
            Measured = new Measured("agent per iron", ratio, context.Number("leastRatio"), ""),
            Values =
            [
                new NamedValue("agent", agent * 1000, "mmol/L"),
                new NamedValue("iron", iron * 1000, "mmol/L"),
                new NamedValue("agent per iron", ratio, ""),
                new NamedValue("iron that settles in the bottle", settled * 100, "%"),
                new NamedValue("iron not held in the feed", loose * 100, "%"),
            ],
        };
    }

    /// <summary>pH and share of iron that nothing holds, in the worst recipe with this stock; without one, in the stock diluted alone.</summary>
    internal static (double Ph, double Loose) Feed(StockFacts stock, RuleContext context)
    {
        var feeds = Iron.RecipesWith(context.Facts, stock)
            .Select(r => (State: Iron.Feed(r), Iron: Iron.Moles(r.ComponentMoles) / r.FinalVolume.Litres))
            .Where(f => f.State.IsSolved)
            .Select(f => (f.State.Ph, Loose: 1 - Iron.HeldShare(f.State, f.Iron)))
            .ToList();
        if (feeds.Count > 0)
        {
            return feeds.MaxBy(f => f.Loose);
        }

        var ph = context.Number("feedPh");
        var dose = stock.Stock.Dose?.Value.LitresPerLitre ?? UsualDose;
        var diluted = Settled.Of(stock.Chemistry.Mix.WithIronOxidised().Times(dose), SolutionMix.FilledAtCelsius, ph, openToAir: true);
        return (ph, diluted is null ? 0 : 1 - diluted.HeldIronShare());
    }

    private static string Missing(RuleContext context, string component, string name, double moles)
    {
        var id = name switch
        {
            "EDTA" => "disodium-edta-2h2o",
            "DTPA" => "dtpa-acid",
            _ => null,
        };
        var perGram = id is null ? 0 : context.Facts.Workspace.Catalogue.ById(id)?.Dissolves.FirstOrDefault(y => y.Component == component)?.MolesPerGram ?? 0;
        return perGram > 0
            ? $"{Say.Grams(moles / perGram)} more {context.Facts.Workspace.Catalogue.ById(id!)!.Name}"
            : $"{Say.Number(moles * 1000)} mmol more {name}";
    }

    /// <summary>More of the agent, or less iron.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (context.AdditionAt(stock, finding.Place) is { } agent)
        {
            yield return Additions.More(context, agent);
        }

        if (RepairContext.Value(finding, "agent") is { } held && RepairContext.Value(finding, "iron") is { } iron
            && context.Workspace.Catalogue.ById("disodium-edta-2h2o")?.Dissolves.FirstOrDefault(y => y.Component == "EDTA-4") is { MolesPerGram: > 0 } edta)
        {
            // A little over one for each iron (common practice, no source).
            var missing = ((1.05 * iron) - held) / 1000 * stock.Volume.Litres;
            if (Additions.New(context, stock, "disodium-edta-2h2o", missing / edta.MolesPerGram, Steps.AfterFirstWater(stock), "to the first water, before the iron") is { } more)
            {
                yield return more;
            }
        }

        if (finding.Related.Select(r => context.AdditionAt(stock, r.Place)).OfType<AdditionFacts>().FirstOrDefault() is { } supplier)
        {
            foreach (var other in Additions.OtherIron(context, supplier))
            {
                yield return other;
            }

            yield return Additions.Less(context, supplier);
        }
    }
}
