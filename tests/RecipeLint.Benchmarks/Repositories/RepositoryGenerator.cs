using System.Globalization;

namespace RecipeLint.Benchmarks.Repositories;

/// <summary>Where the shops of a generated repository lie.</summary>
public enum RepositoryLayout
{
    /// <summary>All shops' files in one folder, under one settings file.</summary>
    OneFolder,

    /// <summary>A folder with settings of its own for each shop.</summary>
    FolderForEachShop,
}

/// <param name="Shops">Each has one recipe, three stocks and a pre-stock.</param>
/// <param name="Flawed">Share of shops with one mistake, 0 to 1.</param>
/// <param name="Seed">The same wish always gives the same bytes.</param>
public sealed record RepositoryWish(int Shops, RepositoryLayout Layout, double Flawed, int Seed);

/// <summary>
/// Makes repositories of invented shops for measuring and for comparing two builds: variations of one clean shop, every one a little
/// stronger or weaker and for another volume, some of them with a mistake that a rule or the reader reports.
/// </summary>
public static class RepositoryGenerator
{
    /// <summary>The files, by their path in the repository.</summary>
    public static IEnumerable<(string Path, string Text)> Files(RepositoryWish wish)
    {
        var oneFolder = wish.Layout == RepositoryLayout.OneFolder;
        if (oneFolder)
        {
            yield return ("recipelint.json", ShopTexts.Settings);
            yield return ("rain.water.json", ShopTexts.Water);
        }

        for (var i = 0; i < wish.Shops; i++)
        {
            var number = i.ToString("D6", CultureInfo.InvariantCulture);
            var shop = ShopOf(wish, i, oneFolder ? $"-{number}" : "", oneFolder ? "rain" : "water/rain");
            if (!oneFolder)
            {
                yield return ($"shop-{number}/recipelint.json", ShopTexts.Settings);
                yield return ($"shop-{number}/water/rain.water.json", ShopTexts.Water);
            }

            foreach (var (name, text) in shop)
            {
                yield return (oneFolder ? name : $"shop-{number}/{name}", text);
            }
        }
    }

    private static IEnumerable<(string Name, string Text)> ShopOf(RepositoryWish wish, int index, string suffix, string water)
    {
        var random = new Random(unchecked((wish.Seed * 1_000_003) + index));
        var strength = 0.85 + (0.3 * random.NextDouble());
        var litres = 50 * random.Next(2, 9);
        var shop = new ShopTexts(suffix, water, strength, litres, index);
        var texts = shop.All().ToDictionary(f => f.Name, f => f.Text, StringComparer.Ordinal);
        if (random.NextDouble() < wish.Flawed)
        {
            ShopFlaws.Apply(shop, texts, random);
        }

        return texts.OrderBy(t => t.Key, StringComparer.Ordinal).Select(t => (t.Key, t.Value));
    }
}
