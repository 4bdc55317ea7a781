using RecipeLint.Analysis;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Advice.Batches;

/// <summary>Something to put into a finished batch.</summary>
/// <param name="Grams">In three figures, as it is told and as it was judged.</param>
/// <param name="Litres">For a liquid that is measured; null for what is weighed.</param>
public sealed record MendPart(string Id, Substance Substance, double Grams, double? Litres)
{
    /// <summary>Of the bag, as the stock file declares it.</summary>
    public Located<MassFraction>? Assay { get; init; }
}

/// <summary>
/// What makes a batch right again: everything up to the strength of what there is most of, then water to the mark that this asks for.
/// </summary>
/// <param name="Parts">In the order of the stock's steps.</param>
/// <param name="Mark">The volume afterwards.</param>
/// <param name="AddsWater">False where the volume stays as it is.</param>
/// <param name="AdjustsAgain">The pH step to repeat at the end; null where the stock has none or nothing else changes.</param>
public sealed record BatchMend(IReadOnlyList<MendPart> Parts, Volume Mark, bool AddsWater, AdjustStep? AdjustsAgain)
{
    /// <summary>Differences that no one mends, relative to the plan (common practice, no source).</summary>
    private const double Trifle = 0.01;

    /// <summary>What brings the actual batch back to the proportions of the plan; null where nothing is missing.</summary>
    public static BatchMend? Of(StockFacts planned, StockFacts actual)
    {
        var pairs = Own(planned).Select(p => (Plan: p, Grams: Own(actual).Where(a => a.Id == p.Id && a.Substance.Id == p.Substance.Id)
            .Sum(a => a.Mass.Grams))).ToList();
        var most = pairs.Where(p => p.Plan.Mass.Grams > 0).Select(p => p.Grams / p.Plan.Mass.Grams)
            .Append(actual.Volume / planned.Volume).Append(WithRoom(planned, actual, pairs)).Max();
        var factor = most > 1 + Trifle ? most : 1;
        var parts = pairs.Select(p => Part(planned, p.Plan, (factor * p.Plan.Mass.Grams) - p.Grams)).OfType<MendPart>().ToList();
        var mark = new Volume(Figures(planned.Volume.Litres * factor, 4));
        var water = mark.Litres > actual.Volume.Litres * (1 + (Trifle / 10));
        return parts.Count == 0 && !water ? null : new BatchMend(
            parts, water ? mark : actual.Volume, water,
            parts.Count > 0 || water ? planned.Stock.Steps.OfType<AdjustStep>().LastOrDefault() : null);
    }

    /// <summary>
    /// On the planned volume, the least in which missing liquids find room: what is poured into a full vessel fills it further.
    /// </summary>
    private static double WithRoom(StockFacts planned, StockFacts actual, List<(AdditionFacts Plan, double Grams)> pairs)
    {
        var liquids = pairs.Where(p => p.Plan is { Volume: not null, Mass.Grams: > 0 })
            .Select(p => (Litres: p.Plan.Volume!.Value.Litres, Share: p.Grams / p.Plan.Mass.Grams))
            .ToList();
        var rest = planned.Volume.Litres - liquids.Sum(l => l.Litres);
        return rest > 0 ? (actual.Volume.Litres - liquids.Sum(l => l.Litres * l.Share)) / rest : 0;
    }

    /// <summary>The batch with this put in, as a stock.</summary>
    public StockDocument PutInto(StockDocument actual)
    {
        // Each has a place of its own: what stands at one place counts as one addition.
        var mended = actual.Place.Child("mended");
        var steps = actual.Steps.ToList();
        steps.AddRange(Parts.Select((part, index) => new AddStep(
            string.Create(System.Globalization.CultureInfo.InvariantCulture, $"mend-{index + 1}"), mended.Child(index))
        {
            What = new Located<string>(part.Substance.Id, actual.Place),
            Substance = part.Substance,
            Assay = part.Assay,
            Amount = new Located<Portion>(
                part.Litres is { } litres ? new Portion.ByVolume(new Volume(litres)) : new Portion.ByMass(new Mass(part.Grams)),
                actual.Place),
        }));
        if (AdjustsAgain is { } adjust)
        {
            steps.Add(adjust with { Id = "mend-adjust", Place = mended.Child("adjust") });
        }

        // Judged as one batch that is filled up once, at the end: the room that salts take up in a full vessel is no slip of the mixer's.
        if (steps.FindLastIndex(s => s is TopUpStep) is >= 0 and var last)
        {
            var topUp = (TopUpStep)steps[last];
            steps.RemoveAt(last);
            steps.Add(topUp with { To = new Located<Volume>(Mark, actual.Place) });
        }
        else if (AddsWater)
        {
            steps.Add(new TopUpStep("mend-water", mended.Child("water"))
            {
                To = new Located<Volume>(Mark, actual.Place),
                Of = actual.Steps.OfType<PourStep>().LastOrDefault()?.Of,
            });
        }

        return actual with
        {
            Steps = steps,
            Makes = actual.Makes is { } makes ? makes with { Value = Mark } : actual.Makes,
        };
    }

    private static IEnumerable<AdditionFacts> Own(StockFacts stock) => stock.Additions.Where(a => !a.ThroughAliquot);

    private static MendPart? Part(StockFacts planned, AdditionFacts plan, double missing)
    {
        if (missing <= Trifle * plan.Mass.Grams)
        {
            return null;
        }

        var grams = Figures(missing, 3);
        return new MendPart(
            plan.Id, plan.Substance, grams,
            plan is { Scale: null, Volume: { Litres: > 0 } volume } ? Figures(volume.Litres * missing / plan.Mass.Grams, 3) : null)
        {
            Assay = planned.Stock.Steps.OfType<AddStep>().FirstOrDefault(s => s.Id == plan.Id)?.Assay,
        };
    }

    private static double Figures(double value, int figures)
    {
        if (value <= 0)
        {
            return 0;
        }

        var step = Math.Pow(10, Math.Floor(Math.Log10(value)) - figures + 1);
        return (double)((decimal)Math.Round(value / step) * (decimal)step);
    }
}
