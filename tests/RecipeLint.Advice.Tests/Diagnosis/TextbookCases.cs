namespace RecipeLint.Advice.Tests.Diagnosis;

/// <summary>
/// Descriptions of deposits as textbooks and handbooks give them, in words of our own. Sources, all recalled: V, Vogel's Textbook of Macro and
/// Semimicro Qualitative Inorganic Analysis (1979); M, The Merck Index; H, Handbook of Mineralogy (Mineralogical Society of America); A, Albano
/// and Miller (HortScience, photodegradation of FeDTPA); P, common practice, no source.
/// </summary>
internal static class TextbookCases
{
    public static IReadOnlyList<DiagnosisCase> All { get; } =
    [
        // V: calcium sulfate is a fine white crystalline precipitate; H: acicular, swallow-tail twins.
        new("calcium-nitrate-4h2o 200 g, potassium-sulfate 40 g in 1 L", "white needles", "2 weeks", "6 °C", "gypsum"),
        new("calcium-nitrate-4h2o 120 g, magnesium-sulfate-7h2o 100 g in 1 L", "fine hair-like crystals on the bottle wall, no fizz with vinegar, does not dissolve when warmed", "2 days", "15 °C", "gypsum"),
        new("calcium-chloride-2h2o 60 g, ammonium-sulfate 60 g in 1 L", "gritty white crust that much distilled water slowly takes up; neither acid nor heat touches it", "1 week", "20 °C", "gypsum"),
        // H: syngenite, thin prismatic or acicular crystals.
        new("potassium-sulfate 100 g, calcium-nitrate-4h2o 10 g in 1 L", "thin white needles matted together like felt", "1 week", "15 °C", "syngenite", "gypsum"),
        // V: calcium hydrogen phosphate, white, soluble in dilute mineral acids and acetic acid.
        new("calcium-nitrate-4h2o 80 g, dipotassium-phosphate 20 g in 1 L", "thick white cloud as soon as the two solutions met, cleared by a few drops of nitric acid, no gas", "at once", "20 °C", "calcium-phosphate"),
        new("calcium-nitrate-4h2o 60 g, monoammonium-phosphate 20 g, koh-10 40 mL in 1 L", "milky, then light white flocs; more of it on warming; hydrochloric acid dissolves it", "3 hours", "25 °C", "calcium-phosphate"),
        // V: magnesium ammonium phosphate, white crystalline, soluble in acetic acid; H: coffin-shaped, wedge-shaped crystals.
        new("magnesium-sulfate-7h2o 50 g, diammonium-phosphate 40 g in 1 L", "hard shiny coffin-lid crystals on the walls that dissolve in vinegar without fizzing", "3 days", "18 °C", "struvite"),
        new("magnesium-nitrate-6h2o 60 g, diammonium-phosphate 30 g in 1 L", "glittering crystals, ammonia smell when lye is added", "1 day", "20 °C", "struvite"),
        // V: calcium carbonate, white, dissolves in acetic acid with effervescence.
        new("calcium-nitrate-4h2o 20 g, potassium-carbonate 10 g in 1 L", "white scale that effervesces in vinegar", "1 week", "20 °C", "calcium-carbonate"),
        new("calcium-chloride-2h2o 10 g, sodium-bicarbonate 10 g in 1 L", "whitish haze and then a hard lime coating; bubbles strongly in weak acid", "2 days", "25 °C", "calcium-carbonate"),
        // V: iron(III) phosphate, yellowish-white, insoluble in acetic acid, soluble in mineral acids.
        new("ferric-chloride-6h2o 10 g, monopotassium-phosphate 20 g in 1 L", "yellowish white sludge, insoluble in vinegar, soluble in strong acid, alkali turns it brown", "at once", "20 °C", "iron-phosphate"),
        new("ferrous-sulfate-7h2o 15 g, monoammonium-phosphate 15 g in 1 L", "pale cream sediment, no fizz", "5 days", "20 °C", "iron-phosphate"),
        // V: iron(III) hydroxide, reddish-brown, gelatinous, soluble in acids.
        new("ferrous-sulfate-7h2o 30 g in 1 L", "rusty flocs on the floor of the jar, vitamin C dissolves them", "4 weeks", "25 °C", "ferric-hydroxide"),
        new("ferrous-sulfate-7h2o 10 g, potassium-sulfate 20 g in 1 L", "reddish brown sludge and an iridescent film in the neck, vinegar does nothing", "2 weeks", "22 °C", "ferric-hydroxide"),
        // A: yellow-tan precipitate, loss of colour under light.
        new("fe-dtpa-hna 15 g in 1 L", "colour faded in the sun and a yellowish tan sediment formed", "6 days", "28 °C", "photolysed-iron"),
        // V: copper(II) hydroxide, blue, gelatinous; basic carbonate greenish-blue, soluble in dilute acids.
        new("copper-sulfate-5h2o 10 g, potassium-hydroxide 3 g in 1 L", "light blue gelatinous precipitate, dissolves in vinegar", "at once", "20 °C", "copper-hydroxide"),
        new("zinc-sulfate-7h2o 15 g, potassium-hydroxide 4 g in 1 L", "white jelly-like flocs that vinegar clears without gas", "at once", "20 °C", "zinc-hydroxide"),
        // V: copper(II) phosphate, blue; zinc phosphate, white, soluble in dilute acids.
        new("copper-sulfate-5h2o 8 g, diammonium-phosphate 15 g in 1 L", "bluish fine powder on the bottom, no fizz, soluble in dilute acid", "8 hours", "20 °C", "copper-phosphate"),
        new("zinc-sulfate-7h2o 10 g, diammonium-phosphate 15 g in 1 L", "white dust settles, dissolves quietly in dilute acid, no gas", "4 hours", "20 °C", "zinc-phosphate"),
        // V: hydrated manganese dioxide, brown-black, insoluble in dilute acids, dissolves with oxalic acid or peroxide.
        new("manganese-sulfate-h2o 10 g, calcium-hypochlorite 1 g in 1 L", "brownish black specks; oxalic acid makes them disappear, hydrochloric acid does not", "3 days", "20 °C", "manganese-oxide"),
        // M: EDTA acid, colourless crystals, hardly soluble in water, soluble in alkali hydroxide.
        new("disodium-edta-2h2o 30 g, sulfuric-37 60 mL in 1 L", "dense white grains sank quickly to the bottom; lye dissolves them; no change in hot water", "6 hours", "20 °C", "edta-acid"),
        // M: benzoic acid, monoclinic tablets, plates, leaflets; sublimes; soluble in alkali.
        new("sodium-benzoate 15 g, phosphoric-75 15 mL in 1 L", "feathery shiny plates hang in the liquid, faint aromatic smell, vanish when warmed", "1 day", "8 °C", "benzoic-acid"),
        new("potassium-benzoate 12 g, citric-acid-h2o 15 g in 1 L", "white silky leaflets floating, melt and go off as white fumes over a flame", "after cooling", "10 °C", "benzoic-acid"),
        new("potassium-sorbate 8 g, nitric-38 10 mL in 1 L", "white fluffy needles right after acid was added, lye dissolves them, gone when warmed", "at once", "20 °C", "sorbic-acid"),
        // M: boric acid, pearly scales, slightly unctuous to the touch; V: green flame.
        new("boric-acid 50 g in 1 L", "thin pearly flakes, greasy to touch, they burn with a green flame and dissolve in warm water", "after a cold night", "8 °C", "boric-acid"),
        // M and P: crystal habits of the soluble salts, all of which dissolve on warming.
        new("potassium-sulfate 110 g in 1 L", "hard colourless six-sided prisms, dissolve when heated", "after a cold night", "4 °C", "potassium-sulfate"),
        new("potassium-nitrate 200 g in 1 L", "long colourless needles, spark on glowing charcoal, redissolve on warming", "overnight", "6 °C", "potassium-nitrate"),
        new("monopotassium-phosphate 190 g in 1 L", "clear square prisms on the bottom that go into solution on warming", "next morning", "5 °C", "monopotassium-phosphate"),
        new("monoammonium-phosphate 280 g in 1 L", "transparent hard crystals, warm water dissolves them, ammonia smell with lye", "after a cold night", "4 °C", "monoammonium-phosphate"),
        new("calcium-nitrate-4h2o 1300 g in 1 L", "big clear blocks of crystal that melt away on warming", "after frost", "2 °C", "calcium-nitrate"),
        new("magnesium-sulfate-7h2o 850 g in 1 L", "long transparent needles, disappear when warmed", "cold night", "3 °C", "magnesium-sulfate"),
        // H: picromerite, colourless, forms from potassium and magnesium sulfate well below the solubility of either.
        new("potassium-sulfate 90 g, magnesium-sulfate-7h2o 300 g in 1 L", "hard colourless rhombs, soluble in hot water, no fizz", "2 days", "10 °C", "double-salt"),
        // V: silicic acid, gelatinous, insoluble in acids, soluble in hot alkali.
        new("potassium-silicate-29be 40 mL, phosphoric-75 10 mL in 1 L", "turned to gelatin, neither acid nor heat brings it back, caustic potash does", "1 hour", "20 °C", "silica-gel"),
        // V: calcium citrate falls out on boiling and redissolves on cooling.
        new("calcium-nitrate-4h2o 80 g, trisodium-citrate-2h2o 20 g in 1 L", "white sand that increases when heated and dissolves on cooling", "2 days", "30 °C", "calcium-citrate"),
        // V: calcium oxalate, white, insoluble in acetic acid, soluble in mineral acid.
        new("calcium-nitrate-4h2o 50 g, potassium-nitrate 20 g in 1 L", "fine white powder after I used a rust remover in the bottle; only strong acid dissolves it, vinegar does not, no fizz", "5 hours", "20 °C", "calcium-oxalate"),
        // V: ammonium phosphomolybdate, yellow crystalline, soluble in alkali.
        new("ammonium-heptamolybdate-4h2o 3 g, monoammonium-phosphate 20 g, nitric-53 60 mL in 1 L", "bright yellow crystalline powder, lye dissolves it", "3 hours", "20 °C", "phosphomolybdate"),
        // V: benzoates give a buff precipitate with iron(III).
        new("ferric-chloride-6h2o 8 g, sodium-benzoate 8 g in 1 L", "buff coloured precipitate the moment they met", "immediately", "20 °C", "ferric-benzoate"),
        // P: dyes, coats, growth, dirt.
        new("ferric-chloride-6h2o 3 g, tartrazine 0.3 g in 1 L", "coloured flocs at the bottom, the liquid lost its colour; EDTA brings it back", "1 day", "20 °C", "dye-lake"),
        new("calcium-nitrate-fertiliser 300 g in 1 L", "oily off-white film and froth on top", "at once", "20 °C", "coating"),
        new("citric-acid-h2o 8 g, manganese-sulfate-h2o 4 g in 2 L", "grey-green furry skin floating on the surface, musty, lifts out in one piece", "5 weeks", "20 °C", "mould"),
        new("sucrose 10 g, citric-acid-h2o 5 g in 1 L", "cap bulging, smells of wine, pale sediment", "2 weeks", "24 °C", "yeast"),
        new("fe-dtpa-hna 8 g, ferrous-gluconate-2h2o 4 g in 1 L", "clear to pink slippery slime on the walls and in the hose", "1 week", "25 °C", "bacterial-slime"),
        new("potassium-nitrate 20 g, monopotassium-phosphate 5 g in 1 L", "green haze in a transparent bottle that stood in the sun", "4 weeks", "22 °C", "algae"),
        new("magnesium-sulfate-h2o 120 g in 1 L", "greyish brown specks of dirt at the bottom right after mixing, unchanged by acid, lye or heat", "at once", "20 °C", "insoluble-matter"),
        new("potassium-chloride 100 g in 1 L", "fine white haze at once, nothing dissolves it, harmless looking dust", "at once", "20 °C", "anticaking"),
        new("copper-sulfate-5h2o 15 g in 1 L", "reddish copper plating on the steel screw", "2 hours", "20 °C", "metal-corrosion"),
        new("potassium-nitrate 160 g in 1 L", "sugar-like grains at the bottom still undissolved after stirring five minutes", "at once", "20 °C", "undissolved"),
        new("ferrous-sulfate-7h2o 10 g, sulfuric-37 1 mL in 1 L", "the pale green liquid turned yellow, still no deposit", "2 weeks", "20 °C", "iron-oxidised"),
        new("fe-eddha-na 20 g, nitric-38 10 mL in 1 L", "sticky brown-red clumps, liquid lost its red colour, dissolves again with potassium hydroxide", "2 hours", "20 °C", "eddha-ligand"),
        // P: nothing wrong.
        new("fe-eddha-na 20 g in 1 L", "deep red, perfectly clear", "1 month", "20 °C", "nothing-wrong"),
        new("fe-edta-na-3h2o 10 g in 1 L", "yellow-brown clear liquid without any sediment", "1 month", "20 °C", "nothing-wrong"),
        new("copper-sulfate-5h2o 2 g, citric-acid-h2o 4 g in 1 L", "blue solution, no deposit, no smell", "2 weeks", "20 °C", "nothing-wrong"),
        new("monopotassium-phosphate 60 g, magnesium-sulfate-7h2o 60 g in 1 L", "faint haze that disappeared on stirring", "1 day", "20 °C", "nothing-wrong"),
        new("potassium-nitrate 100 g, potassium-sulfate 40 g in 1 L", "looks as always, clear", "3 weeks", "20 °C", "nothing-wrong"),
    ];
}
