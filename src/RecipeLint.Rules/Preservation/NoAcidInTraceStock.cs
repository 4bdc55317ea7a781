using System.Collections.Immutable;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>Trace metals with too little acid: their hydroxides stand at the edge, or fall out as soon as ordinary water is used.</summary>
public sealed class NoAcidInTraceStock : StockRule, IProposesRepairs
{
    /// <summary>Metal in a concentrate, mol/L; the diluted feed holds a hundredth of it.</summary>
    internal const double Concentrate = 1e-4;

    /// <summary>The pH that the remedy aims at: usual for acidified trace stocks (common practice, no source).</summary>
    private const double UsualPh = 3.5;

    private static readonly (string Component, string Name)[] _metals =
        [("Zn+2", "zinc"), ("Cu+2", "copper"), ("Mn+2", "manganese"), ("Co+2", "cobalt"), ("Ni+2", "nickel")];

    /// <summary>What else a hydroxide, a basic salt or a carbonate of these metals is made of.</summary>
    private static readonly string[] _others = ["H+", "H2O", "SO4-2", "Cl-", "CO3-2"];

    internal static readonly Lazy<IReadOnlyList<Solid>> Hydroxides = new(() =>
    [
        .. EquilibriumSolver.Product.Constants.Solids.Where(s => s.Role == SolidRole.FormsReadily
            && s.Composition.Any(c => _metals.Any(m => m.Component == c.Key))
            && s.Composition.All(c => _others.Contains(c.Key) || _metals.Any(m => m.Component == c.Key))),
    ]);

    public override string Name => "no-acid-in-trace-stock";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var states = new[] { stock.Chemistry.Mixing, stock.Chemistry.Coldest, stock.Chemistry.Warmest };
        if (!stock.IsComplete || states.Any(s => !s.IsSolved) || !IsConcentrate(stock.Chemistry.Mixing))
        {
            yield break;
        }

        // A metal that falls out of the stock as it is made is a deposit, and the rules on deposits speak of it.
        if (states.Any(s => s.Deposits.Any(d => MetalOf(d.Solid) is not null)))
        {
            yield break;
        }

        var finding = AtTheEdge(stock, context, states) ?? WithOrdinaryWater(stock, context);
        if (finding is not null)
        {
            yield return finding;
        }
    }

    internal static bool IsConcentrate(SolutionState state) =>
        state.Metals.Any(m => m.Unchelated.MolesPerLitre >= Concentrate && _metals.Any(t => t.Component == m.Metal));

    /// <summary>A hydroxide that holds just so: a little less metal or acid decides.</summary>
    private static Finding? AtTheEdge(StockFacts stock, RuleContext context, IEnumerable<SolutionState> states)
    {
        var (solid, used, state) = states
            .SelectMany(s => Hydroxides.Value.Select(h => (Solid: h, Used: UsedShare(s, h), State: s)))
            .MaxBy(h => h.Used);
        var limit = context.Number("closeTo");
        used = Rounding.SixDigits(used * 100);
        if (used <= limit || MetalOf(solid) is not { } metal || stock.SuppliersOf(metal.Component).FirstOrDefault() is not { } source)
        {
            return null;
        }

        var message = $"'{stock.Stock.Name}' has {Acids(stock)} and comes to pH {Say.Number(Math.Round(state.Ph, 2))}: at {Say.Number(state.Temperature.Celsius)} °C its {metal.Name} stands at {Say.Number(used)} % of what its hydroxide leaves dissolved ({solid.Formula}). "
            + $"A little alkali from the water or the glass, and {metal.Name} settles as a floc that the doses then lack. "
            + Remedy(stock, context, stock.ComponentMoles);
        return Finding(context, source, message, "share of what stays dissolved", used, limit, state.Ph);
    }

    /// <summary>Only where the file leaves the water open, and then a note: a stated water is judged as it is.</summary>
    private static Finding? WithOrdinaryWater(StockFacts stock, RuleContext context)
    {
        var open = OpenWater(stock);
        var alkalinity = context.Number("ordinaryAlkalinity") / 1000;
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
        var limit = context.Number("mostLost");
        var lost = Rounding.SixDigits(share * 100);
        if (lost <= limit || stock.SuppliersOf(metal.Component).FirstOrDefault() is not { } source)
        {
            return null;
        }

        var grams = settled.GramsPerLitre(Hydroxides.Value.Contains);
        var message = $"'{stock.Stock.Name}' has {Acids(stock)} and does not say which water it is made with: with tap water of {Say.Number(alkalinity * 1000)} meq/L alkalinity it comes to pH {Say.Number(Math.Round(settled.Ph, 2))}, and {Say.Number(grams)} g/L of metal hydroxides and carbonates fall out, {Say.Percent(share)} of the {metal.Name}. "
            + "What settles is missing from every dose. "
            + Remedy(stock, context, moles);
        return Finding(context, source, message, $"{metal.Name} that falls out", lost, limit, settled.Ph, Level.Note);
    }

    /// <summary>What is in the batch when its water brings so many equivalents of calcium hydrogen carbonate.</summary>
    internal static ImmutableSortedDictionary<string, double> WithAlkalinity(StockFacts stock, double equivalents) => Analysis.Solutions.ComponentMoles.Sum(
    [
        stock.ComponentMoles,
        Analysis.Solutions.ComponentMoles.Of(
        [
            KeyValuePair.Create("Ca+2", equivalents / 2), KeyValuePair.Create("CO3-2", equivalents), KeyValuePair.Create("H+", equivalents),
        ]),
    ]);

    /// <summary>The metal that loses most of itself to hydroxides and carbonates, and how much, 0 to 1.</summary>
    internal static ((string Component, string Name) Metal, double Share) Lost(Settled settled) =>
        _metals.Select(m => (Metal: m, Share: settled.LostShare(m.Component, Hydroxides.Value.Contains))).MaxBy(m => m.Share);

    private static Finding Finding(RuleContext context, AdditionFacts source, string message, string name, double value, double limit, double ph, Level? level = null) =>
        context.Find(source.Place, message, level) with
        {
            Measured = new Measured(name, value, limit, "%"),
            Values = [new NamedValue(name, value, "%"), new NamedValue("pH", ph, "")],
        };

    /// <summary>Metal there over metal that would be saturated, from the index of a solid with several metal ions.</summary>
    internal static double UsedShare(SolutionState state, Solid solid) =>
        MetalOf(solid) is { } metal && state.Index(solid.Name) is { } index ? Math.Pow(10, index / Settled.CountOf(solid, metal.Component)) : 0;

    internal static (string Component, string Name)? MetalOf(Solid solid)
    {
        var metal = _metals.FirstOrDefault(m => Settled.CountOf(solid, m.Component) > 0);
        return metal.Component is null ? null : metal;
    }

    /// <summary>Litres of water whose kind the file leaves open.</summary>
    internal static double OpenWater(StockFacts stock)
    {
        var open = stock.Stock.Steps
            .Where(s => s is Recipes.Documents.PourStep { Of: null } or Recipes.Documents.TopUpStep { Of: null })
            .Select(s => s.Id)
            .ToHashSet(StringComparer.Ordinal);
        return stock.Waters.Where(w => open.Contains(w.Id)).Sum(w => w.Volume.Litres);
    }

    private static string Acids(StockFacts stock)
    {
        var acids = stock.Additions.Where(a => a.ComponentMoles.GetValueOrDefault("H+") > 0 && a.Substance.Kind == Chemistry.Substances.SubstanceKind.Acid).ToList();
        return acids.Count == 0 ? "no acid" : $"too little acid ({Say.List(acids.Select(a => a.Substance.Name).Distinct(StringComparer.Ordinal))})";
    }

    private static string Remedy(StockFacts stock, RuleContext context, ImmutableSortedDictionary<string, double> moles)
    {
        if (context.Facts.Workspace.Catalogue.ById("citric-acid-h2o") is not { } acid)
        {
            return "Add acid before the metals, and write which water is used.";
        }

        var demand = PhDemand.Find(moles, Iron.Water(stock), acid, UsualPh, new Temperature(SolutionMix.FilledAtCelsius));
        return demand.Mass is { Grams: > 0 } mass
            ? $"Dissolve {Say.Grams(mass.Grams)} of {acid.Name} in the water first, which brings it to pH {Say.Number(UsualPh)}, or use pure water and say so."
            : "Add acid before the metals, or use pure water and say so.";
    }

    /// <summary>Acid first, or a water that is known to be pure.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
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
