using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Tests.Mutations.Operators;

/// <summary>Lines left out, written twice, put into another stock or done in another order.</summary>
internal static class LineSlips
{
    internal static IEnumerable<Mutant> Of(CleanShop shop) =>
        shop.Lines.SelectMany(line => Dropped(shop, line).Concat(Doubled(shop, line)).Concat(Moved(shop, line)).Concat(MovedToTheEnd(shop, line)))
            .Concat(shop.Facts.Stocks.SelectMany(s => Swapped(shop, s.Stock)));

    private static IEnumerable<Mutant> Dropped(CleanShop shop, Line line)
    {
        yield return new Mutant(
            "line left out",
            line.Called,
            [Rewritten(shop, line.File, items => [.. items.Where((_, i) => i != line.Index)])],
            [],
            [.. Naming.WordsOf(line.Additions)])
        {
            Shop = shop,
        };
    }

    private static IEnumerable<Mutant> Doubled(CleanShop shop, Line line)
    {
        // An id must not stand twice, so the copy goes without, as a copied line from another recipe would.
        var copy = line.Item["id"] is { } id ? shop.TextOf(line.File, line.Item).Replace($", \"id\": \"{id.Text}\"", "", StringComparison.Ordinal) : shop.TextOf(line.File, line.Item);
        yield return new Mutant(
            "line written twice",
            line.Called,
            [Rewritten(shop, line.File, items => [.. items[..(line.Index + 1)], copy, .. items[(line.Index + 1)..]])],
            [Step(line.File, line.Index), Step(line.File, line.Index + 1)],
            [.. Naming.WordsOf(line.Additions)])
        {
            Shop = shop,
        };
    }

    /// <summary>Into every other stock that is dosed, before its last step.</summary>
    private static IEnumerable<Mutant> Moved(CleanShop shop, Line line)
    {
        foreach (var other in shop.Recipe.Doses.Select(d => d.Stock!.Stock).Where(s => s.File != line.File && line.Step is AddStep))
        {
            var last = other.Steps.Count - 1;
            yield return new Mutant(
                "line in another stock",
                $"{line.Called} in {Short.Of(other.File)}",
                [
                    Rewritten(shop, line.File, items => [.. items.Where((_, i) => i != line.Index)]),
                    Rewritten(shop, other.File, items => [.. items[..last], shop.TextOf(line.File, line.Item).Replace("\"id\": \"", "\"id\": \"moved-", StringComparison.Ordinal), .. items[last..]]),
                ],
                [Step(other.File, last)],
                [.. Naming.WordsOf(line.Additions)])
            {
                Shop = shop,
            };
        }
    }

    private static IEnumerable<Mutant> MovedToTheEnd(CleanShop shop, Line line)
    {
        var end = line.Stock.Stock.Steps.Count - 1;
        yield return new Mutant(
            "line after the top-up",
            line.Called,
            [Rewritten(shop, line.File, items => [.. items.Where((_, i) => i != line.Index), items[line.Index]])],
            [Step(line.File, end), Step(line.File, end - 1)],
            [.. Naming.WordsOf(line.Additions)])
        {
            Shop = shop,
        };
        yield return new Mutant(
            "line before the water",
            line.Called,
            [Rewritten(shop, line.File, items => [items[line.Index], .. items.Where((_, i) => i != line.Index)])],
            [Step(line.File, 0), Step(line.File, 1)],
            [.. Naming.WordsOf(line.Additions)])
        {
            Shop = shop,
        };
    }

    /// <summary>Two lines that put something in, one after the other, with whatever is done between them.</summary>
    private static IEnumerable<Mutant> Swapped(CleanShop shop, StockDocument stock)
    {
        var lines = shop.Lines.Where(l => l.File == stock.File).ToList();
        for (var i = 0; i < lines.Count; i++)
        {
            for (var j = i + 1; j < lines.Count; j++)
            {
                var (first, second) = (lines[i], lines[j]);
                yield return new Mutant(
                    "wrong order",
                    $"{Short.Of(stock.File)}: {second.Step.Id} before {first.Step.Id}",
                    [Rewritten(shop, stock.File, items => [.. items.Select((t, n) => n == first.Index ? items[second.Index] : n == second.Index ? items[first.Index] : t)])],
                    [first.Place, second.Place],
                    [.. Naming.WordsOf(first.Additions.Concat(second.Additions))])
                {
                    Shop = shop,
                };
            }
        }
    }

    private static FileText Rewritten(CleanShop shop, string file, Func<string[], IEnumerable<string>> change)
    {
        var steps = shop.Root(file)["steps"]!;
        return shop.Edit(file, shop.List(file, steps, change([.. steps.Items.Select(i => shop.TextOf(file, i))])));
    }

    private static Place Step(string file, int index) => Place.Whole(file).Child("steps").Child(index);
}
