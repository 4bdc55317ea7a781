using RecipeLint.Analysis;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;
using NetWeight = RecipeLint.Analysis.Uncertainty.Weighing;

namespace RecipeLint.Rules.Weighing;

/// <summary>More on a scale than it carries, alone or with any vessel the shop has.</summary>
public sealed class OverScaleCapacity : WorkspaceRule, IProposesRepairs
{
    /// <summary>
    /// Part of the capacity from which a weight lies in a vessel and no longer on a paper or in a boat (common practice, no source).
    /// </summary>
    internal const double InAVessel = 0.5;

    public override string Name => "over-scale-capacity";

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        foreach (var weighed in WeighedAmount.In(facts).Where(w => w.Scale.Capacity is { Grams: > 0 }))
        {
            if (weighed.Weighing.Load(null) == ScaleLoad.Over)
            {
                yield return Over(weighed, context);
            }
            else if (weighed.Mass >= weighed.Scale.Capacity!.Value * InAVessel
                && LightestVessel(weighed.Shop) is { Tare: { } tare } vessel && weighed.Weighing.Load(tare) == ScaleLoad.OverWithVessel)
            {
                yield return NoRoomForAVessel(weighed, vessel, tare, context);
            }
        }

        foreach (var stock in facts.Stocks)
        {
            foreach (var finding in OnNoScale(stock, context))
            {
                yield return finding;
            }
        }
    }

    private static Finding Over(WeighedAmount weighed, RuleContext context)
    {
        var (mass, capacity) = (weighed.Mass.Grams, weighed.Scale.Capacity!.Value.Grams);
        var message = $"{Say.Grams(mass)} of {weighed.Name} is more than '{weighed.Scale.Name}' carries, {Say.Grams(capacity)}. "
            + "An overloaded scale shows an error or a wrong weight, and its cell can be bent for good. "
            + $"{Instead(weighed)}eigh it in {Portions(mass, capacity)}.";
        return context.Find(weighed.AmountPlace, message) with
        {
            Measured = new Measured("mass", mass, capacity, "g"),
            Values = [new NamedValue("mass", mass, "g"), new NamedValue("capacity", capacity, "g")],
        };
    }

    private static Finding NoRoomForAVessel(WeighedAmount weighed, Vessel vessel, Mass tare, RuleContext context)
    {
        var capacity = weighed.Scale.Capacity!.Value;
        var left = (capacity - weighed.Mass).Grams;
        var gross = (weighed.Mass + tare).Grams;
        var message = $"{Say.Grams(weighed.Mass.Grams)} of {weighed.Name} leaves {Say.Grams(left)} of the {Say.Grams(capacity.Grams)} that '{weighed.Scale.Name}' carries, "
            + $"and the lightest vessel of the shop, '{vessel.Name}', is {Say.Grams(tare.Grams)}. A tared vessel still loads the scale. "
            + (gross - (weighed.Mass.Grams / 2) <= capacity.Grams ? "Weigh in two portions, or in" : "Weigh it in") + " a bag or boat that is light enough.";
        return context.Find(weighed.AmountPlace, message, Level.Note, Certainty.Practice) with
        {
            Measured = new Measured("mass with vessel", gross, capacity.Grams, "g"),
            Values = [new NamedValue("mass with vessel", gross, "g"), new NamedValue("capacity", capacity.Grams, "g")],
            Related = [new RelatedPlace(vessel.Place, "the lightest vessel with a stated tare")],
        };
    }

    /// <summary>A weight no scale of the shop carries, where the file names none.</summary>
    private static IEnumerable<Finding> OnNoScale(StockFacts stock, RuleContext context)
    {
        var largest = stock.Settings.Scales.All(s => s.Capacity is not null)
            ? stock.Settings.Scales.OrderByDescending(s => s.Capacity!.Value).FirstOrDefault()
            : null;
        if (largest?.Capacity is not { Grams: > 0 } capacity)
        {
            yield break;
        }

        foreach (var step in stock.Stock.Steps.OfType<AddStep>())
        {
            var addition = stock.Additions.FirstOrDefault(a => a.Id == step.Id && !a.ThroughAliquot);
            if (addition is not { Scale: null, Measure: null }
                || step.Amount is not { Value: Portion.ByMass or Portion.PerLitreMass or Portion.ByAmount or Portion.PerLitreAmount } amount
                || addition.Mass <= capacity)
            {
                continue;
            }

            var message = $"No scale of the shop carries {Say.Grams(addition.Mass.Grams)} of {addition.Substance.Name}; the largest, '{largest.Name}', carries {Say.Grams(capacity.Grams)}. "
                + $"How it is weighed is then left to whoever stands there. Weigh it in {Portions(addition.Mass.Grams, capacity.Grams)}, or write it in whole bags of known weight.";
            yield return context.Find(amount.Place, message, Level.Note) with
            {
                Measured = new Measured("mass", addition.Mass.Grams, capacity.Grams, "g"),
                Values = [new NamedValue("mass", addition.Mass.Grams, "g"), new NamedValue("capacity", capacity.Grams, "g")],
            };
        }
    }

    internal static Vessel? LightestVessel(ShopSettings shop) =>
        shop.Vessels.Where(v => v.Tare is { Grams: > 0 }).OrderBy(v => v.Tare!.Value).ThenBy(v => v.Name, StringComparer.Ordinal).FirstOrDefault();

    /// <summary>The finest scale of the shop that carries it, as the start of a sentence; else just a capital.</summary>
    private static string Instead(WeighedAmount weighed)
    {
        var other = weighed.Shop.Scales
            .Where(s => s.Readability.Grams > 0)
            .Select(s => new NetWeight(s, weighed.Mass))
            .Where(w => w.Load(null) is ScaleLoad.Within)
            .OrderBy(w => w.Scale.Readability)
            .ThenBy(w => w.Scale.Name, StringComparer.Ordinal)
            .FirstOrDefault();
        return other is null
            ? "W"
            : $"Use '{other.Scale.Name}', which carries {Say.Grams(other.Scale.Capacity!.Value.Grams)} and is right to ±{Say.Percent(other.RelativeExpanded ?? 0)} here, or w";
    }

    /// <summary>Equal portions that leave a tenth of the capacity for what they lie in (common practice, no source).</summary>
    private static string Portions(double mass, double capacity)
    {
        var count = Math.Ceiling(Rounding.SixDigits(mass / (0.9 * capacity)));
        return $"{Say.Number(count)} portions of {Say.Grams(mass / count)}";
    }

    /// <summary>Another scale, or a smaller batch.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context) =>
        Equipment.OtherScales(finding, context).Concat(context.StockOf(finding) is { } stock ? [BatchSize.Smaller(context, stock)] : []);
}
