namespace RecipeLint.Chemistry.Substances;

/// <summary>CAS registry numbers: two to seven digits, two digits, a check digit.</summary>
public static class CasNumber
{
    /// <summary>
    /// True for the written form with a correct check digit (the weighted sum of the other digits, counted from the right, modulo 10).
    /// </summary>
    public static bool IsValid(ReadOnlySpan<char> text)
    {
        if (!HasShape(text))
        {
            return false;
        }

        int sum = 0, weight = 0;
        for (var i = text.Length - 3; i >= 0; i--)
        {
            if (text[i] != '-')
            {
                sum += ++weight * (text[i] - '0');
            }
        }

        return sum % 10 == text[^1] - '0';
    }

    /// <summary>True for the written form, whatever the check digit says.</summary>
    public static bool HasShape(ReadOnlySpan<char> text)
    {
        if (text.Length is < 7 or > 12 || text[^2] != '-' || text[^5] != '-')
        {
            return false;
        }

        for (var i = 0; i < text.Length; i++)
        {
            if (i != text.Length - 2 && i != text.Length - 5 && !char.IsAsciiDigit(text[i]))
            {
                return false;
            }
        }

        return true;
    }
}
