using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>A metal that drops its hydroxide, or ferrous iron that oxidises, before the chelate or acid that would hold it is in.</summary>
public sealed class MetalBeforeChelateOrAcid : StockRule, IProposesRepairs
{
    internal static readonly (string Component, string Name)[] Metals =
        [("Fe+3", "iron"), ("Fe+2", "iron"), ("Cu+2", "copper"), ("Zn+2", "zinc"), ("Mn+2", "manganese")];

    private static readonly string[] _agents = ["EDTA-4", "DTPA-5", "HEDTA-3", "EDDHA-4", "Citrate-3", "Gluconate-"];

    public override string Name => "metal-before-chelate-or-acid";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var moments = stock.Mixing.Steps;
        if (moments.Count == 0 || !stock.Mixing.IsProcedure || BenchChemistry.Clear(stock.Mixing.FinishedState) is not { } finished)
        {
            yield break;
        }

        foreach (var moment in moments)
        {
            var protector = moments.Skip(moment.Index + 1).SelectMany(m => m.Added).FirstOrDefault(Protects);
            var metals = Metals.Where(m => moment.Added.Any(a => !Protects(a) && a.ComponentMoles.GetValueOrDefault(m.Component) > 0)).ToList();
            if (metals.Count == 0 || protector is null)
            {
                continue;
            }

            var until = moments.Skip(moment.Index).TakeWhile(m => !m.Added.Contains(protector)).ToList();
            if (Drops(metals, until, stock.Mixing, finished, context) is { } drop)
            {
                yield return context.Find(
                    moment.Step.Place,
                    $"The {moment.Added[0].Substance.Name} goes in before the {protector.Substance.Name}: at pH {Say.Number(drop.Ph)} about {Say.Grams(drop.Grams)} of {drop.Solid.Formula} drops out, "
                    + $"{Say.Percent(drop.Share)} of the {drop.Metal}, although the finished stock would hold it. Such a floc dissolves again only slowly, often not at all. "
                    + $"Put the {protector.Substance.Name} in first.") with
                {
                    Measured = new Measured("metal lost", drop.Share * 100, context.Number("lost"), "%"),
                    Values = [new NamedValue("metal lost", drop.Share * 100, "%"), new NamedValue("pH", drop.Ph, ""), new NamedValue("solid", drop.Grams, "g")],
                    Related = [new RelatedPlace(protector.Place, "would hold it")],
                };
                yield break;
            }

            if (metals.Any(m => m.Component == "Fe+2") && Oxidises(until, stock.Mixing, context) is { } rust)
            {
                yield return context.Find(
                    moment.Step.Place,
                    $"The {moment.Added[0].Substance.Name} stands at pH {Say.Number(rust.Ph)} until the {protector.Substance.Name} goes in: air turns about {Say.Percent(rust.Share)} of the iron into rust-brown ferric iron within {context.Word("standing")} minutes. "
                    + "Rust that has formed hardly dissolves again. "
                    + $"Put the {protector.Substance.Name} in first.",
                    Level.Note,
                    Certainty.Estimate) with
                {
                    Measured = new Measured("iron oxidised", rust.Share * 100, context.Number("oxidised"), "%"),
                    Values = [new NamedValue("iron oxidised", rust.Share * 100, "%"), new NamedValue("pH", rust.Ph, "")],
                    Related = [new RelatedPlace(protector.Place, "would hold it")],
                };
                yield break;
            }
        }
    }

    /// <summary>A chelating agent that comes without a metal of its own, or an acid.</summary>
    internal static bool Protects(AdditionFacts addition) =>
        addition.Substance.Kind == SubstanceKind.Acid
        || (_agents.Any(a => addition.ComponentMoles.GetValueOrDefault(a) > 0) && Metals.All(m => addition.ComponentMoles.GetValueOrDefault(m.Component) <= 0));

    internal static Drop? Drops(
        IReadOnlyList<(string Component, string Name)> metals, List<MixingStep> until, MixingSimulation mixing, Equilibrium finished, RuleContext context)
    {
        var limit = context.Number("lost");
        foreach (var moment in until)
        {
            var there = mixing.States[moment.Index];
            if (BenchChemistry.Clear(there) is not { } state)
            {
                continue;
            }

            foreach (var (component, name) in metals)
            {
                var worst = BenchChemistry.FormingReadily(state, s => IsHydroxide(s, component) && there.Find(s.Name) is not null).FirstOrDefault();
                if (worst.Solid is not { } solid || Rounding.SixDigits(worst.Index) <= context.Number("index") || finished.Solids.Any(s => ReferenceEquals(s.Solid, solid) && s.Index > 0))
                {
                    continue;
                }

                var grams = there.Find(solid.Name)!.Mass.Grams;
                var share = grams / solid.MolarMassGramsPerMole * solid.Composition.First(c => c.Key == component).Value / moment.After.Moles[component];
                if (Rounding.SixDigits(share * 100) >= limit)
                {
                    return new Drop(solid, share, state.Ph, grams, name);
                }
            }
        }

        return null;
    }

    /// <summary>True for a hydroxide or basic salt of one of the metals this rule looks at.</summary>
    internal static bool IsHydroxideOfAny(Solid solid) => Metals.Any(m => IsHydroxide(solid, m.Component));

    /// <summary>Of the metal and water alone, or basic salts of sulfate and chloride: their formation sets protons free.</summary>
    internal static bool IsHydroxide(Solid solid, string metal) =>
        BenchChemistry.Holds(solid, metal)
        && solid.Composition.All(c => c.Key == metal || c.Key is "H+" or "H2O" or "SO4-2" or "Cl-")
        && solid.Composition.Any(c => c.Key == "H+" && c.Value < 0);

    /// <summary>Where ferrous iron stands at the highest pH, and how much of it turns to rust there.</summary>
    internal static (double Ph, double Share)? Oxidises(List<MixingStep> until, MixingSimulation mixing, RuleContext context)
    {
        if (until.Select(m => mixing.States[m.Index].PhInAir).Max() is not { } ph)
        {
            return null;
        }

        var share = FerrousOxidation.Share(ph, context.Number("standing"));
        return Rounding.SixDigits(share * 100) >= context.Number("oxidised") ? (ph, share) : null;
    }

    internal sealed record Drop(Solid Solid, double Share, double Ph, double Grams, string Metal);

    /// <summary>What holds the metal in front of it.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (finding.Related is [{ Place: var protector }, ..] && RepairContext.StepAt(stock, protector) is { } holder && RepairContext.StepAt(stock, finding.Place) is { } metal
            && Steps.Move(stock, context, holder, metal) is { } first)
        {
            yield return Repair.Chemistry("move-first", $"Put '{holder.Id}' in before '{metal.Id}'.", first);
        }
    }
}
