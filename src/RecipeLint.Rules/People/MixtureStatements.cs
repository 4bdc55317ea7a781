using RecipeLint.Analysis;

namespace RecipeLint.Rules.People;

/// <summary>A GHS statement that a stock carries as a mixture.</summary>
/// <param name="Code">"H314".</param>
/// <param name="Words">Finishes "it can ...", or for H400, H410 and H411 how toxic it is to water life.</param>
/// <param name="Percent">Share by mass that decides, weighted where the summation says so.</param>
/// <param name="Limit">Per cent from which it counts.</param>
/// <param name="From">What brings it, most first.</param>
public sealed record MixtureStatement(string Code, string Words, double Percent, double Limit, IReadOnlyList<string> From);

/// <summary>
/// What a stock is as a mixture by the limits that the rules on labels read; one reckoning for rules, sheets and labels. A sorting
/// aid: the supplier's data sheets and whoever is competent locally decide.
/// </summary>
public static class MixtureStatements
{
    /// <summary>Where the limits come from.</summary>
    private const string Regulation = "limits of Regulation (EC) No 1272/2008 (CLP), those of single substances in Annex VI before the "
        + "generic ones in Annex I";

    /// <summary>The same with what these statements rest on beside it.</summary>
    public static string SourceOf(IReadOnlyList<MixtureStatement> statements) =>
        statements.Any(s => s.Code == MixtureHazards.MetalsCode) ? Regulation + "; H290 from 1 %, common practice" : Regulation;

    /// <summary>Harm to people first, then to water life; empty where nothing reaches its limit.</summary>
    public static IReadOnlyList<MixtureStatement> Of(StockFacts stock)
    {
        var mixture = new MixtureHazards(stock);
        var lasting = mixture.Water(new AquaticHazardNoticeOptions().From);
        MixtureHazard?[] found =
        [
            .. mixture.Health(), mixture.Reproduction(new ReprotoxicNoticeOptions().From), mixture.WaterAtOnce(lasting), lasting,
            mixture.AcidGas(), mixture.Metals(),
        ];
        return
        [
            .. found.OfType<MixtureHazard>().Select(h => new MixtureStatement(
                h.Code, h.Words, h.Percent, h.Limit, [.. h.Substances.Select(s => s.Substance.Name).Distinct(StringComparer.Ordinal)])),
        ];
    }
}
