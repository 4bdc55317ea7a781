namespace RecipeLint.Chemistry.Physical;

/// <summary>Species are named like "K+", "SO4-2", "H2(EDTA)-2", "CaSO4": the charge, if any, is the sign and figure at the end.</summary>
internal static class SpeciesName
{
    internal static int Charge(string name)
    {
        var sign = name.Length - 1;
        while (sign >= 0 && char.IsAsciiDigit(name[sign]))
            sign--;
        if (sign < 0 || name[sign] is not ('+' or '-') || name.Length - sign > 3)
            return 0;
        var figure = 0;
        foreach (var digit in name.AsSpan(sign + 1))
            figure = (figure * 10) + (digit - '0');
        figure = sign == name.Length - 1 ? 1 : figure;
        return name[sign] == '+' ? figure : -figure;
    }
}
