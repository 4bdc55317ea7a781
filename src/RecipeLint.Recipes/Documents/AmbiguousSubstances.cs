using System.Globalization;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Documents;

/// <summary>The words for a name that fits several substances.</summary>
internal static class AmbiguousSubstances
{
    private const int Shown = 4;

    /// <summary>
    /// Names the readings and the factor between them: how much more of the same compound one gram of the strongest reading holds
    /// than one gram of the weakest.
    /// </summary>
    public static Problem Describe(Located<string> name, IReadOnlyList<Substance> candidates)
    {
        var listed = candidates.Take(Shown).Select(c => $"'{c.Id}'").ToList();
        if (candidates.Count > Shown)
        {
            listed.Add($"{(candidates.Count - Shown).ToString(CultureInfo.InvariantCulture)} more");
        }

        // What does not show in three decimals is no difference.
        var factor = Factor(candidates) is { Value: > 1.0005 } told ? told : ((string What, double Value)?)null;
        var gap = factor is { } f
            ? $" Weighed alike they differ by a factor of up to {f.Value.ToString("0.###", CultureInfo.InvariantCulture)} in {f.What}."
            : "";
        return new Problem(
            ProblemKind.AmbiguousSubstance,
            name.Place,
            $"'{Wording.Shorten(name.Value)}' can be {Wording.Join(listed, "or")}.{gap} Write the id of the one on the bag.")
        {
            Suggestions = [.. candidates.Select(c => c.Id)],
            Values = factor is { } known ? [new NamedValue("factor", known.Value, "")] : [],
        };
    }

    /// <summary>
    /// Of hydrates and strengths of one compound: how much more of it the richest holds than the poorest. Of other candidates: the same for
    /// the element that differs most; hydrogen and oxygen say nothing. Null when there is nothing to compare.
    /// </summary>
    private static (string What, double Value)? Factor(IReadOnlyList<Substance> candidates)
    {
        var ofCompound = candidates.Select(c => SubstanceCatalogue.HydrateFactor(c, candidates[0])).ToArray();
        if (ofCompound.All(f => f is > 0))
        {
            return ("the compound itself", ofCompound.Max()!.Value / ofCompound.Min()!.Value);
        }

        (string What, double Value)? widest = null;
        foreach (var element in candidates[0].Content.Elements.Where(e => e.Symbol is not ("H" or "O")))
        {
            var contents = candidates.Select(c => c.Content[element]).ToArray();
            var low = contents.Min();
            var factor = low > 0 ? contents.Max() / low : double.NaN;
            if (double.IsFinite(factor) && (widest is null || factor > widest.Value.Value + 1e-9))
            {
                widest = (element.Symbol, factor);
            }
        }

        return widest;
    }
}
