using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using NetWeight = RecipeLint.Analysis.Uncertainty.Weighing;

namespace RecipeLint.Rules.Weighing;

/// <summary>A pre-stock worked out: so much in so much water, and the part of it that brings the small weight.</summary>
/// <param name="Relative">Expanded uncertainty (k = 2) of what the aliquot brings: weight, volume of the pre-stock and aliquot.</param>
internal sealed record PreStock(Mass Weight, Volume Volume, Volume Aliquot, double Relative);

/// <summary>Ways round a weight that is too small for its scale, each with its numbers.</summary>
internal static class TinyWeight
{
    /// <summary>A batch that grows more than this is no longer the same job (common practice, no source).</summary>
    private const double MostBatchFactor = 10;

    /// <summary>Stronger than this many times, the dose gets hard to measure in its turn (common practice, no source).</summary>
    private const double MostStrengthFactor = 4;

    /// <summary>Part of the batch an aliquot may be (common practice, no source).</summary>
    private const double MostOfBatch = 0.1;

    /// <summary>Room that is kept to the handbook solubility (common practice, no source).</summary>
    private const double OfSolubility = 0.5;

    private static readonly double[] _preStockMillilitres = [100, 250, 500, 1000];

    private static readonly double[] _aliquotMillilitres = [100, 50, 25, 20, 10, 5];

    /// <summary>One sentence with at least one way out.</summary>
    /// <param name="minimum">The smallest weight that would do on this scale.</param>
    /// <param name="limit">Expanded uncertainty (k = 2) that a way out has to keep, as a fraction.</param>
    internal static string Remedy(WeighedAmount weighed, Mass minimum, double limit)
    {
        if (BetterScale(weighed, limit) is var (scale, relative))
        {
            return $"Weigh it on '{scale.Name}', which is right to ±{Say.Percent(relative)} here.";
        }

        var ways = new List<string>();
        if (Diluted(weighed, limit) is { } pre)
        {
            ways.Add($"dissolve {Say.Grams(pre.Weight.Grams)} in water to {Say.Litres(pre.Volume.Litres)} and add "
                + $"{Say.Litres(pre.Aliquot.Litres)} of that instead (±{Say.Percent(pre.Relative)})");
        }

        var factor = minimum / weighed.Mass;
        if (weighed.Stock is { } stock && factor <= MostBatchFactor)
        {
            ways.Add($"make {Litres(stock.Volume.Litres * factor)} at once");
            if (stock.Stock.Dose is { Value.LitresPerLitre: > 0 } dose
                && factor <= MostStrengthFactor
                && stock.IsComplete
                && HighestConcentration.Of(stock, DepositOptions.Of(stock.Settings)).Factor >= Rounding.TwoDigitsUp(factor))
            {
                ways.Add($"make the stock {Up(factor)} times as strong for "
                    + $"{Say.Number(dose.Value.MillilitresPerLitre / Rounding.TwoDigitsUp(factor))} mL/L");
            }
        }

        ways.Add("use a finer scale");
        var text = ways.Count == 1 ? ways[0] : string.Join(", ", ways.SkipLast(1)) + " or " + ways[^1];
        return Say.Capital(text) + ".";
    }

    /// <summary>The pre-stock as a file of its own and the part of it in place of the small weight; null where none helps.</summary>
    internal static Repair? ThroughPreStock(RepairContext context, StockFacts stock, AdditionFacts addition)
    {
        var limit = BelowMinimumWeight.LimitFor(context.Rule, stock.Stock.File);
        if (WeighedAmount.In(stock)
            .FirstOrDefault(w => w.Addition == addition) is not { } weighed || Diluted(weighed, limit) is not { } made
            || context.Item(addition.Place) is not { Kind: JsonKind.Object } step || step["amount"] is null || step["add"] is null)
        {
            return null;
        }

        var folder = stock.Stock.File.LastIndexOf('/') is var slash and >= 0 ? stock.Stock.File[..(slash + 1)] : "";
        var name = $"{Slug.Of(addition.Id, ".")}-pre.stock.json";
        var (weight, volume, aliquot) =
            (Amounts.Grams(made.Weight.Grams), Amounts.Litres(made.Volume.Litres), Amounts.Litres(made.Aliquot.Litres));
        var own = step.Members
            .Where(m => m.Name is "add" or "assay" or "with")
            .Select(m => new DraftMember(m.Name, Steps.Copy(m.Value)))
            .ToList();
        own.Insert(1, new DraftMember("amount", JsonDraft.Of(weight)));
        var document = new JsonDraft.Object(
        [
            new DraftMember("format", new JsonDraft.Literal("1")),
            new DraftMember("name", JsonDraft.Of($"Pre-stock of {addition.Substance.Name}")),
            new DraftMember("makes", JsonDraft.Of(volume)),
            new DraftMember("steps", new JsonDraft.List(
            [
                JsonDraft.Of(("pour", JsonDraft.Of(Amounts.Litres(0.8 * made.Volume.Litres))), ("of", JsonDraft.Of("distilled"))),
                new JsonDraft.Object(own),
                JsonDraft.Of(("stir", JsonDraft.Of("until clear"))),
                JsonDraft.Of(("topUp", JsonDraft.Of(volume)), ("of", JsonDraft.Of("distilled"))),
            ])),
        ]);
        List<JsonEdit> edits =
        [
            new JsonEdit.NewFile(Place.Whole(folder + name), document),
            new JsonEdit.ReplaceValue(addition.Place.Child("add"), JsonDraft.Of(name)),
            new JsonEdit.ReplaceValue(addition.Place.Child("amount"), JsonDraft.Of(aliquot)),
            .. new[] { "assay", "with" }.Where(n => step[n] is not null).Select(n => new JsonEdit.Remove(addition.Place.Child(n))),
        ];
        return Repair.Chemistry(
            "pre-stock",
            $"Dissolve {weight} of {addition.Substance.Name} to {volume} as a pre-stock ('{name}') and add {aliquot} of that, right to "
                + $"±{Say.Percent(made.Relative)}.",
            [.. edits]);
    }

    /// <summary>A scale the shop has that carries the weight and keeps the limit; the coarsest that will do.</summary>
    private static (Scale Scale, double Relative)? BetterScale(WeighedAmount weighed, double limit) =>
        weighed.Shop.Scales
            .Where(s => s.Readability < weighed.Scale.Readability && s.Readability.Grams > 0)
            .Select(s => new NetWeight(s, weighed.Mass))
            .Where(w => w.Load(null) != ScaleLoad.Over && w.RelativeExpanded <= limit && !w.IsBelowStatedMinimum)
            .OrderByDescending(w => w.Scale.Readability)
            .ThenBy(w => w.Scale.Name, StringComparer.Ordinal)
            .Select(w => ((Scale, double)?)(w.Scale, w.RelativeExpanded!.Value))
            .FirstOrDefault();

    /// <summary>
    /// The smallest pre-stock whose aliquot is known to half the limit, else the one that is known best within the limit; null when none
    /// is, or the substance would not stay dissolved in it.
    /// </summary>
    internal static PreStock? Diluted(WeighedAmount weighed, double limit)
    {
        PreStock? best = null;
        foreach (var volume in _preStockMillilitres.Select(Volume.FromMillilitres))
        {
            foreach (var aliquot in _aliquotMillilitres.Select(Volume.FromMillilitres))
            {
                if (aliquot > weighed.Batch * MostOfBatch || aliquot > volume / 2)
                {
                    continue;
                }

                var weighing = weighed.Weighing with { Mass = weighed.Mass * (volume / aliquot) };
                if (weighing.Load(null) == ScaleLoad.Over || weighing.IsBelowStatedMinimum || weighing.RelativeExpanded is not { } weight)
                {
                    continue;
                }

                var (made, taken) = (MeasureAdvice.StandardOf(weighed.Shop, volume), MeasureAdvice.StandardOf(weighed.Shop, aliquot));
                var relative = 2 * Math.Sqrt((weight * weight / 4) + (made * made) + (taken * taken));
                if (relative > limit || relative >= (best?.Relative ?? double.MaxValue) || !StaysDissolved(weighed, weighing.Mass, volume))
                {
                    continue;
                }

                best = new PreStock(weighing.Mass, volume, aliquot, relative);
                if (relative <= limit / 2)
                {
                    return best;
                }
            }
        }

        return best;
    }

    private static bool StaysDissolved(WeighedAmount weighed, Mass mass, Volume volume)
    {
        var addition = weighed.Addition;
        var gramsPer100 = mass.Grams / volume.Litres / 10;
        if (HandbookSolubility.GramsPer100GramsWater(addition.Substance, weighed.Coldest.Celsius) is { } most
            && gramsPer100 > OfSolubility * most)
        {
            return false;
        }

        if (addition.ComponentMoles.IsEmpty)
        {
            return true;
        }

        var mix = SolutionMix.Of(addition.ComponentMoles.Times(mass / addition.Mass), volume);
        var celsius = Math.Clamp(weighed.Coldest.Celsius, SolutionInput.LowestCelsius, SolutionInput.HighestCelsius);
        return DepositJudgement.Of(StateSolver.Solve(mix, celsius), DepositLimits.Default) is not { Failure: null, IsClear: false };
    }

    /// <summary>Rounded up to two digits, so that the weight is not again just short.</summary>
    private static string Litres(double litres) => Say.Litres(Rounding.TwoDigitsUp(litres));

    private static string Up(double factor) => Rounding.TwoDigitsUp(factor).ToString("0.##", CultureInfo.InvariantCulture);
}
