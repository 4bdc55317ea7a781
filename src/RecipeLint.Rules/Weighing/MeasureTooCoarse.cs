using RecipeLint.Analysis;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Shop;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.Weighing;

/// <summary>A dose, aliquot or liquid taken with a measure that is too coarse for it, or in more fillings than anyone counts rightly.</summary>
public sealed class MeasureTooCoarse : WorkspaceRule, IProposesRepairs
{
    private const string RuleName = "measure-too-coarse";

    private const string LimitOption = "limit";

    internal static readonly MeasureKind[] FilledByHand = [MeasureKind.Cylinder, MeasureKind.Flask, MeasureKind.Pipette, MeasureKind.Syringe, MeasureKind.Jug];

    public override string Name => RuleName;

    public override IEnumerable<Finding> Judge(Facts facts, RuleContext context)
    {
        foreach (var taken in MeasuredVolume.In(facts))
        {
            var options = context.For(taken.File);
            var limit = options.Number(LimitOption) / 100;
            var fillings = options.Number("fillings");
            if (taken.Relative > limit)
            {
                yield return TooCoarse(taken, limit, context);
            }
            else if (FilledByHand.Contains(taken.Pouring.Measure.Kind) && taken.Pouring.Fillings > fillings)
            {
                yield return TooManyFillings(taken, fillings, context);
            }
        }
    }

    /// <summary>Whether this rule calls the measure too coarse, with the limit its shop set.</summary>
    internal static bool Reports(Facts facts, MeasuredVolume taken) =>
        ShopOption.Of(facts, taken.File, RuleName, LimitOption) is { } limit && taken.Relative > limit / 100;

    private static Finding TooCoarse(MeasuredVolume taken, double limit, RuleContext context)
    {
        var (pouring, measure) = (taken.Pouring, taken.Pouring.Measure);
        var times = pouring.Fillings > 1 ? $" in {pouring.Fillings} fillings" : "";
        var known = measure.Tolerance is null ? $", the usual limit of such a {Kind(measure)}" : "";
        var message = $"{Say.Litres(pouring.Volume.Litres)} {taken.What} taken with '{measure.Name}'{times} is only known to ±{Say.Percent(taken.Relative)}"
            + $" (±{Say.Litres(pouring.Limit.Litres)} a filling{known}). "
            + "Every element it brings can be off by as much. "
            + Remedy(taken, limit);
        return context.Find(taken.Place, message, null, measure.Tolerance is null ? Certainty.Estimate : Certainty.Computed) with
        {
            Measured = new Measured("relative expanded uncertainty", taken.Relative * 100, limit * 100, "%"),
            Values =
            [
                new NamedValue("volume", pouring.Volume.Millilitres, "mL"),
                new NamedValue("fillings", pouring.Fillings, ""),
                new NamedValue("standard uncertainty", pouring.Standard.Millilitres, "mL"),
                new NamedValue("relative expanded uncertainty", taken.Relative * 100, "%"),
            ],
            Related = [new RelatedPlace(measure.Place, "the measure")],
        };
    }

    private static string Remedy(MeasuredVolume taken, double limit)
    {
        var volume = taken.Pouring.Volume;
        if (MeasureAdvice.BestOf(taken.Shop, volume) is var (other, relative) && relative <= limit && other != taken.Pouring.Measure)
        {
            return $"Take '{other.Name}', which is right to ±{Say.Percent(relative)} here.";
        }

        return MeasureAdvice.ToBuy(volume, limit) is { } bought
            ? $"Take {bought}, or dilute it first and take ten times as much."
            : "Dilute it first and take ten times as much.";
    }

    private static Finding TooManyFillings(MeasuredVolume taken, double limit, RuleContext context)
    {
        var (fillings, name) = (taken.Pouring.Fillings, taken.Pouring.Measure.Name);
        var message = $"{Say.Litres(taken.Pouring.Volume.Litres)} {taken.What} takes {fillings} fillings of '{name}'. "
            + $"Whoever loses count by two is off by {Say.Percent(2.0 / fillings)}, and the time it takes invites it. "
            + "Take a larger measure, or weigh the dose.";
        return context.Find(taken.Place, message, Level.Note, Certainty.Practice) with
        {
            Measured = new Measured("fillings", fillings, limit, ""),
            Values = [new NamedValue("fillings", fillings, "")],
        };
    }

    private static string Kind(Measure measure) => measure.Kind switch
    {
        MeasureKind.Cylinder => "cylinder",
        MeasureKind.Flask => "flask",
        MeasureKind.Pipette => "pipette",
        MeasureKind.Syringe => "syringe",
        MeasureKind.Injector => "injector",
        MeasureKind.Jug => "jug",
        MeasureKind.Dropper => "dropper",
        _ => "spoon",
    };

    /// <summary>Another measure of the shop, or more of a weaker stock; fewer fillings of a stronger one.</summary>
    public IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        foreach (var measure in Equipment.OtherMeasures(finding, context))
        {
            yield return measure;
        }

        var taken = finding.Place.File is var file && context.Facts.FindStock(file) is { } bottle
            ? RepairContext.StepAt(bottle, finding.Place) is AliquotStep { StockFile: { } inner } ? context.Facts.FindStock(inner) : null
            : context.RecipeOf(finding)?.Doses.FirstOrDefault(d => d.Entry.Place.Pointer == finding.Place.Pointer || finding.Place.Pointer.Value.StartsWith(d.Entry.Place.Pointer.Value + "/", StringComparison.Ordinal))?.Stock;
        if (taken is null || context.Facts.FindStock(taken.Stock.File) is not { } stock)
        {
            yield break;
        }

        if ((finding.Measured?.Name == "fillings" ? Strength.Stronger(context, stock) : Strength.Weaker(context, stock)) is { } other)
        {
            yield return other;
        }
    }
}
