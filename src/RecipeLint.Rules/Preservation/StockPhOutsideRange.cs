using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>A stock whose pH is not the one its steps set, or lies where stocks do not keep.</summary>
public sealed class StockPhOutsideRange : StockRule, IProposesRepairs
{
    public override string Name => "stock-ph-outside-range";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        if (!stock.IsComplete || !stock.Chemistry.Mixing.IsSolved)
        {
            yield break;
        }

        var finding = Adrift(stock, context) ?? Outside(stock, context);
        if (finding is not null)
        {
            yield return finding;
        }
    }

    /// <summary>What was added after the pH was set has moved it.</summary>
    private static Finding? Adrift(StockFacts stock, RuleContext context)
    {
        var step = stock.Stock.Steps.OfType<AdjustStep>().LastOrDefault(s => s.TargetPh is not null);
        var adjustment = stock.Adjustments.LastOrDefault(a => !a.ThroughAliquot && a.Id == step?.Id);
        if (step?.TargetPh is not { } target || adjustment is not { Amount: not null })
        {
            return null;
        }

        // Before anything falls out: a deposit that moves the pH has a finding of its own.
        var ph = Rounding.SixDigits(stock.Chemistry.Mixing.PhBeforeDeposit);
        var allowed = Math.Max(step.PhTolerance ?? 0, context.Number("mostDrift"));
        var drift = Rounding.SixDigits(Math.Abs(ph - target.Value));
        if (drift <= allowed)
        {
            return null;
        }

        var after = stock.Stock.Steps.SkipWhile(s => s.Id != step.Id).Skip(1).OfType<AddStep>().ToList();
        var moved = after.Count == 0
            ? "The water that follows has moved it"
            : $"What is added after it has moved it ({Say.List(after.Select(s => s.Substance?.Name ?? s.What.Value).Distinct(StringComparer.Ordinal))})";
        var message = $"'{stock.Stock.Name}' is set to pH {Say.Number(target.Value)} in this step, but the finished stock comes to pH {Say.Number(Math.Round(ph, 2))}. "
            + $"{moved}, so what the pH was set for, a preservative, a chelate or clear metals, no longer holds. "
            + "Set the pH last, shortly before topping up, and check it once more at the mark.";
        return context.Find(step.Place, message, Level.Warning, Certainty.Computed) with
        {
            Related = [.. after.Select(s => new RelatedPlace(s.Place, "is added after the pH is set"))],
            Measured = new Measured("distance from the pH set", drift, allowed, ""),
            Values = [new NamedValue("pH set", target.Value, ""), new NamedValue("pH of the stock", ph, "")],
        };
    }

    private static Finding? Outside(StockFacts stock, RuleContext context)
    {
        var ph = Rounding.SixDigits(stock.Chemistry.Mixing.Ph);
        var (lowest, highest) = (context.Number("lowest"), context.Number("highest"));
        var nutrients = stock.Additions.Where(a => a.Mass.Grams > 0 && a.Substance.Kind is not (SubstanceKind.Acid or SubstanceKind.Base)).ToList();

        // Acids and alkalis that are kept to adjust a tank are meant to be strong, silicates and bleach only keep in alkali,
        // and a chelate outside its pH has a finding of its own.
        if ((ph >= lowest && ph <= highest)
            || nutrients.Count == 0
            || nutrients.Any(a => a.Substance.Kind is SubstanceKind.Silicate or SubstanceKind.Oxidiser)
            || (ph > highest && Iron.ChelatorMoles(stock.ComponentMoles) > 0 && Iron.Moles(stock.ComponentMoles) > 0))
        {
            return null;
        }

        var high = ph > highest;
        var source = stock.Additions
            .OrderByDescending(a => (high ? -1 : 1) * a.ComponentMoles.GetValueOrDefault("H+"))
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .First();
        var message = $"'{stock.Stock.Name}' comes to pH {Say.Number(Math.Round(ph, 2))}, outside the {Say.Number(lowest)} to {Say.Number(highest)} in which mixed stocks keep. "
            + (high
                ? "Ammonia leaves it, it draws carbon dioxide from the air, and trace metals and phosphate fall out where they meet it. "
                  + $"Keep {source.Substance.Name} as a stock of its own or neutralise it with an acid."
                : "So much acid breaks chelates, eats pump seals and metal fittings, and swings the pH of the tank at each dose. "
                  + $"Keep {source.Substance.Name} as a stock of its own for the pH, and leave only a little of it in here.");
        return context.Find(source.Place, message) with
        {
            Measured = new Measured("pH", ph, high ? highest : lowest, ""),
            Values = [new NamedValue("pH", ph, "")],
        };
    }

    /// <summary>The pH set last, less of what takes it there, or an acid against it.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (RepairContext.StepAt(stock, finding.Place) is AdjustStep set)
        {
            var last = stock.Stock.Steps.LastOrDefault(s => s is AddStep or AliquotStep);
            if (last is not null && Steps.Move(stock, context, set, last, behind: true) is { } later)
            {
                yield return Repair.Chemistry("set-last", "Set the pH after everything else is in.", later);
            }

            if (stock.Stock.Steps.OfType<TopUpStep>().LastOrDefault() is { } mark && Steps.Move(stock, context, set, mark, behind: true) is { } atTheMark)
            {
                yield return Repair.Chemistry("set-at-the-mark", "Set the pH once more after topping up.", atTheMark);
            }

            yield break;
        }

        if (context.AdditionAt(stock, finding.Place) is { } source)
        {
            yield return Additions.Less(context, source);
            foreach (var move in OtherPart.Moves(context, stock, source))
            {
                yield return move;
            }
        }

        foreach (var acid in finding.Measured is { } ph && ph.Value > ph.Limit ? Additions.Acid(context, stock, 5) : [])
        {
            yield return acid;
        }
    }
}
