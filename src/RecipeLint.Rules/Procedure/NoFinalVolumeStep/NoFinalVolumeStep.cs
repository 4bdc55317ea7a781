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

/// <summary>Steps that never bring the stock to the volume it makes, judged by the volume they do give.</summary>
internal sealed class NoFinalVolumeStep : StockRule<FinalVolume>, IProposesRepairs
{
    public const string RuleName = "no-final-volume-step";

    public override string Name => RuleName;

    protected override IEnumerable<FinalVolume> Judge(StockFacts stock, RuleContext context)
    {
        if (!stock.IsComplete || stock.Stock.Makes is null)
        {
            return [new FinalVolume(stock, 0, null) { Checks = [Check.That("it could be read whole", false)] }];
        }

        if (!stock.Mixing.IsProcedure)
        {
            return [new FinalVolume(stock, 0, null) { Checks = [Check.That("it is a bench sheet whose steps name no water at all",
                stock.Stock.ForBench)] }];
        }

        var litres = stock.Mixing.Steps[^1].After.Litres;
        var apart = new Check(
            "further apart than a jug is good for",
            Rounding.SixDigits(100 * Math.Abs(1 - (litres / stock.Volume.Litres))), Relation.Over,
                context.Options<NoFinalVolumeStepOptions>().Tolerance, "%");
        var overfull = stock.Stock.Steps.OfType<TopUpStep>().Any() && litres > stock.Volume.Litres;
        return
        [
            new FinalVolume(stock, litres, apart)
            {
                Checks =
                [
                    apart,
                    Check.That("it is not too full although topped up (the rule on that speaks of it)", !overfull),
                    Check.That("something is in the vessel", litres > 0),
                ],
            },
        ];
    }

    protected override Finding Describe(FinalVolume verdict, RuleContext context)
    {
        var stock = verdict.Stock;
        var volume = Say.Litres(stock.Volume.Litres);
        var marks = stock.Stock.Steps.OfType<TopUpStep>().ToList();
        var place = marks is [.., { To: { } last }] ? last.Place : stock.Stock.Makes!.Place;
        if (verdict.Apart is null)
        {
            return context.Find(
                place,
                $"No step pours water or tops up to the {volume} this stock makes. "
                + $"Whoever mixes it from this sheet cannot know whether the salts go into {volume} of water or are brought to that "
                + "volume, and the two differ by the room the salts take up. "
                + "Begin with a pour of about three quarters of the water and end with a top-up.",
                Harm.Damage,
                Odds.Certain,
                Certainty.Practice);
        }

        var litres = verdict.Litres;
        var missing = 1 - (litres / stock.Volume.Litres);
        var tooEarly = missing > 0 && marks is [.., { To.Value: var mark }] && mark >= stock.Volume;
        var why = tooEarly ? $"the top-up to {volume} comes while salts lie undissolved, and dissolved they take up less room"
            : marks.Count > 0 ? "the last top-up stops at "
            + $"{Say.Litres(marks[^1].To?.Value.Litres ?? litres)}" : "no step tops up to the volume";
        var effect = missing > 0
            ? $"everything in it is {Say.Percent((1 / (1 - missing)) - 1)} stronger than the label says"
            : $"everything in it is {Say.Percent(1 - (1 / (1 - missing)))} weaker than the label says";
        return context.Find(
            place,
            $"The steps give about {Say.Litres(litres)}, not the {volume} this stock makes: {why}. "
            + $"Doses are worked out for {volume}, so {effect}. "
            + $"End with a top-up to {volume}, after everything has dissolved and is back at room temperature.",
            OffStrength.HarmOf(missing),
            Odds.Certain) with
        {
            Measured = new Measured("volume against what it makes", litres / stock.Volume.Litres, 1, ""),
            Values = [new NamedValue("volume", litres, "L"), new NamedValue("makes", stock.Volume.Litres, "L")],
        };
    }

    protected override Working Work(FinalVolume verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"the volume the steps of '{verdict.Stock.Stock.Name}' give");
        if (verdict.Apart is not { } apart)
        {
            return work.Statements(verdict).Done();
        }

        var litres = work.Given("in the vessel after the last step", verdict.Litres, "L", From.VolumeModel);
        var makes = work.Given("the stock makes", verdict.Stock.Volume.Litres, "L", From.File);
        var off = work.Result("apart", "100 × |1 - vessel / makes|", 100 * Term.Size(1 - (litres / makes)), "%");
        work.Check(apart, off, work.Option("tolerance", context.Options<NoFinalVolumeStepOptions>().Tolerance)).Statements(verdict);
        return work.Done(work.Result("of what it makes", "vessel / makes", litres / makes));
    }

    /// <summary>A top-up to what the stock makes, at the end.</summary>
    protected override IEnumerable<RepairProposal> Repair(FinalVolume verdict, Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { Stock.Makes: { } makes } stock
            || context.Item(makes.Place) is not { Text: { Length: > 0 } volume })
        {
            yield break;
        }

        if (stock.Stock.Steps.OfType<TopUpStep>().LastOrDefault() is { To: { } mark })
        {
            yield return Mend.Chemistry("right-mark", $"Top up to {volume}, what the stock makes.",
                new JsonEdit.ReplaceValue(mark.Place, JsonDraft.Of(volume)));
            yield break;
        }

        var end = Steps.Insert(stock, Steps.CountOf(stock, context), ("topUp", volume));
        yield return Mend.Chemistry("top-up", $"End with a top-up to {volume}.", end);
        if (verdict.Apart is null && Amounts.Times(context, makes.Place, 0.75) is var (_, start))
        {
            yield return Mend.Chemistry(
                "pour-and-top-up", $"Begin with {start} of water and end with a top-up to {volume}.",
                    Steps.Insert(stock, 0, ("pour", start)), end);
        }
    }
}

/// <summary>The volume that the steps of a stock give.</summary>
/// <param name="Apart">How far from what it makes; null where no step names water.</param>
internal sealed record FinalVolume(StockFacts Stock, double Litres, Check? Apart) : Verdict;
