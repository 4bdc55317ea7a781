namespace RecipeLint.Advice.Tests.Agreement;

/// <summary>Invented stocks of all sorts, the same for a seed.</summary>
internal static class RandomStock
{
    private static readonly (string Substance, double Least, double Most)[] Main =
    [
        ("calcium-nitrate-4h2o", 5, 250), ("calcium-chloride-2h2o", 1, 60), ("potassium-nitrate", 5, 220), ("magnesium-sulfate-7h2o", 5, 200),
        ("monopotassium-phosphate", 2, 150), ("monoammonium-phosphate", 1, 100), ("potassium-sulfate", 2, 90), ("magnesium-nitrate-6h2o", 5, 200),
        ("ammonium-nitrate", 2, 100), ("potassium-chloride", 2, 60), ("ammonium-sulfate", 2, 100), ("phosphoric-75", 1, 60), ("nitric-38", 1, 60),
    ];

    private static readonly (string Substance, double Least, double Most)[] Trace =
    [
        ("manganese-sulfate-h2o", 0.1, 5), ("zinc-sulfate-7h2o", 0.05, 3), ("copper-sulfate-5h2o", 0.02, 2), ("boric-acid", 0.2, 8), ("sodium-molybdate-2h2o", 0.02, 0.5),
        ("disodium-edta-2h2o", 1, 25), ("ferrous-sulfate-7h2o", 0.5, 15), ("fe-edta-na-3h2o", 0.5, 15), ("fe-dtpa-hna", 0.5, 15), ("citric-acid-h2o", 0.5, 20), ("vinegar-5", 10, 120),
    ];

    private static readonly (string Substance, double Least, double Most)[] Beside =
    [
        ("sodium-benzoate", 0.3, 3), ("potassium-sorbate", 0.3, 3), ("potassium-silicate-29be", 2, 60), ("borax-10h2o", 0.5, 30), ("potassium-bicarbonate", 0.5, 40),
    ];

    private static readonly string[] Kept = ["5..30 °C", "2..8 °C", "10..35 °C", "18..25 °C", "0..40 °C"];

    public static Bottle Of(int seed)
    {
        var random = new Random(seed);
        var kind = random.Next(4);
        var additions = (kind == 0 ? [] : Some(random, Main, random.Next(1, 4)))
            .Concat(kind is 0 or 3 ? Some(random, Trace, random.Next(2, 7)) : [])
            .Concat(random.Next(4) == 0 ? Some(random, Beside, 1) : [])
            .ToList();
        return Bottle.Of($"seed-{seed}", kind == 0 ? 1000 : 100, Kept[random.Next(Kept.Length)], additions);
    }

    private static List<(string Substance, double Grams)> Some(Random random, (string Substance, double Least, double Most)[] of, int count) =>
        of.OrderBy(_ => random.Next()).Take(count)
            .Select(s => (s.Substance, Math.Round(s.Least * Math.Pow(s.Most / s.Least, random.NextDouble()), 3)))
            .ToList();
}
