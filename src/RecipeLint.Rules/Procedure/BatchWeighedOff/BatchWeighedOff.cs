using RecipeLint.Analysis;
using RecipeLint.Analysis.Batches;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Procedure;

/// <summary>A batch in which something was weighed that the stock file does not ask for.</summary>
internal sealed class BatchWeighedOff : WorkspaceRule<BatchWeighedOff.Weighed>
{
    public const string RuleName = "batch-weighed-off";

    public override string Name => RuleName;

    /// <summary>Two amounts that the message quotes; there is nothing more to work out.</summary>
    public override bool HasWorking => false;

    protected override IEnumerable<Weighed> Judge(Facts facts, RuleContext context)
    {
        foreach (var batch in facts.Workspace.Batches)
        {
            if (BatchForecast.Of(facts, batch) is not { } forecast)
            {
                continue;
            }

            var allowed = context.For(batch.File).Options<BatchWeighedOffOptions>().Allowed;
            foreach (var addition in forecast.Additions)
            {
                var off = Rounding.SixDigits(100 * Math.Abs(addition.Part - 1));
                yield return new Weighed(addition)
                {
                    Files = [batch.File],
                    Checks = [new Check("further off than allowed", off, Relation.Over, allowed, "%")],
                };
            }
        }
    }

    protected override Finding Describe(Weighed verdict, RuleContext context)
    {
        var (entry, asked, part) = verdict.Addition;
        var off = verdict.Checks[0];
        var taken = entry.LeftOut ? "was left out"
            : part == 0 ? $"was replaced by {entry.Substance!.Name}"
            : asked.Volume is { } volume && entry.Amount?.Value is Recipes.Quantities.Portion.ByVolume
                ? $"is recorded with {Say.Litres(volume.Litres * part)} where {Say.Litres(volume.Litres)} are asked for"
                : $"is recorded with {Say.Grams(asked.Mass.Grams * part)} where {Say.Grams(asked.Mass.Grams)} are asked for";
        return context.Find(
            entry.Amount?.Place ?? entry.Place,
            $"{asked.Substance.Name} {taken} ({(part < 1 ? "-" : "+")}{Say.Number(off.Value)} %, allowed ±{Say.Number(off.Limit)} %). "
            + "What it brings is off by as much in every litre that the plants get. See what 'bench-sheet' makes of the record before "
            + "you use the batch, or mend the record if it was written down wrong.",
            Harm.Damage,
            Odds.Certain) with
        {
            Measured = new Measured("off", off.Value, off.Limit, "%"),
            Related = [new RelatedPlace(asked.Place, "asked for here")],
        };
    }

    internal sealed record Weighed(RecordedAddition Addition) : Verdict;
}
