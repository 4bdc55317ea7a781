using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Physical;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Procedure;

/// <summary>A solid that the water poured so far cannot dissolve, although the finished volume could; on a bench sheet also one that has no water at all.</summary>
public sealed class TooLittleWaterToDissolve : StockRule, IProposesRepairs
{
    /// <summary>Solubility tables and cylinder marks are good to about this.</summary>
    internal const double Slack = 1.02;

    /// <summary>Share of the volume to start with (common practice, no source).</summary>
    private const double FirstWater = 0.75;

    /// <summary>Share of the volume that comes with liquids and small parts of other stocks and is no first water (common practice, no source).</summary>
    private const double NextToNone = 0.1;

    public override string Name => "too-little-water-to-dissolve";

    public override IEnumerable<Finding> Judge(StockFacts stock, RuleContext context)
    {
        var moments = stock.Mixing.Steps;
        var bench = context.Number("benchTemperature");
        if (stock.Stock.ForBench && Dry(stock, moments) is { } dry)
        {
            yield return ToppedUpDry(dry.First, dry.TopUp, stock, context);
            yield break;
        }

        foreach (var substance in stock.Additions.Where(a => !a.ThroughAliquot).Select(a => a.Substance).DistinctBy(s => s.Id))
        {
            if (substance.Form == PhysicalForm.Solid && Judge(substance, moments, bench, context) is { } finding)
            {
                yield return finding;
            }
        }
    }

    /// <summary>A solid that no water meets before the vessel is filled to its mark; null where some does.</summary>
    internal static (MixingStep First, MixingStep TopUp)? Dry(StockFacts stock, IReadOnlyList<MixingStep> moments)
    {
        var topUp = moments.FirstOrDefault(m => m.Step is TopUpStep);
        var first = moments.FirstOrDefault(m => m.Added is [{ Substance.Form: PhysicalForm.Solid, ThroughAliquot: false }, ..]);
        return topUp is null || first is null || first.Index > topUp.Index || first.Before.FreeWaterGrams > 0 || topUp.Before.FreeWaterLitres > NextToNone * stock.Volume.Litres ? null : (first, topUp);
    }

    /// <summary>Only for a sheet that people mix from: elsewhere the first water is often left out for short.</summary>
    private static Finding ToppedUpDry(MixingStep first, MixingStep topUp, StockFacts stock, RuleContext context) =>
        context.Find(
            first.Step.Place,
            $"The first water of '{stock.Stock.Name}' is the top-up to {Say.Litres(stock.Volume.Litres)}: {first.Added[0].Substance.Name} and whatever follows it lie dry in the vessel until it is full. "
            + "Filled to the mark over undissolved salt the volume is wrong once it dissolves, and what cakes at the bottom is missing in the first doses. "
            + $"Pour about {Say.Litres(RoundUp(stock.Volume.Millilitres * FirstWater) / 1000)} of water first, dissolve one salt after the other, and top up last.",
            certainty: Certainty.Practice) with
        {
            Related = [new RelatedPlace(topUp.Step.Place, "the first water")],
        };

    private static Finding? Judge(Substance substance, IReadOnlyList<MixingStep> moments, double bench, RuleContext context)
    {
        foreach (var moment in moments.Where(m => m.Added.Any(a => !a.ThroughAliquot && a.Substance.Id == substance.Id)))
        {
            var grams = moment.After.Additions.Where(a => a.Substance.Id == substance.Id).Sum(VesselContents.PureGrams);
            var (water, warmed) = WaterToDissolveIn(moments, moment.Index);
            var celsius = Math.Max(bench, warmed ?? bench);
            if (water <= 0 || HandbookSolubility.GramsPer100GramsWater(substance, celsius) is not { } solubility)
            {
                continue;
            }

            var holds = solubility * water / 100;
            if (Rounding.SixDigits(grams) <= Rounding.SixDigits(holds * Slack))
            {
                continue;
            }

            // What the whole finished volume cannot hold either is past its solubility, which another rule says once.
            if (HandbookSolubility.GramsPer100GramsWater(substance, bench) is not { } cold || grams > cold * moments[^1].After.FreeWaterGrams / 100)
            {
                return null;
            }

            var needed = grams / solubility * 100;
            var place = moment.Step.Place.Child("amount");
            return context.Find(
                place,
                $"{Say.Grams(grams)} of {substance.Name} will not dissolve in the {Say.Litres(Litres(water))} of water that is in the vessel by then: at {Say.Number(celsius)} °C that holds {Say.Grams(holds)}, "
                + $"and {Say.Grams(grams - holds)} stays at the bottom. Topped up over undissolved salt the volume is wrong, and the rest dissolves slowly or not at all. "
                + $"Pour at least {Say.Litres(RoundUp(needed) / 1000)} of water first, or warm it.") with
            {
                Measured = new Measured("salt to dissolve", grams, holds, "g"),
                Values =
                [
                    new NamedValue("mass", grams, "g"),
                    new NamedValue("water", Litres(water), "L"),
                    new NamedValue("temperature", celsius, "°C"),
                    new NamedValue("dissolves", holds, "g"),
                    new NamedValue("water needed", needed / 1000, "L"),
                ],
            };
        }

        return null;
    }

    /// <summary>Water in the vessel when the stirring starts, the top-up is due or the steps end, and the warmest the vessel is made until then.</summary>
    internal static (double Grams, double? Celsius) WaterToDissolveIn(IReadOnlyList<MixingStep> moments, int index)
    {
        double? celsius = moments.Take(index).Reverse()
            .TakeWhile(m => m.Step is not HandlingStep { Handling: Handling.Cool or Handling.Rest })
            .Select(m => MixingStep.WarmsTo(m.Step)).FirstOrDefault(t => t is not null);
        var water = moments[index].After.FreeWaterGrams;
        foreach (var later in moments.Skip(index + 1))
        {
            if (later.Step is TopUpStep)
            {
                break;
            }

            if (later.Step is HandlingStep { Handling: Handling.Stir or Handling.Filter or Handling.Rest })
            {
                // A warm step right after the stirring still helps the same salt.
                var next = moments.Skip(later.Index + 1).FirstOrDefault();
                celsius = next is null ? celsius : MixingStep.WarmsTo(next.Step) ?? celsius;
                break;
            }

            celsius = MixingStep.WarmsTo(later.Step) ?? celsius;
            water = later.After.FreeWaterGrams;
        }

        return (water, celsius);
    }

    private static double Litres(double grams) => grams / Water.DensityGramsPerMl(VesselContents.BenchCelsius) / 1000;

    /// <summary>Up to two digits, so that nobody measures 643 mL.</summary>
    private static double RoundUp(double grams)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(grams)) - 1);
        return Math.Ceiling(grams / step) * step;
    }

    /// <summary>More water first, or warm water.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) => Pours.MoreWater(finding, context).Concat(Pours.Warm(finding, context));
}
