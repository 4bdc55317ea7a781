using System.Globalization;
using RecipeLint.Analysis;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Rules.People;

/// <summary>
/// What a label has to say of the hazards of a stock. One entry silences all notices of hazards, so it names all of them, whichever notice
/// asked for it.
/// </summary>
internal static class HazardLabel
{
    public static IEnumerable<RepairProposal> Repairs(Finding finding, RepairContext context)
    {
        if (context.StockOf(finding) is not { } stock || TextOf(stock, context) is not { } text)
        {
            yield break;
        }

        yield return Repair.Chemistry("label-hazard", $"Put on the label: \"{text}\".", Labels.Add(context, stock, ("hazard", text)));
    }

    private static string? TextOf(StockFacts stock, RepairContext context)
    {
        var mixture = new MixtureHazards(stock);
        var harms = mixture.Health().Append(mixture.Reproduction(LimitOf("reprotoxic-notice"))).OfType<MixtureHazard>().Select(h => $"{h.Words} ({h.Code})").ToList();
        var water = mixture.Water(LimitOf("aquatic-hazard-notice"));
        if (harms.Count == 0 && water is null)
        {
            return null;
        }

        var people = harms.Count == 0 ? "" : $"Can {Say.List(harms)}. ";
        var life = water is null ? "" : $"{Say.Capital(water.Words)} to water life with long lasting effects ({water.Code}), not into drains. ";
        return $"{people}{life}See the safety data sheets";

        double LimitOf(string rule) =>
            Weighing.ShopOption.Of(context.Facts, stock.Stock.File, rule, "from")
            ?? double.Parse(RuleBook.Find(rule)!.Options.Single(o => o.Name == "from").Default, CultureInfo.InvariantCulture);
    }
}
