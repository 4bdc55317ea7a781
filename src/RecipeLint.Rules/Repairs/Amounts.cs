using RecipeLint.Analysis;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Patching;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Repairs;

/// <summary>Which way an amount is rounded to what a scale shows.</summary>
internal enum Round
{
    Nearest,
    Up,
    Down,
}

/// <summary>
/// Other amounts for what is weighed and poured, in the unit the file uses, rounded to what the shop's scale or measure shows.
/// </summary>
internal static class Amounts
{
    /// <summary>From so many display steps on, rounding to one is finer than the scale repeats.</summary>
    private const double StepsThatCount = 10;

    private const int Digits = 3;

    /// <summary>The amount of an addition times a factor; null where the file does not state one that begins with a number.</summary>
    public static (JsonEdit Edit, string Text)? Times(
        RepairContext context, AdditionFacts addition, double factor, Round round = Round.Nearest)
    {
        var place = addition.Place.Child("amount");
        if (context.Item(place) is not { Kind: JsonKind.Text } item || AmountText.NumberOf(item.Text) is not { } number)
        {
            return null;
        }

        var step = StepOf(addition, number);
        return AmountText.With(item.Text, Rounded(number * factor, step, round)) is { } text && text != item.Text
            ? (new JsonEdit.ReplaceValue(place, JsonDraft.Of(text)), text)
            : null;
    }

    /// <summary>Any other quantity times a factor, to four digits; null where there is none to change.</summary>
    public static (JsonEdit Edit, string Text)? Times(RepairContext context, Place place, double factor) =>
        context.Item(place) is { Kind: JsonKind.Text } item && AmountText.Times(item.Text, factor) is { } text
            ? (new JsonEdit.ReplaceValue(place, JsonDraft.Of(text)), text)
            : null;

    /// <summary>A quantity with another number in front, as given.</summary>
    public static (JsonEdit Edit, string Text)? With(RepairContext context, Place place, double number) =>
        context.Item(place) is { Kind: JsonKind.Text } item && AmountText.With(item.Text, number) is { } text && text != item.Text
            ? (new JsonEdit.ReplaceValue(place, JsonDraft.Of(text)), text)
            : null;

    /// <summary>A number rounded to a step, or to three digits where the step is too coarse for it.</summary>
    public static double Rounded(double value, double? step, Round round, int digits = Digits)
    {
        var by = step is { } shown && shown > 0 && value >= StepsThatCount * shown
            ? shown
            : Math.Pow(10, Math.Floor(Math.Log10(value)) - (digits - 1));
        var steps = value / by;
        return by * round switch
        {
            Round.Up => Math.Ceiling(steps - 1e-9),
            Round.Down => Math.Floor(steps + 1e-9),
            _ => Math.Round(steps),
        };
    }

    /// <summary>A mass as it is written into a file, rounded up to three digits.</summary>
    public static string Grams(double grams) => grams < 1
        ? AmountText.Write(Rounded(grams * 1000, null, Round.Up)) + " mg"
        : AmountText.Write(Rounded(grams, null, Round.Up)) + " g";

    /// <summary>A volume as it is written into a file, rounded up to three digits.</summary>
    public static string Litres(double litres) => litres < 1
        ? AmountText.Write(Rounded(litres * 1000, null, Round.Up)) + " mL"
        : AmountText.Write(Rounded(litres, null, Round.Up)) + " L";

    /// <summary>One display step of the scale or measure, in the unit of the number; null without one.</summary>
    private static double? StepOf(AdditionFacts addition, double number)
    {
        if (addition is { Scale.Readability.Grams: > 0 and var grams, Mass.Grams: > 0 })
        {
            return grams * number / addition.Mass.Grams;
        }

        return addition is { Measure.Readability: { Litres: > 0 } shown, Volume: { Litres: > 0 } volume }
            ? shown.Litres * number / volume.Litres
            : null;
    }
}
