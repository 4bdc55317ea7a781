using System.Globalization;
using RecipeLint.Analysis.Readings;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Advice.Slips;

/// <summary>Something that was measured on a bottle.</summary>
/// <param name="Text">As written.</param>
/// <param name="Value">pH, mS/cm or g/mL.</param>
/// <param name="HalfWidth">Stated with it, in the unit of the value; null for the instrument's.</param>
public sealed record Measurement(string Text, Reading Reading, double Value, double? HalfWidth)
{
    /// <summary>The volume that was weighed; null where nothing was filled.</summary>
    public Volume? Filled { get; init; }

    /// <summary>
    /// Reads "pH 6.9", "pH 5.2 at 1:100", "EC 1.8 mS/cm at 1:100", "1 L weighs 1.12 kg", "weighs 2.2 kg" (the whole batch), "density 1.12
    /// g/mL" or "weight 1.12 kg/L"; the name may be left out where the unit says it.
    /// </summary>
    /// <param name="batch">Volume of the whole batch.</param>
    /// <returns>The measurement, or one plain sentence on what is wrong.</returns>
    public static (Measurement? Measurement, string? Error) Read(string text, Volume batch)
    {
        var plain = text.Trim();
        if (Weight(plain, batch) is { } weight)
        {
            return weight;
        }

        var kind = Kind(ref plain) ?? KindByUnit(plain);
        if (IsDissolvedSolids(plain))
        {
            return (null,
                $"'{text}' is a conductivity in disguise: meters that show ppm multiply it by 0.5, 0.64 or 0.7, and do not say by which. "
                    + "Switch the meter to mS/cm and write it like \"EC 1.8 mS/cm\".");
        }

        if (kind is null)
        {
            return (null,
                $"'{text}' cannot be read as a measurement. Write it like \"pH 6.9\", \"EC 1.8 mS/cm at 1:100\" or \"1 L weighs 1.12 "
                    + "kg\".");
        }

        if (Others.FirstOrDefault(o => plain.Contains(o, StringComparison.OrdinalIgnoreCase)) is not null)
        {
            return (null, $"'{text}' is more than one reading: give each with a '--measured' of its own.");
        }

        if (Dilution(ref plain, text, out var dilution) is { } undiluted)
        {
            return (null, undiluted);
        }

        var due = kind switch { ReadingKind.Ph => Due.Ph, ReadingKind.Conductivity => Due.Conductivity, _ => Due.Density };
        if (!QuantityReader.TryRead(plain, due, out var quantity, out var fault))
        {
            return (null, $"'{text}' cannot be used. {fault.Message}");
        }

        if (quantity.Low != quantity.High)
        {
            return (null, $"'{text}' is a range; a measurement is one value.");
        }

        if (kind == ReadingKind.Ph && quantity.Low is not (>= 0 and <= 14))
        {
            return (null, $"'{text}': a pH lies between 0 and 14.");
        }

        if (!(quantity.Low > 0) && kind != ReadingKind.Ph)
        {
            return (null, $"'{text}' is no reading: it must be above zero.");
        }

        return (new Measurement(
            text.Trim(), new Reading(kind.Value, dilution), quantity.Low, quantity.Tolerance?.HalfWidth(quantity.Low)), null);
    }

    /// <summary>Takes " at 1:100" off the end of a reading; says why where it cannot be used.</summary>
    private static string? Dilution(ref string plain, string text, out double dilution)
    {
        dilution = 1;
        var at = plain.LastIndexOf(" at ", StringComparison.OrdinalIgnoreCase);
        if (at <= 0)
        {
            return null;
        }

        if (!QuantityReader.TryRead(plain[(at + 4)..].Trim(), Due.Dose, out var dose, out var wrong))
        {
            return $"The dilution in '{text}' cannot be used. {wrong.Message}";
        }

        dilution = dose.Dose.LitresPerLitre > 0 ? dose.Dose.Dilution : 0;
        plain = plain[..at].Trim();
        return dilution >= 1 ? null : $"The dilution in '{text}' is none: write it like 1:100.";
    }

    /// <summary>"TDS 800", "800 ppm": a conductivity times a factor that the meter keeps to itself.</summary>
    private static bool IsDissolvedSolids(string text) =>
        text.StartsWith("TDS", StringComparison.OrdinalIgnoreCase)
        || text.TrimStart("0123456789., ".ToCharArray()).Equals("ppm", StringComparison.OrdinalIgnoreCase);

    private static readonly string[] Others = [" pH ", " EC ", " weighs "];

    private static ReadingKind? Kind(ref string text)
    {
        foreach (var (word, kind) in new[]
        {
            ("pH", ReadingKind.Ph),
            ("EC", ReadingKind.Conductivity),
            ("conductivity", ReadingKind.Conductivity),
            ("density", ReadingKind.Density),
            ("weighs", ReadingKind.Density),
            ("weight", ReadingKind.Density),
        })
        {
            if (text.StartsWith(word, StringComparison.OrdinalIgnoreCase)
                && (text.Length == word.Length || !char.IsLetter(text[word.Length])))
            {
                text = text[word.Length..].TrimStart(' ', ':', '=');
                return kind;
            }
        }

        return null;
    }

    /// <summary>A value whose unit says what was measured: "1.8 mS/cm at 1:100", "1.09 kg/L"; null for any other.</summary>
    private static ReadingKind? KindByUnit(string text)
    {
        var at = text.LastIndexOf(" at ", StringComparison.OrdinalIgnoreCase);
        var value = at > 0 ? text[..at] : text;
        return QuantityReader.TryRead(value, Due.Conductivity, out _, out _) ? ReadingKind.Conductivity
            : QuantityReader.TryRead(value, Due.Density, out _, out _) ? ReadingKind.Density
            : null;
    }

    /// <summary>"VOLUME weighs MASS", or "weighs MASS" for the whole batch; null when it is no weight.</summary>
    private static (Measurement?, string?)? Weight(string text, Volume batch)
    {
        foreach (var word in new[] { "weighs", "weigh", "weight" })
        {
            var at = text.IndexOf(word, StringComparison.OrdinalIgnoreCase);
            if (at < 0 || (at + word.Length < text.Length && char.IsLetter(text[at + word.Length])))
            {
                continue;
            }

            var (before, after) = (text[..at].Trim(), text[(at + word.Length)..].Trim(' ', ':', '='));
            var volume = batch;
            if (before.Length > 0)
            {
                if (!QuantityReader.TryRead(before, Due.Volume, out var poured, out var wrong))
                {
                    return (null, $"The volume in '{text}' cannot be used. {wrong.Message}");
                }

                volume = poured.Volume;
            }
            else if (QuantityReader.TryRead(after, Due.Density, out _, out _))
            {
                // "weight 1.09 kg/L": a density under another word.
                return null;
            }

            if (!QuantityReader.TryRead(after, Due.Mass with { AllowTolerance = true }, out var mass, out var fault))
            {
                return (null, $"The weight in '{text}' cannot be used. {fault.Message}");
            }

            return volume.Litres > 0 && mass.Low > 0 && mass.Low == mass.High
                ? (new Measurement(
                    text,
                    new Reading(ReadingKind.Density, 1),
                    mass.Low / volume.Millilitres,
                    (mass.Tolerance?.HalfWidth(mass.Low) ?? Step(after, mass)) / volume.Millilitres)
                { Filled = volume }, null)
                : (null, $"'{text}' is no weight of a volume.");
        }

        return null;
    }

    /// <summary>A weight written as "1.12 kg" is known to its last digit, half up and half down.</summary>
    private static double Step(string text, Quantity mass)
    {
        var number = new string([.. text.TakeWhile(c => char.IsAsciiDigit(c) || c == '.')]);
        var point = number.IndexOf('.', StringComparison.Ordinal);
        var written = double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value > 0 ? value : 1;
        var step = point < 0 ? 1 : Math.Pow(10, point - number.Length + 1);
        return step / 2 * mass.Low / written;
    }
}
