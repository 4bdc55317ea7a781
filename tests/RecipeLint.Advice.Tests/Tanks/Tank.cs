using System.Globalization;
using System.Text;
using RecipeLint.Advice.Tests.Agreement;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Files;

namespace RecipeLint.Advice.Tests.Tanks;

/// <summary>Invented tanks in invented waters.</summary>
internal static class Tank
{
    /// <param name="ions">mg/L of the source water; empty for distilled water.</param>
    /// <param name="doses">What goes in dry or as bought.</param>
    /// <param name="adjust">pH and reagent; null for none.</param>
    /// <param name="stocks">Stocks of one litre, each dosed as stated.</param>
    public static RecipeFacts Of(
        double litres,
        (string Ion, double Milligrams)[] ions,
        (string Substance, string Amount)[] doses,
        (double Ph, string Using)? adjust = null,
        (string Name, string Dose, (string Substance, string Amount)[] Adds)[]? stocks = null,
        string more = "")
    {
        var files = new MemoryFileTree("/shop").AddFolder("/shop");
        var invariant = CultureInfo.InvariantCulture;
        if (ions.Length > 0)
        {
            Add("w.water.json", $$"""{"format": 1, "name": "W", "ions": {{{string.Join(", ", ions.Select(i => string.Create(
                invariant, $"\"{i.Ion}\": \"{i.Milligrams} mg/L\"")))}}} }""");
        }

        foreach (var (name, _, adds) in stocks ?? [])
        {
            Add($"{name}.stock.json", $$"""
                {"format": 1, "name": "{{name}}", "makes": "1 L",
                 "steps": [{"pour": "700 mL"}, {{string.Join(", ", adds.Select(Step))}}, {"topUp": "1 L"}]}
                """);
        }

        var entries = (stocks ?? []).Select(s => $$"""{"stock": "{{s.Name}}.stock.json", "dose": "{{s.Dose}}"}""").Concat(doses.Select(Step));
        var acid = adjust is var (ph, reagent) ? string.Create(invariant, $", \"adjust\": {{\"pH\": \"{ph}\", \"using\": \"{reagent}\"}}") : "";
        Add("r.recipe.json", string.Create(invariant, $$"""
            {"format": 1, "name": "r", "water": "{{(ions.Length > 0 ? "w.water.json" : "distilled")}}", "final": "{{litres}} L",
             "volume": "made up", "doses": [{{string.Join(", ", entries)}}]{{acid}}{{more}} }
            """));
        return Analyzer.Analyse(WorkspaceLoader.Load(files, ["."], Bottle.Load)).Recipes.Single();

        static string Step((string Substance, string Amount) add) => $$"""{"add": "{{add.Substance}}", "amount": "{{add.Amount}}"}""";
        void Add(string file, string text) => files.Add(file, Encoding.UTF8.GetBytes(text));
    }
}
