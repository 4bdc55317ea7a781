using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using Mend = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.Procedure;

/// <summary>A metal that drops its hydroxide, or ferrous iron that oxidises, before the chelate or acid that would hold it is in.</summary>
internal sealed class MetalBeforeChelateOrAcid : StockRule<UnheldMetal>, IProposesRepairs
{
    public const string RuleName = "metal-before-chelate-or-acid";

    public override string Name => RuleName;

    /// <summary>One verdict for each step that brings a metal to be held later; the first that fires is the last.</summary>
    protected override IEnumerable<UnheldMetal> Judge(StockFacts stock, RuleContext context)
    {
        // Only where a metal waits for what holds it need the finished stock be solved.
        var waits = stock.Mixing.IsProcedure ? Waiting(stock.Mixing.Steps) : [];
        if (waits.Count == 0 || BenchChemistry.Clear(stock.Mixing.FinishedState) is not { } finished)
        {
            yield return new UnheldMetal(stock, null, null)
            {
                Checks = [Check.That("a metal goes in before a chelating agent or acid that follows later", false)],
            };
            yield break;
        }

        foreach (var (moment, protector, metals) in waits)
        {
            var until = stock.Mixing.Steps.Skip(moment.Index).TakeWhile(m => !m.Added.Contains(protector)).ToList();
            var verdict = Drops(stock, moment, protector, metals, until, finished, context)
                ?? Oxidises(stock, moment, protector, metals, until, context)
                ?? new UnheldMetal(stock, moment, protector)
                {
                    Checks = [Check.That("a metal drops its hydroxide or oxidises before it is held", false)],
                };
            yield return verdict;
            if (verdict.Fires)
            {
                yield break;
            }
        }
    }

    /// <summary>The steps in which unprotected metals go in, each with the first chelating agent or acid that follows later.</summary>
    private static List<(MixingStep Moment, AdditionFacts Protector, List<(string Component, string Name)> Metals)> Waiting(
        IReadOnlyList<MixingStep> moments)
    {
        var waits = new List<(MixingStep, AdditionFacts, List<(string Component, string Name)>)>();
        foreach (var moment in moments)
        {
            var metals = BenchChemistry.Metals
                .Where(m => moment.Added.Any(a => !BenchChemistry.Protects(a) && BenchChemistry.Brings(a, m.Component)))
                .ToList();
            if (metals.Count > 0
                && moments.Skip(moment.Index + 1).SelectMany(m => m.Added).FirstOrDefault(BenchChemistry.Protects) is { } protector)
            {
                waits.Add((moment, protector, metals));
            }
        }

        return waits;
    }

    protected override Finding Describe(UnheldMetal verdict, RuleContext context) => verdict switch
    {
        DroppedMetal drop => Describe(drop, context),
        var rust => Describe((OxidisedIron)rust, context),
    };

    protected override Working Work(UnheldMetal verdict, RuleContext context)
    {
        var work = new WorkingBuilder(verdict is { Moment: { } moment, Protector: { } protector }
            ? $"{moment.Added[0].Substance.Name} before {protector.Substance.Name}"
            : $"the order of '{verdict.Stock.Stock.Name}'");
        var value = verdict switch
        {
            DroppedMetal drop => Work(work, drop, context),
            OxidisedIron rust => Work(work, rust, context),
            _ => null,
        };
        return work.Statements(verdict).Done(value);
    }

    /// <summary>What holds the metal in front of it.</summary>
    protected override IEnumerable<RepairProposal> Repair(UnheldMetal verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is { } stock && verdict.Protector is { } protector
            && RepairContext.StepAt(stock, protector.Place) is { } holder && RepairContext.StepAt(stock, finding.Place) is { } metal
            && Steps.Move(stock, context, holder, metal) is { } first)
        {
            yield return Mend.Chemistry("move-first", $"Put '{holder.Id}' in before '{metal.Id}'.", first);
        }
    }

    private static DroppedMetal? Drops(
        StockFacts stock,
        MixingStep moment,
        AdditionFacts protector,
        IReadOnlyList<(string Component, string Name)> metals,
        List<MixingStep> until,
        Equilibrium finished,
        RuleContext context)
    {
        foreach (var at in until)
        {
            var there = stock.Mixing.States[at.Index];
            if (BenchChemistry.Clear(there) is not { } state)
            {
                continue;
            }

            foreach (var (component, name) in metals)
            {
                var worst = BenchChemistry.FormingReadily(
                    state, s => BenchChemistry.IsHydroxide(s, component) && there.Find(s.Name) is not null).FirstOrDefault();
                if (worst.Solid is not { } solid || finished.Solids.Any(s => ReferenceEquals(s.Solid, solid) && s.Index > 0))
                {
                    continue;
                }

                var index = new Check("past the limit", Rounding.SixDigits(worst.Index), Relation.Over,
                    context.Options<MetalBeforeChelateOrAcidOptions>().Index);
                var grams = there.Find(solid.Name)!.Mass.Grams;
                var share = grams / solid.MolarMassGramsPerMole * solid.Composition.First(c => c.Key == component).Value
                    / at.After.Moles[component];
                var lost = new Check("enough to miss", Rounding.SixDigits(share * 100), Relation.AtLeast,
                    context.Options<MetalBeforeChelateOrAcidOptions>().Lost, "%");
                if (index.Holds && lost.Holds)
                {
                    return new DroppedMetal(
                        stock, moment, protector, at, state, solid, component, name, grams, index, lost)
                    { Checks = [index, lost] };
                }
            }
        }

        return null;
    }

    /// <summary>Where ferrous iron stands at the highest pH, and how much of it turns to rust there.</summary>
    private static OxidisedIron? Oxidises(
        StockFacts stock,
        MixingStep moment,
        AdditionFacts protector,
        List<(string Component, string Name)> metals,
        List<MixingStep> until,
        RuleContext context)
    {
        if (!metals.Exists(m => m.Component == BenchChemistry.Ferrous)
            || until.Select(m => stock.Mixing.States[m.Index].PhInAir).Max() is not { } ph)
        {
            return null;
        }

        var share = FerrousOxidation.Share(ph, context.Options<MetalBeforeChelateOrAcidOptions>().Standing);
        var oxidised = new Check("enough to see", Rounding.SixDigits(share * 100), Relation.AtLeast,
            context.Options<MetalBeforeChelateOrAcidOptions>().Oxidised, "%");
        return new OxidisedIron(stock, moment, protector, ph, share, oxidised) { Checks = [oxidised] };
    }

    private static Finding Describe(DroppedMetal verdict, RuleContext context)
    {
        var (moment, protector) = (verdict.Moment!, verdict.Protector!);
        var share = verdict.Share;
        return context.Find(
            moment.Step.Place,
            $"The {moment.Added[0].Substance.Name} goes in before the {protector.Substance.Name}: at pH {Say.Ph(verdict.State.Ph)} "
                + $"about {Say.Grams(verdict.Grams)} of {verdict.Solid.Formula} drops out, "
            + $"{Say.Percent(share)} of the {verdict.Metal}, although the finished stock would hold it. Such a floc dissolves again "
            + "only slowly, often not at all. "
            + context.AdviceFor(verdict.Stock).Sentence(new Way($"put the {protector.Substance.Name} in first", Puts.Keeping)),
            share > 0.5 ? Harm.Loss : Harm.Damage,
            Odds.Certain) with
        {
            Measured = new Measured("metal lost", share * 100, verdict.Lost.Limit, "%"),
            Values = [new NamedValue("metal lost", share * 100, "%"), new NamedValue("pH", verdict.State.Ph, ""),
                new NamedValue("solid", verdict.Grams, "g")],
            Related = [new RelatedPlace(protector.Place, "would hold it")],
        };
    }

    private static Finding Describe(OxidisedIron verdict, RuleContext context)
    {
        var (moment, protector) = (verdict.Moment!, verdict.Protector!);
        return context.Find(
            moment.Step.Place,
            $"The {moment.Added[0].Substance.Name} stands at pH {Say.Ph(verdict.Ph)} until the {protector.Substance.Name} goes in: "
                + $"air turns about {Say.Percent(verdict.Share)} of the iron into rust-brown ferric iron within "
                + $"{context.Options<MetalBeforeChelateOrAcidOptions>().Standing} minutes. "
            + "Rust that has formed hardly dissolves again. "
            + context.AdviceFor(verdict.Stock).Sentence(new Way($"put the {protector.Substance.Name} in first", Puts.Keeping)),
            Harm.Damage,
            Odds.Possible,
            Certainty.Estimate) with
        {
            Measured = new Measured("iron oxidised", verdict.Share * 100, verdict.Oxidised.Limit, "%"),
            Values = [new NamedValue("iron oxidised", verdict.Share * 100, "%"), new NamedValue("pH", verdict.Ph, "")],
            Related = [new RelatedPlace(protector.Place, "would hold it")],
        };
    }

    private static Term Work(WorkingBuilder work, DroppedMetal verdict, RuleContext context)
    {
        var (_, index) = Saturation.Write(work, verdict.State, verdict.Solid);
        work.Check(verdict.Index, index, work.Option("index", context.Options<MetalBeforeChelateOrAcidOptions>().Index));
        var grams = work.Given($"{verdict.Solid.Formula} that drops out", verdict.Grams, "g", From.Engine);
        var mass = work.Given("its molar mass", verdict.Solid.MolarMassGramsPerMole, "g/mol", From.AtomicWeights);
        var count = verdict.Solid.Composition.First(c => c.Key == verdict.Component).Value;
        var all = work.Given($"{verdict.Metal} in the vessel", verdict.At.After.Moles[verdict.Component], "mol", From.Amounts);
        var share = work.Result(
            $"{verdict.Metal} that is lost", $"100 × {((Term)count).Text} × grams / molar mass / all",
                100 * (Term)count * grams / mass / all, "%");
        work.Check(verdict.Lost, share, work.Option("limit", context.Options<MetalBeforeChelateOrAcidOptions>().Lost));
        return share;
    }

    private static Term Work(WorkingBuilder work, OxidisedIron verdict, RuleContext context)
    {
        var pH = work.Given("highest pH it stands at", verdict.Ph, "", From.Engine);
        var hydroxide = work.Result("hydroxide ions", "10^(pH - 14.17)", Term.TenTo(pH - FerrousOxidation.WaterProduct), "mol/L");
        var speed = work.Result(
            "iron oxidised a minute", "8 × 10^13 × 0.21 × hydroxide^2",
            FerrousOxidation.Rate * (Term)FerrousOxidation.OxygenAtm * Term.Power(hydroxide, 2), "per min");
        var oxidised = work.Result(
            "iron oxidised while it stands", "100 × (1 - 1 / e^(speed × minutes))",
            100 * (1 - (1 / Term.Exp(speed * work.Option("it stands", context.Options<MetalBeforeChelateOrAcidOptions>().Standing)))), "%");
        work.Check(verdict.Oxidised, oxidised, work.Option("limit", context.Options<MetalBeforeChelateOrAcidOptions>().Oxidised));
        return oxidised;
    }
}

/// <summary>A metal that waits for what holds it.</summary>
/// <param name="Moment">The step that brings the metal; null where none has to wait.</param>
/// <param name="Protector">What goes in later and would hold it.</param>
internal record UnheldMetal(StockFacts Stock, MixingStep? Moment, AdditionFacts? Protector) : Verdict;

/// <summary>A metal that drops as a hydroxide.</summary>
/// <param name="At">The step after which it does.</param>
internal sealed record DroppedMetal(
    StockFacts Stock,
    MixingStep Moment,
    AdditionFacts Protector,
    MixingStep At,
    Equilibrium State,
    Solid Solid,
    string Component,
    string Metal,
    double Grams,
    Check Index,
    Check Lost) : UnheldMetal(Stock, Moment, Protector)
{
    /// <summary>Of the metal in the vessel, 0 to 1.</summary>
    public double Share => Lost.Value / 100;
}

/// <summary>Ferrous iron that the air turns to rust.</summary>
/// <param name="Share">0 to 1.</param>
internal sealed record OxidisedIron(StockFacts Stock, MixingStep Moment, AdditionFacts Protector, double Ph, double Share, Check Oxidised)
    : UnheldMetal(Stock, Moment, Protector);
