using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Quantities;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Fields;

/// <summary>
/// Amounts that nobody means: bounds far outside what shops do (common practice, no source), so that a slipped unit or a lost
/// decimal point is named where it stands.
/// </summary>
internal static class Plausibility
{
    private const double MostCost = 1e9;

    private static readonly Volume SmallestBatch = Volume.FromMillilitres(1);
    private static readonly Volume LargestBatch = new(100_000);
    private static readonly MassConcentration MostSolid = new(2000);
    private static readonly Temperature Coldest = new(-20);
    private static readonly Temperature Warmest = new(60);

    /// <summary>
    /// A batch of at least 1 mL and at most 100 m³; null where it is not positive, since nothing can be computed with it.
    /// </summary>
    public static Located<Volume>? Batch(Located<Volume>? volume, JsonItem? item, FieldReader fields)
    {
        if (volume is null || item is null)
        {
            return null;
        }

        if (volume.Value <= Volume.Zero)
        {
            fields.Implausible(
                item,
                $"A batch of {Litres(volume.Value)} makes nothing. State the finished volume.",
                Value("volume", volume.Value.Litres, "L"));
            return null;
        }

        if (volume.Value < SmallestBatch || volume.Value > LargestBatch)
        {
            fields.Implausible(
                item,
                $"A batch of {Litres(volume.Value)} is outside 1 mL to 100 m³. Check the unit.",
                Value("volume", volume.Value.Litres, "L"));
        }

        return volume;
    }

    public static Located<Volume>? PositiveVolume(Located<Volume>? volume, JsonItem? item, FieldReader fields) =>
        Positive(volume, v => v.Litres, item, fields);

    public static Located<Mass>? PositiveMass(Located<Mass>? mass, JsonItem? item, FieldReader fields) =>
        Positive(mass, m => m.Grams, item, fields);

    public static Located<Duration>? PositiveDuration(Located<Duration>? duration, JsonItem? item, FieldReader fields) =>
        Positive(duration, d => d.Days, item, fields);

    public static Located<Portion>? PositivePortion(Located<Portion>? portion, JsonItem? item, FieldReader fields) =>
        Positive(portion, Size, item, fields);

    /// <summary>More than nothing and at most one part in one part.</summary>
    public static Located<Dose>? Dose(Located<Dose>? dose, JsonItem? item, FieldReader fields)
    {
        var positive = Positive(dose, d => d.LitresPerLitre, item, fields);
        if (positive is { Value.LitresPerLitre: > 1 })
        {
            fields.Implausible(
                item!,
                $"A dose of {Text(positive.Value.LitresPerLitre)} L of stock in each litre is more than 1:1. Check the unit.",
                Value("dose", positive.Value.LitresPerLitre, "L/L"));
        }

        return positive;
    }

    /// <summary>Above 0 and up to 100 %; null where it is not, so that no content is computed from it.</summary>
    public static Located<MassFraction>? Share(Located<MassFraction>? share, JsonItem? item, FieldReader fields, string what)
    {
        if (share is null || item is null)
        {
            return null;
        }

        if (share.Value.Value is > 0 and <= 1)
        {
            return share;
        }

        fields.Implausible(
            item,
            $"{what} of {Text(share.Value.Percent)} % is impossible; it is more than 0 and at most 100 %.",
            Value("percent", share.Value.Percent, "%"));
        return null;
    }

    public static Located<double>? Ph(Located<double>? ph, JsonItem? item, FieldReader fields)
    {
        if (ph is not null && item is not null && ph.Value is < 0 or > 14)
        {
            fields.Implausible(item, $"A pH of {Text(ph!.Value)} is outside 0 to 14.", Value("pH", ph.Value, ""));
            return null;
        }

        return ph;
    }

    /// <summary>From nothing to a billion of any currency; null where it is not, so that no sum of prices is past all numbers.</summary>
    public static double? Cost(double? cost, JsonItem? item, FieldReader fields)
    {
        if (cost is > MostCost && item is not null)
        {
            fields.Implausible(
                item,
                $"{Wording.Shorten(item.Text)} is more than any bag or bottle costs. Check the number.",
                Value("cost", cost.Value, ""));
            return null;
        }

        return cost is >= 0 ? cost : null;
    }

    /// <summary>Storage, or the roots, between -20 and 60 °C; reported, but kept.</summary>
    public static void Storage(Interval<Temperature> at, JsonItem item, FieldReader fields)
    {
        if (at.Low < Coldest || at.High > Warmest)
        {
            var worst = at.Low < Coldest ? at.Low : at.High;
            fields.Implausible(
                item,
                $"A temperature of {Text(worst.Celsius)} °C is outside -20 to 60 °C. Check the unit.",
                Value("temperature", worst.Celsius, "°C"));
        }
    }

    /// <summary>A solid heavier than 2 kg, or a liquid larger than the batch, for each batch made.</summary>
    public static void AgainstBatch(Portion portion, Substance? substance, Located<Volume> batch, JsonItem item, FieldReader fields)
    {
        var made = batch.Value;
        var isSolid = substance is { Form: PhysicalForm.Solid };
        var mass = portion switch
        {
            Portion.ByMass m => m.Mass,
            Portion.PerLitreMass c => c.Concentration * made,
            _ => Mass.Zero,
        };
        if (isSolid && mass / made > MostSolid)
        {
            var perLitre = (mass / made).GramsPerLitre / 1000;
            fields.Implausible(
                item,
                $"{Kilograms(mass)} of a solid in {Litres(made)} is {Kilograms(new Mass(perLitre * 1000))} for each litre. Nothing "
                    + "dissolves like that; check the units.",
                batch.Place, Value("concentration", perLitre, "kg/L"), Value("limit", MostSolid.GramsPerLitre / 1000, "kg/L"));
            return;
        }

        if (portion is Portion.ByVolume volume)
        {
            LiquidAgainstBatch(volume.Volume, batch, item, fields);
        }
        else if (portion is Portion.PerLitreVolume { Dose.LitresPerLitre: > 1 } dose)
        {
            LiquidAgainstBatch(dose.Dose * made, batch, item, fields);
        }
    }

    public static void LiquidAgainstBatch(Volume added, Located<Volume> batch, JsonItem item, FieldReader fields)
    {
        var made = batch.Value;
        // A hair over is rounding of units, not a mistake.
        if (added.Litres > made.Litres * 1.000001)
        {
            fields.Implausible(item, $"{Litres(added)} does not fit into the {Litres(made)} that are made.",
                batch.Place, Value("volume", added.Litres, "L"), Value("limit", made.Litres, "L"));
        }
    }

    public static string Litres(Volume volume) => volume.Litres switch
    {
        >= 1000 => $"{Text(volume.Litres / 1000)} m³",
        < 1 and > -1 when volume.Litres != 0 => $"{Text(volume.Millilitres)} mL",
        var litres => $"{Text(litres)} L",
    };

    private static string Kilograms(Mass mass) => mass.Grams switch
    {
        >= 1e6 => $"{Text(mass.Grams / 1e6)} t",
        >= 1000 => $"{Text(mass.Grams / 1000)} kg",
        _ => $"{Text(mass.Grams)} g",
    };

    public static string Text(double value) => Wording.Number(value, 5);

    public static Located<T>? Positive<T>(Located<T>? amount, Func<T, double> size, JsonItem? item, FieldReader fields)
    {
        if (amount is null || item is null || size(amount.Value) > 0)
        {
            return amount;
        }

        fields.Implausible(
            item,
            $"'{Wording.Shorten(item.Text)}' is not more than nothing. State an amount above zero.",
            Value("amount", size(amount.Value), ""));
        return null;
    }

    private static double Size(Portion portion) => portion switch
    {
        Portion.ByMass p => p.Mass.Grams,
        Portion.ByVolume p => p.Volume.Litres,
        Portion.ByDrops p => p.Count,
        Portion.ByAmount p => p.Amount.Moles,
        Portion.PerLitreMass p => p.Concentration.GramsPerLitre,
        Portion.PerLitreAmount p => p.Concentration.MolesPerLitre,
        Portion.PerLitreVolume p => p.Dose.LitresPerLitre,
        _ => 0,
    };

    private static NamedValue Value(string name, double value, string unit) => new(name, value, unit);
}
