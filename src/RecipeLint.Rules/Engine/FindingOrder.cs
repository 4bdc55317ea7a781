using System.Globalization;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Engine;

/// <summary>
/// File, then place (array elements by number, not by digit), then rule, then message: never a line, so that a moved line reorders nothing.
/// </summary>
internal sealed class FindingOrder : IComparer<Finding>
{
    private FindingOrder()
    {
    }

    public static FindingOrder Instance { get; } = new();

    public int Compare(Finding? x, Finding? y)
    {
        if (x is null || y is null)
        {
            return x is null ? y is null ? 0 : -1 : 1;
        }

        var result = string.CompareOrdinal(x.Place.File, y.Place.File);
        result = result != 0 ? result : ComparePointers(x.Place.Pointer, y.Place.Pointer);
        result = result != 0 ? result : (x.Place.Range?.Start ?? -1).CompareTo(y.Place.Range?.Start ?? -1);
        result = result != 0 ? result : y.Place.Part.CompareTo(x.Place.Part);
        result = result != 0 ? result : string.CompareOrdinal(x.Rule.Id, y.Rule.Id);
        result = result != 0 ? result : string.CompareOrdinal(x.IdPath, y.IdPath);
        return result != 0 ? result : string.CompareOrdinal(x.Message, y.Message);
    }

    private static int ComparePointers(JsonPointer x, JsonPointer y)
    {
        var (left, right) = (x.Tokens, y.Tokens);
        for (var i = 0; i < Math.Min(left.Count, right.Count); i++)
        {
            var result = TryIndex(left[i], out var a) && TryIndex(right[i], out var b)
                ? a.CompareTo(b)
                : string.CompareOrdinal(left[i], right[i]);
            if (result != 0)
            {
                return result;
            }
        }

        return left.Count.CompareTo(right.Count);
    }

    private static bool TryIndex(string token, out int index) =>
        int.TryParse(token, NumberStyles.None, CultureInfo.InvariantCulture, out index);
}
