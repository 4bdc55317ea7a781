using System.Globalization;

namespace RecipeLint.Benchmarks.Repositories;

/// <summary>The files of one invented shop.</summary>
/// <param name="suffix">Behind every name, so that many shops fit in one folder.</param>
/// <param name="water">The water file without its ending.</param>
/// <param name="strength">Of the weights, and with them of the targets, against the model shop.</param>
/// <param name="litres">Final volume.</param>
internal sealed class ShopTexts(string suffix, string water, double strength, int litres, int index)
{
    public const string Settings = """
        {
          "note": "Invented for measuring: no real place, person or product.",
          "profile": "leafy-greens",
          "scales": [
            { "name": "bench-scale", "readability": "0.1 g", "capacity": "3 kg" },
            { "name": "pocket-scale", "readability": "0.01 g", "capacity": "200 g" },
            { "name": "fine-scale", "readability": "0.001 g", "capacity": "50 g" }
          ],
          "measures": [
            { "name": "cylinder-100", "kind": "cylinder", "capacity": "100 mL", "readability": "1 mL", "tolerance": "± 1 mL" },
            { "name": "cylinder-2000", "kind": "cylinder", "capacity": "2 L", "readability": "20 mL", "tolerance": "± 20 mL" },
            { "name": "syringe-60", "kind": "syringe", "capacity": "60 mL", "readability": "1 mL", "tolerance": "± 4 %" }
          ],
          "vessels": [
            { "name": "jug-3", "capacity": "3 L", "tare": "210 g" },
            { "name": "bottle-250", "capacity": "250 mL", "tare": "85 g" }
          ],
          "sites": [{ "name": "store", "at": "8..25 °C" }]
        }
        """;

    public const string Water = """
        {
          "format": 1,
          "name": "Rain water from the glasshouse roof",
          "note": "Invented analysis.",
          "EC": "0.03 mS/cm",
          "pH": 6.1,
          "ions": {
            "Ca": "1.6 mg/L", "Mg": "0.4 mg/L", "Na": "1.8 mg/L", "K": "0.3 mg/L",
            "Cl": "2.9 mg/L", "SO4": "1.9 mg/L", "NO3": "1.1 mg/L", "HCO3": "3.4 mg/L"
          }
        }
        """;

    public string PartA => $"part-a{suffix}.stock.json";

    public string PartB => $"part-b{suffix}.stock.json";

    public string Trace => $"trace{suffix}.stock.json";

    public string Pre => $"molybdate-pre{suffix}.stock.json";

    public string Recipe => $"lettuce{suffix}.recipe.json";

    public IEnumerable<(string Name, string Text)> All() =>
    [
        (PartA, Stock("Part A", "calcium nitrate, potassium nitrate, iron DTPA", "10 mL/L", "3 months", PartASteps(), "part B", "brown")),
        (PartB, Stock("Part B", "potassium phosphate, magnesium sulfate, potassium nitrate", "10 mL/L", "3 months", PartBSteps(), "part A", null)),
        (Trace, Stock("Trace", "manganese, zinc, copper, boron, molybdenum, citric acid, sorbate", "1 mL/L", "6 months", TraceSteps(), null, "pale blue")),
        (Pre, PreStock()),
        (Recipe, RecipeText()),
    ];

    private string PartASteps() => $$"""
            { "pour": "1.5 L", "of": "{{water}}.water.json", "with": "cylinder-2000" },
            { "add": "calcium-nitrate-fertiliser", "amount": "{{Grams(130, 1)}}", "with": "bench-scale", "assay": "99 %", "id": "calcium-nitrate" },
            { "stir": "until clear" },
            { "add": "potassium-nitrate", "amount": "{{Grams(40, 1)}}", "with": "bench-scale", "assay": "99.5 %" },
            { "stir": "until clear" },
            { "add": "fe-dtpa-hna", "amount": "{{Grams(3.4, 2)}}", "with": "pocket-scale", "assay": "98 %", "id": "iron-dtpa" },
            { "topUp": "2 L", "of": "{{water}}.water.json" }
        """;

    private string PartBSteps() => $$"""
            { "pour": "1.5 L", "of": "{{water}}.water.json", "with": "cylinder-2000" },
            { "add": "monopotassium-phosphate", "amount": "{{Grams(35.2, 1)}}", "with": "bench-scale", "assay": "99 %", "id": "mkp" },
            { "add": "magnesium-sulfate-7h2o", "amount": "{{Grams(71, 1)}}", "with": "bench-scale", "assay": "99 %", "id": "epsom" },
            { "stir": "until clear" },
            { "add": "potassium-nitrate", "amount": "{{Grams(44, 1)}}", "with": "bench-scale", "assay": "99.5 %" },
            { "stir": "until clear" },
            { "topUp": "2 L", "of": "{{water}}.water.json" }
        """;

    private string TraceSteps() => $$"""
            { "pour": "1.5 L", "of": "distilled", "with": "cylinder-2000" },
            { "add": "citric-acid-h2o", "amount": "{{Grams(4, 2)}}", "with": "pocket-scale", "assay": "99.5 %", "id": "citric-acid" },
            { "add": "potassium-sorbate", "amount": "2 g", "with": "pocket-scale", "assay": "99 %", "id": "sorbate" },
            { "stir": "until clear" },
            { "add": "manganese-sulfate-h2o", "amount": "{{Grams(3.1, 2)}}", "with": "pocket-scale", "assay": "98 %", "id": "manganese" },
            { "add": "zinc-sulfate-7h2o", "amount": "{{Grams(1.32, 3)}}", "with": "fine-scale", "assay": "99 %", "id": "zinc" },
            { "add": "copper-sulfate-5h2o", "amount": "{{Grams(0.4, 3)}}", "with": "fine-scale", "assay": "99 %", "id": "copper" },
            { "add": "boric-acid", "amount": "{{Grams(3.44, 2)}}", "with": "pocket-scale", "assay": "99.5 %" },
            { "stir": "until clear" },
            { "add": "{{Pre}}", "amount": "20 mL", "with": "cylinder-100", "id": "molybdate" },
            { "topUp": "2 L", "of": "distilled" }
        """;

    private static string Stock(string name, string holds, string dose, string keeps, string steps, string? apart, string? colour)
    {
        var looks = colour is null ? "" : $"\n    \"colour\": \"{colour}\",";
        var keepApart = apart is null ? "" : $"\n    \"keepApart\": \"Never mix undiluted with {apart}\",";
        return $$"""
            {
              "format": 1,
              "name": "{{name}}",
              "makes": "2 L",
              "dose": "{{dose}}",
              "keep": { "at": "store", "for": "{{keeps}}", "light": "dark" },
              "vessel": "jug-3",
              "use": "bench",
              "label": {
                "contents": "{{name}}: {{holds}}",
                "dilution": "{{dose}}",
                "date": "made on",{{keepApart}}{{looks}}
                "hazard": "Harmful if swallowed. Causes serious eye damage. Keep out of reach of children and out of drains",
                "disposal": "Use up at the dilution above; not into a drain or ditch"
              },
              "steps": [
            {{steps}}
              ]
            }
            """;
    }

    private string PreStock() => $$"""
        {
          "format": 1,
          "name": "Molybdate pre-stock",
          "makes": "250 mL",
          "keep": { "at": "store", "for": "6 months", "light": "dark" },
          "vessel": "bottle-250",
          "use": "bench",
          "label": { "contents": "Sodium molybdate, for the trace stock only", "dilution": "20 mL in 2 L of trace stock", "date": "made on" },
          "steps": [
            { "pour": "200 mL", "of": "distilled", "with": "cylinder-100" },
            { "add": "sodium-molybdate-2h2o", "amount": "{{Grams(3.15, 2)}}", "with": "pocket-scale", "assay": "99.5 %", "id": "molybdate" },
            { "stir": "until clear" },
            { "topUp": "250 mL", "of": "distilled" }
          ]
        }
        """;

    private string RecipeText() => $$"""
        {
          "format": 1,
          "name": "Lettuce {{index.ToString(CultureInfo.InvariantCulture)}}, growing on",
          "crop": "lettuce",
          "stage": "growing",
          "water": "{{water}}.water.json",
          "final": "{{litres.ToString(CultureInfo.InvariantCulture)}} L",
          "volume": "made up",
          "doses": [
            { "stock": "{{PartA}}", "dose": "10 mL/L", "with": "cylinder-2000" },
            { "stock": "{{PartB}}", "dose": "10 mL/L", "with": "cylinder-2000" },
            { "stock": "{{Trace}}", "dose": "1 mL/L", "with": "cylinder-100" }
          ],
          "targets": { "N": "{{Target(158)}}", "K": "{{Target(212)}}", "Ca": "{{Target(120)}}", "Mg": "{{Target(35)}}", "Fe": "{{Target(2)}}" }
        }
        """;

    private string Grams(double model, int decimals) => Math.Round(model * strength, decimals).ToString("0.###", CultureInfo.InvariantCulture) + " g";

    private string Target(double model) => Math.Round(model * strength, 1).ToString("0.#", CultureInfo.InvariantCulture) + " mg/L ± 10 %";
}
