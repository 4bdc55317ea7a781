using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>Trace metals with too little acid: their hydroxides stand at the edge, or fall out as soon as ordinary water is used.</summary>
internal sealed partial class NoAcidInTraceStock : StockRule<UnacidifiedMetals>, IProposesRepairs
{
    public const string RuleName = "no-acid-in-trace-stock";

    /// <summary>Metal in a concentrate, mol/L; the diluted feed holds a hundredth of it.</summary>
    private const double Concentrate = 1e-4;

    /// <summary>The pH that the remedy aims at: usual for acidified trace stocks (common practice, no source).</summary>
    private const double UsualPh = 3.5;

    private static readonly (string Component, string Name)[] _metals =
        [
            (Component.Zinc, "zinc"), (Component.Copper, "copper"), (Component.Manganese, "manganese"), (Component.Cobalt, "cobalt"),
            (Component.Nickel, "nickel"),
        ];

    /// <summary>What else a hydroxide, a basic salt or a carbonate of these metals is made of.</summary>
    private static readonly string[] _others =
    [
        Component.Hydrogen, Component.Water, Component.Sulfate, Component.Chloride, Component.Carbonate,
    ];

    private static readonly Lazy<IReadOnlyList<Solid>> _hydroxides = new(() =>
    [
        .. ConstantSet.Product.Solids.Where(s => s.Role == SolidRole.FormsReadily
            && s.Composition.Any(c => _metals.Any(m => m.Component == c.Key))
            && s.Composition.All(c => _others.Contains(c.Key) || _metals.Any(m => m.Component == c.Key))),
    ]);

    public override string Name => RuleName;

    protected override IEnumerable<UnacidifiedMetals> Judge(StockFacts stock, RuleContext context)
    {
        SolutionState[] states = [stock.Chemistry.Mixing, stock.Chemistry.Coldest, stock.Chemistry.Warmest];
        if (!stock.IsComplete || states.Any(s => !s.TellsPh))
        {
            return [new UnacidifiedMetals(stock, null, null) { Checks = [Check.That("its pH can be computed", false)] }];
        }

        var free = stock.Chemistry.Mixing.Metals
            .Where(m => _metals.Any(t => t.Component == m.Metal))
            .Select(m => m.Unchelated.MolesPerLitre)
            .DefaultIfEmpty()
            .Max();
        var concentrate = new Check("as much as a concentrate holds", free, Relation.AtLeast, Concentrate, "mol/L");
        // A metal that falls out of the stock as it is made is a deposit, and the rules on deposits speak of it.
        var clear = !states.Any(s => s.Deposits.Any(d => MetalOf(d.Solid) is not null));
        var (solid, used, state) = states
            .SelectMany(s => _hydroxides.Value.Select(h => (Solid: h, Used: UsedShare(s, h), State: s)))
            .MaxBy(h => h.Used);
        if (!concentrate.Holds || !clear || MetalOf(solid) is not { } metal || state.Index(solid.Name) is null)
        {
            Check[] checks =
            [
                concentrate,
                Check.That("no hydroxide falls out as it is made (the rules on deposits speak of that)", clear),
                Check.That("it holds a metal of which the hydroxide is known", used > 0),
            ];
            return [new UnacidifiedMetals(stock, concentrate, null) { Checks = checks }];
        }

        var edge = new Check("at the edge", Rounding.SixDigits(used * 100), Relation.Over,
            context.Options<NoAcidInTraceStockOptions>().CloseTo, "%");
        var source = stock.SuppliersOf(metal.Component).FirstOrDefault();
        return !edge.Holds && WithOrdinaryWater(stock, context, concentrate) is { } tap
            ? [tap]
            :
            [
                new MetalsAtTheEdge(stock, concentrate, source, metal, solid, state, edge)
                {
                    Checks = [concentrate, edge, Check.That("a line of the steps brings the metal", source is not null)],
                },
            ];
    }

    protected override Finding Describe(UnacidifiedMetals verdict, RuleContext context) => verdict switch
    {
        MetalsAtTheEdge edge => Describe(edge, context),
        var tap => Describe((MetalsInTapWater)tap, context),
    };

    /// <summary>Only where the file leaves the water open, and then a note: a stated water is judged as it is.</summary>
    private static MetalsInTapWater? WithOrdinaryWater(StockFacts stock, RuleContext context, Check concentrate)
    {
        var open = OpenWater(stock);
        var alkalinity = context.Options<NoAcidInTraceStockOptions>().OrdinaryAlkalinity / 1000;
        if (open <= 0 || alkalinity <= 0)
        {
            return null;
        }

        var moles = WithAlkalinity(stock, alkalinity * open);
        if (Settled.Of(SolutionMix.Of(moles, stock.Volume), SolutionMix.FilledAtCelsius) is not { } settled)
        {
            return null;
        }

        var (metal, share) = Lost(settled);
        var lost = new Check("more than a stock should lose", Rounding.SixDigits(share * 100), Relation.Over,
            context.Options<NoAcidInTraceStockOptions>().MostLost, "%");
        var source = stock.SuppliersOf(metal.Component).FirstOrDefault();
        return new MetalsInTapWater(
            stock, concentrate, source, metal, open, settled.Ph, settled.GramsPerLitre(_hydroxides.Value.Contains), moles, lost)
        {
            Checks = [concentrate, lost, Check.That("a line of the steps brings the metal", source is not null)],
        };
    }

    private static Finding Describe(MetalsAtTheEdge verdict, RuleContext context)
    {
        var (stock, metal, state) = (verdict.Stock, verdict.Metal, verdict.State);
        var message = $"'{stock.Stock.Name}' has {Acids(stock)} and comes to pH {Say.Ph(Math.Round(state.Ph, 2))}: at "
            + $"{Say.Number(state.Temperature.Celsius)} °C its {metal.Name} stands at {Say.Number(verdict.Edge.Value)} % of what its "
            + $"hydroxide leaves dissolved ({verdict.Solid.Formula}). "
            + $"A little alkali from the water or the glass, and {metal.Name} settles as a floc that the doses then lack. "
            + Remedy(stock, context, stock.ComponentMoles);
        return Finding(context, verdict.Source!, message, "share of what stays dissolved", verdict.Edge, state.Ph);
    }

    private static Finding Describe(MetalsInTapWater verdict, RuleContext context)
    {
        var (stock, metal) = (verdict.Stock, verdict.Metal);
        var message = $"'{stock.Stock.Name}' has {Acids(stock)} and does not say which water it is made with: with tap water of "
            + $"{Say.Number(context.Options<NoAcidInTraceStockOptions>().OrdinaryAlkalinity)} meq/L alkalinity it comes to pH "
            + $"{Say.Ph(Math.Round(verdict.Ph, 2))}, and {Say.Number(verdict.GramsPerLitre)} g/L of metal hydroxides and "
            + $"carbonates fall out, {Say.Percent(verdict.Lost.Value / 100)} of the {metal.Name}. "
            + "What settles is missing from every dose. "
            + Remedy(stock, context, verdict.Moles);
        return Finding(context, verdict.Source!, message, $"{metal.Name} that falls out", verdict.Lost, verdict.Ph, Odds.Possible);
    }

    /// <summary>What is in the batch when its water brings so many equivalents of calcium hydrogen carbonate.</summary>
    private static ComponentMoles WithAlkalinity(StockFacts stock, double equivalents) =>
        Analysis.Solutions.ComponentMoles.Sum(
    [
        stock.ComponentMoles,
        Analysis.Solutions.ComponentMoles.Of(
        [
            KeyValuePair.Create(Component.Calcium, equivalents / 2), KeyValuePair.Create(Component.Carbonate, equivalents),
            KeyValuePair.Create(Component.Hydrogen, equivalents),
        ]),
    ]);

    /// <summary>The metal that loses most of itself to hydroxides and carbonates, and how much, 0 to 1.</summary>
    private static ((string Component, string Name) Metal, double Share) Lost(Settled settled) =>
        _metals.Select(m => (Metal: m, Share: settled.LostShare(m.Component, _hydroxides.Value.Contains))).MaxBy(m => m.Share);

    private static Finding Finding(
        RuleContext context, AdditionFacts source, string message, string name, Check check, double ph, Odds odds = Odds.Certain) =>
        context.Find(source.Place, message, Harm.Damage, odds) with
        {
            Measured = new Measured(name, check.Value, check.Limit, "%"),
            Values = [new NamedValue(name, check.Value, "%"), new NamedValue("pH", ph, "")],
        };

    /// <summary>Metal there over metal that would be saturated, from the index of a solid with several metal ions.</summary>
    private static double UsedShare(SolutionState state, Solid solid) =>
        MetalOf(solid) is { } metal && state.Index(solid.Name) is { } index
            ? Math.Pow(10, index / Settled.CountOf(solid, metal.Component))
            : 0;

    private static (string Component, string Name)? MetalOf(Solid solid)
    {
        var metal = _metals.FirstOrDefault(m => Settled.CountOf(solid, m.Component) > 0);
        return metal.Component is null ? null : metal;
    }

    /// <summary>Litres of water whose kind the file leaves open.</summary>
    private static double OpenWater(StockFacts stock)
    {
        var open = stock.Stock.Steps
            .Where(s => s is Recipes.Documents.PourStep { Of: null } or Recipes.Documents.TopUpStep { Of: null })
            .Select(s => s.Id)
            .ToHashSet(StringComparer.Ordinal);
        return stock.Waters.Where(w => open.Contains(w.Id)).Sum(w => w.Volume.Litres);
    }

    private static string Acids(StockFacts stock)
    {
        var acids = stock.Additions.Where(a => a.ComponentMoles.GetValueOrDefault(Component.Hydrogen) > 0
            && a.Substance.Kind == Chemistry.Substances.SubstanceKind.Acid).ToList();
        return acids.Count == 0
            ? "no acid"
            : $"too little acid ({Say.List(acids.Select(a => a.Substance.Name).Distinct(StringComparer.Ordinal))})";
    }

    private static string Remedy(StockFacts stock, RuleContext context, ComponentMoles moles)
    {
        if (context.Facts.Workspace.Catalogue.ById("citric-acid-h2o") is not { } acid)
        {
            return context.AdviceFor(stock).Sentence(
                new Way("add acid before the metals", Puts.Acid, UsualPh), new Way("write which water is used"));
        }

        var demand = PhDemand.Find(moles, Iron.Water(stock), acid, UsualPh, new Temperature(SolutionMix.FilledAtCelsius));
        return context.AdviceFor(stock).Sentence(
            new Way(
                demand.Mass is { Grams: > 0 }
                    ? $"bring the water to about pH {Say.Number(UsualPh)} first, with {acid.Name} or a mineral acid"
                    : "add acid before the metals",
                Puts.Acid,
                UsualPh),
            new Way("use pure water and say so"));
    }

    /// <summary>Acid first, or a water that is known to be pure.</summary>
    protected override IEnumerable<RepairProposal> Repair(UnacidifiedMetals verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (Waters.Distilled(context, stock, alsoWhereOpen: true) is { } distilled)
        {
            yield return distilled;
        }

        foreach (var acid in Additions.Acid(context, stock, 3))
        {
            yield return acid;
        }
    }
}

/// <summary>Trace metals of a stock and what keeps them dissolved.</summary>
/// <param name="Concentrate">How much of a metal no chelate holds; null where nothing is computed.</param>
/// <param name="Source">What brings the metal; null where no line of the steps does.</param>
internal record UnacidifiedMetals(StockFacts Stock, Check? Concentrate, AdditionFacts? Source) : Verdict;

/// <summary>A hydroxide that holds just so: a little less metal or acid decides.</summary>
internal sealed record MetalsAtTheEdge(
    StockFacts Stock, Check Concentrate, AdditionFacts? Source, (string Component, string Name) Metal, Solid Solid, SolutionState State,
    Check Edge)
    : UnacidifiedMetals(Stock, Concentrate, Source);

/// <summary>What an ordinary water does where the file leaves the water open.</summary>
/// <param name="OpenLitres">Water whose kind is open.</param>
/// <param name="Moles">What is in the batch with that water.</param>
internal sealed record MetalsInTapWater(
    StockFacts Stock,
    Check Concentrate,
    AdditionFacts? Source,
    (string Component, string Name) Metal,
    double OpenLitres,
    double Ph,
    double GramsPerLitre,
    ComponentMoles Moles,
    Check Lost) : UnacidifiedMetals(Stock, Concentrate, Source);
