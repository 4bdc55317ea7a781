namespace RecipeLint.Recipes.Importing.Tables;

/// <summary>What a spreadsheet makes of a number when it shows it.</summary>
internal enum NumberShown
{
    Plain,
    Percent,

    /// <summary>Days since a day long ago, shown as a date or time.</summary>
    Date,
}

/// <summary>Tells dates and percentages from plain numbers by the format of the cell (ECMA-376 part 1, 18.8.30 numFmt).</summary>
internal static class NumberShowing
{
    /// <param name="id">Of the format; those below 164 are built in.</param>
    /// <param name="code">Of a format that the workbook brings along; null for a built-in one.</param>
    public static NumberShown Of(int id, string? code) => code is null
        ? id switch
        {
            9 or 10 => NumberShown.Percent,
            (>= 14 and <= 22) or (>= 27 and <= 36) or (>= 45 and <= 47) or (>= 50 and <= 58) => NumberShown.Date,
            _ => NumberShown.Plain,
        }
        : OfCode(code);

    /// <summary>Letters that stand for parts of a date count outside quotes and brackets only.</summary>
    private static NumberShown OfCode(string code)
    {
        var quoted = false;
        var bracket = false;
        var percent = false;
        for (var i = 0; i < code.Length; i++)
        {
            switch (code[i])
            {
                case '\\' or '_' or '*' when !quoted:
                    i++;
                    break;
                case '"':
                    quoted = !quoted;
                    break;
                case '[' when !quoted:
                    bracket = true;
                    break;
                case ']' when !quoted:
                    bracket = false;
                    break;
                case 'y' or 'Y' or 'd' or 'D' or 'm' or 'M' or 'h' or 'H' or 's' or 'S' when !quoted && !bracket:
                    return NumberShown.Date;
                case '%' when !quoted && !bracket:
                    percent = true;
                    break;
            }
        }

        return percent ? NumberShown.Percent : NumberShown.Plain;
    }
}
