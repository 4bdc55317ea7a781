using RecipeLint.Analysis;
using RecipeLint.Analysis.Mixing;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Documents;

namespace RecipeLint.Rules.Procedure;

/// <summary>How much of a solid the water in the vessel dissolves, and how much water it takes.</summary>
internal static class FirstWater
{
    /// <summary>Solubility tables and cylinder marks are good to about this; a solid this little over still counts as dissolved.</summary>
    internal const double Slack = 1.02;

    /// <summary>Pure grams of a substance among what is in the vessel.</summary>
    internal static double Grams(VesselContents contents, string substance) =>
        contents.Additions.Where(a => a.Substance.Id == substance).Sum(VesselContents.PureGrams);

    /// <summary>Grams that the free water of a vessel dissolves; null where nobody tabulated it.</summary>
    internal static double? Holds(AdditionFacts addition, VesselContents contents, double celsius) =>
        HandbookSolubility.GramsPer100GramsWater(addition.Substance, celsius) * contents.FreeWaterGrams / 100;

    /// <summary>More than the water holds, by more than a table is good for.</summary>
    internal static bool IsTooLittleFor(double grams, double holds) => Rounding.SixDigits(grams) > Rounding.SixDigits(holds * Slack);

    /// <summary>Up to two digits, so that nobody measures 643 mL.</summary>
    internal static double RoundedUp(double litres) => Rounding.TwoDigitsUp(litres);

    /// <summary>
    /// Water in the vessel when the stirring starts, the top-up is due or the steps end, and the warmest the vessel is made until then.
    /// </summary>
    internal static (double Grams, double? Celsius) ToDissolveIn(IReadOnlyList<MixingStep> moments, int index)
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
}
