using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Rules.People;

/// <summary>One way in which a stock, as it stands in its bottle, counts as hazardous.</summary>
/// <param name="Code">GHS statement of the mixture.</param>
/// <param name="Words">What it means, to finish "it can ...".</param>
/// <param name="Percent">Share by mass that decides (weighted where the summation says so).</param>
/// <param name="Limit">Per cent from which the mixture carries the statement.</param>
/// <param name="Substances">What brings it, most first.</param>
internal sealed record MixtureHazard(string Code, string Words, double Percent, double Limit, IReadOnlyList<AdditionFacts> Substances);

/// <summary>A statement that a mixture carries once what counts towards it reaches a limit.</summary>
/// <param name="Limit">Generic limit, per cent by mass.</param>
/// <param name="Sum">Statements of ingredients that count, each with its weight.</param>
internal sealed record MixtureRow(string Code, string Words, double Limit, (string From, double Weight)[] Sum);

/// <summary>
/// Generic concentration limits of Regulation (EC) No 1272/2008 (CLP), Annex I, which carries the GHS: tables 3.2.3 (skin), 3.3.3 (eyes),
/// 3.4.5 (sensitisation), 3.5.2 (mutagens), 3.6.2 (carcinogens), 3.7.2 (reproduction), 3.9.4 (repeated exposure), 4.1.1 to 4.1.2 (water).
/// Acute toxicity by the conversion values of table 3.1.2 against the ends of the categories (breathed in: of vapours). Airways: 20 %
/// (3.8.3.4.5). A substance with a limit of its own (<see
/// cref="SpecificLimits"/>) counts as the part of that limit which it fills: the sum of all parts decides. pH alone is not counted: extreme
/// pH only presumes corrosion where no limit and no acid or alkaline reserve speaks (3.2.3.1.2). A sorting aid, not a classification: the
/// supplier's data sheets and whoever is competent locally decide.
/// </summary>
internal sealed class MixtureHazards
{
    internal const string MetalsCode = "H290";

    /// <summary>Multiplying factors of the Annex VI entries for what is very toxic to water life; 1 for the rest.</summary>
    private static readonly (string Component, double Factor)[] _waterFactors = [(Component.Copper, 10), (Component.Cobalt, 10)];

    internal static readonly MixtureRow[] HealthTable =
    [
        new("H314", "burn skin and eyes", 5, [("H314", 1)]),
        new("H318", "damage the eyes for good", 3, [("H314", 1), ("H318", 1)]),
        new("H315", "irritate the skin", 10, [("H314", 10), ("H315", 1)]),
        new("H319", "irritate the eyes", 10, [("H314", 10), ("H318", 10), ("H319", 1)]),
        new("H301", "poison when swallowed", 33, [("H301", 1)]),
        new("H331", "poison when breathed in", 30, [("H330", 6), ("H331", 1)]),
        new("H302", "harm when swallowed", 25, [("H301", 5), ("H302", 1)]),
        new("H332", "harm when breathed in", 55, [("H330", 22), ("H331", 11 / 3.0), ("H332", 1)]),
        new("H335", "irritate the airways", 20, [("H335", 1)]),
        new(SpecificLimits.BurnsAirways, "burn the airways", 5, [("EUH071", 1)]),
        new("H317", "cause skin allergy", 1, [("H317", 1)]),
        new("H334", "cause asthma", 1, [("H334", 1)]),
        new("H340", "damage genes", 0.1, [("H340", 1)]),
        new("H341", "be suspected of damaging genes", 1, [("H341", 1)]),
        new("H350", "cause cancer", 0.1, [("H350", 1)]),
        new("H351", "be suspected of causing cancer", 1, [("H351", 1)]),
        new("H372", "damage organs", 10, [("H372", 1)]),
        new("H373", "damage organs over time", 10, [("H372", 10), ("H373", 1)]),
    ];

    /// <summary>
    /// Poison to water life at once: very toxic ingredients count from 25 % (table 4.1.1), each by its factor. What lasts covers it.
    /// </summary>
    private static readonly MixtureRow _atOnce = new("H400", "very toxic", 25, [("H400", 1), ("H410", 1)]);

    /// <summary>
    /// Corrosive to metals: the regulation knows only a test (2.16), no sum. Data sheets print it for acids and alkalis of about 1 % and
    /// more (common practice, no source), so labels do; no rule asks for it.
    /// </summary>
    private static readonly MixtureRow _metals = new(MetalsCode, "corrode metals", 1, [(MetalsCode, 1)]);

    /// <summary>Gas with acids: every ingredient that carries it has a limit of its own; 5 % where a shop's own has none.</summary>
    private static readonly MixtureRow _acidGas = new(SpecificLimits.AcidGas, "set poisonous gas free with acids", 5, [("EUH031", 1)]);

    /// <summary>Statements a graver one of the same organ makes superfluous.</summary>
    private static readonly (string Grave, string Covered)[] _covers =
        [("H314", "H318"), ("H314", "H315"), ("H314", "H319"), ("H318", "H319"), ("H301", "H302"), ("H331", "H332"), ("H340", "H341"),
            ("H372", "H373"), (SpecificLimits.BurnsAirways, "H335")];

    private readonly StockFacts _stock;
    private readonly double _grams;
    private readonly Dictionary<string, List<AdditionFacts>> _bringing = new(StringComparer.Ordinal);

    /// <summary>Mass of the finished stock, g.</summary>
    internal double Grams => _grams;

    internal MixtureHazards(StockFacts stock)
    {
        _stock = stock;
        _grams = stock.Mixing.Finished.Grams;
    }

    /// <summary>Hazards to health other than reproduction, in the order of the table.</summary>
    internal IReadOnlyList<MixtureHazard> Health()
    {
        var found = HealthTable.Select(Sum).OfType<MixtureHazard>().ToList();
        found.RemoveAll(h => _covers.Any(c => c.Covered == h.Code && found.Exists(g => g.Code == c.Grave)));
        return found;
    }

    /// <summary>Toxic for reproduction (H360 and its letters), from the limit in per cent; all that carry it count together.</summary>
    internal MixtureHazard? Reproduction(double limit) => Sum(ReproductionRow(limit));

    /// <summary>Generic limit of table 3.7.2 or what the shop takes for it, per cent.</summary>
    internal static MixtureRow ReproductionRow(double limit) => new("H360", "harm fertility or the unborn child", limit, [("H360", 1)]);

    /// <summary>Poison to water life at once; null below the limit and where it lasts as well (H410), which says both.</summary>
    internal MixtureHazard? WaterAtOnce(MixtureHazard? lasting) => lasting?.Code == "H410" ? null : Sum(_atOnce);

    /// <summary>Corrosive to metals; null below the limit.</summary>
    internal MixtureHazard? Metals() => Sum(_metals);

    /// <summary>Poisonous gas with acids; null below the limit.</summary>
    internal MixtureHazard? AcidGas() => Sum(_acidGas);

    /// <summary>The gravest lasting hazard to water life; null below the limit in per cent.</summary>
    internal MixtureHazard? Water(double limit)
    {
        var (veryToxic, toxic) = (VeryToxic(), Toxic());
        var weighted = veryToxic.Sum(a => Percent(a) * LastingWeight(a));
        var chronic = (10 * weighted) + toxic.Sum(a => Percent(a) * LastingWeight(a));
        IReadOnlyList<AdditionFacts> all =
        [
            .. veryToxic.Concat(toxic).OrderByDescending(a => Percent(a) * LastingWeight(a) * (veryToxic.Contains(a) ? 10 : 1)),
        ];
        return Rounding.SixDigits(weighted) >= limit ? new MixtureHazard("H410", "very toxic", weighted, limit, all)
            : Rounding.SixDigits(chronic) >= limit ? new MixtureHazard("H411", "toxic", chronic, limit, all)
            : null;
    }

    /// <summary>Per cent by mass of the finished stock.</summary>
    internal double Percent(AdditionFacts addition) => _grams > 0 && addition.Substance.Strength.Value > 0
        ? 100 * VesselContents.PureGrams(addition) / addition.Substance.Strength.Value / _grams
        : 0;

    private static double Factor(AdditionFacts addition) =>
        Math.Max(MetalFactor(addition), SpecificLimits.WaterFactor(addition.Substance));

    private static double MetalFactor(AdditionFacts addition) =>
        _waterFactors.Where(f => Reactants.Brings(addition, f.Component)).Select(f => f.Factor).Append(1).Max();

    /// <summary>
    /// By how much the share of a substance as bought counts among what poisons water life for long: the factor of its metal, and the part
    /// of a solution that is dissolved in it.
    /// </summary>
    internal static double LastingWeight(AdditionFacts addition) => MetalFactor(addition) * SpecificLimits.Share(addition.Substance);

    /// <summary>Very toxic to water life with lasting effects, in the order of the steps.</summary>
    internal List<AdditionFacts> VeryToxic() =>
        [.. _stock.Additions.Where(a => Bringing("H410").Contains(a) || SpecificLimits.IsVeryToxicForLong(a.Substance))];

    /// <summary>Toxic to water life with lasting effects, in the order of the steps.</summary>
    internal List<AdditionFacts> Toxic() => [.. Bringing("H411").Except(VeryToxic())];

    /// <summary>
    /// What counts towards a statement, in the order of the steps, with the weight of its share as bought: a limit of its own scales it to
    /// the generic one. What carries two of the statements counts once, as the heavier.
    /// </summary>
    internal IEnumerable<(AdditionFacts Addition, double Weight)> Parts(MixtureRow row)
    {
        foreach (var addition in _stock.Additions)
        {
            var weight = SpecificLimits.Limit(addition.Substance, row.Code) is { } own ? row.Limit / own : Heaviest(addition, row);
            if (weight > 0)
            {
                yield return (addition, weight * SpecificLimits.Share(addition.Substance) * (row == _atOnce ? Factor(addition) : 1));
            }
        }
    }

    /// <summary>The largest weight with which an addition counts towards a statement; 0 where it carries none that count.</summary>
    private static double Heaviest(AdditionFacts addition, MixtureRow row)
    {
        if (addition.Substance.Hazards is not { } hazards)
        {
            return 0;
        }

        double heaviest = 0;
        foreach (var (from, weight) in row.Sum)
        {
            if (weight > heaviest && Says(hazards, from))
            {
                heaviest = weight;
            }
        }

        return heaviest;
    }

    /// <summary>The weighted share by mass, %, of what counts towards a statement.</summary>
    internal double Weighted(MixtureRow row) => Parts(row).Sum(p => p.Weight * Percent(p.Addition));

    private MixtureHazard? Sum(MixtureRow row)
    {
        var bringing = Parts(row).Select(p => (p.Addition, Percent: p.Weight * Percent(p.Addition))).ToList();
        var percent = bringing.Sum(b => b.Percent);
        return bringing.Count > 0 && Rounding.SixDigits(percent) >= row.Limit
            ? new MixtureHazard(
                row.Code, row.Words, percent, row.Limit,
                [.. bringing.OrderByDescending(b => b.Percent).Select(b => b.Addition).Distinct()])
            : null;
    }

    /// <summary>What carries one of the statements, in the order of the steps.</summary>
    internal List<AdditionFacts> Bringing(params string[] codes)
    {
        if (codes is not [var code])
        {
            return Find(codes);
        }

        if (!_bringing.TryGetValue(code, out var known))
        {
            _bringing[code] = known = Find(codes);
        }

        return known;
    }

    private List<AdditionFacts> Find(string[] codes) =>
        [.. _stock.Additions.Where(a => a.Substance.Hazards is { } h && codes.Any(c => Says(h, c)))];

    /// <summary>What suppliers add counts for metals alone: the entries of the regulation leave that to them.</summary>
    private static bool Says(Hazards hazards, string code) =>
        Carries(hazards.Statements, code) || (code == MetalsCode && Carries(hazards.SupplierAdds, code));

    private static bool Carries(IReadOnlyList<string> statements, params ReadOnlySpan<string> codes)
    {
        for (var i = 0; i < statements.Count; i++)
        {
            foreach (var code in codes)
            {
                if (statements[i].StartsWith(code, StringComparison.Ordinal))
                {
                    return true;
                }
            }
        }

        return false;
    }
}
