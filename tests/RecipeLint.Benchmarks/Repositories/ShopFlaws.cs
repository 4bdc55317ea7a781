namespace RecipeLint.Benchmarks.Repositories;

/// <summary>Single mistakes of the kind people make, one to a shop.</summary>
internal static class ShopFlaws
{
    private static readonly Action<ShopTexts, Dictionary<string, string>>[] _all =
    [
        (s, t) => Swap(t, s.PartA, "\"potassium-nitrate\"", "\"potassium-sulfate\""),
        (s, t) => Swap(t, s.PartB, "\"magnesium-sulfate-7h2o\"", "\"calcium-nitrate-4h2o\""),
        (s, t) => Swap(t, s.PartA, "\"fe-dtpa-hna\"", "\"fe-edta-na\""),
        (s, t) => Swap(t, s.PartA, "\"assay\": \"99 %\", ", ""),
        (s, t) => Swap(t, s.Trace, "\"with\": \"fine-scale\"", "\"with\": \"bench-scale\""),
        (s, t) => Swap(t, s.Trace, "\"boric-acid\"", "\"borik-acid\""),
        (s, t) => Swap(t, s.Trace, $"\"add\": \"{s.Pre}\"", "\"add\": \"gone.stock.json\""),
        (s, t) => Swap(t, s.PartB, "\"amount\"", "\"ammount\""),
        (s, t) => Swap(t, s.PartB, "\"keep\"", "\"keeps\""),
        (s, t) => Swap(t, s.Recipe, "\"dose\"", "\"doze\""),
        (s, t) => Swap(t, s.Recipe, "\"final\": ", "\"final\": 2"),
        (s, t) => Swap(t, s.Recipe, "\"crop\": \"lettuce\"", "\"crop\": \"letuce\""),
        (s, t) => Swap(t, s.Recipe, " }\n", " \n"),
        (s, t) => t[s.Pre] = "",
    ];

    public static void Apply(ShopTexts shop, Dictionary<string, string> texts, Random random) => _all[random.Next(_all.Length)](shop, texts);

    private static void Swap(Dictionary<string, string> texts, string file, string was, string becomes)
    {
        var text = texts[file];
        var at = text.IndexOf(was, StringComparison.Ordinal);
        if (at < 0)
        {
            throw new InvalidOperationException($"'{was}' does not stand in '{file}': the flaw no longer fits the model shop.");
        }

        texts[file] = text[..at] + becomes + text[(at + was.Length)..];
    }
}
