namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>
/// Descriptions as growers type them, slips of spelling and all, written down before the program was asked: the first run put 42 of 44
/// first. Looks and behaviour are common practice, no source.
/// </summary>
internal static class GrowerCases
{
    public static IReadOnlyList<DiagnosisCase> All { get; } =
    [
        new("calcium-nitrate-4h2o 120 g, magnesium-sulfate-7h2o 90 g in 1 L", "white nedles on teh bottom, kettle water didnt shift them, vinegar no reaction", "2 days", "15 °C", "gypsum"),
        new("calcium-nitrate-4h2o 100 g, potassium-sulfate 40 g in 1 L", "gritty white sand only at the bottom, acid does nothing to it, comes back after shaking and settles again", "1 week", "12 °C", "gypsum", "syngenite"),
        new("calcium-nitrate-4h2o 60 g, magnesium-sulfate-7h2o 60 g in 1 L", "fine white powder, a bucket of water dissolves it but heat doesnt", "3 days", "18 °C", "gypsum"),
        new("calcium-nitrate-4h2o 80 g, monopotassium-phosphate 20 g, koh-10 30 mL in 1 L", "went like milk strait away, acid takes it off", "at once", "20 °C", "calcium-phosphate"),
        new("calcium-nitrate-4h2o 60 g, dipotassium-phosphate 20 g in 1 L", "white cloud wich sinks over night. strong acid makes it clear agian, no fizzing", "at once", "20 °C", "calcium-phosphate"),
        new("calcium-chloride-2h2o 15 g, potassium-bicarbonate 15 g in 1 L", "white chalk on the walls, vinegar fizzes on it and takes it off", "4 days", "22 °C", "calcium-carbonate"),
        new("calcium-nitrate-4h2o 20 g, sodium-bicarbonate 10 g in 1 L", "lime like stuff, bubbels when i put vinegar on", "1 week", "20 °C", "calcium-carbonate"),
        new("magnesium-sulfate-7h2o 70 g, diammonium-phosphate 35 g in 1 L", "hard little cristals that sparkle, vinegar takes them off, does not fizz", "3 days", "15 °C", "struvite"),
        new("ferrous-sulfate-7h2o 15 g, potassium-nitrate 30 g in 1 L", "brown rusty sludge at bottom and oily skin on top", "3 weeks", "22 °C", "ferric-hydroxide"),
        new("ferrous-sulfate-7h2o 10 g, magnesium-sulfate-7h2o 30 g in 1 L", "was green now its orange with rust flakes", "2 weeks", "24 °C", "ferric-hydroxide"),
        new("ferric-chloride-6h2o 6 g, monopotassium-phosphate 20 g in 1 L", "yelowish white mud as soon as the iron went in", "at once", "20 °C", "iron-phosphate"),
        new("fe-dtpa-hna 10 g in 1 L", "left it in the sun by the window, colour went pale and brown dust fell out", "1 week", "28 °C", "photolysed-iron"),
        new("copper-sulfate-5h2o 12 g, potassium-bicarbonate 8 g in 1 L", "bluey green lumps, fizzed and went away in vinegar", "at once", "20 °C", "copper-hydroxide"),
        new("zinc-sulfate-7h2o 15 g, koh-10 30 mL in 1 L", "white jelly flakes, a splash of vinegar and they are gone, no fizz", "at once", "20 °C", "zinc-hydroxide"),
        new("manganese-sulfate-h2o 15 g, koh-10 25 mL, hydrogen-peroxide-3 20 mL in 1 L", "turned choclate brown then black flecks", "2 days", "20 °C", "manganese-oxide"),
        new("disodium-edta-2h2o 25 g, nitric-38 60 mL in 1 L", "heavy white powder when I acidified it, lye takes it off", "hours", "20 °C", "edta-acid"),
        new("sodium-benzoate 12 g, citric-acid-h2o 30 g in 1 L", "shiny thin flakes in the cold, gone when warm", "next morning", "5 °C", "benzoic-acid"),
        new("potassium-sorbate 9 g, phosphoric-75 15 mL in 1 L", "white fluffy bits swimming after the acid went in, gone when I warmed it up", "minutes", "15 °C", "sorbic-acid"),
        new("boric-acid 48 g in 1 L", "pearly scales in the cold shed, disolved again when it got warm", "cold night", "4 °C", "boric-acid"),
        new("potassium-sulfate 108 g in 1 L", "glassy hard crystals, gone when warm, back again in the cold", "after a cold night", "5 °C", "potassium-sulfate"),
        new("potassium-nitrate 240 g in 1 L", "long clear crystals on the bottom after the frost, warm water bath brings it all back", "next morning", "5 °C", "potassium-nitrate"),
        new("monopotassium-phosphate 210 g in 1 L", "clear blocks at the bottom, disapear if i warm it", "overnight", "4 °C", "monopotassium-phosphate"),
        new("magnesium-sulfate-7h2o 950 g in 1 L", "whole bottom full of clear needles, stood in the cold, melts when warm", "overnight", "2 °C", "magnesium-sulfate"),
        new("potassium-silicate-29be 60 mL, nitric-38 30 mL in 1 L", "turned to jelly, cant pour it out", "1 hour", "20 °C", "silica-gel"),
        new("potassium-silicate-29be 50 mL, citric-acid-h2o 20 g in 1 L", "gell like clear lumps, acid made it worse", "30 minutes", "20 °C", "silica-gel"),
        new("citric-acid-h2o 8 g, zinc-sulfate-7h2o 5 g in 1 L", "furry skin on top, grey green, smells musty", "3 weeks", "22 °C", "mould"),
        new("citric-acid-h2o 6 g, magnesium-sulfate-7h2o 40 g in 1 L", "white fluffy blobs floating, like cotton, mould?", "4 weeks", "20 °C", "mould"),
        new("sucrose 10 g, potassium-nitrate 5 g in 1 L", "bottle swollen, hissing when i open it, smells of yeast", "10 days", "27 °C", "yeast"),
        new("glucose 8 g, citric-acid-h2o 5 g in 1 L", "smells like beer and the lid popped", "2 weeks", "25 °C", "yeast"),
        new("glycine 5 g, fe-dtpa-hna 5 g in 1 L", "pink slimey stuff on the sides, stinks", "3 weeks", "26 °C", "bacterial-slime"),
        new("potassium-nitrate 10 g, monopotassium-phosphate 5 g in 1 L", "clear bottle went green at the window side", "5 weeks", "22 °C", "algae"),
        new("citric-acid-h2o 4 g, magnesium-sulfate-7h2o 30 g, ferrous-sulfate-7h2o 3 g in 1 L", "smells of eggs and black muck at the bottom", "3 months", "20 °C", "sulfide"),
        new("magnesium-sulfate-h2o 120 g in 1 L", "grey dirt only at the bottom from the first minute, nothing takes it off, not acid not hot water", "at once", "20 °C", "insoluble-matter"),
        new("calcium-nitrate-fertiliser 250 g in 1 L", "greasy skin on top right after disolving the prils", "at once", "20 °C", "coating"),
        new("potassium-nitrate 60 g in 1 L", "white crust round the cap only, plain water takes it off, liquid is clear", "2 months", "20 °C", "salt-creep"),
        new("vinegar-5 60 mL, copper-sulfate-5h2o 2 g, ferrous-sulfate-7h2o 2 g in 1 L", "doesnt smell of vinegar any more, lid was loose, brown cloud in it", "3 months", "24 °C", "vinegar-lost", "ferric-hydroxide"),
        new("ammonium-sulfate 40 g, koh-10 80 mL in 1 L", "smells of ammonia", "at once", "20 °C", "ammonia-loss"),
        new("potassium-carbonate 20 g, citric-acid-h2o 15 g in 1 L", "bottle is blown up and hisses when I crack the lid", "1 day", "20 °C", "carbonate-gas"),
        new("potassium-nitrate 180 g in 1 L", "salt still lying at the bottom, swirls up and settles, i used cold water and stired for a minute", "at once", "8 °C", "undissolved", "potassium-nitrate"),
        new("calcium-nitrate-4h2o 60 g, potassium-nitrate 40 g in 1 L", "heavy streaks at the bottom, gone after shaking", "at once", "20 °C", "layering", "nothing-wrong"),
        new("fe-edta-na-3h2o 15 g in 1 L", "yellow brown and clear, no bits", "1 month", "20 °C", "nothing-wrong"),
        new("fe-eddha-na 8 g in 1 L", "dark red like wine but nothing in it", "1 week", "20 °C", "nothing-wrong"),
        new("magnesium-sulfate-7h2o 90 g in 1 L", "frozen solid, ice in it", "frosty night", "-6 °C", "frozen"),
        new("copper-sulfate-5h2o 340 g in 1 L", "dark blue crystals at the bottom, gone when warm", "overnight", "5 °C", "copper-sulfate"),
    ];
}
