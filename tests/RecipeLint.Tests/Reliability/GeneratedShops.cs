using System.Globalization;
using CsCheck;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Tests.Reliability;

/// <summary>Small invented shops: stocks of a few salts, some of them unknown, and a recipe that doses all of them.</summary>
internal static class GeneratedShops
{
    private static readonly string[] _salts =
    [
        "calcium-nitrate-4h2o", "potassium-nitrate", "magnesium-sulfate-7h2o", "monopotassium-phosphate", "potassium-sulfate", "ammonium-nitrate", "iron-edta", "boric-acid", "manganese-sulfate-1h2o", "no-such-salt",
    ];

    private static readonly double[] _litres = [0.5, 1, 2, 10];

    /// <summary>One to three stocks.</summary>
    public static Gen<GeneratedStock[]> Any { get; } =
        Gen.Select(Gen.Int[0, _salts.Length - 1].Array[1, 5], Gen.Int[1, 900].Array[5], Gen.Int[0, 3]).Select((salts, tenths, size) => Sized(salts, tenths, _litres[size])).Array[1, 3];

    public static MemoryFileTree Tree(GeneratedStock[] shop, ShopWriting writing)
    {
        var tree = new MemoryFileTree("/shop").Add("/shop/.git/HEAD", "");
        var doses = new List<string>();
        for (var i = 0; i < shop.Length; i++)
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"{writing.Prefix}s{i}.stock.json");
            tree.Add(name, writing.Stock(shop[i]));
            doses.Add(writing.Members([("stock", writing.Text(name)), ("dose", writing.Text("1:100"))]));
        }

        return tree.Add(
            writing.Prefix + "r.recipe.json",
            writing.Members([("format", "1"), ("final", writing.Text(writing.Litres(10))), ("doses", "[" + string.Join(",", doses) + "]")]));
    }

    private static GeneratedStock Sized(int[] salts, int[] tenths, double litres) =>
        new(litres, [.. salts.Select((s, i) => (_salts[s], Math.Round(tenths[i] * litres / 10, 2)))]);
}

internal sealed record GeneratedStock(double Litres, IReadOnlyList<(string Substance, double Grams)> Additions);

/// <summary>One way to write the same shop. Seed 0 is the plain one.</summary>
internal sealed record ShopWriting(int Seed, double Scale)
{
    private readonly Random _random = new(Seed);

    public string Prefix { get; init; } = "";

    public string Stock(GeneratedStock stock) => Members(
    [
        ("format", "1"), ("makes", Text(Litres(stock.Litres))),
        ("steps", "[" + string.Join(
            ",",
            stock.Additions.Select(a => Members([("add", Text(a.Substance)), ("amount", Text(Number(a.Grams * Scale) + " g")), ("assay", Text("99 %"))]))
                .Prepend(Members([("pour", Text(Litres(stock.Litres * 0.7))), ("of", Text("distilled"))]))
                .Append(Members([("topUp", Text(Litres(stock.Litres))), ("of", Text("distilled"))]))) + "]"),
    ]);

    public string Litres(double litres) => Number(litres * Scale) + " L";

    public string Members((string Name, string Value)[] members)
    {
        if (Seed != 0)
        {
            _random.Shuffle(members);
        }

        return "{" + string.Join(",", members.Select(m => Space() + Text(m.Name) + Space() + ":" + Space() + m.Value + Space())) + "}";
    }

    public string Text(string text) => "\"" + string.Concat(text.Select(c => Seed != 0 && _random.Next(4) == 0 ? string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}") : c.ToString())) + "\"";

    private static string Number(double value) => Math.Round(value, 6).ToString("0.######", CultureInfo.InvariantCulture);

    private string Space() => Seed == 0 ? "" : new[] { "", " ", "\n", "\r\n", "\t", "   " }[_random.Next(6)];
}
