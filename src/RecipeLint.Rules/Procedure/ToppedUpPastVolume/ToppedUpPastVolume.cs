using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using Mend = RecipeLint.Rules.Engine.Repair;

namespace RecipeLint.Rules.Procedure;

/// <summary>A vessel that holds more than the mark before or after it is topped up, or a mark above what the stock makes.</summary>
internal sealed class ToppedUpPastVolume : StockRule<VolumeAtMark>, IProposesRepairs
{
    public const string RuleName = "topped-up-past-volume";

    public override string Name => RuleName;

    /// <summary>All marks and the end; one thing is said once, the first that is wrong.</summary>
    protected override IEnumerable<VolumeAtMark> Judge(StockFacts stock, RuleContext context)
    {
        var moments = stock.Mixing.Steps;
        // An amount that does not fit the batch at all has been reported where it stands.
        var implausible = context.ProblemsOf(stock.Stock.File).Any(p => p.Kind == ProblemKind.ImplausibleAmount);
        if (implausible || !moments.Any(m => m.Step is TopUpStep))
        {
            yield return new VolumeAtMark(stock, MarkFault.None, null, 0, 0,
                null)
            { Checks = [Check.That("it is topped up, and its amounts are meant", false)] };
            yield break;
        }

        var room = 1 + (context.Options<ToppedUpPastVolumeOptions>().Tolerance / 100);
        foreach (var verdict in moments.Where(m => m.Step is TopUpStep)
            .SelectMany(m => AtMark(stock, m, room))
            .Append(AtTheEnd(stock, moments, room)))
        {
            yield return verdict;
            if (verdict.Fires)
            {
                yield break;
            }
        }
    }

    protected override Finding Describe(VolumeAtMark verdict, RuleContext context)
    {
        var (litres, limit) = (verdict.Litres, verdict.Mark);
        var moment = verdict.Moment!;
        var (place, message, related) = verdict.Fault switch
        {
            MarkFault.MarkTooHigh => (
                ((TopUpStep)moment.Step).To!.Place,
                $"The vessel is topped up to {Say.Litres(litres)}, but the stock makes {Say.Litres(limit)}: everything in it comes out "
                    + $"at {Say.Percent(limit / litres)} of what is meant. "
                + "Doses are worked out from what the stock makes. Correct the mark, or 'makes' and the doses with it.",
                []),
            MarkFault.FullBefore => (
                moment.Step.Place,
                $"Before it is topped up to {Say.Litres(limit)} the vessel already holds about {Say.Litres(litres)}: "
                + $"water, liquids and what the dissolved salts take up. The stock comes out {Say.Percent((litres - limit) / litres)} "
                + "weaker than its label. "
                + "Pour less water at the start, so that there is room to top up.",
                Largest(verdict.Stock.Mixing.Steps.Take(moment.Index))),
            _ => (
                moment.Step.Place,
                $"What goes in after the vessel is topped up brings it to about {Say.Litres(litres)} instead of {Say.Litres(limit)}: "
                    + $"the stock comes out {Say.Percent(1 - (limit / litres))} weaker than its label. "
                + "The mark only counts when nothing follows it. Put this step before the top-up.",
                (IEnumerable<RelatedPlace>)[new RelatedPlace(LastTopUp(verdict.Stock).Step.Place, "topped up here")]),
        };
        return context.Find(place, message, OffStrength.HarmOf(1 - (limit / litres)), Odds.Certain) with
        {
            Measured = new Measured("volume", litres, limit, "L"),
            Values = [new NamedValue("volume", litres, "L"), new NamedValue("mark", limit, "L")],
            Related = [.. related],
        };
    }

    protected override Working Work(VolumeAtMark verdict, RuleContext context)
    {
        var name = verdict.Stock.Stock.Name;
        if (verdict is not { Moment: { } moment, Past: { } past })
        {
            return new WorkingBuilder($"'{name}'").Statements(verdict).Done();
        }

        var (title, what, from, against) = verdict.Fault switch
        {
            MarkFault.MarkTooHigh => ($"the mark of step '{moment.Step.Id}' against what '{name}' makes", "topped up to", From.File,
                "the stock makes"),
            MarkFault.FullBefore => (
                $"the vessel before step '{moment.Step.Id}'", "water, liquids and what the dissolved solids take up", From.VolumeModel,
                    "topped up to"),
            _ => ($"the vessel after the last step of '{name}'", "in the vessel", From.VolumeModel, "the stock makes"),
        };
        var work = new WorkingBuilder(title);
        var holds = work.Given(what, verdict.Litres, "L", from);
        var limit = work.Given(against, verdict.Mark, "L", From.File);
        var room = work.Result("with the tolerance", "mark × (1 + tolerance / 100)",
            limit * (1 + (work.Option("tolerance", context.Options<ToppedUpPastVolumeOptions>().Tolerance) / 100)), "L");
        return work.Check(past, holds, room).Done(holds);
    }

    /// <summary>The right mark, less water before it, or the late step in front of it.</summary>
    protected override IEnumerable<RepairProposal> Repair(VolumeAtMark verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (stock.Stock.Makes is { } makes
            && context.Item(makes.Place) is { } written
            && context.Item(finding.Place) is { Text.Length: > 0 })
        {
            yield return Mend.Chemistry(
                "right-mark", $"Top up to {written.Text}, what the stock makes.",
                    new JsonEdit.ReplaceValue(finding.Place, JsonDraft.Of(written.Text)));
        }

        if (finding.Related is [{ Place: var mark }, ..] && RepairContext.StepAt(stock, mark) is { } topUp && RepairContext.StepAt(
            stock, finding.Place) is { } late
            && Steps.Move(stock, context, late, topUp) is { } earlier)
        {
            yield return Mend.Chemistry("move-before-top-up", $"Put '{late.Id}' before the top-up.", earlier);
        }

        foreach (var less in Pours.LessWater(finding, context))
        {
            yield return less;
        }
    }

    /// <summary>
    /// The mark against what the stock makes, and the vessel before it against the mark; a mark that cannot be read is what the stock
    /// makes.
    /// </summary>
    private static IEnumerable<VolumeAtMark> AtMark(StockFacts stock, MixingStep moment, double room)
    {
        var makes = stock.Volume.Litres;
        var mark = makes;
        if (((TopUpStep)moment.Step).To is { Value.Litres: > 0 and var stated })
        {
            mark = stated;
            yield return Of(stock, MarkFault.MarkTooHigh, moment, mark, makes, room, "more than it makes");
        }

        yield return Of(stock, MarkFault.FullBefore, moment, moment.Before.Litres, mark, room, "past the mark before it is topped up");
    }

    /// <summary>What follows the last top-up; where nothing does, the vessel was too full before it.</summary>
    private static VolumeAtMark AtTheEnd(StockFacts stock, IReadOnlyList<MixingStep> moments, double room)
    {
        var last = LastTopUp(stock);
        return moments.Skip(last.Index + 1).FirstOrDefault(m => m.After.Litres > m.Before.Litres) is { } late
            ? Of(stock, MarkFault.FilledAfter, late, moments[^1].After.Litres, stock.Volume.Litres, room, "past what it makes")
            : Of(stock, MarkFault.FullBefore, last, moments[^1].After.Litres, stock.Volume.Litres, room, "past what it makes");
    }

    private static VolumeAtMark Of(
        StockFacts stock, MarkFault fault, MixingStep moment, double litres, double mark, double room, string what)
    {
        var past = new Check(what, Rounding.SixDigits(litres), Relation.Over, Rounding.SixDigits(mark * room), "L");
        return new VolumeAtMark(stock, fault, moment, litres, mark, past) { Checks = [past] };
    }

    private static MixingStep LastTopUp(StockFacts stock) => stock.Mixing.Steps.Last(m => m.Step is TopUpStep);

    /// <summary>The liquids that fill most of the vessel.</summary>
    private static IEnumerable<RelatedPlace> Largest(IEnumerable<MixingStep> moments) =>
        moments.Select(m => (m.Step.Place, Litres: m.After.Litres - m.Before.Litres))
            .OrderByDescending(m => m.Litres)
            .Take(2)
            .Select(m => new RelatedPlace(m.Place, $"brings about {Say.Litres(m.Litres)}"));
}

/// <summary>What may be wrong with the volume of a stock that is topped up.</summary>
internal enum MarkFault
{
    /// <summary>Nothing to judge.</summary>
    None,

    /// <summary>The mark lies above what the stock makes.</summary>
    MarkTooHigh,

    /// <summary>The vessel is past the mark before it is topped up.</summary>
    FullBefore,

    /// <summary>Something follows the top-up.</summary>
    FilledAfter,
}

/// <summary>A volume against a mark.</summary>
/// <param name="Moment">The step it is about; null where there is nothing to judge.</param>
/// <param name="Litres">What is there.</param>
/// <param name="Mark">What should be there at most, without the tolerance.</param>
internal sealed record VolumeAtMark(
    StockFacts Stock, MarkFault Fault, MixingStep? Moment, double Litres, double Mark, Check? Past) : Verdict;
