using System.Text.RegularExpressions;
using RecipeLint.Chemistry.Composition;

namespace RecipeLint.Reports.Markup;

/// <summary>Prose in which chemical formulas get their small figures: CaSO4·2H2O with a lowered 4, Fe3+ with a raised charge.</summary>
internal static partial class ChemicalText
{
    /// <summary>
    /// Elements that occur as molecules of themselves; any other formula of one element ("H411", "B12") is taken for a name.
    /// </summary>
    private static readonly HashSet<string> _molecules = new(StringComparer.Ordinal) { "O2", "N2", "H2", "Cl2", "O3" };

    /// <summary>Ions of which a minus behind the formula is the charge and no hyphen.</summary>
    private static readonly HashSet<string> _anions = new(StringComparer.Ordinal) { "Cl", "NO3", "H2PO4", "HCO3", "HSO4", "HMoO4", "H3SiO4" };

    public static Html Of(string text)
    {
        var parts = new List<Html>();
        var at = 0;
        foreach (Match match in Candidate().Matches(text))
        {
            var formula = match.Groups["formula"].Value;
            var charge = match.Groups["charge"].Value;
            if (charge == "-" && !_anions.Contains(formula))
            {
                charge = "";
            }

            if (charge.Length == 0)
            {
                // The bracket that closes a remark is none of the formula's.
                while (formula.EndsWith(')') && formula.Count(c => c == ')') > formula.Count(c => c == '('))
                {
                    formula = formula[..^1];
                }
            }

            if (Marked(formula, charge) is { } marked)
            {
                parts.Add(Html.Text(text[at..match.Index]));
                parts.Add(marked);
                at = match.Index + formula.Length + charge.Length;
            }
        }

        parts.Add(Html.Text(text[at..]));
        return Html.Join(parts);
    }

    private static Html? Marked(string formula, string charge)
    {
        if (IonOfOneElement().Match(formula + charge.TrimStart()) is { Success: true } ion && IsFormula(ion.Groups["element"].Value))
        {
            return Html.Of($"{ion.Groups["element"].Value}<sup>{ion.Groups["charge"].Value}</sup>");
        }

        var isName = IonOfOneElement().IsMatch(formula + "+") && !_molecules.Contains(formula);
        return !formula.Any(char.IsAsciiDigit) || isName || !IsFormula(formula)
            ? null
            : Lowered(formula) + (charge.Length == 0 ? Html.Empty : Html.Of($"<sup>{charge.TrimStart()}</sup>"));
    }

    private static bool IsFormula(string text) => FormulaParser.TryParse(text, out _, out _);

    /// <summary>Counts behind an element or a bracket are lowered; the number of crystal waters stays on the line.</summary>
    private static Html Lowered(string formula)
    {
        var parts = new List<Html>();
        var at = 0;
        foreach (Match count in Count().Matches(formula))
        {
            parts.Add(Html.Of($"{formula[at..count.Index]}<sub>{count.Value}</sub>"));
            at = count.Index + count.Length;
        }

        parts.Add(Html.Text(formula[at..]));
        return Html.Join(parts);
    }

    [GeneratedRegex(
        @"(?<![\w.·])(?<formula>[A-Z][A-Za-z0-9()]*(?:·[0-9]*[A-Z][A-Za-z0-9()]*)*)"
        + @"(?<charge>[1-3]?[+−]|\ [1-3][+−\-]|-)?(?![\w·])")]
    private static partial Regex Candidate();

    [GeneratedRegex(@"^(?<element>[A-Z][a-z]?)(?<charge>[0-9]{0,3}[+−\-])$")]
    private static partial Regex IonOfOneElement();

    [GeneratedRegex(@"(?<=[A-Za-z)])[0-9]+")]
    private static partial Regex Count();
}
