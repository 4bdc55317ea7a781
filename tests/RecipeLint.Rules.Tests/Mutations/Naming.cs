using System.Text.RegularExpressions;
using RecipeLint.Analysis;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Tests.Mutations;

/// <summary>
/// When a mutant counts as caught: a warning or an error names its place (as place or related place, or a value inside or the line around
/// it) or, in its message, the mutated element: the substance, what it brings, the stock or the instrument.
/// </summary>
internal static partial class Naming
{
    private static readonly Dictionary<string, string[]> _names = new()
    {
        ["N"] = ["nitrogen", "nitrate", "ammonium"],
        ["P"] = ["phosphorus", "phosphate"],
        ["K"] = ["potassium"],
        ["Ca"] = ["calcium"],
        ["Mg"] = ["magnesium"],
        ["S"] = ["sulfur", "sulfate"],
        ["Fe"] = ["iron"],
        ["Mn"] = ["manganese"],
        ["Zn"] = ["zinc"],
        ["Cu"] = ["copper"],
        ["B"] = ["boron", "borate"],
        ["Mo"] = ["molybdenum", "molybdate"],
        ["Na"] = ["sodium"],
        ["Cl"] = ["chloride", "chlorine"],
    };

    /// <summary>The findings that catch the mutant, the gravest first; none when it escapes.</summary>
    internal static IEnumerable<Finding> Catches(Mutant mutant, LintResult result) =>
        result.Findings.Where(f => f.Level >= Level.Warning).OrderByDescending(f => f.Level).Where(f => Names(f, mutant));

    /// <summary>What a substance is called in messages, by name, by what it does and by the elements it brings.</summary>
    internal static IEnumerable<string> WordsOf(Substance substance)
    {
        yield return substance.Name;
        var doing = substance.Kind switch
        {
            SubstanceKind.Acid => "acid",
            SubstanceKind.Preservative => "preservative",
            SubstanceKind.Chelate or SubstanceKind.ChelatingAgent => "chelate",
            _ => null,
        };
        if (doing is not null)
        {
            yield return doing;
        }

        foreach (var element in substance.Content.Elements.Select(e => e.Symbol).Where(_names.ContainsKey))
        {
            yield return element;
        }
    }

    internal static IEnumerable<string> WordsOf(IEnumerable<AdditionFacts> additions) => additions.SelectMany(a => WordsOf(a.Substance)).Distinct();

    private static bool Names(Finding finding, Mutant mutant) =>
        finding.Related.Select(r => r.Place).Append(finding.Place).Any(p => mutant.Places.Any(m => Touches(p, m)))
        || mutant.Words.Any(w => Says(finding.Message, w));

    /// <summary>The same place, one inside it, or the line around it; never a whole list or file.</summary>
    private static bool Touches(Recipes.Text.Place found, Recipes.Text.Place mutated)
    {
        if (found.File != mutated.File)
        {
            return false;
        }

        var (a, b) = (found.Pointer.Tokens, mutated.Pointer.Tokens);
        var shared = a.Zip(b).TakeWhile(p => p.First == p.Second).Count();
        return (shared == b.Count && (b.Count > 0 || a.Count == 0)) || (shared == a.Count && a.Count >= 2);
    }

    private static bool Says(string message, string word)
    {
        if (_names.TryGetValue(word, out var spelt))
        {
            // A symbol of one letter may be the name of a part ('Part B'); names stand in quotation marks.
            return Word(word, RegexOptions.None).IsMatch(Quoted().Replace(message, "")) || spelt.Any(s => Word(s, RegexOptions.IgnoreCase).IsMatch(message));
        }

        return Word(word, RegexOptions.IgnoreCase).IsMatch(message);
    }

    private static Regex Word(string word, RegexOptions options) => new($@"(?<![\p{{L}}\d]){Regex.Escape(word)}(?![\p{{Ll}}\d])", options | RegexOptions.CultureInvariant);

    [GeneratedRegex("'[^']*'")]
    private static partial Regex Quoted();
}
