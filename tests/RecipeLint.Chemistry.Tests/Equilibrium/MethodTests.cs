using System.Globalization;
using System.Text.RegularExpressions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Workbench.Tables;
using State = RecipeLint.Chemistry.Equilibrium.Equilibrium;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>Holds method.md against the code: every worked number in it is computed again, to the digits it is written with.</summary>
public sealed partial class MethodTests
{
    private static readonly string Text =
        File.ReadAllText(Path.Combine(Repository.Root, "src", "RecipeLint.Chemistry", "Equilibrium", "method.md"));

    /// <summary>What the words before the equals sign mean in code.</summary>
    private static readonly (Regex Words, Func<GroupCollection, double> Value)[] Meanings =
    [
        (new("^mol of water in a kilogram$"), _ => Problem.MolWater),
        (new("^ion size parameter b$"), _ => Activity.IonSize),
        (new("^A at (?<t>[\\d.]+) °C$"), g => DebyeHueckel.A(Number(g["t"]))),
        (new("^D at I = (?<i>[\\d.]+) mol/kg and (?<t>[\\d.]+) °C$"), g => Term(Number(g["i"]), Number(g["t"]))),
        (new("^log10 K of (?<s>Gypsum|Calcite) at (?<t>[\\d.]+) °C$"), g => SolidLogK(g["s"].Value, Number(g["t"]))),
        (new("^log10 K of (?<s>\\S+) at (?<t>[\\d.]+) °C$"), g => SpeciesLogK(g["s"].Value, Number(g["t"]))),
        (new("^pH of water under (?<p>[\\d.]+) atm CO2 with (?<m>[\\d.]+) mol/kg KCl at (?<t>[\\d.]+) °C$"),
            g => Ask(Number(g["t"]), Number(g["p"]), ("K+", Number(g["m"])), ("Cl-", Number(g["m"]))).Ph),
        (new("^pH of (?<m>[\\d.]+) mol/kg NaCl at (?<t>[\\d.]+) °C$"), g => Salt("NaCl", g).Ph),
        (new("^charge left of (?<m>[\\d.]+) mol/kg K2SO4 at (?<t>[\\d.]+) °C, eq/kg$"), g => Salt("K2SO4", g).ChargeGapEquivalentsPerKg),
        (new("^water activity of (?<m>[\\d.]+) mol/kg NaCl at (?<t>[\\d.]+) °C$"), g => Salt("NaCl", g).WaterActivity),
        (new("^largest mass residual of (?<m>[\\d.]+) mol/kg MgSO4 at (?<t>[\\d.]+) °C$"), g => Salt("MgSO4", g).MassResidual),
        (new("^g of gypsum that dissolve in a kilogram of water at (?<t>[\\d.]+) °C$"), g => GypsumDissolved(Number(g["t"]))),
        (new("^saturation index of (?<s>\\S+) in its saturated solution at (?<t>[\\d.]+) °C$"), g => Saturated(g["s"].Value, Number(g["t"]))),
        (new("^solubility of (?<s>\\S+) at (?<t>[\\d.]+) °C, mol/kg$"), g => SaltVerdicts.Solubility(Solid(g["s"].Value), Number(g["t"]))!.Value),
        (new("^highest ionic strength at which the calibrated index is asked, mol/kg$"), _ => SaltVerdicts.HighestIonicStrength),
        (new("^ionic strength up to which both measures count alike, mol/kg$"), _ => SaltVerdicts.AlikeUpTo),
        (new("^weight of the calibrated index at I = 5 mol/kg$"), _ => SaltVerdicts.CalibratedShare(5)),
    ];

    public static TheoryData<string, string> Worked
    {
        get
        {
            var rows = new TheoryData<string, string>();
            foreach (Match m in Check().Matches(Text)) rows.Add(m.Groups["what"].Value, m.Groups["value"].Value);
            return rows;
        }
    }

    [Fact]
    public void EverySectionHasSomethingToCheck()
    {
        Assert.True(Worked.Count >= 18, $"{Worked.Count} worked numbers");
        foreach (var section in Text.Split("\n## ").Skip(1)) Assert.True(Check().IsMatch(section), section.Split('\n')[0]);
    }

    [Theory]
    [MemberData(nameof(Worked))]
    public void WorkedNumberIsWhatTheCodeComputes(string what, string value)
    {
        var meaning = Meanings.FirstOrDefault(m => m.Words.IsMatch(what));
        Assert.True(meaning.Words is not null, $"Nothing computes '{what}'.");
        var computed = meaning.Value(meaning.Words!.Match(what).Groups);
        var decimals = value.Contains('.') ? value.Length - value.IndexOf('.') - 1 : 9;
        Assert.True(Math.Abs(computed - double.Parse(value, CultureInfo.InvariantCulture)) <= 0.5000001 * Math.Pow(10, -decimals),
            string.Create(CultureInfo.InvariantCulture, $"{what}: method.md says {value}, the code {computed:0.########}"));
    }

    /// <summary>What the symbols stand for in code must be there: "`Activity.Coefficients`" names a member of the library.</summary>
    [Fact]
    public void EveryMemberNamedIsThere()
    {
        var source = string.Join('\n', Directory.GetFiles(Path.Combine(Repository.Root, "src", "RecipeLint.Chemistry", "Equilibrium"), "*.cs")
            .Where(f => !f.EndsWith(".generated.cs", StringComparison.Ordinal)).Select(File.ReadAllText));
        foreach (Match m in Member().Matches(Text))
        {
            Assert.Contains($" {m.Groups["type"].Value}", source, StringComparison.Ordinal);
            if (m.Groups["member"].Success) Assert.Matches($@"\b{m.Groups["member"].Value}\b", source);
        }
    }

    private static double Number(Group g) => double.Parse(g.Value, CultureInfo.InvariantCulture);

    private static Solid Solid(string name) => ConstantSet.Product.FindSolid(name)!;

    private static double Term(double ionic, double celsius) => DebyeHueckel.A(celsius) * Math.Sqrt(ionic) / (1 + Activity.IonSize * Math.Sqrt(ionic));

    private static double SolidLogK(string name, double celsius)
    {
        var set = ConstantSet.Product;
        var k = set.Solids.ToList().FindIndex(s => s.Name == name);
        return ConstantSet.LogK(set.SolidLogK.AsSpan(6 * k, 6), celsius + 273.15, Math.Log10(celsius + 273.15));
    }

    private static double SpeciesLogK(string name, double celsius)
    {
        var k = Array.IndexOf(ThermoTables.SpeciesNames, name);
        Assert.True(k >= 0, name);
        return ConstantSet.LogK(ConstantSet.Product.SpeciesLogK.AsSpan(6 * k, 6), celsius + 273.15, Math.Log10(celsius + 273.15));
    }

    private static State Ask(double celsius, double? carbonDioxide, params (string Name, double MolPerKg)[] totals) => State.Ask(
        new SolutionInput
        {
            Totals = new ComponentTotals(totals.Select(t => KeyValuePair.Create(t.Name, t.MolPerKg))),
            Celsius = celsius,
            CarbonDioxideAtm = carbonDioxide,
        },
        MayForm.Nothing).Clear;

    private static State Salt(string salt, GroupCollection g)
    {
        double m = Number(g["m"]), celsius = Number(g["t"]);
        return salt switch
        {
            "NaCl" => Ask(celsius, null, ("Na+", m), ("Cl-", m)),
            "K2SO4" => Ask(celsius, null, ("K+", 2 * m), ("SO4-2", m)),
            _ => Ask(celsius, null, ("Mg+2", m), ("SO4-2", m)),
        };
    }

    private static double GypsumDissolved(double celsius)
    {
        const double much = 0.2;
        var input = new SolutionInput { Totals = new ComponentTotals([new("Ca+2", much), new("SO4-2", much)]), Celsius = celsius };
        var gypsum = Solid("Gypsum");
        var answer = State.Ask(input, MayForm.Only([gypsum]));
        return (much - answer.Formed("Gypsum")) / answer.WaterKg * gypsum.MolarMassGramsPerMole;
    }

    private static double Saturated(string salt, double celsius)
    {
        var row = Calibration.Rows().Single(r => r.Solid == salt);
        var at = row.At.ToList().FindIndex(p => p.Celsius == celsius);
        return State.Ask(row.Saturated(at), MayForm.Nothing).Clear.SaturationIndex(salt)!.Value;
    }

    [GeneratedRegex(@"^`check` (?<what>.+) = (?<value>-?[\d.]+)$", RegexOptions.Multiline)]
    private static partial Regex Check();

    [GeneratedRegex(@"`(?<type>[A-Z][A-Za-z]+)(\.(?<member>[A-Z][A-Za-z]+))?`")]
    private static partial Regex Member();
}
