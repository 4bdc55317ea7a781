using System.Globalization;
using System.Text;

namespace RecipeLint.Recipes.Importing.Tables;

/// <summary>The text of a cell as it goes on.</summary>
internal static class CellText
{
    /// <summary>One line without blanks at its ends and without signs that only steer a terminal or printer.</summary>
    /// <exception cref="UnusableTableException">Too long.</exception>
    public static string Of(string raw)
    {
        if (raw.Length > TableBounds.CellLength)
        {
            throw new UnusableTableException(string.Create(
                CultureInfo.InvariantCulture, $"has a cell of {raw.Length} characters; up to {TableBounds.CellLength} are read."));
        }

        if (!raw.Any(char.IsControl))
        {
            return raw.Trim();
        }

        var text = new StringBuilder(raw.Length);
        foreach (var c in raw)
        {
            text.Append(char.IsControl(c) ? ' ' : c);
        }

        return text.ToString().Trim();
    }
}
