using System.Text;
using Microsoft.CodeAnalysis.CSharp;

namespace RecipeLint.Generators;

internal static class Naming
{
    /// <summary>A text as C# writes it, in quotes.</summary>
    internal static string Literal(string text) => SymbolDisplay.FormatLiteral(text, quote: true);

    /// <summary>"calcium-with-sulfate" to "CalciumWithSulfate".</summary>
    internal static string Pascal(string kebab) =>
        string.Concat(kebab.Split('-').Where(w => w.Length > 0).Select(w => char.ToUpperInvariant(w[0]) + w.Substring(1)));

    /// <summary>"CalciumWithSulfate" to "calcium-with-sulfate".</summary>
    internal static string Kebab(string pascal)
    {
        var kebab = new StringBuilder();
        foreach (var letter in pascal)
        {
            if (char.IsUpper(letter) && kebab.Length > 0)
            {
                kebab.Append('-');
            }

            kebab.Append(char.ToLowerInvariant(letter));
        }

        return kebab.ToString();
    }
}
