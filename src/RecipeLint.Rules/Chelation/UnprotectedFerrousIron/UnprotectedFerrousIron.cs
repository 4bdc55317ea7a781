using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Chelation;

/// <summary>Iron(II) in a kept stock that neither a chelating agent nor acid keeps from turning to rust.</summary>
internal sealed class UnprotectedFerrousIron : StockRule<UnprotectedFerrousIron.Exposed>, IProposesRepairs
{
    public const string RuleName = "unprotected-ferrous-iron";

    /// <summary>Chelating agent for each iron that the remedy names: a slight excess (common practice, no source).</summary>
    private const double AgentPerIron = 1.05;

    /// <summary>mol of phosphate for each mol of iron from which all of it can become iron phosphate.</summary>
    private const double PhosphatePerIron = 1;

    public override string Name => RuleName;

    protected override IEnumerable<Exposed> Judge(StockFacts stock, RuleContext context)
    {
        var options = context.Options<UnprotectedFerrousIronOptions>();
        var iron = Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres;
        var mixing = stock.Chemistry.Mixing;
        if (!stock.IsComplete || !mixing.IsSolved || stock.Chemistry.Aged is not { IsSolved: true } aged
            || stock.Concentration(Iron.Ferrous).MolesPerLitre <= 0 || stock.SuppliersOf(Iron.Ferrous).FirstOrDefault() is not { } supplier)
        {
            yield return new Exposed(stock, null, null, iron, 0, false)
            {
                Checks = [Check.That(_nothingToJudge, false)],
            };
            yield break;
        }

        // What falls out as soon as it is mixed has another cause and, from the share at which the rule on hydroxides speaks, another
        // finding.
        var spokenOf = Math.Max(
            options.MostLost, 100 * DepositOptions.Of(stock.Settings).Of(RuleNames.MetalHydroxide).MetalShare);
        var fresh = Math.Clamp(1 - (Iron.Dissolved(mixing) / iron), 0, 1);
        var lost = Rounding.SixDigits(Iron.RustShare(aged, iron));
        var phosphate = stock.Concentration(Component.Phosphate).MolesPerLitre / iron;

        // Acid keeps the air off iron(II), phosphoric acid does not: phosphate speeds it up and takes what it makes.
        var inPhosphate = mixing.Ph <= options.AcidProtectsBelow && phosphate > 0 && Iron.SettlesAsPhosphate(aged);
        yield return new Exposed(stock, aged, supplier, iron, lost, inPhosphate)
        {
            Checks =
            [
                new Check(
                    "nothing was put in to hold it",
                    Iron.ChelatorMoles(stock.ComponentMoles) / stock.Volume.Litres / iron,
                    Relation.Under,
                    Iron.IntendedShare),
                inPhosphate
                    ? new Check(
                        "enough phosphate beside it that acid does not keep the air off", phosphate, Relation.AtLeast, PhosphatePerIron)
                    : new Check("not so acid that the air takes years", mixing.Ph, Relation.Over, options.AcidProtectsBelow)
                    {
                        Meter = Meter.StockPh,
                    },
                new Check("enough to miss", Rounding.SixDigits(lost * 100), Relation.Over, options.MostLost, "%"),
                new Check("and the air is to blame", Rounding.SixDigits(fresh * 100), Relation.AtMost, spokenOf, "%"),
            ],
        };
    }

    protected override Finding Describe(Exposed verdict, RuleContext context)
    {
        var (stock, aged, supplier, iron, lost) = (verdict.Stock, verdict.Aged!, verdict.Supplier!, verdict.IronPerLitre, verdict.Lost);
        var (mixing, limit) = (stock.Chemistry.Mixing, context.Options<UnprotectedFerrousIronOptions>().MostLost / 100);
        var kept = stock.Stock.Keep?.For is { } shelf ? $"is kept for {Say.Days(shelf.Value.Days)}" : "is kept";
        var message =
            $"'{stock.Stock.Name}' {kept} with {Say.Number(iron * 1000)} mmol/L iron(II) {PhGuess.At(mixing, 1)} and "
                + "nothing that holds it. "
            + $"Air turns it to iron(III)"
            + (verdict.InPhosphate ? " within months, for phosphoric acid does not hold it off as other acids do" : "")
            + $", and {Say.Number(Iron.RustGramsPerLitre(aged))} g/L of {Iron.RustCalled(aged)} settles, {Say.Percent(lost)} of the iron. "
            + Remedy(verdict, context);

        // Gluconate holds iron(III) in a way the constants leave out.
        var isHeld = stock.Concentration(Component.Gluconate).MolesPerLitre >= iron;
        var harm = isHeld ? Harm.Damage : Iron.HarmOf(lost);
        return context.Find(supplier.Place, message, harm, isHeld ? Odds.Possible : Odds.Certain) with
        {
            Measured = new Measured("iron that turns to rust", lost * 100, limit * 100, "%"),
            Values =
            [
                new NamedValue("iron(II)", iron * 1000, "mmol/L"),
                .. PhGuess.Values(mixing),
                new NamedValue("iron that turns to rust", lost * 100, "%"),
                new NamedValue("deposit", Iron.RustGramsPerLitre(aged), "g/L"),
            ],
        };
    }

    protected override Working Work(Exposed verdict, RuleContext context)
    {
        var (stock, iron, checks) = (verdict.Stock, verdict.IronPerLitre, verdict.Checks);
        var work = new WorkingBuilder($"iron(II) of '{stock.Stock.Name}' against the air");
        if (verdict.Aged is not { } aged)
        {
            return work.Statements(verdict).Done();
        }

        var options = context.Options<UnprotectedFerrousIronOptions>();
        var mixing = stock.Chemistry.Mixing;
        var all = work.Given("iron", iron * 1000, "mmol/L", "amounts in the file");
        var agent = work.Given(
            "chelating agents", Iron.ChelatorMoles(stock.ComponentMoles) / stock.Volume.Litres * 1000, "mmol/L", "amounts in the file");
        work.Check(checks[0], work.Result("agent for each iron", "agent / iron", agent / all), Iron.IntendedShare);
        if (verdict.InPhosphate)
        {
            var phosphate =
                work.Given("phosphate", stock.Concentration(Component.Phosphate).MolesPerLitre * 1000, "mmol/L", "amounts in the file");
            work.Check(checks[1], work.Result("phosphate for each iron", "phosphate / iron", phosphate / all), PhosphatePerIron);
        }
        else
        {
            work.Check(
                checks[1], work.Given("pH", mixing.Ph, "", "engine"), work.Option("acid protects below pH", options.AcidProtectsBelow));
        }

        var rust =
            work.Given("iron in the rust once the air has oxidised it", Iron.RustShare(aged, iron) * iron * 1000, "mmol/L", "engine");
        var lost = work.Result("iron that turns to rust", "100 × in the rust / iron", 100 * rust / all, "%");
        work.Check(checks[2], lost, work.Option("limit", options.MostLost));
        var dissolved = work.Given("dissolved as it is mixed", Iron.Dissolved(mixing) * 1000, "mmol/L", "engine");
        var fresh = work.Result(
            "iron that falls out as it is mixed", "100 × (1 - dissolved / iron)", 100 * Term.Larger(0, 1 - (dissolved / all)), "%");
        return work.Check(checks[3], fresh, checks[3].Limit).Done(lost);
    }

    /// <summary>A chelating agent, iron that has one, acid, or two weeks.</summary>
    protected override IEnumerable<RepairProposal> Repair(Exposed verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        var moles = Iron.Moles(stock.ComponentMoles);
        if (context.Workspace.Catalogue.ById(
            "disodium-edta-2h2o")?.Dissolves.FirstOrDefault(y => y.Component == Component.Edta) is { MolesPerGram: > 0 } edta
            && Additions.New(
                context,
                stock,
                "disodium-edta-2h2o",
                AgentPerIron * moles / edta.MolesPerGram,
                Steps.AfterFirstWater(stock),
                "to the first water, before the iron") is { } agent)
        {
            yield return agent;
        }

        foreach (var other in context.AdditionAt(stock, finding.Place) is { } iron ? Additions.OtherIron(context, iron) : [])
        {
            yield return other;
        }

        foreach (var acid in Additions.Acid(context, stock, 2))
        {
            yield return acid;
        }

        yield return Keep.For(context, stock, StockChemistry.AgedAfterDays);
    }

    private static string Remedy(Exposed verdict, RuleContext context)
    {
        var (stock, ironMoles) = (verdict.Stock, verdict.IronPerLitre * verdict.Stock.Volume.Litres);
        var catalogue = context.Facts.Workspace.Catalogue;
        var ways = new List<Way>();
        if (catalogue.ById("disodium-edta-2h2o") is { } edta
            && edta.Dissolves.FirstOrDefault(y => y.Component == Component.Edta) is { MolesPerGram: > 0 } yield)
        {
            ways.Add(new(
                $"dissolve {Say.Grams(AgentPerIron * ironMoles / yield.MolesPerGram)} of {edta.Name} before the iron", Puts.Chelate));
        }

        var to = context.Options<UnprotectedFerrousIronOptions>().AcidProtectsBelow - 0.1;
        if (AcidFor(stock, to, catalogue) is { } acid)
        {
            ways.Add(new(acid, Puts.Acid, to));
        }

        var phosphoric = stock.Additions
            .Where(a => a.Substance.Kind == SubstanceKind.Acid && a.ComponentMoles.GetValueOrDefault(Component.Phosphate) > 0).ToList();
        if (verdict.InPhosphate
            && AcidTrial.MayReplace(stock, phosphoric, AcidTrial.KeepingIron, DepositOptions.Of(stock.Settings)))
        {
            // The same pH as now, which the stock bears.
            ways.Add(new(
                "acidify with sulfuric or citric acid instead of phosphoric acid", Puts.Acid, stock.Chemistry.Mixing.PhBeforeDeposit)
            {
                Replaces = true,
            });
        }

        ways.Add(new($"use it up within {StockChemistry.AgedAfterDays} days", Puts.Keeping));
        return context.AdviceFor(stock).Sentence(ways);
    }

    private static string? AcidFor(StockFacts stock, double ph, SubstanceCatalogue catalogue)
    {
        if (catalogue.ById("sulfuric-37") is not { } acid || stock.Concentration(Component.Calcium).MolesPerLitre > 0)
        {
            return null;
        }

        var demand = PhDemand.Find(stock.ComponentMoles, Iron.Water(stock), acid, ph, new Temperature(SolutionMix.FilledAtCelsius));
        return demand.Volume is { Litres: > 0 } volume
            ? $"acidify to pH {Say.Number(ph)} first, with about {Say.Litres(volume.Litres)} of {acid.Name}"
            : null;
    }

    private static readonly string _nothingToJudge =
        FormattableString.Invariant(
            $"it holds iron(II), is kept for more than {StockChemistry.AgedAfterDays} days, and its equilibrium can be computed");

    /// <summary>The iron(II) of one stock.</summary>
    /// <param name="Aged">Once the air has been at it; null where nothing is judged.</param>
    /// <param name="Supplier">What brings it; null where nothing is judged.</param>
    /// <param name="IronPerLitre">mol/L.</param>
    /// <param name="Lost">Share of the iron in the rust, 0 to 1, to six digits.</param>
    /// <param name="InPhosphate">It is so acid that the air would take years, if the acid were not phosphoric acid.</param>
    internal sealed record Exposed(
        StockFacts Stock, SolutionState? Aged, AdditionFacts? Supplier, double IronPerLitre, double Lost, bool InPhosphate) : Verdict;
}
