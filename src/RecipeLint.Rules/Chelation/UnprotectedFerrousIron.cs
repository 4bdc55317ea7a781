using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Chelation;

/// <summary>Iron(II) in a kept stock that neither a chelating agent nor acid keeps from turning to rust.</summary>
public sealed class UnprotectedFerrousIron : StockRule, IProposesRepairs
{
    /// <summary>Chelating agent for each iron that the remedy names: a slight excess (common practice, no source).</summary>
    private const double AgentPerIron = 1.05;

    public override string Name => "unprotected-ferrous-iron";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var iron = Iron.Moles(stock.ComponentMoles) / stock.Volume.Litres;
        var mixing = stock.Chemistry.Mixing;
        if (!stock.IsComplete
            || stock.Chemistry.Aged is not { IsSolved: true } aged
            || !mixing.IsSolved
            || mixing.Ph <= context.Number("acidProtectsBelow")
            || Iron.ChelatorMoles(stock.ComponentMoles) / stock.Volume.Litres >= Iron.IntendedShare * iron
            || stock.SuppliersOf(Iron.Ferrous).FirstOrDefault() is not { } supplier)
        {
            yield break;
        }

        var fresh = Math.Clamp(1 - (Iron.Dissolved(mixing) / iron), 0, 1);
        var lost = Rounding.SixDigits(Iron.RustShare(aged, iron));
        var limit = context.Number("mostLost") / 100;

        // What falls out as soon as it is mixed has another cause and another finding.
        if (lost <= limit || fresh > limit)
        {
            yield break;
        }

        var kept = stock.Stock.Keep?.For is { } shelf ? $"is kept for {Say.Days(shelf.Value.Days)}" : "is kept";
        var message = $"'{stock.Stock.Name}' {kept} with {Say.Number(iron * 1000)} mmol/L iron(II) at pH {Say.Number(Math.Round(mixing.Ph, 1))} and nothing that holds it. "
            + $"Air turns it to iron(III), and {Say.Number(Iron.RustGramsPerLitre(aged))} g/L of {Iron.RustCalled(aged)} settles, {Say.Percent(lost)} of the iron. "
            + Remedy(stock, context, iron * stock.Volume.Litres);

        // Gluconate holds iron(III) in a way the constants leave out.
        var level = stock.Concentration("Gluconate-").MolesPerLitre >= iron ? Level.Note : (Level?)null;
        yield return context.Find(supplier.Place, message, level) with
        {
            Measured = new Measured("iron that turns to rust", lost * 100, limit * 100, "%"),
            Values =
            [
                new NamedValue("iron(II)", iron * 1000, "mmol/L"),
                new NamedValue("pH", mixing.Ph, ""),
                new NamedValue("iron that turns to rust", lost * 100, "%"),
                new NamedValue("deposit", Iron.RustGramsPerLitre(aged), "g/L"),
            ],
        };
    }

    private static string Remedy(StockFacts stock, RuleContext context, double ironMoles)
    {
        var catalogue = context.Facts.Workspace.Catalogue;
        var ways = new List<string>();
        if (catalogue.ById("disodium-edta-2h2o") is { } edta && edta.Dissolves.FirstOrDefault(y => y.Component == "EDTA-4") is { MolesPerGram: > 0 } yield)
        {
            ways.Add($"dissolve {Say.Grams(AgentPerIron * ironMoles / yield.MolesPerGram)} of {edta.Name} before the iron");
        }

        if (AcidFor(stock, context.Number("acidProtectsBelow") - 0.1, catalogue) is { } acid)
        {
            ways.Add(acid);
        }

        ways.Add($"use it up within {StockChemistry.AgedAfterDays} days");
        var text = string.Join(", or ", ways);
        return char.ToUpperInvariant(text[0]) + text[1..] + ".";
    }

    private static string? AcidFor(StockFacts stock, double ph, SubstanceCatalogue catalogue)
    {
        if (catalogue.ById("sulfuric-37") is not { } acid || stock.Concentration("Ca+2").MolesPerLitre > 0)
        {
            return null;
        }

        var demand = PhDemand.Find(stock.ComponentMoles, Iron.Water(stock), acid, ph, new Temperature(SolutionMix.FilledAtCelsius));
        return demand.Volume is { Litres: > 0 } volume
            ? $"acidify to pH {Say.Number(ph)} first, with about {Say.Litres(volume.Litres)} of {acid.Name}"
            : null;
    }

    /// <summary>A chelating agent, iron that has one, acid, or two weeks.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        var moles = Iron.Moles(stock.ComponentMoles);
        if (context.Workspace.Catalogue.ById("disodium-edta-2h2o")?.Dissolves.FirstOrDefault(y => y.Component == "EDTA-4") is { MolesPerGram: > 0 } edta
            && Additions.New(context, stock, "disodium-edta-2h2o", AgentPerIron * moles / edta.MolesPerGram, Steps.AfterFirstWater(stock), "to the first water, before the iron") is { } agent)
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
}
