using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>
/// A solid that the water poured so far cannot dissolve, although the finished volume could; on a bench sheet also one that has no water at
/// all.
/// </summary>
internal sealed class TooLittleWaterToDissolve : StockRule<WaterToDissolve>, IProposesRepairs
{
    public const string RuleName = "too-little-water-to-dissolve";

    /// <summary>Water baths of a bench, °C (common practice, no source).</summary>
    private static readonly double[] _baths = [30, 35, 40];

    /// <summary>Share of the volume to start with (common practice, no source).</summary>
    private const double StartWith = 0.75;

    /// <summary>
    /// Share of the volume that comes with liquids and small parts of other stocks and is no first water (common practice, no source).
    /// </summary>
    private const double NextToNone = 0.1;

    public override string Name => RuleName;

    protected override IEnumerable<WaterToDissolve> Judge(StockFacts stock, RuleContext context)
    {
        var moments = stock.Mixing.Steps;
        if (Dry(stock, moments) is { } dry)
        {
            yield return dry;
            if (dry.Fires)
            {
                yield break;
            }
        }

        foreach (var substance in stock.Additions
            .Where(a => !a.ThroughAliquot)
            .Select(a => a.Substance)
            .DistinctBy(s => s.Id)
            .Where(s => s.Form == PhysicalForm.Solid))
        {
            foreach (var verdict in Judge(stock, substance, context))
            {
                yield return verdict;
            }
        }
    }

    protected override Finding Describe(WaterToDissolve verdict, RuleContext context) => verdict switch
    {
        DryStart dry => Describe(dry, context),
        var salt => Describe((SaltInWater)salt, context),
    };

    protected override Working Work(WaterToDissolve verdict, RuleContext context) => verdict switch
    {
        DryStart dry => Work(dry),
        var salt => Work((SaltInWater)salt),
    };

    /// <summary>More water first, or warm water.</summary>
    protected override IEnumerable<RepairProposal> Repair(WaterToDissolve verdict, Finding finding, RepairContext context) =>
        Pours.MoreWater(finding, context).Concat(Pours.Warm(finding, context));

    /// <summary>
    /// A solid that no water meets before the vessel is filled to its mark; null where some does. Only for a sheet that people mix from:
    /// elsewhere the first water is often left out for short.
    /// </summary>
    private static DryStart? Dry(StockFacts stock, IReadOnlyList<MixingStep> moments)
    {
        var topUp = moments.FirstOrDefault(m => m.Step is TopUpStep);
        var first = moments.FirstOrDefault(m => m.Added is [{ Substance.Form: PhysicalForm.Solid, ThroughAliquot: false }, ..]);
        if (topUp is null || first is null || first.Index > topUp.Index || first.Before.FreeWaterGrams > 0)
        {
            return null;
        }

        var water = new Check("next to none", topUp.Before.FreeWaterLitres, Relation.AtMost, NextToNone * stock.Volume.Litres, "L");
        return new DryStart(stock, first, topUp, water)
        {
            Checks = [water, Check.That("it is marked for the bench (else the first water may be left out for "
                + "short)", stock.Stock.ForBench)],
        };
    }

    private static IEnumerable<SaltInWater> Judge(StockFacts stock, Substance substance, RuleContext context)
    {
        var moments = stock.Mixing.Steps;
        var bench = context.Options<TooLittleWaterToDissolveOptions>().BenchTemperature;
        foreach (var moment in moments.Where(m => m.Added.Any(a => !a.ThroughAliquot && a.Substance.Id == substance.Id)))
        {
            var (water, warmed) = FirstWater.ToDissolveIn(moments, moment.Index);
            var celsius = Math.Max(bench, warmed ?? bench);
            if (water <= 0 || HandbookSolubility.GramsPer100GramsWater(substance, celsius) is not { } solubility)
            {
                continue;
            }

            var grams = FirstWater.Grams(moment.After, substance.Id);
            var holds = solubility * water / 100;
            if (!double.IsFinite(grams) || !double.IsFinite(holds))
            {
                // Stocks drawn from each other until no number holds the amount: the reader has said that it is implausible.
                continue;
            }

            var over = new Check(
                "more than it holds, by more than a table is good for",
                Rounding.SixDigits(grams), Relation.Over, Rounding.SixDigits(holds * FirstWater.Slack), "g");

            // What the whole finished volume cannot hold either is past its solubility, which another rule says once.
            var inTheEnd = HandbookSolubility.GramsPer100GramsWater(substance, bench) is { } cold
                && grams <= cold * moments[^1].After.FreeWaterGrams / 100;
            var verdict = new SaltInWater(stock, moment, substance, grams, water, celsius, solubility, holds, over)
            {
                Checks = [over, Check.That("the finished volume would hold it (else it is past its solubility altogether)", inTheEnd)],
            };
            yield return verdict.Fires ? verdict with { WarmTo = WarmTo(verdict) } : verdict;
            if (over.Holds)
            {
                yield break;
            }
        }
    }

    /// <summary>
    /// How warm that water has to be to hold it, while nothing falls out of what it comes to, °C; null where no usual bath does it.
    /// </summary>
    private static double? WarmTo(SaltInWater verdict)
    {
        var (bench, limits) = (verdict.Stock.Chemistry.Mixing, DepositOptions.Of(verdict.Stock.Settings));
        return _baths.Where(b => b > verdict.Celsius
                && HandbookSolubility.GramsPer100GramsWater(verdict.Substance, b) is { } there
                && verdict.Grams <= there * verdict.WaterGrams / 100
                && StateTrial.AtTemperature(bench, b, [], limits) is not { Helps: false })
            .Select(b => (double?)b)
            .FirstOrDefault();
    }

    private static Finding Describe(DryStart verdict, RuleContext context)
    {
        var (stock, first) = (verdict.Stock, verdict.First);
        return context.Find(
            first.Step.Place,
            $"The first water of '{stock.Stock.Name}' is the top-up to {Say.Litres(stock.Volume.Litres)}: "
                + $"{first.Added[0].Substance.Name} and whatever follows it lie dry in the vessel until it is full. "
            + "Filled to the mark over undissolved salt the volume is wrong once it dissolves, and what cakes at the bottom is missing "
            + "in the first doses. "
            + $"Pour about {Say.Litres(FirstWater.RoundedUp(stock.Volume.Litres * StartWith))} of water first, dissolve one salt after "
            + "the other, and top up last.",
            Harm.Damage,
            Odds.Certain,
            Certainty.Practice) with
        {
            Related = [new RelatedPlace(verdict.TopUp.Step.Place, "the first water")],
        };
    }

    private static Finding Describe(SaltInWater verdict, RuleContext context)
    {
        var (grams, holds) = (verdict.Grams, verdict.Holds);
        var needed = grams / verdict.Solubility * 100;
        return context.Find(
            verdict.Moment.Step.Place.Child("amount"),
            $"{Say.Grams(grams)} of {verdict.Substance.Name} will not dissolve in the {Say.Litres(Litres(verdict.WaterGrams))} of "
                + $"water that is in the vessel by then: at {Say.Number(verdict.Celsius)} °C that holds {Say.Grams(holds)}, "
            + $"and {Say.Grams(grams - holds)} stays at the bottom. Topped up over undissolved salt the volume is wrong, and the rest "
            + "dissolves slowly or not at all. "
            + context.AdviceFor(verdict.Stock).Sentence(
                [
                    new Way($"pour at least {Say.Litres(FirstWater.RoundedUp(Litres(needed)))} of water first"),
                    .. verdict.WarmTo is { } warm
                        ? [new Way($"warm it to {Say.Number(warm)} °C, which holds it", Puts.Warmth)] : Array.Empty<Way>(),
                ]),
            Harm.Damage,
            Odds.Certain) with
        {
            Measured = new Measured("salt to dissolve", grams, holds, "g"),
            Values =
            [
                new NamedValue("mass", grams, "g"),
                new NamedValue("water", Litres(verdict.WaterGrams), "L"),
                new NamedValue("temperature", verdict.Celsius, "°C"),
                new NamedValue("dissolves", holds, "g"),
                new NamedValue("water needed", Litres(needed), "L"),
            ],
        };
    }

    private static Working Work(DryStart verdict)
    {
        var work = new WorkingBuilder($"the water of '{verdict.Stock.Stock.Name}' before it is topped up");
        var poured = work.Given("water in the vessel by then", verdict.Water.Value, "L", From.File);
        var least = work.Result("a tenth of the volume", "0.1 × volume",
            NextToNone * work.Given("volume", verdict.Stock.Volume.Litres, "L", From.File), "L");
        return work.Check(verdict.Water, poured, least).Statements(verdict).Done(poured);
    }

    private static Working Work(SaltInWater verdict)
    {
        var work = new WorkingBuilder($"{verdict.Substance.Name} at step '{verdict.Moment.Step.Id}'");
        var grams = work.Given("of it, pure", verdict.Grams, "g", From.File);
        var water = work.Given("water in the vessel by then", verdict.WaterGrams, "g", From.File);
        var solubility = work.Given($"100 g of water hold at {Say.Number(verdict.Celsius)} °C", verdict.Solubility, "g",
            From.SolubilityTable);
        var holds = work.Result("the water holds", "solubility × water / 100", solubility * water / 100, "g");
        return work.Check(verdict.Over, grams, work.Result("with 2 % for the table", "holds × 1.02", holds * FirstWater.Slack, "g"))
            .Statements(verdict).Done(grams);
    }

    private static double Litres(double grams) => grams / Water.DensityGramsPerMl(VesselContents.BenchCelsius) / 1000;
}

/// <summary>The water that has to dissolve something.</summary>
internal abstract record WaterToDissolve(StockFacts Stock) : Verdict;

/// <summary>A solid that lies dry until the vessel is topped up.</summary>
internal sealed record DryStart(StockFacts Stock, MixingStep First, MixingStep TopUp, Check Water) : WaterToDissolve(Stock);

/// <summary>A solid in the water that is there by then.</summary>
/// <param name="Solubility">g in 100 g of water at that temperature.</param>
/// <param name="Holds">g that the water dissolves.</param>
internal sealed record SaltInWater(
    StockFacts Stock, MixingStep Moment, Substance Substance, double Grams, double WaterGrams, double Celsius, double Solubility,
    double Holds, Check Over)
    : WaterToDissolve(Stock)
{
    /// <summary>°C at which that water holds it and nothing falls out; null where warmth is no way.</summary>
    public double? WarmTo { get; init; }
}
