using System.Globalization;
using System.Text;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>
/// What others measured or tabulated against what the program gives, in one count: every fact stands in a table of its own beside the test
/// that writes it, with its source; here the tolerances and how many facts lie outside. The tables were there before the tolerances were written down, but for the published solutions. Points that calibrate do not count;
/// some densities and conductivities come from the same handbooks as the fits.
/// </summary>
public sealed class OutsideFactsTests
{
    private const string Equilibrium = "tests/RecipeLint.Chemistry.Tests/Tables/", Physical = "tests/RecipeLint.Chemistry.Tests/Physical/Golden/";

    /// <summary>As asked: at most three in a hundred, with the trial held out and without it, with the rows that calibrate and without.</summary>
    private const double MostOutside = 0.03;

    /// <summary>Rows whose salts were fitted to osmotic coefficients (osmotic-fit.md): the share outside has to hold with and without them.</summary>
    private static readonly string[] Calibrating = ["MgSO4", "CuSO4", "ZnSO4", "MnSO4", "NiSO4", "Ca(NO3)2", "CuCl2"];

    private const string Kunerth = "The rows of the same author between the two are within 1.5 %; at 20 and 35 °C those of Murray & Riley 1971, which are within "
        + "1.2 %, lie 3 and 4 % higher.";

    private const string CitrateTable = "By the constants of citric acid, which give the citrate standards within 0.03 and McIlvaine's buffers "
        + "of the same acid within 0.1, it is as given; the sums of the table hold no acid that could keep it so high.";

    /// <summary>Of the trials held out as many as were outside when they were run and their causes mended. Not to be raised.</summary>
    private const int MostOutsideOfTheTrial = 18, MostOutsideOfHeats = 13, MostOutsideOfChelates = 16;

    private const string Hydroxides = "The table was computed with hydroxo complexes as they were known in 1963. With those of ThermoChimie, which the program has "
        + "(iron by the NEA review of 2013), the bare metal holds more or less of the hydroxide; the stability itself is within 0.2.";

    private const string Thomsen = "Thomsen's formula lies 5 to 8 % under the later table there; how warm it gets rests on a heat capacity that is known no better.";

    private const string Bichowsky = "The enthalpies of formation of 1982 give this at infinite dilution; what it is at finite strength could not be read for this salt.";

    private static bool Calibrates(Fact fact) => fact.What.StartsWith("osmotic coefficient", StringComparison.Ordinal)
        && Calibrating.Any(salt => fact.What.Contains(" " + salt + ",", StringComparison.Ordinal));

    /// <summary>Why each fact that lies outside does, and how far off it may be: today's figure rounded up, so that it cannot drift.</summary>
    internal static readonly Dictionary<string, (string Why, double Furthest)> Because = new(StringComparer.Ordinal)
    {
        ["pH of boric acid, 0.1 N"] = ("By the handbook's own constant of the acid (9.24) it is 5.1; the rest are polyborates, which the list passes over.", 0.25),
        ["pH of sodium hydrogen carbonate, 0.1 N"] = ("The mean of its two constants is 8.3 and 8.1 to 8.2 at this ionic strength; the solutions of the list had lost carbon dioxide.", 0.3),
        ["pH of sodium carbonate, 0.1 N"] = ("By the handbook's own constant (10.33) 0.05 mol/L gives 11.5, and 11.3 at this ionic strength.", 0.37),
        ["water activity: over saturated KNO3, 25 °C"] =
            ("By the osmotic coefficients of Robinson & Stokes 3.79 mol/kg have 92.7 %; the table of humidities gives its own error as 0.55.", 1.05),
        ["gypsum in water: saturated, 0 °C"] = ("The constant follows Langmuir & Melchior 1985, fitted to measurements since then, which is 1.82 there.", 3.5),
        ["freezing point: Na2CO3, 1 % by mass"] = ("By the osmotic coefficient of Robinson & Stokes (0.81 at 0.1 mol/kg) it is -0.43, and carbonate takes protons of water besides.", 10.8),
        ["one per cent by mass: K2HPO4, 25 °C"] = ("Makers print 8.7 to 9.3; the sodium salt beside it is within 0.1.", 0.25),
        ["boric acid over strength: 0.1 % by mass, 20 °C"] = ("By the constant of the acid it is 5.5; so thin a solution shows what else is in it.", 0.6),
        ["boric acid over strength: 1 % by mass, 20 °C"] = ("By the constant of the acid alone it is 5.0, and triborate takes 0.2 more; from 2 % on the sheets have it too.", 0.35),
        ["conductivity by mass: 2 % CuSO4, 20 °C"] = ("Within 5 % at 1 %; with more for the pair the equivalent conductivities of dilute copper sulfate come out too high.", 7.7),
        ["conductivity by mass: 1 % Na3PO4, 20 °C"] = ("Within 0.4 % at 2 %; the table rises by 93 and 61 % where it should by 70.", 5.2),
        ["density of mixed salts: K, NH4 and Cl, H2PO4, 90 and 7.3 of a hundred, 0 °C"] =
            ("The row before it, of nearly the same salts, is within 0.6 %.", 1.2),
        ["density of mixed salts: KCl with NH4H2PO4, saturated, 40 °C"] = ("That of 25 °C is within 0.4 %; the expansion of the mixture.", 1.2),
        ["osmotic coefficient: 1 mol/kg Na2CO3, 25 °C"] = ("Within 1 % at 0.5 mol/kg; the parameters of the USGS database pitzer.dat (read) give 0.679 for 0.757.", 7),
        ["citrate buffer: 46.5 mL of 0.1 M citric acid and 3.5 mL of 0.1 M citrate in 100 mL, 23 °C"] = (CitrateTable, 0.38),
        ["citrate buffer: 37 mL of 0.1 M citric acid and 13 mL of 0.1 M citrate in 100 mL, 23 °C"] = (CitrateTable, 0.16),
        ["citrate buffer: 33 mL of 0.1 M citric acid and 17 mL of 0.1 M citrate in 100 mL, 23 °C"] = (CitrateTable, 0.21),
        ["citrate buffer: 25.5 mL of 0.1 M citric acid and 24.5 mL of 0.1 M citrate in 100 mL, 23 °C"] = (CitrateTable, 0.21),
        ["citrate buffer: 20.5 mL of 0.1 M citric acid and 29.5 mL of 0.1 M citrate in 100 mL, 23 °C"] = (CitrateTable, 0.24),
        ["citrate buffer: 13.7 mL of 0.1 M citric acid and 36.3 mL of 0.1 M citrate in 100 mL, 23 °C"] = (CitrateTable, 0.3),
        ["citrate buffer: 7.2 mL of 0.1 M citric acid and 42.8 mL of 0.1 M citrate in 100 mL, 23 °C"] = (CitrateTable, 0.38),
        ["table of buffers: 2.10 g NaHCO3 and 227 mL of 0.1 M NaOH in a litre, 25 °C"] =
            ("By the second constant of carbonic acid (10.33) and the activities of the carbonate standard, which comes out within 0.01, it is 10.83; half a millilitre of lye in 50 makes the difference there.", 0.14),
        ["lowering of the freezing point: 0.1 mol/kg MgSO4"] = ("By Pitzer's equation at 0 °C (Silvester & Pitzer 1978, read in a copy), which is given within 2 %, it is 0.224; the table has two digits.", 8.2),
        ["lowering of the freezing point: 0.25 mol/kg MgSO4"] = ("By Pitzer's equation at 0 °C, which is given within 2 %, it is 0.518.", 7),
        ["lowering of the freezing point: 0.5 mol/kg CuSO4"] = ("Within 1.3 % at half the strength; by Pitzer's equation at 0 °C, which is given within 2 %, it is 0.897.", 8.1),
        ["salt of round strength: 1 % NH4Cl, 25 °C"] = ("By the constant of ammonium (9.24) it is 5.0, and 5.1 at this ionic strength.", 0.4),
        ["salt of round strength: 3 % NH4Cl, 25 °C"] = ("By the constant of ammonium (9.24) it is 4.7, and 4.9 at this ionic strength.", 0.21),
        ["salt of round strength: 10 % NH4Cl, 25 °C"] = ("By the constant of ammonium (9.24) it is 4.5; that 10 % should be no more acid than 3 % says that the figures are rounded up.", 0.43),
        ["salt of round strength: 1 % tetrasodium EDTA, 25 °C"] =
            ("By its fourth constant in sodium salts (9.5 at 0.1 mol/L, NIST 46, recalled) it is 11.0; the salt is sold with a little free lye.", 0.38),
        ["salt of round strength: 0.2 M CuSO4, 25 °C"] = ("By the hydrolysis of copper (-8.0, and -10.4 for two) it is 4.5; crystals bring a trace of acid along.", 0.47),
        ["silicate as it is sold: sodium silicate, 14.7 % Na2O, 29.4 % SiO2, 20 °C"] =
            ("A mole of alkali for each of silica: the short chains of so alkaline a glass are more highly charged than the constants have them. Those sold to growers have 2.1 to 3.3 by mass.", 1.15),
        ["point of two double salts: picromerite over 0.618 mol/kg K2SO4 with 3.030 MgSO4, 45 °C"] =
            ("At the end of the range the constant, carried there by its enthalpy, says 1.5 times too much: the cautious side.", 0.18),
        ["carbon dioxide measured: W. Kunerth, row 1: 0.9771 atm, 20 °C"] = (Kunerth, 3.6),
        ["carbon dioxide measured: W. Kunerth, row 8: 0.9474 atm, 34 °C"] = (Kunerth, 2.9),
        ["MAP in KNO3, NH4H2PO4 (1.850, 3.817 mol/kg) at 16.5 °C, verdicts that differ"] = ("At 0.6 of the measured strength it is called close and not clear: the cautious side.", 1),
        ["heat of an acid with water: H2SO4 and 1.5 H2O, 25 °C"] =
            (Thomsen, 8),
        ["heat of an acid with water: H2SO4 and 2 H2O, 25 °C"] =
            (Thomsen, 6.3),
        ["heat of an acid with water: H2SO4 and 5 H2O, 25 °C"] =
            (Thomsen, 5.4),
        ["heat of an acid with water: H2SO4 and 10 H2O, 25 °C"] =
            (Thomsen, 5.6),
        ["heat of an acid with water: H2SO4 and 1000 H2O, 25 °C"] =
            (Thomsen, 5.2),
        ["heat of solution: Ca(NO3)2 in much water, 18 °C"] =
            (Bichowsky, 12),
        ["heat of solution: K2CO3 in much water, 18 °C"] =
            (Bichowsky, 12.3),
        ["heat of solution: KHCO3 in much water, 18 °C"] =
            (Bichowsky, 12),
        ["heat of solution: CaCl2.2H2O in much water, 18 °C"] =
            ("By the enthalpies of formation of 1982 it is -46, and -45 by later calorimetry (recalled); the row was recalled and may be off itself.", 12.1),
        ["heat of solution: MgSO4.7H2O in much water, 18 °C"] =
            ("At 25 °C and the same strength Parker's and later calorimetry is 15.9 to 16.1 (recalled); the anhydrous salt of the same table is within 2 %.", 18.1),
        ["salt in little water: 16 g KNO3 in 100 g, from 13.2 °C"] =
            ("At 1.5 mol/kg the salt takes 3 kJ/mol less than at great dilution, and the dish lost some of the cold.", 25.2),
        ["constant of an acid over temperature: malic acid, first, 0 °C"] =
            ("Within 0.03 from 5 °C on; no heat capacity is known here for malic acid.", 0.034),
        ["constant of an acid over temperature: malic acid, second, 0 °C"] =
            ("Within 0.03 from 5 °C on; no heat capacity is known here for malic acid.", 0.043),
        ["stability constant: Mg+2 with EDTA, ionic strength 0.1, 20 °C"] =
            ("The review of NEA (organic ligands, 2005) has 10.90 at zero ionic strength, which gives this.", 0.231),
        ["conditional constant: Al+3 with EDTA at pH 6, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 0.65),
        ["conditional constant: Al+3 with EDTA at pH 7, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 1.82),
        ["conditional constant: Al+3 with EDTA at pH 8, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 1.88),
        ["conditional constant: Al+3 with EDTA at pH 9, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 2.01),
        ["conditional constant: Fe+3 with EDTA at pH 2, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 0.53),
        ["conditional constant: Fe+3 with EDTA at pH 4, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 0.66),
        ["conditional constant: Fe+3 with EDTA at pH 5, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 0.71),
        ["conditional constant: Fe+3 with EDTA at pH 6, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 0.64),
        ["conditional constant: Fe+3 with EDTA at pH 7, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 0.64),
        ["conditional constant: Fe+3 with EDTA at pH 8, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 0.93),
        ["conditional constant: Fe+3 with EDTA at pH 9, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 1.79),
        ["conditional constant: Co+2 with EDTA at pH 9, ionic strength 0.1, 20 °C"] =
            (Hydroxides, 0.37),
        ["conditional constant: Cu+2 with EDTA at pH 2, ionic strength 0.1, 20 °C"] =
            ("The complex with two protons, in database 46 of NIST, is not in the table; from pH 3 on it is within 0.2.", 0.42),
        ["conditional constant: Fe+2 with EDTA at pH 2, ionic strength 0.1, 20 °C"] =
            ("The complex with a proton (18.3 at zero ionic strength, ThermoChimie) is weaker than in 1963; within 0.25 from pH 3 to 8, and no stock holds iron(II) with EDTA at pH 2.", 0.81),
        ["conditional constant: Fe+2 with EDTA at pH 9, ionic strength 0.1, 20 °C"] =
            ("The complex with hydroxide (ThermoChimie), which the table has weaker; within 0.25 from pH 3 to 8.", 0.39),
    };

    private sealed record Fact(string What, double Off, double Tolerance)
    {
        public bool Inside => Math.Abs(Off) <= Tolerance;
    }

    [Fact]
    public void AtMostThreeInAHundredOutsideFactsAreMissed()
    {
        var text = new StringBuilder("# Outside facts: how many the program gives back\n\nEach fact stands with its source in the table named; nothing that calibrates is counted but osmotic coefficients of sulfates of two charges and of calcium nitrate and copper chloride, which are left out in a second count below; some densities and conductivities come from the handbooks the fits were made of. The tolerances were written down with the tables in view, but for the published solutions and the further facts, where they came first.\n\n");
        text.Append("| facts | table | source | tolerance | facts | inside | outside |\n|---|---|---|---|---|---|---|\n");
        var all = new List<Fact>();
        foreach (var (name, table, source, tolerance, facts) in Groups())
        {
            all.AddRange(facts);
            text.Append(CultureInfo.InvariantCulture,
                $"| {name} | {table} | {source} | {tolerance} | {facts.Count} | {facts.Count(f => f.Inside)} | {facts.Count(f => !f.Inside)} |\n");
        }

        var trial = Trial(HeldOutFactsTests.Table);
        var missed = trial.Where(f => !f.Inside).ToList();
        var outside = all.Where(f => !f.Inside).ToList();
        var other = all.Where(f => !Calibrates(f)).ToList();
        text.Append(CultureInfo.InvariantCulture, $"\n{all.Count} facts, {outside.Count} outside ({100.0 * outside.Count / all.Count:0.0} %); without the osmotic coefficients of salts that were fitted to such {other.Count}, {other.Count(f => !f.Inside)} outside ({100.0 * other.Count(f => !f.Inside) / other.Count:0.0} %).\n\nA trial held out besides (held-out-facts.md), written down with its tolerances before the program was asked: {trial.Count} facts, {missed.Count} outside ({100.0 * missed.Count / trial.Count:0.0} %), seven of them from one table of citrate buffers that contradicts the constants of the acid. Both together: {all.Count + trial.Count} facts, {outside.Count + missed.Count} outside ({100.0 * (outside.Count + missed.Count) / (all.Count + trial.Count):0.0} %).\n\n");
        var (heats, chelates) = (Trial(HeatFactsTests.Table), Trial(ChelateFactsTests.Table));
        int warm = heats.Count(f => !f.Inside), held = chelates.Count(f => !f.Inside);
        var (everything, never) = (all.Count + trial.Count + heats.Count + chelates.Count, outside.Count + missed.Count + warm + held);
        text.Append(CultureInfo.InvariantCulture, $"Two kinds that came later, as trials held out like that one: heats (heat-facts.md), {heats.Count} facts, {warm} outside ({100.0 * warm / heats.Count:0.0} %), and chelates over pH (chelate-facts.md), {chelates.Count} facts, {held} outside ({100.0 * held / chelates.Count:0.0} %), eleven of them rows of iron and aluminium in one table computed in 1963. Everything together: {everything} facts, {never} outside ({100.0 * never / everything:0.0} %).\n\n## Outside\n\n");
        foreach (var fact in outside.Concat(missed).Concat(heats.Where(f => !f.Inside)).Concat(chelates.Where(f => !f.Inside)))
        {
            Assert.True(Because.TryGetValue(fact.What, out var because), $"nothing says why '{fact.What}' is outside");
            text.Append(CultureInfo.InvariantCulture, $"- {fact.What}: {fact.Off:+0.###;-0.###} (tolerance {fact.Tolerance:0.###}). {because.Why}\n");
            Assert.True(Math.Abs(fact.Off) <= because.Furthest, $"{fact.What}: {fact.Off:0.####}, allowed {because.Furthest}");
        }

        Repository.Golden(Equilibrium + "outside-facts.md", text.ToString());
        Assert.True(missed.Count <= MostOutsideOfTheTrial, string.Join("\n", missed));
        Assert.True(warm <= MostOutsideOfHeats, string.Join("\n", heats.Where(f => !f.Inside)));
        Assert.True(held <= MostOutsideOfChelates, string.Join("\n", chelates.Where(f => !f.Inside)));
        Assert.True(outside.Count + missed.Count <= MostOutside * (all.Count + trial.Count), string.Join("\n", outside.Concat(missed)));
        Assert.True(all.Count >= 200, $"{all.Count} facts");
        Assert.True(outside.Count <= MostOutside * all.Count, string.Join("\n", outside));
        Assert.True(other.Count(f => !f.Inside) <= MostOutside * other.Count, string.Join("\n", outside));
    }

    private static IEnumerable<(string Name, string Table, string Source, string Tolerance, List<Fact> Facts)> Groups()
    {
        yield return ("gypsum in NaCl and Na2SO4 up to ionic strength 6", "gypsum-in-salts.md", "Marshall & Slusher 1966; Block & Waters 1968", "10 %",
            [.. Rows(Equilibrium + "gypsum-in-salts.md", "salt").Where(r => r[0] != "Na2SO4" || r[1] != "25").Where(r => Number(r[6]) <= 6)
                .Select(r => new Fact($"gypsum in {r[2]} mol/kg {r[0]} at {r[1]} °C, %", Number(r[5]), 10))]);
        yield return ("brushite in phosphoric acid", "brushite.md", "Gregory, Moreno, Patel & Brown 1970", "10 %",
            [.. Rows(Equilibrium + "brushite.md", "°C").Select(r => new Fact($"brushite at pH {r[1]}, {r[0]} °C, %", Number(r[6]), 10))]);
        yield return ("sparingly soluble solids in water", "predicted-solubilities.md", "named there", "as promised there",
            [.. Rows(Equilibrium + "predicted-solubilities.md", "solid").Select(r => new Fact($"{r[0]} at {r[1]} °C, %", Number(r[4]), Number(r[5])))]);
        yield return ("pH standards, 0 to 40 °C", "ph-standards.md", "NIST and IUPAC buffers", "0.025",
            [.. Rows(Equilibrium + "ph-standards.md", "buffer").SelectMany(r => r.Skip(1).Where(c => c.Length > 1)
                .Select((c, i) => new Fact($"pH of {r[0]} at {5 * i} °C", Number(c.Split(' ')[0]), 0.025)))]);
        yield return ("pH of acids, bases and salts of round strength", "approximate-ph.md", "CRC Handbook (recalled)", "0.2",
            [.. Rows(Equilibrium + "approximate-ph.md", "solution").Select(r => new Fact($"pH of {r[0]}", Number(r[3]), 0.2))]);
        yield return ("two salts together: not clear at the measured saturation, clear at 0.6 of it, crystallises at 1.5", "measured-mixtures.md",
            "Wan & Wang 2018; IUPAC-NIST 66; Harvie, Moller & Weare 1984; named there", "all three",
            [.. Rows(Equilibrium + "measured-mixtures.md", "system")
                .Where(r => r[7] is "clear" or "close" or "crystallises" && r[11] is not ("KB71" or "VOO" or "TH97n" or "VS70n"))
                .Select(r => new Fact($"{r[3]} in {r[0]} ({r[2]} mol/kg) at {r[1]} °C, verdicts that differ",
                    (r[7] == "clear" ? 0 : 1) + (r[9] != "clear" ? 0 : 1) + (r[10] == "crystallises" ? 0 : 1), 0))]);
        yield return ("buffers of two acids, sea water, freezing points, carbon dioxide, ammonia, free EDTA, humidity over salts, conductivity of salts, solutions of one per cent, boric acid, lime under carbon dioxide, gypsum in water, density of sold liquids", "published-solutions.md", "named there",
            "named there, before", Published());
        yield return ("conductivity of 1 and 2 % by mass at 20 °C, osmotic coefficients, density of mixed salts", "handbook-solutions.md", "named there",
            "named there, before",
            [.. Rows(HandbookSolutionsTests.Table, "kind").Select(r => new Fact($"{r[0]}: {r[1]}", Number(r[5]), Number(r[6])))]);
        yield return ("ammonia in fresh water, carbon dioxide under pressure, density over strength, citrate with phosphate, a Japanese standard, osmotic coefficients over temperature",
            "further-facts.md", "named there", "named there, committed before",
            [.. Rows(FurtherFactsTests.Table, "kind").Select(r => new Fact($"{r[0]}: {r[1]}", Number(r[5]), Number(r[6])))]);
        yield return ("conductivity of KCl standards, 0 to 45 °C", "conductivity-deviations.md", "Pratt et al. 2001", "1.5 %",
            [.. Rows(Physical + "conductivity-deviations.md", "KCl mol/kg").TakeWhile(r => r.Length >= 12).SelectMany(r => r.Skip(1).Where(c => c.Length > 0)
                .Select((c, i) => new Fact($"conductivity of {r[0]} mol/kg KCl, column {i + 1}, %", Number(c), 1.5)))]);
        yield return ("density of single salts to 20 mass %, 0 to 45 °C", "density-temperature.md", "Laliberté 2009", "1 %",
            [.. Rows(Physical + "density-temperature.md", "salt").Where(r => r[3].Length > 0).Select(r => new Fact($"density of {r[0]}, worst to 20 mass %, %", Number(r[3]), 1))]);
    }

    private static List<Fact> Trial(string table) => [.. Rows(table, "kind").Select(r => new Fact($"{r[0]}: {r[1]}", Number(r[5]), Number(r[6])))];

    private static List<Fact> Published() =>
        [.. Rows(PublishedSolutionsTests.Table, "kind").Select(r => new Fact($"{r[0]}: {r[1]}", Number(r[5]), Number(r[6])))];

    /// <summary>The cells of each row of the first table whose first head is the one named.</summary>
    private static IEnumerable<string[]> Rows(string path, string head) =>
        File.ReadLines(Path.Combine(Repository.Root, path)).SkipWhile(l => !l.StartsWith("| " + head + " |", StringComparison.Ordinal)).Skip(2)
            .TakeWhile(l => l.StartsWith('|')).Select(l => l.Trim('|', ' ').Split('|').Select(c => c.Trim()).ToArray());

    private static double Number(string cell) => double.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture);
}
