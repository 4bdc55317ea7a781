using RecipeLint.Recipes.Text;

namespace RecipeLint.Rules.Tests.Mutations.Operators;

/// <summary>The final solution: volume, water, crop, pH and targets.</summary>
internal static class RecipeSlips
{
    internal static IEnumerable<Mutant> Of(CleanShop shop)
    {
        var recipe = shop.Recipe;
        var file = recipe.Recipe.File;
        var root = shop.Root(file);
        string[] all = [.. Naming.WordsOf(recipe.Doses.SelectMany(d => d.Stock!.Additions))];
        var final = root["final"]!;
        var litres = Slips.Number(Slips.Split(final.Text).Number);
        foreach (var (slip, text) in new[]
        {
            ("final volume ten times", Slips.Times(final.Text, 10)), ("final volume a tenth", Slips.Times(final.Text, 0.1)),
            ("final volume in US gallons", litres + " US gal"), ("final volume in UK gallons", litres + " UK gal"), ("final volume in bare gallons", litres + " gal"),
        })
        {
            yield return Slips.Value(shop, slip, file, final, Slips.Quoted(text), "final", all);
        }

        yield return Slips.Value(shop, "added to for made up", file, root["volume"]!, "\"added to\"", "volume", ["added to", .. all]);
        yield return new Mutant("volume not stated", "volume", [shop.Edit(file, shop.Without(file, root, "volume"))], [Place.Whole(file).Child("final")], all) { Shop = shop };

        foreach (var water in new[] { "distilled", "hard", "sea", "soft-bicarbonate" })
        {
            yield return Water(shop, file, root["water"]!, water, all);
        }

        foreach (var crop in new[] { "strawberry", "tomato", "propagation", "rose" })
        {
            yield return Slips.Value(shop, "another crop", file, root["crop"]!, Slips.Quoted(crop), "crop", [$"'{crop}'", .. all]);
        }

        if (root["adjust"] is { } adjust)
        {
            foreach (var (slip, key, text) in new[] { ("pH slip", "pH", "8.5"), ("pH slip", "pH", "3.8"), ("another reagent", "using", "koh-10"), ("another reagent", "using", "phosphoric-75") })
            {
                yield return Slips.Value(shop, slip, file, adjust[key]!, Slips.Quoted(text), "adjust", ["pH", "alkalinity", .. all]);
            }

            yield return new Mutant("no acid in the feed", "adjust", [shop.Edit(file, shop.Without(file, root, "adjust"))], [], ["pH", "alkalinity"]) { Shop = shop };
        }

        foreach (var mutant in Targets(shop, file))
        {
            yield return mutant;
        }
    }

    /// <summary>Another water: its file goes beside the shop's own.</summary>
    private static Mutant Water(CleanShop shop, string file, Recipes.Json.JsonItem water, string kind, string[] words)
    {
        var ions = kind switch
        {
            "hard" => "\"Ca\": \"130 mg/L\", \"Mg\": \"22 mg/L\", \"Na\": \"20 mg/L\", \"Cl\": \"35 mg/L\", \"SO4\": \"60 mg/L\", \"HCO3\": \"410 mg/L\"",
            "sea" => "\"Ca\": \"60 mg/L\", \"Mg\": \"50 mg/L\", \"Na\": \"320 mg/L\", \"Cl\": \"560 mg/L\", \"SO4\": \"90 mg/L\", \"HCO3\": \"180 mg/L\"",
            "soft-bicarbonate" => "\"Ca\": \"8 mg/L\", \"Mg\": \"3 mg/L\", \"Na\": \"90 mg/L\", \"Cl\": \"20 mg/L\", \"HCO3\": \"245 mg/L\"",
            _ => null,
        };
        var name = ions is null ? kind : $"../water/{kind}.water.json";
        List<FileText> files = [shop.Edit(file, (water.Span, Slips.Quoted(name)))];
        if (ions is not null)
        {
            files.Add(new FileText($"water/{kind}.water.json", System.Text.Encoding.UTF8.GetBytes($$"""{ "format": 1, "name": "{{kind}} water", "ions": { {{ions}} } }""")));
        }

        return new Mutant("another water", kind, files, [Place.Whole(file).Child("water")], [$"{kind} water", "water", "alkalinity", "sodium", "chloride", "Ca", "Mg", .. words]) { Shop = shop };
    }

    private static IEnumerable<Mutant> Targets(CleanShop shop, string file)
    {
        foreach (var target in shop.Root(file)["targets"]!.Members)
        {
            var text = target.Value.Text;
            var oxide = target.Name switch { "P" => "P2O5", "K" => "K2O", "Ca" => "CaO", "Mg" => "MgO", _ => null };
            List<(string Slip, string Text)> slips = [("target ten times", Slips.Times(text, 10)), ("target a tenth", Slips.Times(text, 0.1)), ("target in mmol", text.Replace("mg/L", "mmol/L", StringComparison.Ordinal))];
            if (oxide is not null)
            {
                slips.Add(text.Contains(oxide, StringComparison.Ordinal)
                    ? ("target on another basis", text.Replace($" as {oxide}", "", StringComparison.Ordinal))
                    : ("target on another basis", text.Replace("mg/L", $"mg/L as {oxide}", StringComparison.Ordinal)));
            }

            foreach (var (slip, changed) in slips)
            {
                yield return Slips.Value(shop, slip, file, target.Value, Slips.Quoted(changed), target.Name, [target.Name]) with { InTargets = true };
            }
        }
    }
}
