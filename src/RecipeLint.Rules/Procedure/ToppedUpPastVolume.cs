using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>A vessel that holds more than the mark before or after it is topped up, or a mark above what the stock makes.</summary>
public sealed class ToppedUpPastVolume : StockRule, IProposesRepairs
{
    public override string Name => "topped-up-past-volume";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        // An amount that does not fit the batch at all has been reported where it stands.
        var implausible = context.Facts.Workspace.Problems.Any(p => p.Kind == ProblemKind.ImplausibleAmount && p.Place.File == stock.Stock.File);
        var finding = implausible ? null : First(stock, context);
        return finding is null ? [] : [finding];
    }

    private static Finding? First(StockFacts stock, RuleContext context)
    {
        var room = 1 + (context.Number("tolerance") / 100);
        var moments = stock.Mixing.Steps;
        var makes = stock.Volume.Litres;
        foreach (var moment in moments)
        {
            if (moment.Step is not TopUpStep { To: { Value.Litres: > 0 } mark })
            {
                continue;
            }

            if (Rounding.SixDigits(mark.Value.Litres) > Rounding.SixDigits(makes * room))
            {
                return Past(
                    context,
                    mark.Place,
                    mark.Value.Litres,
                    makes,
                    $"The vessel is topped up to {Say.Litres(mark.Value.Litres)}, but the stock makes {Say.Litres(makes)}: everything in it comes out at {Say.Percent(makes / mark.Value.Litres)} of what is meant. "
                    + "Doses are worked out from what the stock makes. Correct the mark, or 'makes' and the doses with it.");
            }

            if (Rounding.SixDigits(moment.Before.Litres) > Rounding.SixDigits(mark.Value.Litres * room))
            {
                var over = moment.Before.Litres - mark.Value.Litres;
                return Past(
                    context,
                    moment.Step.Place,
                    moment.Before.Litres,
                    mark.Value.Litres,
                    $"Before it is topped up to {Say.Litres(mark.Value.Litres)} the vessel already holds about {Say.Litres(moment.Before.Litres)}: "
                    + $"water, liquids and what the dissolved salts take up. The stock comes out {Say.Percent(over / moment.Before.Litres)} weaker than its label. "
                    + $"Pour about {Say.Litres(over + (0.1 * mark.Value.Litres))} less water at the start, so that there is room to top up.") with
                {
                    Related = [.. Largest(moments.Take(moment.Index))],
                };
            }
        }

        var lastTopUp = moments.LastOrDefault(m => m.Step is TopUpStep);
        if (lastTopUp is null || Rounding.SixDigits(moments[^1].After.Litres) <= Rounding.SixDigits(makes * room))
        {
            return null;
        }

        var late = moments.Skip(lastTopUp.Index + 1).First(m => m.After.Litres > m.Before.Litres);
        var end = moments[^1].After.Litres;
        return Past(
            context,
            late.Step.Place,
            end,
            makes,
            $"What goes in after the vessel is topped up brings it to about {Say.Litres(end)} instead of {Say.Litres(makes)}: the stock comes out {Say.Percent(1 - (makes / end))} weaker than its label. "
            + "The mark only counts when nothing follows it. Put this step before the top-up.") with
        {
            Related = [new RelatedPlace(lastTopUp.Step.Place, "topped up here")],
        };
    }

    /// <summary>The liquids that fill most of the vessel.</summary>
    private static IEnumerable<RelatedPlace> Largest(IEnumerable<MixingStep> moments) =>
        moments.Select(m => (m.Step.Place, Litres: m.After.Litres - m.Before.Litres))
            .OrderByDescending(m => m.Litres)
            .Take(2)
            .Select(m => new RelatedPlace(m.Place, $"brings about {Say.Litres(m.Litres)}"));

    private static Finding Past(RuleContext context, Place place, double litres, double limit, string message) =>
        context.Find(place, message) with
        {
            Measured = new Measured("volume", litres, limit, "L"),
            Values = [new NamedValue("volume", litres, "L"), new NamedValue("mark", limit, "L")],
        };

    /// <summary>The right mark, less water before it, or the late step in front of it.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock)
        {
            yield break;
        }

        if (stock.Stock.Makes is { } makes && context.Item(makes.Place) is { } written && context.Item(finding.Place) is { Text.Length: > 0 })
        {
            yield return Repair.Chemistry("right-mark", $"Top up to {written.Text}, what the stock makes.", new JsonEdit.ReplaceValue(finding.Place, JsonDraft.Of(written.Text)));
        }

        if (finding.Related is [{ Place: var mark }, ..] && RepairContext.StepAt(stock, mark) is { } topUp && RepairContext.StepAt(stock, finding.Place) is { } late
            && Steps.Move(stock, context, late, topUp) is { } earlier)
        {
            yield return Repair.Chemistry("move-before-top-up", $"Put '{late.Id}' before the top-up.", earlier);
        }

        foreach (var less in Pours.LessWater(finding, context))
        {
            yield return less;
        }
    }
}
