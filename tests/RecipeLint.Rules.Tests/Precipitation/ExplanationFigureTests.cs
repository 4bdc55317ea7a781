using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Rules.Tests.Folders;

namespace RecipeLint.Rules.Tests.Precipitation;

/// <summary>Figures that the explanations state, against what the engine gives.</summary>
public sealed class ExplanationFigureTests
{
    private const double GypsumGramsPerMole = 172.17, EdtaGramsPerMole = 292.24, BenzoicGramsPerMole = 122.12, SilicaGramsPerMole = 60.08;
    private const double CitrateGramsPerMole = 570.5;

    /// <summary>Rule, the words of its explanation, what the engine gives, lowest and highest that the words cover.</summary>
    private static readonly (string Rule, string Words, Func<double> Engine, double Low, double High)[] Stated =
    [
        ("calcium-with-sulfate", "Pure water holds about 2.6 g/L of gypsum", () => GypsumGramsPerMole * Gypsum(), 2.5, 2.75),
        ("calcium-with-sulfate", "up to four times that with sodium chloride", () => Gypsum(("Na+", 3), ("Cl-", 3)) / Gypsum(), 3.4, 4.2),
        ("calcium-with-sulfate", "six times with 200 g/L of magnesium nitrate", () => Gypsum(("Mg+2", 1.44), ("NO3-", 2.88)) / Gypsum(), 5.7, 6.9),
        ("calcium-with-sulfate", "strong calcium nitrate or strong Epsom salt less than half", () => Gypsum(("Ca+2", 1.6), ("NO3-", 3.2)) / Gypsum(), 0, 0.5),
        ("calcium-with-sulfate", "strong calcium nitrate or strong Epsom salt less than half", () => Gypsum(("Mg+2", 2.4), ("SO4-2", 2.4)) / Gypsum(), 0, 0.5),
        ("calcium-with-sulfate", "Above about 0.2 mol/kg of potassium sulfate, syngenite", ChangePoint, 0.15, 0.3),
        ("chelating-acid-drops-out", "a litre holds only half a gram", () => EdtaGramsPerMole * Soluble("EDTA acid", 20, m => [("EDTA-4", m)]), 0.3, 0.65),
        ("preservative-drops-out", "a cold litre holds about 1.7 g", () => BenzoicGramsPerMole * Soluble("Benzoic acid", 2, m => [("Benzoate-", m)]), 1.5, 1.95),
        ("preservative-drops-out", "sorbic acid dissolves less still", () => 112.13 * Soluble("Sorbic acid", 2, m => [("Sorbate-", m)]), 0.5, 1.6),
        ("salt-past-its-solubility", "Potassium nitrate and boric acid lose half of their solubility between 25 and 5 °C", () => Handbook("Niter"), 0.4, 0.6),
        ("salt-past-its-solubility", "Potassium nitrate and boric acid lose half of their solubility between 25 and 5 °C", () => Handbook("Boric acid"), 0.4, 0.6),
        ("calcium-with-citrate", "water holds less than a gram per litre", () => CitrateGramsPerMole * Soluble("Calcium citrate (Earlandite)", 20, m => [("Ca+2", 3 * m), ("Citrate-3", 2 * m)]), 0.4, 1),
        ("silicate-with-acid-or-metal", "more than about 0.12 g/L of SiO2 does not stay dissolved", () => SilicaGramsPerMole * Soluble("Amorphous silica", 25, m => [("H4SiO4", m)]), 0.1, 0.135),
        ("metal-hydroxide", "Ferric iron turns to a rust-brown floc above pH 3", () => FirstHydroxide("Fe+3", 3), 1.5, 3.3),
        ("metal-hydroxide", "copper to a blue or green one above 5", () => FirstHydroxide("Cu+2", 2), 4.2, 5.9),
        ("metal-hydroxide", "zinc above 6 to 7", () => FirstHydroxide("Zn+2", 2), 6, 7.6),
        ("metal-hydroxide", "manganese above 8", () => FirstHydroxide("Mn+2", 2), 7.8, 9.2),
        ("metal-hydroxide", "magnesium above 10", () => FirstHydroxide("Mg+2", 2), 9.5, 10.9),
        ("calcium-with-phosphate", "they do so only below about pH 3 to 4", () => LowestPh("Brushite", ("Ca+2", 0.4), ("NO3-", 0.8), ("H2PO4-", 0.15), ("K+", 0.15)), 2.2, 4),
        ("double-salt", "100 g/L with 200 g/L drop more than 100 g/L of boussingaultite at 5 °C", Boussingaultite, 100, 190),
    ];

    public static TheoryData<int> Rows => [.. Enumerable.Range(0, Stated.Length)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void AnExplanationStatesWhatTheEngineGives(int row)
    {
        var (rule, words, engine, low, high) = Stated[row];
        var folder = RuleFolder.All.Single(f => f.Name == rule);
        Assert.Contains(words, File.ReadAllText(System.IO.Path.Combine(folder.Path, "explanation.md")), StringComparison.Ordinal);
        var figure = engine();
        Assert.True(figure >= low && figure <= high, $"{rule}: '{words}', engine {figure:0.####}, allowed {low} to {high}");
    }

    private static double Soluble(string solid, double celsius, Func<double, IEnumerable<(string, double)>> with)
    {
        double low = 1e-6, high = 2;
        for (var k = 0; k < 50; k++)
        {
            var middle = Math.Sqrt(low * high);
            if (Solve(celsius, null, with(middle)).SaturationIndex(solid) is <= 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    private static double Gypsum(params (string Ion, double MolPerKg)[] salt) =>
        Soluble("Gypsum", 25, m => salt.Append(("Ca+2", m)).Append(("SO4-2", m)));

    /// <summary>Share of the solubility at 25 °C that is left at 5 °C.</summary>
    private static double Handbook(string solid)
    {
        var salt = ConstantSet.Product.FindSolid(solid)!;
        return SaltVerdicts.Solubility(salt, 5)!.Value / SaltVerdicts.Solubility(salt, 25)!.Value;
    }

    /// <summary>Potassium sulfate, mol/kg, from which on syngenite is past its limit before gypsum.</summary>
    private static double ChangePoint()
    {
        double low = 0.02, high = 1;
        for (var k = 0; k < 40; k++)
        {
            var middle = (low + high) / 2;
            var calcium = Gypsum(("K+", 2 * middle), ("SO4-2", middle));
            var state = Solve(25, null, [("K+", 2 * middle), ("SO4-2", middle + calcium), ("Ca+2", calcium)]);
            if (state.SaturationIndex("Syngenite") is <= 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    /// <summary>
    /// pH from which on 30 mmol/kg of a metal as its sulfate, a strong trace stock, are past the limit of a hydroxide that forms readily, 25 °C.
    /// </summary>
    private static double FirstHydroxide(string metal, int charge) =>
        FirstPh(s => s.Solid is { Role: SolidRole.FormsReadily, Owner: "metal-hydroxide" }, (metal, 0.03), ("SO4-2", 0.015 * charge));

    private static double LowestPh(string solid, params (string, double)[] totals) => FirstPh(s => s.Solid.Name == solid, totals);

    private static double FirstPh(Func<SolidIndex, bool> isMeant, params (string, double)[] totals)
    {
        double low = 0, high = 13;
        for (var k = 0; k < 40; k++)
        {
            var middle = (low + high) / 2;
            if (Solve(25, middle, totals).Solids.Any(s => isMeant(s) && s.Index > 0))
            {
                high = middle;
            }
            else
            {
                low = middle;
            }
        }

        return low;
    }

    private static double Boussingaultite()
    {
        (string Id, double Grams)[] items = [("ammonium-sulfate", 100), ("magnesium-sulfate-7h2o", 200)];
        var mix = SolutionMix.Of(
            ComponentMoles.Sum(items.Select(x => ComponentMoles.Of(SubstanceCatalogue.BuiltIn.Substances.Single(s => s.Id == x.Id).Dissolves
                .Select(y => KeyValuePair.Create(y.Component, y.MolesPerGram * x.Grams))))),
            new Volume(1));
        return StateSolver.Solve(mix, 5).Deposit("Boussingaultite")!.Mass.GramsPerLitre;
    }

    private static Equilibrium Solve(double celsius, double? ph, IEnumerable<(string Ion, double MolPerKg)> totals)
    {
        var sums = new Dictionary<string, double>();
        foreach (var (ion, amount) in totals)
        {
            sums[ion] = sums.GetValueOrDefault(ion) + amount;
        }

        return EquilibriumSolver.Product.Solve(new SolutionInput { Totals = new ComponentTotals(sums), Celsius = celsius, FixedPh = ph });
    }
}
