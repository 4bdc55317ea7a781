using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Tests.Mutations.Operators;

/// <summary>Two letters changed over, in keys, units, substances, references and crop.</summary>
internal static class SpellingSlips
{
    internal static IEnumerable<Mutant> Of(CleanShop shop)
    {
        foreach (var line in shop.Lines)
        {
            var unit = Slips.Split(line.Amount).Unit.Trim();
            yield return Slips.Value(shop, "misspelt unit", line, "amount", line.Amount.Replace(unit, unit == "g" ? "q" : "mP", StringComparison.Ordinal));
            yield return Slips.Value(shop, line.Step is AddStep ? "misspelt substance" : "misspelt reference", line, "add", Swap(line.What), [line.What, Swap(line.What)]);
            yield return Key(shop, line.File, line.Item, "amount", line.Called);
        }

        foreach (var stock in shop.Facts.Stocks)
        {
            yield return Key(shop, stock.Stock.File, shop.Root(stock.Stock.File), "makes", Short.Of(stock.Stock.File));
            yield return Key(shop, stock.Stock.File, shop.Root(stock.Stock.File), "keep", Short.Of(stock.Stock.File));
        }

        var file = shop.Recipe.Recipe.File;
        var root = shop.Root(file);
        foreach (var (dose, index) in root["doses"]!.Items.Select((d, i) => (d, i)))
        {
            var id = shop.Recipe.Doses[index].Id;
            yield return Slips.Value(shop, "misspelt reference", file, dose["stock"]!, Slips.Quoted(dose["stock"]!.Text.Replace("stocks/", "stock/", StringComparison.Ordinal)), id, [id]);
            yield return Key(shop, file, dose, "stock", id);
        }

        yield return Slips.Value(shop, "misspelt reference", file, root["water"]!, Slips.Quoted(Swap(root["water"]!.Text)), "water", ["water"]);
        yield return Slips.Value(shop, "misspelt crop", file, root["crop"]!, Slips.Quoted(Swap(root["crop"]!.Text)), "crop", ["crop"]);
        yield return Key(shop, file, root, "final", "recipe");
        yield return Key(shop, file, root, "water", "recipe");
    }

    private static Mutant Key(CleanShop shop, string file, Recipes.Json.JsonItem parent, string key, string called)
    {
        var written = Swap(key);
        return new Mutant("misspelt key", $"{called}: {key} as {written}", [shop.Edit(file, (parent[key]!.KeySpan!.Value, Slips.Quoted(written)))], [new Place(file, parent.Pointer.Child(written))], [key, written]) { Shop = shop };
    }

    /// <summary>The last two different letters side by side changed over.</summary>
    private static string Swap(string text)
    {
        var end = text.IndexOf('.', Math.Max(0, text.LastIndexOf('/')));
        var at = (end < 0 ? text.Length : end) - 1;
        while (at > 0 && (text[at] == text[at - 1] || !char.IsLetter(text[at]) || !char.IsLetter(text[at - 1])))
        {
            at--;
        }

        return text[..(at - 1)] + text[at] + text[at - 1] + text[(at + 1)..];
    }
}
