using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Plant;

/// <summary>A mistake that would explain a factor between what is found and what is wanted.</summary>
internal sealed record UsualSlip(string Sentence, RelatedPlace? Related);

/// <summary>
/// The factors by which recipes usually go wrong. Conversion factors are arithmetic from atomic weights and exact unit definitions;
/// that these slips are the usual ones is common practice, no source.
/// </summary>
internal static class UsualSlips
{
    private static readonly (double Factor, string[] Keys, string Low, string High)[] _conversions =
    [
        (0.43642, ["P"], "That is the factor of P in P2O5 (0.436): the amount is right for so much P2O5, not for so much "
            + "P.", "That is the factor of P2O5 over P (2.29): a target stated as P2O5 looks taken as P."),
        (0.83015, ["K"], "That is the factor of K in K2O (0.830): the amount is right for so much K2O, not for so much "
            + "K.", "That is the factor of K2O over K (1.205): a target stated as K2O looks taken as K."),
        (0.71469, ["Ca"], "That is the factor of Ca in CaO (0.715): the amount is right for so much CaO, not for so much "
            + "Ca.", "That is the factor of CaO over Ca (1.40): a target stated as CaO looks taken as Ca."),
        (0.60304, ["Mg"], "That is the factor of Mg in MgO (0.603): the amount is right for so much MgO, not for so much "
            + "Mg.", "That is the factor of MgO over Mg (1.66): a target stated as MgO looks taken as Mg."),
        (0.40049, ["S"], "That is the factor of S in SO3 (0.400): the amount is right for so much SO3, not for so much "
            + "S.", "That is the factor of SO3 over S (2.50): a target stated as SO3 looks taken as S."),
        (0.33377, ["S"], "That is the factor of S in sulfate (0.334): the amount is right for so much sulfate, not for so much "
            + "S.", "That is the factor of sulfate over S (3.00): a target stated as sulfate looks taken as S."),
        (0.22590, ["N", "NO3-N"], "That is the factor of N in nitrate (0.226, or 4.43 the other way): the amount is right for so much "
            + "nitrate, not for so much N.", "That is the factor of nitrate over N (4.43): a target stated as nitrate looks taken as N."),
    ];

    private static readonly (double Factor, string Low, string High)[] _general =
    [
        (1 / 3.785411784, "That is the litres in a US gallon (3.785): an amount per gallon looks counted as if it were for a "
            + "litre.", "That is the litres in a US gallon (3.785): an amount meant for a gallon looks put into a litre."),
        (0.1, "That is a tenth: look for a slipped decimal point, or a dose of 1:1000 for a 1:100 "
            + "stock.", "That is ten times: look for a slipped decimal point, or a dose of 1:100 for a 1:1000 stock."),
        (0.001, "That is a thousandth: milligrams look written for grams, or millilitres for litres.", "That is a thousand times: "
            + "grams look written for milligrams, or litres for millilitres."),
        (0.5, "That is half: look for a dose or an addition that should be given "
            + "twice.", "That is double: look for an addition or dose that is counted twice."),
    ];

    /// <summary>
    /// The slip that explains the factor found/wanted within the tolerance, or null. Hydrates first: they name the very addition.
    /// </summary>
    public static UsualSlip? Name(RecipeFacts recipe, SubstanceCatalogue catalogue, string key, double factor, double tolerance) =>
        Hydrate(recipe, catalogue, key, factor, tolerance) ?? Conversion(key, factor, tolerance) ?? General(factor, tolerance);

    private static bool Fits(double factor, double expected, double tolerance) => Math.Abs((factor / expected) - 1) <= tolerance;

    private static UsualSlip? Conversion(string key, double factor, double tolerance)
    {
        foreach (var (value, keys, low, high) in _conversions)
        {
            if (keys.Contains(key) && Fits(factor, value, tolerance))
            {
                return new UsualSlip(low, null);
            }

            if (keys.Contains(key) && Fits(factor, 1 / value, tolerance))
            {
                return new UsualSlip(high, null);
            }
        }

        return null;
    }

    private static UsualSlip? General(double factor, double tolerance)
    {
        foreach (var (value, low, high) in _general)
        {
            if (Fits(factor, value, tolerance))
            {
                return new UsualSlip(low, null);
            }

            if (Fits(factor, 1 / value, tolerance))
            {
                return new UsualSlip(high, null);
            }
        }

        return null;
    }

    /// <summary>
    /// One addition exchanged for another hydrate of the same salt, gram for gram, would bring the element to its target.
    /// </summary>
    private static UsualSlip? Hydrate(RecipeFacts recipe, SubstanceCatalogue catalogue, string key, double factor, double tolerance)
    {
        if (!recipe.Elements.TryGetValue(key, out var fact) || fact.Concentration.GramsPerLitre <= 0)
        {
            return null;
        }

        var total = fact.Concentration.GramsPerLitre;
        var wanted = total / factor;
        UsualSlip? best = null;
        var bestMiss = tolerance;
        foreach (var (dose, addition) in recipe.Doses.SelectMany(Additions))
        {
            var part = fact.Contributions
                .Where(c => c.Source == dose.Id && (dose.Direct is not null || c.AdditionId == addition.Id))
                .Sum(c => c.Concentration.GramsPerLitre);
            if (part <= 0 || addition.Substance.HydrateFamily is not { } family)
            {
                continue;
            }

            foreach (var other in catalogue.Substances.Where(s => s.HydrateFamily == family && s.Id != addition.Substance.Id))
            {
                // Grams of the other hydrate that bring as much as one gram of this one.
                if (SubstanceCatalogue.HydrateFactor(other, addition.Substance) is not { } exchange || exchange <= 0)
                {
                    continue;
                }

                var miss = Math.Abs(((total - part + (part / exchange)) / wanted) - 1);
                if (miss < bestMiss)
                {
                    bestMiss = miss;
                    best = new UsualSlip(
                        $"That fits a mixed-up hydrate: this weight of {addition.Substance.Name} would be right for {other.Name} (1 g "
                            + $"of the one counts as {Say.Number(exchange)} g of the other).",
                        new RelatedPlace(addition.Place, $"written as {addition.Substance.Name}; the weight fits {other.Name}"));
                }
            }
        }

        return best;
    }

    private static IEnumerable<(DoseFacts Dose, AdditionFacts Addition)> Additions(DoseFacts dose) =>
        (dose.Stock?.Additions ?? (dose.Direct is { } direct ? [direct] : [])).Select(a => (dose, a));
}
