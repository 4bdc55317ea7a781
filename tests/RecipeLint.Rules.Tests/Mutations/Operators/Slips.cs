using System.Globalization;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Tests.Mutations.Operators;

/// <summary>What the operators share: one value exchanged for another, at a named place.</summary>
internal static class Slips
{
    /// <summary>Every mutant of a shop, in a fixed order.</summary>
    internal static IReadOnlyList<Mutant> Of(CleanShop shop) =>
    [
        .. AmountSlips.Of(shop),
        .. SubstanceSlips.Of(shop),
        .. LineSlips.Of(shop),
        .. StockSlips.Of(shop),
        .. EquipmentSlips.Of(shop),
        .. DoseSlips.Of(shop),
        .. RecipeSlips.Of(shop),
        .. WaterSlips.Of(shop),
        .. SpellingSlips.Of(shop),
    ];

    /// <summary>A mutant in which one value of one file reads differently.</summary>
    internal static Mutant Value(CleanShop shop, string slip, string file, JsonItem item, string text, string called, IEnumerable<string> words) =>
        new(slip, $"{called}: {Written(shop.TextOf(file, item))} as {Written(text)}", [shop.Edit(file, (item.Span, text))], [new Place(file, item.Pointer)], [.. words])
        {
            Shop = shop,
        };

    /// <summary>A mutant in which one value of a line of a stock reads differently.</summary>
    internal static Mutant Value(CleanShop shop, string slip, Line line, string key, string text, IEnumerable<string>? words = null) =>
        Value(shop, slip, line.File, line.Item[key]!, Quoted(text), line.Called, words ?? Naming.WordsOf(line.Additions));

    internal static string Quoted(string text) => $"\"{text}\"";

    internal static string Number(double value) => value.ToString("0.##########", CultureInfo.InvariantCulture);

    /// <summary>"130 g" as 130 and " g", "± 5 %" and all.</summary>
    internal static (double Number, string Unit) Split(string quantity)
    {
        var length = quantity.TakeWhile(c => char.IsDigit(c) || c == '.').Count();
        return (double.Parse(quantity[..length], CultureInfo.InvariantCulture), quantity[length..]);
    }

    /// <summary>The same quantity with its number multiplied.</summary>
    internal static string Times(string quantity, double factor)
    {
        var (number, rest) = Split(quantity);
        return Number(number * factor) + rest;
    }

    private static string Written(string json) => json.Trim('"');
}
