namespace RecipeLint.Chemistry.Physical;

/// <summary>One ion or molecule with its own apparent molar volume. Volumes in cm³/mol on the scale V(H+) = 0.</summary>
internal readonly record struct Constituent(
    string Name, sbyte Charge, double GramsPerMol, double V20, bool DebyeHueckel, double B, double BUpToI,
    double Slope, double SlopeUpTo, double Drift1, double Drift2, bool Measured);

internal static partial class VolumeTable
{
    internal static int FindConstituent(string name)
    {
        int low = 0, high = Constituents.Length - 1;
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var order = string.CompareOrdinal(Constituents[middle].Name, name);
            if (order == 0)
                return middle;
            if (order < 0)
                low = middle + 1;
            else
                high = middle - 1;
        }

        return -1;
    }

    /// <summary>The parts of a complex as pairs (index of the constituent, count); empty when the name is not a known complex.</summary>
    internal static ReadOnlySpan<short> PartsOf(string name)
    {
        var index = Array.BinarySearch(ComplexNames, name, StringComparer.Ordinal);
        return index < 0 ? [] : Parts[PartStart[index]..PartStart[index + 1]];
    }
}
