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
        var reproduction = context.Rule.Neighbour(ReprotoxicNotice.RuleName, stock.Stock.File)?.Options<ReprotoxicNoticeOptions>() ?? new();
        var aquatic =
            context.Rule.Neighbour(AquaticHazardNotice.RuleName, stock.Stock.File)?.Options<AquaticHazardNoticeOptions>() ?? new();
        var harms = mixture.Health().Append(mixture.Reproduction(reproduction.From)).Append(mixture.AcidGas()).OfType<MixtureHazard>()
            .Select(h => $"{h.Words} ({h.Code})").ToList();
        var water = mixture.Water(aquatic.From);
        var atOnce = mixture.WaterAtOnce(water);
        if (harms.Count == 0 && water is null && atOnce is null)
        {
            return null;
        }

        var people = harms.Count == 0 ? "" : $"Can {Say.List(harms)}. ";
        var life = water is null
            ? ""
            : $"{Say.Capital(water.Words)} to water life with long lasting effects ({water.Code}), not into drains. ";
        var first = atOnce is null ? "" : $"{Say.Capital(atOnce.Words)} to water life ({atOnce.Code}), not into drains. ";
        return $"{people}{first}{life}See the safety data sheets";
    }
}
