namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>
/// Descriptions written before the ranking was first run, not to be tuned for. The first run put 41 of 42 first and all within the first two.
/// Looks and behaviour are common practice, no source.
/// </summary>
internal static class HoldOutCases
{
    public static IReadOnlyList<DiagnosisCase> All { get; } =
    [
        new("calcium-nitrate-4h2o 150 g, magnesium-sulfate-7h2o 80 g in 1 L", "overnight it grew tiny silky white hairs that feel gritty between the fingers", "next morning", "12 °C", "gypsum"),
        new("calcium-nitrate-4h2o 100 g, potassium-sulfate 60 g in 1 L", "pale gritty scale on the wall; hot water bath did nothing; vinegar did nothing either", "1 week", "20 °C", "gypsum"),
        new("potassium-sulfate 90 g, calcium-nitrate-4h2o 12 g in 1 L", "felt of fine white needle crystals, comes back even after filtering", "10 days", "10 °C", "syngenite", "gypsum"),
        new("calcium-nitrate-4h2o 100 g, monopotassium-phosphate 20 g, koh-10 20 mL in 1 L", "went milky the moment I poured one into the other, later white flakes sank; a few drops of battery acid cleared it", "at once", "20 °C", "calcium-phosphate"),
        new("magnesium-sulfate-7h2o 60 g, diammonium-phosphate 30 g in 1 L", "little sparkling crystals shaped like coffin lids, hard, no bubbles in vinegar but they vanish in it", "2 days", "15 °C", "struvite"),
        new("potassium-bicarbonate 20 g, calcium-chloride-2h2o 10 g in 1 L", "white chalky coat; foams like mad when vinegar touches it", "3 days", "25 °C", "calcium-carbonate"),
        new("ferrous-sulfate-7h2o 10 g, monopotassium-phosphate 20 g in 1 L", "dirty cream coloured mud; lye turns it brown; vinegar leaves it alone", "4 days", "20 °C", "iron-phosphate"),
        new("ferrous-sulfate-7h2o 20 g in 1 L", "orange-brown fluff at the bottom and a rainbow sheen in the neck", "3 weeks", "22 °C", "ferric-hydroxide"),
        new("fe-edta-na-3h2o 20 g in 1 L", "the yellow-brown liquid got paler on the window sill and a tan dust settled", "10 days", "24 °C", "photolysed-iron"),
        new("copper-sulfate-5h2o 10 g, potassium-bicarbonate 5 g in 1 L", "turquoise jelly-like lumps, clear up in vinegar with a few bubbles", "at once", "20 °C", "copper-hydroxide"),
        new("zinc-sulfate-7h2o 20 g, dipotassium-phosphate 20 g in 1 L", "white fine powder, no fizzing, gone in diluted acid", "5 hours", "20 °C", "zinc-phosphate"),
        new("copper-sulfate-5h2o 5 g, dipotassium-phosphate 10 g in 1 L", "pale blue powder, no gas with vinegar, acid dissolves it", "6 hours", "20 °C", "copper-phosphate"),
        new("manganese-sulfate-h2o 20 g, sodium-hypochlorite-5 10 mL in 1 L", "chocolate black specks and a dark film on the plastic; vinegar does not touch it, vitamin C makes it go colourless", "4 days", "25 °C", "manganese-oxide"),
        new("disodium-edta-2h2o 20 g, nitric-38 60 mL in 1 L", "heavy white sand sinks straight down, baking soda makes it fizz and disappear", "1 day", "18 °C", "edta-acid"),
        new("sodium-benzoate 10 g, citric-acid-h2o 20 g in 1 L", "light shiny leaflets drifting about, smells a bit sweet, gone when I stand the bottle in warm water", "overnight", "6 °C", "benzoic-acid"),
        new("potassium-sorbate 10 g, phosphoric-75 10 mL in 1 L", "white fluff appeared within minutes of adding the acid, melts away on warming", "10 minutes", "18 °C", "sorbic-acid"),
        new("boric-acid 45 g in 1 L", "mother-of-pearl scales, slippery to touch, gone again when the room warmed up", "after a frosty night", "5 °C", "boric-acid"),
        new("potassium-sulfate 105 g in 1 L", "hard glassy crystals on the bottom in the morning", "after a cold night", "5 °C", "potassium-sulfate"),
        new("potassium-nitrate 210 g in 1 L", "long clear spears at the bottom, hot water brings everything back into solution", "the next morning", "8 °C", "potassium-nitrate"),
        new("monopotassium-phosphate 200 g in 1 L", "square glass-clear prisms, dissolve when warmed, no fizz", "after a cold night", "5 °C", "monopotassium-phosphate"),
        new("magnesium-sulfate-7h2o 900 g in 1 L", "long colourless needles like icicles, go away by warming", "after cooling", "4 °C", "magnesium-sulfate"),
        new("potassium-silicate-29be 50 mL, nitric-38 20 mL in 1 L", "set to a wobbly clear jelly, acid doesn't help, warming doesn't help", "2 hours", "20 °C", "silica-gel"),
        new("calcium-nitrate-4h2o 60 g, tripotassium-citrate-h2o 30 g in 1 L", "white sandy stuff that got worse when warmed and less in the fridge, acid dissolves it without gas", "3 days", "30 °C", "calcium-citrate"),
        new("ammonium-heptamolybdate-4h2o 2 g, monopotassium-phosphate 20 g, nitric-38 80 mL in 1 L", "canary yellow fine crystals, soda lye dissolves them", "5 hours", "20 °C", "phosphomolybdate"),
        new("ferric-chloride-6h2o 5 g, sodium-benzoate 5 g in 1 L", "salmon pink curdy stuff immediately", "at once", "20 °C", "ferric-benzoate"),
        new("ferric-chloride-6h2o 2 g, allura-red-ac 0.5 g in 1 L", "the colour came out as flecks and the liquid above is now nearly colourless", "1 day", "20 °C", "dye-lake"),
        new("calcium-nitrate-fertiliser 200 g in 1 L", "greasy off white scum swimming on top right after dissolving the prills", "right away", "20 °C", "coating"),
        new("citric-acid-h2o 5 g, zinc-sulfate-7h2o 5 g in 2 L", "grey green furry patch on the surface, cotton wool balls in the liquid, smells like a cellar", "6 weeks", "22 °C", "mould"),
        new("glucose 5 g, citric-acid-h2o 5 g in 1 L", "bottle hissed when opened, smells like beer, cream coloured dregs that swirl up", "2 weeks", "25 °C", "yeast"),
        new("fe-dtpa-hna 10 g, glycine 5 g in 1 L", "pinkish slime coats the inside and smears under the finger", "2 weeks", "25 °C", "bacterial-slime"),
        new("monopotassium-phosphate 5 g, potassium-nitrate 10 g in 1 L", "the clear bottle by the window has a green bloom on the side facing the sun", "5 weeks", "22 °C", "algae"),
        new("magnesium-sulfate-h2o 100 g in 1 L", "a little grey-brown silt like clay lies on the bottom from the first minute, nothing dissolves it, not even strong acid", "at once", "20 °C", "insoluble-matter"),
        new("copper-sulfate-5h2o 10 g, citric-acid-h2o 5 g in 1 L", "the steel bolt in the tank got a coppery red coat", "3 hours", "20 °C", "metal-corrosion"),
        new("citric-acid-h2o 5 g, ferrous-sulfate-7h2o 10 g in 1 L", "black precipitate and it stinks of rotten eggs", "2 months", "20 °C", "sulfide"),
        new("potassium-nitrate 50 g in 1 L", "white crust around the cap and the thread only, liquid below is perfectly clear", "2 months", "20 °C", "salt-creep"),
        new("magnesium-sulfate-7h2o 100 g in 1 L", "slushy ice in it after the frost", "after a frosty night", "-3 °C", "frozen"),
        new("potassium-hydroxide 30 g in 1 L", "glittering thin glass-like flakes floating in the old glass bottle, nothing dissolves them", "1 year", "20 °C", "glass-flakes"),
        new("potassium-nitrate 150 g, monopotassium-phosphate 40 g in 1 L", "milky with tiny air bubbles right after filling, clears from below within minutes", "at once", "20 °C", "air-bubbles"),
        new("fe-dtpa-hna 10 g in 1 L", "deep reddish brown but perfectly clear, no sediment", "2 weeks", "20 °C", "nothing-wrong"),
        new("copper-sulfate-5h2o 10 g, sulfuric-37 1 mL in 1 L", "clear and blue, nothing at the bottom", "3 months", "15 °C", "nothing-wrong"),
        new("potassium-nitrate 100 g in 1 L", "looks like water, no deposit, no smell", "1 month", "18 °C", "nothing-wrong"),
        new("potassium-nitrate 50 g, monopotassium-phosphate 20 g in 1 L", "slight haze that was gone after a shake", "1 day", "20 °C", "nothing-wrong"),
    ];
}
