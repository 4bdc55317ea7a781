using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Analysis.Solutions;

/// <summary>
/// The names under which elements of a solution are reported: symbols, and nitrogen by form. "N" is nitrate, ammonium and urea nitrogen;
/// nitrogen bound in chelating agents and dyes stands apart as "organic-N", because it feeds hardly any plant and published recipes leave
/// it out. Hydrogen, oxygen and carbon are not reported: they come with water and counter-ions.
/// </summary>
public static class NutrientKeys
{
    public const string Nitrogen = "N";
    public const string Nitrate = "NO3-N";
    public const string Ammonium = "NH4-N";
    public const string Urea = "urea-N";
    public const string Organic = "organic-N";

    private static readonly NitrogenForm[] _forms = Enum.GetValues<NitrogenForm>();

    private static readonly HashSet<string> Unreported = ["H", "O", "C"];

    public static string KeyOf(NitrogenForm form) => form switch
    {
        NitrogenForm.Nitrate => Nitrate,
        NitrogenForm.Ammonium => Ammonium,
        NitrogenForm.Urea => Urea,
        _ => Organic,
    };

    /// <summary>The element a key speaks of; nitrogen for its forms.</summary>
    public static Element ElementOf(string key) => key.EndsWith("-N", StringComparison.Ordinal) ? Element.N : new Element(key);

    /// <summary>Grams by key, those above zero only.</summary>
    public static IEnumerable<(string Key, double Grams)> Grams(ElementTotals totals)
    {
        foreach (var element in totals.Elements)
        {
            if (Unreported.Contains(element.Symbol))
            {
                continue;
            }

            var grams = totals[element].Grams;
            var reported = grams;
            if (element == Element.N)
            {
                reported -= totals[NitrogenForm.Organic].Grams;
            }

            // A chelate whose nitrogen is all organic leaves nothing but the rounding of the subtraction.
            if (reported > 1e-12 * grams)
            {
                yield return (element.Symbol, reported);
            }
        }

        foreach (var form in _forms)
        {
            if (totals[form].Grams > 0)
            {
                yield return (KeyOf(form), totals[form].Grams);
            }
        }
    }
}
