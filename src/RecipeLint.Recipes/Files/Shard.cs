using System.Globalization;

namespace RecipeLint.Recipes.Files;

/// <summary>One of several parts that a repository is checked in, on as many machines.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Of">How many there are.</param>
public sealed record Shard(int Number, int Of)
{
    public const int Most = 1000;

    /// <summary>Reads "2/7"; null for anything else.</summary>
    public static Shard? Parse(string text) =>
        text.Split('/') is [var number, var of]
        && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
        && int.TryParse(of, NumberStyles.None, CultureInfo.InvariantCulture, out var all)
        && n >= 1 && n <= all && all <= Most
            ? new Shard(n, all)
            : null;
}
