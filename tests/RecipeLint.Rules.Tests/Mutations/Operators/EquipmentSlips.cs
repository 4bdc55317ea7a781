namespace RecipeLint.Rules.Tests.Mutations.Operators;

/// <summary>The wrong scale, a coarser one, a coarser measure, a smaller vessel.</summary>
internal static class EquipmentSlips
{
    internal static IEnumerable<Mutant> Of(CleanShop shop)
    {
        const string file = "recipelint.json";
        var root = shop.Root(file);
        var scales = root["scales"]!.Items;
        foreach (var line in shop.Lines.Where(l => scales.Any(s => s["name"]!.Text == l.Item["with"]?.Text)))
        {
            foreach (var scale in scales.Select(s => s["name"]!.Text).Where(n => n != line.Item["with"]!.Text))
            {
                yield return Slips.Value(shop, "another scale", line, "with", scale, [scale, .. Naming.WordsOf(line.Additions)]);
            }
        }

        foreach (var line in shop.Lines.Where(l => l.Item["with"] is { } with && scales.All(s => s["name"]!.Text != with.Text)))
        {
            foreach (var measure in root["measures"]!.Items.Select(m => m["name"]!.Text).Where(n => n != line.Item["with"]!.Text))
            {
                yield return Slips.Value(shop, "another measure", line, "with", measure, [measure, .. Naming.WordsOf(line.Additions)]);
            }
        }

        foreach (var scale in scales)
        {
            var name = scale["name"]!.Text;
            string[] words = [name];
            yield return Slips.Value(shop, "coarser scale", file, scale["readability"]!, Slips.Quoted(Slips.Times(scale["readability"]!.Text, 10)), name, words);
            yield return Slips.Value(shop, "coarser scale", file, scale["readability"]!, Slips.Quoted(Slips.Times(scale["readability"]!.Text, 100)), name, words);
            yield return Slips.Value(shop, "smaller scale", file, scale["capacity"]!, Slips.Quoted(Slips.Times(scale["capacity"]!.Text, 0.01)), name, words);
            yield return Slips.Value(shop, "scale under another name", file, scale["name"]!, Slips.Quoted(name + "-2"), name, words);
        }

        foreach (var measure in root["measures"]!.Items)
        {
            var name = measure["name"]!.Text;
            yield return Slips.Value(shop, "coarser measure", file, measure["tolerance"]!, "\"± 20 %\"", name, [name]);
            yield return Slips.Value(shop, "measure under another name", file, measure["name"]!, Slips.Quoted(name + "-2"), name, [name]);
        }

        foreach (var vessel in root["vessels"]!.Items)
        {
            var name = vessel["name"]!.Text;
            yield return Slips.Value(shop, "smaller vessel", file, vessel["capacity"]!, Slips.Quoted(Slips.Times(vessel["capacity"]!.Text, 0.1)), name, [name]);
        }

        foreach (var site in root["sites"]!.Items)
        {
            var name = site["name"]!.Text;
            yield return Slips.Value(shop, "colder site", file, site["at"]!, "\"-8..20 °C\"", name, [name, "-8 °C"]);
            yield return Slips.Value(shop, "warmer site", file, site["at"]!, "\"10..45 °C\"", name, [name, "45 °C"]);
        }
    }
}
