namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>
/// What somebody who had never seen the program wrote: most of these led nowhere, or to a cause that what was told rules out. Looks and
/// behaviour are common practice, no source.
/// </summary>
internal static class FreshEyesCases
{
    public static IReadOnlyList<DiagnosisCase> All { get; } =
    [
        new("calcium-nitrate-4h2o 95 g, magnesium-sulfate-7h2o 50 g, monopotassium-phosphate 20 g in 1 L", "milky straight away when I put the epsom in", "at once", "15 °C", "gypsum"),
        new("calcium-nitrate-4h2o 95 g, potassium-nitrate 20 g, fe-dtpa-hna 2.6 g in 1 L", "somebody tipped some of part B into it, now milk", "1 day", "15 °C", "concentrates-joined"),
        new("calcium-nitrate-4h2o 95 g, potassium-nitrate 20 g, fe-dtpa-hna 2.6 g in 1 L", "no smell no cloud but the level went down and white crust round the cap", "2 months", "15 °C", "salt-creep"),
        new("fe-eddha-6-oo-4.8 33 g in 1 L", "dark red like wine, cant see thru", "1 day", "15 °C", "nothing-wrong"),
        new("potassium-bicarbonate 100 g in 1 L", "fizzes when i pour it in the acid", "at once", "15 °C", "carbonate-gas"),
        new("potassium-silicate-29be 150 mL in 1 L", "white skin on top, flakes", "2 weeks", "15 °C", "silica-gel"),
        new("boric-acid 50 g in 1 L", "sparkly flakes after a night in the shed", "next morning", "10 °C", "boric-acid"),
        new("monopotassium-phosphate 20 g, magnesium-sulfate-7h2o 50 g in 1 L", "clear, but when diluted goes cloudy", "at once", "15 °C", "hard-water"),
        new("ferrous-sulfate-7h2o 5.56 g, disodium-edta-2h2o 7.46 g in 1 L", "was green now its orange with mud", "4 weeks", "15 °C", "iron-oxidised", "ferric-hydroxide"),
        new("calcium-nitrate-fertiliser 95 g, potassium-nitrate 20 g, fe-dtpa-hna 2.6 g in 1 L", "white sludgy stuff on the bottom", "1 week", "15 °C", "insoluble-matter"),
        new("potassium-nitrate 20 g, potassium-sulfate 20 g, magnesium-sulfate-7h2o 50 g, monopotassium-phosphate 20 g in 1 L", "frozen solid, then thawed, salt on the bottom", "next morning", "8 °C", "frozen"),
        new("vinegar-5 60 mL, manganese-sulfate-h2o 1.5 g, copper-sulfate-5h2o 0.15 g in 1 L", "blue-green crystals on the brass tap of the jerrycan", "1 month", "15 °C", "metal-corrosion"),
        new("calcium-nitrate-4h2o 95 g, magnesium-sulfate-7h2o 50 g in 1 L", "gone like porridge, white", "at once", "15 °C", "gypsum"),
        new("potassium-silicate-29be 200 mL in 1 L", "set like jelly overnight after I put a splash of pH down in", "overnight", "15 °C", "silica-gel"),
        new("calcium-nitrate-fertiliser 90 g, fe-dtpa-hna 2.5 g, mn-edta 0.55 g in 1 L", "poured grow in the micro bottle and now white mud", "at once", "15 °C", "concentrates-joined"),
        new("potassium-thiosulfate-50 300 mL, phosphoric-75 20 mL in 1 L", "milky yellow and stinks of burnt matches", "1 day", "15 °C", "sulfur", "thiosulfate-sulfur"),
        new("boric-acid 50 g in 1 L", "glittery scales like fish skin at the bottom when the shed was cold", "next morning", "4 °C", "boric-acid"),
    ];
}
