using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Chelation;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using Mend = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.Preservation;

/// <summary>A stock whose pH is not the one its steps set, or lies where stocks do not keep.</summary>
internal sealed class StockPhOutsideRange : StockRule<StockPh>, IProposesRepairs
{
    public const string RuleName = "stock-ph-outside-range";

    public override string Name => RuleName;

    protected override IEnumerable<StockPh> Judge(StockFacts stock, RuleContext context)
    {
        if (!stock.IsComplete || !stock.Chemistry.Mixing.IsSolved)
        {
            return [new StockPh(stock, null) { Checks = [Check.That("its equilibrium can be computed", false)] }];
        }

        if (!stock.Chemistry.Mixing.TellsPh)
        {
            return [new StockPh(stock, null) { Checks = [Check.That("its pH is known", false)] }];
        }

        return Adrift(stock, context) is { Fires: true } adrift ? [adrift] : [Outside(stock, context)];
    }

    protected override Finding Describe(StockPh verdict, RuleContext context) => verdict switch
    {
        PhAdrift adrift => Describe(adrift, context),
        var outside => Describe((PhOutside)outside, context),
    };

    protected override Working Work(StockPh verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"pH of '{verdict.Stock.Stock.Name}'");
        var value = verdict switch
        {
            PhAdrift adrift => Work(work, adrift),
            PhOutside outside => Work(work, outside, context),
            _ => null,
        };
        return work.Statements(verdict).Done(value);
    }

    /// <summary>The pH set last, less of what takes it there, or an acid against it.</summary>
    protected override IEnumerable<RepairProposal> Repair(StockPh verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            return [];
        }

        return verdict is PhOutside outside
            ? Against(stock, outside, finding, context)
            : RepairContext.StepAt(stock, finding.Place) is AdjustStep set ? SetLater(stock, set, context) : [];
    }

    private static IEnumerable<RepairProposal> SetLater(StockFacts stock, AdjustStep set, RepairContext context)
    {
        var last = stock.Stock.Steps.LastOrDefault(s => s is AddStep or AliquotStep);
        if (last is not null && Steps.Move(stock, context, set, last, behind: true) is { } later)
        {
            yield return Mend.Chemistry("set-last", "Set the pH after everything else is in.", later);
        }

        if (stock.Stock.Steps.OfType<TopUpStep>().LastOrDefault() is { } mark
            && Steps.Move(stock, context, set, mark, behind: true) is { } atTheMark)
        {
            yield return Mend.Chemistry("set-at-the-mark", "Set the pH once more after topping up.", atTheMark);
        }
    }

    private static IEnumerable<RepairProposal> Against(StockFacts stock, PhOutside verdict, Finding finding, RepairContext context)
    {
        if (context.AdditionAt(stock, finding.Place) is { } source)
        {
            yield return Additions.Less(context, source);
            foreach (var move in OtherPart.Moves(context, stock, source))
            {
                yield return move;
            }
        }

        foreach (var acid in verdict.IsHigh ? Additions.Acid(context, stock, 5) : [])
        {
            yield return acid;
        }
    }

    /// <summary>What was added after the pH was set has moved it.</summary>
    private static PhAdrift? Adrift(StockFacts stock, RuleContext context)
    {
        var step = stock.Stock.Steps.OfType<AdjustStep>().LastOrDefault(s => s.TargetPh is not null);
        var adjustment = stock.Adjustments.LastOrDefault(a => !a.ThroughAliquot && a.Id == step?.Id);
        if (step?.TargetPh is not { } target || adjustment is not { Amount: not null })
        {
            return null;
        }

        // Before anything falls out: a deposit that moves the pH has a finding of its own.
        var ph = Rounding.SixDigits(stock.Chemistry.Mixing.PhBeforeDeposit);
        var isStated = step.PhTolerance > context.Options<StockPhOutsideRangeOptions>().MostDrift;
        var allowed = isStated ? step.PhTolerance!.Value : context.Options<StockPhOutsideRangeOptions>().MostDrift;
        var drift = new Check("it has moved", Rounding.SixDigits(Math.Abs(ph - target.Value)), Relation.Over, allowed);
        return new PhAdrift(stock, drift, step, target.Value, ph, isStated) { Checks = [drift] };
    }

    private static PhOutside Outside(StockFacts stock, RuleContext context)
    {
        var ph = Rounding.SixDigits(stock.Chemistry.Mixing.Ph);
        var (lowest, highest) =
            (context.Options<StockPhOutsideRangeOptions>().Lowest, context.Options<StockPhOutsideRangeOptions>().Highest);
        var high = ph - lowest > highest - ph;
        var nutrients = stock.Additions
            .Where(a => a.Mass.Grams > 0 && a.Substance.Kind is not (SubstanceKind.Acid or SubstanceKind.Base))
            .ToList();
        var outside = high
            ? new Check("over what mixed stocks keep at", ph, Relation.Over, highest) { Meter = Meter.StockPh }
            : new Check("under what mixed stocks keep at", ph, Relation.Under, lowest) { Meter = Meter.StockPh };
        return new PhOutside(stock, outside, high)
        {
            Checks =
            [
                outside,
                // Acids and alkalis that are kept to adjust a tank are meant to be strong, silicates and bleach only keep in alkali.
                Check.That(
                    "it is a mixed stock, and none that is meant to be strongly acid or alkaline",
                    nutrients.Count > 0 && !nutrients.Any(a => a.Substance.Kind is SubstanceKind.Silicate or SubstanceKind.Oxidiser)),
                Check.That(
                    "it holds no iron chelate that is too alkaline (the rule on chelates speaks of those)",
                    !(high && Iron.ChelatorMoles(stock.ComponentMoles) > 0 && Iron.Moles(stock.ComponentMoles) > 0)),
            ],
        };
    }

    private static Finding Describe(PhAdrift verdict, RuleContext context)
    {
        var (stock, step) = (verdict.Stock, verdict.Step);
        var after = stock.Stock.Steps.SkipWhile(s => s.Id != step.Id).Skip(1).OfType<AddStep>().ToList();
        var moved = after.Count == 0
            ? "The water that follows has moved it"
            : "What is added after it has moved it "
                + $"({Say.List(after.Select(s => s.Substance?.Name ?? s.What.Value).Distinct(StringComparer.Ordinal))})";
        var message = $"'{stock.Stock.Name}' is set to pH {Say.Number(verdict.Target)} in this step, but the finished stock comes to "
            + $"pH {Say.Ph(Math.Round(verdict.Ph, 2))}. "
            + $"{moved}, so what the pH was set for, a preservative, a chelate or clear metals, no longer holds. "
            + context.AdviceFor(stock).Sentence(
                new Way("set the pH last, shortly before topping up, and check it once more at the mark", Puts.Acid, verdict.Target));
        return context.Find(step.Place, message, Harm.Damage, Odds.Certain, Certainty.Computed) with
        {
            Related = [.. after.Select(s => new RelatedPlace(s.Place, "is added after the pH is set"))],
            Measured = new Measured("distance from the pH set", verdict.Turns!.Value, verdict.Turns.Limit, ""),
            Values = [new NamedValue("pH set", verdict.Target, ""), new NamedValue("pH of the stock", verdict.Ph, "")],
        };
    }

    private static Finding Describe(PhOutside verdict, RuleContext context)
    {
        var (stock, high, ph) = (verdict.Stock, verdict.IsHigh, verdict.Turns!.Value);
        var source = stock.Additions
            .OrderByDescending(a => high ? Alkali(a) : a.ComponentMoles.GetValueOrDefault(Component.Hydrogen))
            .ThenBy(a => a.Id, StringComparer.Ordinal)
            .First();
        var message = $"'{stock.Stock.Name}' comes to pH {Say.Ph(Math.Round(ph, 2))}, outside the "
            + $"{Say.Number(context.Options<StockPhOutsideRangeOptions>().Lowest)} to "
            + $"{Say.Number(context.Options<StockPhOutsideRangeOptions>().Highest)} in which mixed stocks keep. "
            + PhGuess.Sentence(GuessedPh.Of(stock))
            + (high
                ? "Ammonia leaves it, it draws carbon dioxide from the air, and trace metals and phosphate fall out where they meet it. "
                  + context.AdviceFor(stock).Sentence(
                      new Way($"keep {source.Substance.Name} as a stock of its own"), new Way(
                          "neutralise it with an acid", Puts.Acid, context.Options<StockPhOutsideRangeOptions>().Highest))
                : "So much acid breaks chelates, eats pump seals and metal fittings, and swings the pH of the tank at each dose. "
                  + $"Keep {source.Substance.Name} as a stock of its own for the pH, and leave only a little of it in here.");
        return context.Find(source.Place, message, Harm.Damage, Odds.Possible) with
        {
            Measured = new Measured("pH", ph, verdict.Turns.Limit, ""),
            Values = [new NamedValue("pH", ph, "")],
        };
    }

    /// <summary>mol of hydrogen ions that it can take up, as hydroxide or as carbonate.</summary>
    private static double Alkali(AdditionFacts addition) =>
        addition.ComponentMoles.GetValueOrDefault(Component.Carbonate) - addition.ComponentMoles.GetValueOrDefault(Component.Hydrogen);

    private static Term Work(WorkingBuilder work, PhAdrift verdict)
    {
        var set = work.Given("pH its steps set", verdict.Target, "", From.File);
        var comes = work.Given("pH of the finished stock", verdict.Ph, "", From.Engine);
        var drift = work.Result("distance", "|finished - set|", Term.Size(comes - set));
        work.Check(verdict.Turns!, drift, work.Given("allowed", verdict.Turns!.Limit, "", verdict.IsStated ? From.File
            : "option 'mostDrift'"));
        return drift;
    }

    private static Term Work(WorkingBuilder work, PhOutside verdict, RuleContext context)
    {
        var pH = work.Given("pH", verdict.Turns!.Value, "", From.Engine);
        work.Check(verdict.Turns, pH, verdict.IsHigh ? work.Option("highest", context.Options<StockPhOutsideRangeOptions>().Highest)
            : work.Option("lowest", context.Options<StockPhOutsideRangeOptions>().Lowest));
        return pH;
    }
}

/// <summary>The pH of a stock.</summary>
/// <param name="Turns">What the verdict turns on; null where nothing is computed.</param>
internal record StockPh(StockFacts Stock, Check? Turns) : Verdict;

/// <summary>The finished stock is not at the pH that a step sets.</summary>
/// <param name="IsStated">True where the step itself allows for more than the rule.</param>
internal sealed record PhAdrift(
    StockFacts Stock, Check Turns, AdjustStep Step, double Target, double Ph, bool IsStated) : StockPh(Stock, Turns);

/// <summary>The pH against what mixed stocks keep at.</summary>
/// <param name="IsHigh">Whether it is nearer to the upper end.</param>
internal sealed record PhOutside(StockFacts Stock, Check Turns, bool IsHigh) : StockPh(Stock, Turns);
