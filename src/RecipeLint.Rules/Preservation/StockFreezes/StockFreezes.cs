using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Preservation;

/// <summary>A stock that is kept colder than where ice begins in it.</summary>
internal sealed class StockFreezes : StockRule<FrostInTheBottle>, IProposesRepairs
{
    public const string RuleName = "stock-freezes";

    /// <summary>Where water freezes, and no solution above it; °C.</summary>
    private const double IceOfWater = 0;

    public override string Name => RuleName;

    protected override IEnumerable<FrostInTheBottle> Judge(StockFacts stock, RuleContext context)
    {
        var coldest = Rounding.SixDigits(stock.StorageTemperature.Low.Celsius);
        if (coldest >= IceOfWater)
        {
            yield return new FrostInTheBottle(stock, null)
            {
                Checks = [new Check("below where water freezes", coldest, Relation.Under, IceOfWater, "°C")],
            };
            yield break;
        }

        var frost = Frost.Of(stock.Chemistry.Mixing.Mix, DepositLimits.Default);
        var frozen = frost is { IceAt: not null }
            ? new Check("colder than where ice may begin", coldest, Relation.Under, Rounding.SixDigits(frost.IceFrom.Celsius), "°C")
            : null;
        yield return new FrostInTheBottle(stock, frozen)
        {
            IceAt = Rounding.SixDigits(frost?.IceAt?.Celsius ?? 0),
            Checks = [frozen ?? Check.That("where ice begins in it can be told (down to -20 °C)", false)],
        };
    }

    protected override Finding Describe(FrostInTheBottle verdict, RuleContext context)
    {
        var (stock, frozen) = (verdict.Stock, verdict.Frozen!);
        var message = $"'{stock.Stock.Name}' is kept at down to {Say.Number(frozen.Value)} °C{KeptWords.Assumed(stock)}, "
            + $"and ice can begin in it from {Say.Number(Shown(frozen.Limit))} °C down ({Say.Number(Shown(verdict.IceAt))} °C by the "
            + "model, which may be a fifth too low). "
            + "Ice takes a tenth more room, so a full bottle can burst; what stays liquid gets stronger, and salts that crystallise out of "
            + "it may not dissolve again when it thaws. "
            + context.AdviceFor(stock).Sentence(
                [new Way($"keep it above {Say.Number(Safe(frozen.Limit))} °C", Puts.Keeping)],
                "where frost cannot be kept out leave a tenth of the bottle empty, and thaw it whole, warm it and shake it clear before "
                    + "it is dosed");
        var odds = frozen.Value < verdict.IceAt ? Odds.Certain : Odds.NearTheLimit;
        return context.Find(stock.Stock.Keep?.At?.Place ?? stock.Stock.Place, message, Harm.Damage, odds) with
        {
            Measured = new Measured("coldest it is kept", frozen.Value, frozen.Limit, "°C"),
            Values = [new NamedValue("coldest", frozen.Value, "°C"), new NamedValue("ice may begin at", frozen.Limit, "°C")],
        };
    }

    protected override Working Work(FrostInTheBottle verdict, RuleContext context)
    {
        var work = new WorkingBuilder($"frost in '{verdict.Stock.Stock.Name}'");
        var coldest = work.Given("coldest it is kept", Rounding.SixDigits(verdict.Stock.StorageTemperature.Low.Celsius), "°C", From.File);
        if (verdict.Frozen is { } frozen)
        {
            var ice = work.Given(
                "ice may begin at, from the activity of its water at 0 °C and what that is good for", frozen.Limit, "°C", From.Engine);
            return work.Check(frozen, coldest, ice).Done(coldest);
        }

        return verdict.Checks is [{ Unit: "°C" } mild]
            ? work.Check(mild, coldest, work.Given("water freezes at", IceOfWater, "°C", "by definition")).Done(coldest)
            : work.Statements(verdict).Done(coldest);
    }

    /// <summary>Half a degree is more than it is known to.</summary>
    private static double Shown(double ice) => (Math.Ceiling(2 * ice) / 2) + 0.0;

    /// <summary>No colder than where ice may begin, in whole degrees and at most 0 °C.</summary>
    private static double Safe(double ice) => Math.Min(IceOfWater, Math.Ceiling(ice)) + 0.0;

    /// <summary>Warmer, as far as no ice forms.</summary>
    protected override IEnumerable<RepairProposal> Repair(FrostInTheBottle verdict, Finding finding, RepairContext context) =>
        context.StockOf(finding) is { } stock ? [Keep.Warmer(context, stock)] : [];
}

/// <summary>The coldest a stock is kept against where ice begins in it.</summary>
/// <param name="Frozen">Null where it is kept above 0 °C, or where ice begins cannot be told.</param>
internal sealed record FrostInTheBottle(StockFacts Stock, Check? Frozen) : Verdict
{
    /// <summary>Where the model has ice begin, °C; its error is in the limit of the check.</summary>
    public double IceAt { get; init; }
}
