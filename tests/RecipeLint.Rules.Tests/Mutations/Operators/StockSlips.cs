using RecipeLint.Analysis;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Tests.Mutations.Operators;

/// <summary>What is said of a whole stock: volume, dose, storage, label.</summary>
internal static class StockSlips
{
    internal static IEnumerable<Mutant> Of(CleanShop shop)
    {
        foreach (var stock in shop.Facts.Stocks)
        {
            var file = stock.Stock.File;
            var root = shop.Root(file);
            var called = Short.Of(file);
            string[] words = [stock.Stock.Name, .. Naming.WordsOf(stock.Additions)];
            var steps = root["steps"]!.Items;
            var topUp = steps.Single(s => s["topUp"] is not null)["topUp"]!;
            var pour = steps.First(s => s["pour"] is not null);
            var makes = root["makes"]!;

            yield return Slips.Value(shop, "batch volume ten times", file, makes, Slips.Quoted(Slips.Times(makes.Text, 10)), called, words);
            yield return Slips.Value(shop, "batch volume a tenth", file, makes, Slips.Quoted(Slips.Times(makes.Text, 0.1)), called, words);
            yield return Slips.Value(shop, "batch volume in gallons", file, makes, Slips.Quoted(Slips.Number(Slips.Split(makes.Text).Number) + " US gal"), called, words);
            yield return Slips.Value(shop, "batch volume in bare gallons", file, makes, Slips.Quoted(Slips.Number(Slips.Split(makes.Text).Number) + " gal"), called, words);
            yield return Slips.Value(shop, "topped up to another mark", file, topUp, Slips.Quoted(Slips.Times(topUp.Text, 2)), called, words);
            yield return Slips.Value(shop, "topped up to another mark", file, topUp, Slips.Quoted(Slips.Times(topUp.Text, 0.5)), called, words);
            yield return Slips.Value(shop, "first water a tenth", file, pour["pour"]!, Slips.Quoted(Slips.Times(pour["pour"]!.Text, 0.1)), called, words);
            yield return Slips.Value(shop, "first water ten times", file, pour["pour"]!, Slips.Quoted(Slips.Times(pour["pour"]!.Text, 10)), called, words);
            yield return new Mutant("no top-up", called, [shop.Edit(file, shop.List(file, root["steps"]!, steps.SkipLast(1).Select(s => shop.TextOf(file, s))))], [Place.Whole(file).Child("makes"), Place.Whole(file).Child("steps")], words) { Shop = shop };
            yield return new Mutant("no first water", called, [shop.Edit(file, shop.List(file, root["steps"]!, steps.Where(s => s != pour).Select(s => shop.TextOf(file, s))))], [Place.Whole(file).Child("steps").Child(0)], words) { Shop = shop };

            if (root["dose"] is { } dose)
            {
                var ratio = dose.Text.Contains(':', StringComparison.Ordinal);
                yield return Slips.Value(shop, "dose on the stock ten times", file, dose, ratio ? "\"1:10\"" : Slips.Quoted(Slips.Times(dose.Text, 10)), called, words);
                yield return Slips.Value(shop, "dose on the stock a tenth", file, dose, ratio ? "\"1:1000\"" : Slips.Quoted(Slips.Times(dose.Text, 0.1)), called, words);
            }

            foreach (var mutant in Storage(shop, file, called))
            {
                yield return mutant;
            }

            foreach (var other in shop.Facts.Stocks.Where(s => s != stock && shop.Root(s.Stock.File)["label"] is not null && root["label"] is not null))
            {
                yield return Slips.Value(shop, "label of another stock", file, root["label"]!["contents"]!, shop.TextOf(other.Stock.File, shop.Root(other.Stock.File)["label"]!["contents"]!), called, words) with
                {
                    Misinforms = "the label is another stock's",
                };
            }

            foreach (var member in root["label"]?.Members ?? [])
            {
                yield return new Mutant($"label without {member.Name}", called, [shop.Edit(file, shop.Without(file, root["label"]!, member.Name))], [Place.Whole(file).Child("label")], words)
                {
                    Shop = shop,
                    Misinforms = IsNeeded(member.Name, stock) ? "the label says less than it has to" : null,
                };
            }
        }
    }

    /// <summary>A colour is a help; hazard words are due where something hazardous makes up one part in a hundred, the general limit of the CLP regulation (recalled).</summary>
    private static bool IsNeeded(string entry, StockFacts stock) => entry switch
    {
        "colour" => false,
        "hazard" => stock.Additions.Any(a => a.Substance.Hazards is { Statements.Count: > 0 } && a.Mass.Grams / stock.Volume.Millilitres >= 0.01),
        _ => true,
    };

    private static IEnumerable<Mutant> Storage(CleanShop shop, string file, string called)
    {
        var keep = shop.Root(file)["keep"]!;
        foreach (var (slip, text, word) in new[] { ("colder shed", "0..20 °C", "0 °C"), ("colder shed", "-8..20 °C", "-8 °C"), ("warmer shed", "10..45 °C", "45 °C") })
        {
            yield return Slips.Value(shop, slip, file, keep["at"]!, Slips.Quoted(text), called, [word]);
        }

        yield return Slips.Value(shop, "clear bottle", file, keep["light"]!, "\"light\"", called, ["light"]);
        yield return Slips.Value(shop, "kept in the shade", file, keep["light"]!, "\"shade\"", called, ["shade"]);
        yield return Slips.Value(shop, "kept ten times as long", file, keep["for"]!, Slips.Quoted(Slips.Times(keep["for"]!.Text, 10)), called, ["kept"]);
    }
}
