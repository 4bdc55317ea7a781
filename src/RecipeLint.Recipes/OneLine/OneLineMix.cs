using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Documents;
using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Recipes.OneLine;

/// <summary>One thing named in a line such as "KNO3 100 g".</summary>
/// <param name="Name">As written.</param>
/// <param name="AmountText">As written ("100 g").</param>
public sealed record OneLineItem(string Name, Substance Substance, string AmountText, Quantity Amount);

/// <summary>
/// Reads a mix written in one line: "Ca(NO3)2.4H2O 200 g, KNO3 100 g in 2 L" or "2 g/L K2SO4 + 1.5 g/L MgSO4.7H2O".
/// Amount before or after the name; items apart by comma, semicolon or " + "; the volume after "in".
/// </summary>
public sealed record OneLineMix(IReadOnlyList<OneLineItem> Items, Quantity? Volume, string? VolumeText)
{
    /// <summary>"4 lb per 100 US gal".</summary>
    private const int LongestAmountInWords = 6;

    /// <summary>Words that stand between what goes in and how much it makes.</summary>
    private static readonly string[] VolumeWords = [" made up to ", " into ", " to ", " per ", " / "];

    /// <summary>
    /// Reads a line; on failure the error is one plain line that names everything that cannot be used, and the mix is null.
    /// </summary>
    public static (OneLineMix? Mix, string? Error) Read(string text, SubstanceCatalogue catalogue)
    {
        var (list, volumeText) = SplitVolume(text.Trim());
        Quantity? volume = null;
        if (volumeText is not null && !QuantityReader.TryRead(volumeText, Due.Volume, out volume, out var fault))
        {
            return (null, $"The volume '{volumeText}' cannot be used. {fault.Message}");
        }

        var items = new List<OneLineItem>();
        var errors = new List<string>();
        foreach (var part in SplitItems(list))
        {
            var (item, error) = ReadItem(part, catalogue);
            if (item is null)
            {
                errors.Add(error!);
            }
            else
            {
                items.Add(item);
            }
        }

        if (errors.Count > 0)
        {
            return (null, string.Join(' ', errors.Distinct(StringComparer.Ordinal)));
        }

        return items.Count == 0
            ? (null, "Name at least one substance with its amount, such as \"KNO3 100 g in 2 L\".")
            : (new OneLineMix(items, volume, volumeText), null);
    }

    /// <summary>What a line names, without its amounts and its volume, whether or not any of it is known. Never throws.</summary>
    public static IReadOnlyList<string> Names(string text)
    {
        var (list, volume) = SplitVolume(text.Trim());
        var rest = volume is null || QuantityReader.TryRead(volume, Due.Volume, out _, out _) ? list : text;
        return [.. SplitItems(rest).Select(Name)];
    }

    /// <summary>True when a line says what volume it makes: then it is dissolved in water.</summary>
    public static bool NamesVolume(string text) =>
        SplitVolume(text.Trim()).Volume is { } volume && QuantityReader.TryRead(volume, Due.Volume, out _, out _);

    /// <summary>One thing without its amount.</summary>
    private static string Name(string part) =>
        Splits(part).FirstOrDefault(s => QuantityReader.TryRead(s.Amount, Due.Portion, out _, out _)).Name ?? part;

    /// <summary>What follows "in"; or "per", "into", "made up to", "to" where a volume follows.</summary>
    private static (string List, string? Volume) SplitVolume(string text)
    {
        var at = text.LastIndexOf(" in ", StringComparison.OrdinalIgnoreCase);
        if (at >= 0)
        {
            return (text[..at], text[(at + 4)..].Trim());
        }

        foreach (var word in VolumeWords)
        {
            at = text.LastIndexOf(word, StringComparison.OrdinalIgnoreCase);
            if (at > 0 && text[(at + word.Length)..].Trim() is var after && QuantityReader.TryRead(after, Due.Volume, out _, out _))
            {
                return (text[..at].TrimEnd(' ', ','), after);
            }
        }

        return (text, null);
    }

    /// <summary>
    /// Splits at commas, semicolons and free-standing plus signs outside brackets; a comma between two digits belongs to a number.
    /// </summary>
    private static List<string> SplitItems(string text)
    {
        var parts = new List<string>();
        var depth = 0;
        var start = 0;
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            depth += c is '(' or '[' or '{' ? 1 : c is ')' or ']' or '}' ? -1 : 0;
            var betweenDigits = i > 0 && i + 1 < text.Length && char.IsAsciiDigit(text[i - 1]) && char.IsAsciiDigit(text[i + 1]);
            var freePlus = c == '+' && i > 0 && i + 1 < text.Length && text[i - 1] == ' ' && text[i + 1] == ' ';
            if (depth <= 0 && (c == ';' || freePlus || (c == ',' && !betweenDigits)))
            {
                parts.Add(text[start..i].Trim());
                start = i + 1;
            }
        }

        parts.Add(text[start..].Trim());
        return [.. parts.Where(p => p.Length > 0)];
    }

    private static (OneLineItem? Item, string? Error) ReadItem(string part, SubstanceCatalogue catalogue)
    {
        QuantityFault? firstFault = null;
        foreach (var (amountText, name) in Splits(part))
        {
            if (QuantityReader.TryRead(amountText, Due.Portion, out var amount, out var fault))
            {
                return Resolve(name, amountText, amount, catalogue);
            }

            firstFault = fault;
        }

        if (QuantityReader.TryRead(part, Due.Portion, out _, out _))
        {
            return (null, $"'{part}' is an amount of nothing: say of what, such as \"KNO3 {part}\".");
        }

        return (null, firstFault is null
            ? part.EndsWith(".json", StringComparison.OrdinalIgnoreCase)
                ? $"'{part}' is a file; here stands a mix in one line, such as \"KNO3 100 g in 2 L\". 'recipelint show {part}' shows "
                    + "a file."
                : $"'{part}' has no amount; write it as \"KNO3 100 g\" or \"100 g KNO3\"."
            : $"The amount in '{part}' cannot be used. {firstFault.Message}");
    }

    /// <summary>Every way to take an amount of a few words off the end or the start of a part.</summary>
    private static IEnumerable<(string Amount, string Name)> Splits(string part)
    {
        var words = part.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var length = 1; length <= Math.Min(LongestAmountInWords, words.Length - 1); length++)
        {
            foreach (var (amount, name) in new[]
                     {
                         (string.Join(' ', words[^length..]), string.Join(' ', words[..^length])),
                         (string.Join(' ', words[..length]), string.Join(' ', words[length..])),
                     })
            {
                if (char.IsAsciiDigit(amount[0]))
                {
                    yield return (amount, name);
                }
            }
        }
    }

    /// <summary>What half words stand for goes before what is only spelt like it: "mang sulphate" is no zinc.</summary>
    private static IReadOnlyList<string> Near(string name, SubstanceLookup.Unknown unknown, SubstanceCatalogue catalogue) =>
        EverydayNames.Meant(name, catalogue) is { Count: > 0 } meant ? meant : unknown.Suggestions;

    private static (OneLineItem? Item, string? Error) Resolve(
        string name, string amountText, Quantity amount, SubstanceCatalogue catalogue) =>
        catalogue.Find(name) switch
        {
            SubstanceLookup.Found found => (new OneLineItem(name, found.Substance, amountText, amount), null),
            SubstanceLookup.Ambiguous several => (
                null,
                $"'{name}' can be {string.Join(" or ", several.Candidates.Select(c => $"'{c.Id}'"))}; name the one you have."),
            SubstanceLookup.Unknown unknown => (
                null,
                Nutrients.Bearers(name) is { Count: > 0 } bearers
                    ? $"'{name}' {Nutrients.NoSubstance}, such as {string.Join(" or ", bearers.Select(b => $"'{b}'"))}."
                    : Near(name, unknown, catalogue) is { Count: > 0 } near
                        ? $"'{name}' is not in the catalogue; did you mean {string.Join(" or ", near.Select(s => $"'{s}'"))}?"
                        : $"'{name}' is not in the catalogue."),
            _ => (null, $"'{name}' is not in the catalogue."),
        };
}
