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
                yield return new Weighed(addition, forecast is TankForecast)
                {
                    Files = [batch.File],
                    Checks = [new Check("further off than allowed", off, Relation.Over, allowed, "%")],
                };
            }
        }
    }

    protected override Finding Describe(Weighed verdict, RuleContext context)
    {
        var (entry, name, place, mass, volume, part) = verdict.Addition;
        var off = verdict.Checks[0];
        var taken = entry.LeftOut ? "was left out"
            : part == 0 ? $"was replaced by {entry.Substance?.Name ?? "something else"}"
            : volume is { } poured && (mass is null || entry.Amount?.Value is Recipes.Quantities.Portion.ByVolume)
                ? $"is recorded with {Say.Litres(poured.Litres * part)} where {Say.Litres(poured.Litres)} are asked for"
                : $"is recorded with {Say.Grams(mass!.Value.Grams * part)} where {Say.Grams(mass.Value.Grams)} are asked for";
        var then = verdict.IsTank
            ? "What it brings is off by as much in what the plants get. Put in what is missing, or thin the tank, before you use it"
            : "What it brings is off by as much in every litre that the plants get. See what 'bench-sheet' makes of the record before "
                + "you use the batch";
        return context.Find(
            entry.Amount?.Place ?? entry.Place,
            $"{name} {taken} ({(part < 1 ? "-" : "+")}{Say.Number(off.Value)} %, allowed ±{Say.Number(off.Limit)} %). "
            + $"{then}, or mend the record if it was written down wrong.",
            Harm.Damage,
            Odds.Certain) with
        {
            Measured = new Measured("off", off.Value, off.Limit, "%"),
            Related = [new RelatedPlace(place, "asked for here")],
        };
    }

    internal sealed record Weighed(RecordedAddition Addition, bool IsTank) : Verdict;
}
