using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Tests.Mutations.Operators;

/// <summary>What the recipe takes of each stock.</summary>
internal static class DoseSlips
{
    internal static IEnumerable<Mutant> Of(CleanShop shop)
    {
        var recipe = shop.Recipe;
        var file = recipe.Recipe.File;
        var list = shop.Root(file)["doses"]!;
        var items = list.Items.Select(i => shop.TextOf(file, i)).ToList();
        for (var i = 0; i < list.Items.Count; i++)
        {
            var (item, dose) = (list.Items[i], recipe.Doses[i]);
            string[] words = [dose.Stock!.Stock.Name, .. Naming.WordsOf(dose.Stock.Additions)];
            foreach (var mutant in Sizes(shop, file, item, dose.Id, words))
            {
                yield return mutant;
            }

            yield return new Mutant("dose left out", dose.Id, [shop.Edit(file, shop.List(file, list, items.Where((_, n) => n != i)))], [], words) { Shop = shop };
            yield return new Mutant("dose written twice", dose.Id, [shop.Edit(file, shop.List(file, list, [.. items.Take(i + 1), items[i], .. items.Skip(i + 1)]))], [Dose(i), Dose(i + 1)], words) { Shop = shop };
            foreach (var j in Enumerable.Range(0, list.Items.Count).Where(j => j != i))
            {
                var other = recipe.Doses[j];
                yield return Slips.Value(shop, "another stock in its place", file, item["stock"]!, shop.TextOf(file, list.Items[j]["stock"]!), dose.Id, [.. words, other.Stock!.Stock.Name, .. Naming.WordsOf(other.Stock.Additions)]);
            }
        }

        for (var i = 0; i < list.Items.Count; i++)
        {
            for (var j = i + 1; j < list.Items.Count; j++)
            {
                var (first, second) = (list.Items[i]["stock"]!, list.Items[j]["stock"]!);
                yield return new Mutant(
                    "doses swapped",
                    $"{recipe.Doses[i].Id} and {recipe.Doses[j].Id}",
                    [shop.Edit(file, (first.Span, shop.TextOf(file, second)), (second.Span, shop.TextOf(file, first)))],
                    [Dose(i), Dose(j)],
                    [.. new[] { i, j }.SelectMany(n => Naming.WordsOf(recipe.Doses[n].Stock!.Additions)).Distinct()])
                {
                    Shop = shop,
                };
            }
        }

        var syringe = shop.Root("recipelint.json")["measures"]!.Items.First(m => m["kind"]!.Text == "syringe")["name"]!.Text;
        yield return new Mutant(
            "one syringe for all",
            syringe,
            [shop.Edit(file, [.. list.Items.Where(d => d["with"] is not null).Select(d => (d["with"]!.Span, Slips.Quoted(syringe)))])],
            [.. list.Items.Select((_, i) => Dose(i))],
            [syringe])
        {
            Shop = shop,
            Misinforms = "what clings to the syringe carries calcium into the phosphate stock",
        };

        Place Dose(int index) => Place.Whole(file).Child("doses").Child(index);
    }

    private static IEnumerable<Mutant> Sizes(CleanShop shop, string file, Recipes.Json.JsonItem item, string called, string[] words)
    {
        if (item["strokes"] is { } strokes)
        {
            foreach (var (slip, number) in new[] { ("dose ten times", 50), ("half the dose", 3), ("dose doubled", 10), ("dose a tenth", 1) })
            {
                yield return Slips.Value(shop, slip, file, strokes, Slips.Number(number), called, words);
            }

            yield break;
        }

        var key = item["dose"] is not null ? "dose" : "amount";
        var (value, text) = (item[key]!, item[key]!.Text);
        if (text.Contains(':', StringComparison.Ordinal))
        {
            foreach (var (slip, ratio) in new[] { ("dose ten times", "1:10"), ("dose a tenth", "1:1000"), ("half the dose", "1:200"), ("dose doubled", "1:50"), ("dose without unit", "100") })
            {
                yield return Slips.Value(shop, slip, file, value, Slips.Quoted(ratio), called, words);
            }

            yield break;
        }

        var (amount, rest) = Slips.Split(text);
        yield return Slips.Value(shop, "dose ten times", file, value, Slips.Quoted(Slips.Times(text, 10)), called, words);
        yield return Slips.Value(shop, "dose a tenth", file, value, Slips.Quoted(Slips.Times(text, 0.1)), called, words);
        yield return Slips.Value(shop, "half the dose", file, value, Slips.Quoted(Slips.Times(text, 0.5)), called, words);
        yield return Slips.Value(shop, "dose doubled", file, value, Slips.Quoted(Slips.Times(text, 2)), called, words);
        yield return Slips.Value(shop, "dose without unit", file, value, Slips.Quoted(Slips.Number(amount)), called, words);
        yield return Slips.Value(shop, "dose by the gallon", file, value, Slips.Quoted(Slips.Number(amount) + (key == "dose" ? " mL/US gal" : " US fl oz")), called, words);
        yield return Slips.Value(shop, "dose a thousand times by the unit", file, value, Slips.Quoted(Slips.Number(amount) + rest.Replace(" mL", " L", StringComparison.Ordinal)), called, words);
    }
}
