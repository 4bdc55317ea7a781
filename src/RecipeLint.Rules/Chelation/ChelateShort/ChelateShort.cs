using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Chelation;

/// <summary>A chelating agent that was put in for the iron and is too little of it, where the iron left over falls out.</summary>
internal sealed class ChelateShort : StockRule<ChelateShort.Share>, IProposesRepairs
{
    public const string RuleName = "chelate-short";

    /// <summary>Dose of a stock that states none (common practice, no source).</summary>
    private const double UsualDose = 0.01;

    /// <summary>A little over one for each iron (common practice, no source).</summary>
    private const double Ample = 1.05;

    public override string Name => RuleName;

    protected override IEnumerable<Share> Judge(StockFacts stock, RuleContext context)
    {
        var options = context.Options<ChelateShortOptions>();
        var iron = Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres;
        var agent = Iron.ChelatorMoles(stock.ComponentMoles) / stock.Volume.Litres;
        var bottle = stock.Chemistry.Aged ?? stock.Chemistry.Mixing;
        var nothing = new Share(stock, bottle, iron, agent, 0)
        {
            Checks =
            [Check.That("it holds iron and a chelating agent, and its equilibrium can be computed", false)]
        };
        if (iron <= 0 || agent <= 0 || !stock.IsComplete || !bottle.IsSolved || nothing.Source is null || Iron.Supplier(stock) is null)
        {
            return [nothing];
        }

        var ratio = Rounding.SixDigits(agent / iron);
        var meant = new Check("meant to hold it", ratio, Relation.AtLeast, Iron.IntendedShare);
        var little = new Check("too little", ratio, Relation.Under, options.LeastRatio);
        var share = nothing with { Ratio = ratio, Checks = [meant, little] };
        if (!meant.Holds || !little.Holds)
        {
            return [share];
        }

        var (settled, (ph, loose)) = (Iron.RustShare(bottle, iron), Feed(stock, context));
        var miss =
            new Check("enough to miss", Rounding.SixDigits(100 * Math.Max(settled, loose)), Relation.AtLeast, options.LeastLost, "%");
        return [share with { Lost = new Loss(settled, ph, loose), Checks = [meant, little, miss] }];
    }

    protected override Finding Describe(Share verdict, RuleContext context)
    {
        var (stock, bottle, iron, agent, ratio) =
            (verdict.Stock, verdict.Bottle, verdict.IronPerLitre, verdict.AgentPerLitre, verdict.Ratio);
        var (settled, feedPh, loose) = verdict.Lost!;
        var options = context.Options<ChelateShortOptions>();
        var limit = options.LeastLost / 100;
        var (component, name) = IronHolders.Chelators.MaxBy(c => stock.ComponentMoles.GetValueOrDefault(c.Component));
        var (source, supplier) = (verdict.Source!, Iron.Supplier(stock)!);
        var missing = ((options.UsualRatio * iron) - agent) * stock.Volume.Litres;
        var inBottle = settled >= limit
            ? $"{Say.Grams(Iron.RustGramsPerLitre(bottle))}/L of {Iron.RustCalled(bottle)} settles in the bottle"
            : "the bottle may stay clear";
        var message =
            $"'{stock.Stock.Name}' holds {Say.Number(agent * 1000)} mmol/L {name} for {Say.Number(iron * 1000)} mmol/L iron, "
                + $"{Say.Number(ratio)} for each iron. "
            + $"What is left over has no holder once the air has turned it to iron(III): {inBottle}, and in a feed at pH "
                + $"{Say.Ph(Math.Round(feedPh, 2))} {Say.Percent(loose)} of the iron is not held and falls out. "
            + context.AdviceFor(stock).Sentence(
                new Way(
                    $"bring the agent to {options.UsualRatio} for each iron: {Missing(context, component, name, missing)} for "
                        + $"{Say.Litres(stock.Volume.Litres)}",
                    Puts.Chelate),
                new Way("use less iron"));
        return context.Find(source.Place, message, Iron.HarmOf(Math.Max(settled, loose)), Odds.Certain) with
        {
            Related = supplier.Id == source.Id ? [] : [new RelatedPlace(supplier.Place, "brings the iron")],
            Measured = new Measured("agent per iron", ratio, options.LeastRatio, ""),
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

    protected override Working Work(Share verdict, RuleContext context)
    {
        var stock = verdict.Stock;
        var work = new WorkingBuilder($"chelating agent for the iron of '{stock.Stock.Name}'");
        if (verdict.Ratio <= 0)
        {
            return work.Statements(verdict).Done();
        }

        var options = context.Options<ChelateShortOptions>();
        var held = IronHolders.Chelators.Where(c => stock.ComponentMoles.GetValueOrDefault(c.Component) > 0)
            .Select(c => work.Given(c.Name, 1000 * stock.Concentration(c.Component).MolesPerLitre, "mmol/L", "amounts in the file"))
                .ToList();
        var agents = held.Count == 1 ? held[0] : work.Result("agents together", "sum", Term.Sum(held), "mmol/L");
        var metal = work.Given("iron", 1000 * verdict.IronPerLitre, "mmol/L", "amounts in the file");
        var ratio = work.Result("agent for each iron", "agent / iron", agents / metal);
        work.Check(verdict.Checks[0], ratio, Iron.IntendedShare);
        work.Check(verdict.Checks[1], ratio, work.Option("least", options.LeastRatio));
        if (verdict.Lost is not var (bottle, ph, loose))
        {
            return work.Done(ratio);
        }

        var settled = work.Given("iron that lies as rust in the bottle once the air has oxidised it", 100 * bottle, "%", "engine");
        var free = work.Given($"iron that nothing holds in the feed at pH {Say.Ph(Math.Round(ph, 2))}", 100 * loose, "%", "engine");
        var worst = work.Result("the worse of the two", "the larger", Term.Larger(settled, free), "%");
        return work.Check(verdict.Checks[2], worst, work.Option("limit", options.LeastLost)).Done(ratio);
    }

    /// <summary>More of the agent, or less iron.</summary>
    protected override IEnumerable<RepairProposal> Repair(Share verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (context.AdditionAt(stock, finding.Place) is { } agent)
        {
            yield return Additions.More(context, agent);
        }

        if (context.Workspace.Catalogue.ById(
            "disodium-edta-2h2o")?.Dissolves.FirstOrDefault(y => y.Component == Component.Edta) is { MolesPerGram: > 0 } edta)
        {
            var missing = ((Ample * verdict.IronPerLitre) - verdict.AgentPerLitre) * stock.Volume.Litres;
            if (Additions.New(
                context,
                stock,
                "disodium-edta-2h2o",
                missing / edta.MolesPerGram,
                Steps.AfterFirstWater(stock),
                "to the first water, before the iron") is { } more)
            {
                yield return more;
            }
        }

        if (Iron.Supplier(verdict.Stock) is { } iron
            && iron.Id != verdict.Source?.Id
            && context.AdditionAt(stock, iron.Place) is { } supplier)
        {
            foreach (var other in Additions.OtherIron(context, supplier))
            {
                yield return other;
            }

            yield return Additions.Less(context, supplier);
        }
    }

    /// <summary>
    /// pH and share of iron that nothing holds, in the worst recipe with this stock; without one, in the stock diluted alone.
    /// </summary>
    private static (double Ph, double Loose) Feed(StockFacts stock, RuleContext context)
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

        var ph = context.Options<ChelateShortOptions>().FeedPh;
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
        var perGram = id is null
            ? 0
            : context.Facts.Workspace.Catalogue.ById(id)?.Dissolves.FirstOrDefault(y => y.Component == component)?.MolesPerGram ?? 0;
        return perGram > 0
            ? $"{Say.Grams(moles / perGram)} more {context.Facts.Workspace.Catalogue.ById(id!)!.Name}"
            : $"{Say.Number(moles * 1000)} mmol more {name}";
    }

    /// <summary>The agents of one stock against its iron.</summary>
    /// <param name="Bottle">As it is kept.</param>
    /// <param name="IronPerLitre">mol/L.</param>
    /// <param name="AgentPerLitre">mol/L.</param>
    /// <param name="Ratio">Agent for each iron, to six digits; 0 where nothing is judged.</param>
    internal sealed record Share(StockFacts Stock, SolutionState Bottle, double IronPerLitre, double AgentPerLitre, double Ratio) : Verdict
    {
        /// <summary>Null where the ratio alone keeps the rule silent.</summary>
        internal Loss? Lost { get; init; }

        /// <summary>Where most of the agent comes in; null where nothing in the steps brings it.</summary>
        internal AdditionFacts? Source =>
            Stock.SuppliersOf(IronHolders.Chelators.MaxBy(c => Stock.ComponentMoles.GetValueOrDefault(c.Component)).Component)
                .FirstOrDefault();
    }

    /// <summary>Shares of the iron, 0 to 1.</summary>
    /// <param name="Settled">That lies as rust in the bottle.</param>
    /// <param name="FeedPh">pH of the feed.</param>
    /// <param name="Loose">That nothing holds in the feed.</param>
    internal sealed record Loss(double Settled, double FeedPh, double Loose);
}
