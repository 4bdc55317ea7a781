using System.Globalization;
using System.Text.RegularExpressions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Workbench.Tables;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>The constants as data: balanced, sourced, nothing orphaned, enough of them.</summary>
public sealed partial class DataTests
{
    private static readonly ThermoData Data = ThermoData.Load();

    // CIAAW abridged standard atomic weights 2021.
    private static readonly Dictionary<string, double> Weights = new()
    {
        ["H"] = 1.008,
        ["B"] = 10.81,
        ["C"] = 12.011,
        ["N"] = 14.007,
        ["O"] = 15.999,
        ["Na"] = 22.990,
        ["Mg"] = 24.305,
        ["Al"] = 26.982,
        ["Si"] = 28.085,
        ["P"] = 30.974,
        ["S"] = 32.06,
        ["Cl"] = 35.45,
        ["K"] = 39.098,
        ["Ca"] = 40.078,
        ["Mn"] = 54.938,
        ["Fe"] = 55.845,
        ["Co"] = 58.933,
        ["Ni"] = 58.693,
        ["Cu"] = 63.546,
        ["Zn"] = 65.38,
        ["Mo"] = 95.95,
    };

    private static readonly Dictionary<string, ThermoData.Component> ByName = Data.Components.ToDictionary(c => c.Name);

    [Fact]
    public void ThereAreEnoughConstants()
    {
        Assert.True(Data.UsedSpecies.Count() + Data.Components.Count - 1 >= 400);
        Assert.True(Data.UsedSpecies.Count() >= 400, $"{Data.UsedSpecies.Count()} species");
        Assert.True(Data.Solids.Count >= 100, $"{Data.Solids.Count} solids");
        Assert.True(ConstantSet.Product.Solids.Count >= 100);
    }

    [Fact]
    public void ReactionsBalanceInCharge()
    {
        foreach (var s in Data.AllSpecies) Assert.Equal(s.Charge, s.Reaction.Terms.Sum(t => t.Coefficient * ByName[t.Component].Charge), 1e-9);
        foreach (var s in Data.Solids) Assert.Equal(0, s.Reaction.Terms.Sum(t => t.Coefficient * ByName[t.Component].Charge), 1e-9);
    }

    [Fact]
    public void ReactionsBalanceInElements()
    {
        var faults = new List<string>();
        foreach (var s in Data.AllSpecies) Compare(s.Name, ChargeSuffix().Replace(s.Name, ""), s.Reaction);
        foreach (var s in Data.Solids) Compare(s.Name, s.Formula, s.Reaction);
        Assert.True(faults.Count == 0, string.Join("\n", faults));

        void Compare(string name, string formula, Reaction reaction)
        {
            var written = formula.Contains("·x", StringComparison.Ordinal) ? Elements(formula[..formula.IndexOf('·')]) : Elements(formula);
            var made = new Dictionary<string, double>();
            foreach (var (component, n) in reaction.Terms)
                foreach (var (element, k) in Elements(ByName[component].Formula)) made[element] = made.GetValueOrDefault(element) + n * k;
            foreach (var element in written.Keys.Union(made.Keys))
                if (Math.Abs(written.GetValueOrDefault(element) - made.GetValueOrDefault(element)) > 1e-6)
                    faults.Add(string.Create(CultureInfo.InvariantCulture, $"{name}: {element} {written.GetValueOrDefault(element)} written, {made.GetValueOrDefault(element)} in the reaction"));
        }
    }

    [Fact]
    public void MolarMassesFollowFromTheFormulas()
    {
        foreach (var c in Data.Components) Assert.Equal(Elements(c.Formula).Sum(e => e.Value * Weights[e.Key]), c.MolarMass, 0.002);
        // Gypsum 172.17 g/mol, CRC Handbook of Chemistry and Physics.
        Assert.Equal(172.17, ConstantSet.Product.FindSolid("Gypsum")!.MolarMassGramsPerMole, 0.01);
    }

    [Fact]
    public void NothingIsOrphanedUnsourcedOrTwice()
    {
        string[] status = ["database", "secondhand", "paper", "memory", "derived", "estimate"];
        var ions = Data.Components.Select(c => c.Name).Concat(Data.AllSpecies.Select(s => s.Name)).ToHashSet();
        foreach (var s in Data.AllSpecies)
        {
            Assert.All(s.Reaction.Terms, t => Assert.True(ByName.ContainsKey(t.Component), $"{s.Name} needs {t.Component}"));
            Assert.True(Data.Sources.ContainsKey(s.Source), s.Name + " has no source");
            Assert.Contains(s.Status, status);
            // logK at zero ionic strength from the value at 0.1 mol/L, Debye-Hueckel term 0.1092 of SIT.
            if (s.LogKAtPointOne is { } tenth)
            {
                var dz2 = s.Charge * s.Charge - s.Reaction.Terms.Sum(t => t.Coefficient * ByName[t.Component].Charge * ByName[t.Component].Charge);
                Assert.Equal(tenth - 0.1092 * dz2, s.LogK, 0.011);
            }
        }
        foreach (var s in Data.Solids)
        {
            Assert.All(s.Reaction.Terms, t => Assert.True(ByName.ContainsKey(t.Component), $"{s.Name} needs {t.Component}"));
            Assert.True(Data.Sources.ContainsKey(s.Source), s.Name + " has no source");
            Assert.Contains(s.Role, TableWriter.Roles);
            Assert.False(string.IsNullOrWhiteSpace(s.Because), s.Name + " has no reason for its role");
        }
        foreach (var p in Data.Plain.Concat(Data.Extended).Concat(Data.ProductPairs))
        {
            Assert.True(ions.Contains(p.I) && ions.Contains(p.J), $"{p.I} / {p.J}");
            Assert.True(Data.Sources.ContainsKey(p.Source), $"{p.I} / {p.J} has no source");
        }
        foreach (var (name, step) in Data.Steps) Assert.True(Data.Sources.ContainsKey(step.Source), name);
        foreach (var (name, (because, source)) in Data.ProductWithout)
        {
            Assert.Contains(Data.UsedSpecies, s => s.Name == name);
            Assert.True(because.Length > 10 && Data.Sources.ContainsKey(source), name);
        }
        foreach (var (name, solid) in Data.ProductSolids) Assert.True(Data.Sources.ContainsKey(solid.Source), name);
        foreach (var row in Calibration.Rows()) Assert.True(Data.Sources.ContainsKey(row.Source), row.Solid);
        Assert.Equal(ions.Count, Data.Components.Count + Data.AllSpecies.Count);
        Assert.Equal(Data.Solids.Count, Data.Solids.Select(s => s.Name).Distinct().Count());
        Assert.All(Data.ProductSpecies.Keys, n => Assert.Contains(Data.AllSpecies, s => s.Name == n));
    }

    /// <summary>Temperature functions at 25 °C: accepted values, CRC Handbook of Chemistry and Physics.</summary>
    [Theory]
    [InlineData("Kw", -13.995)]
    [InlineData("K1 carbonic", -6.352)]
    [InlineData("K2 carbonic", -10.329)]
    [InlineData("KH carbon dioxide", -1.468)]
    [InlineData("K bisulfate", -1.988)]
    [InlineData("K ammonium", -9.244)]
    [InlineData("K1 silicic", -9.83)]
    [InlineData("K2 phosphoric", -7.198)]
    [InlineData("K boric", -9.237)]
    public void StepsHaveTheirAcceptedValueAt25(string step, double logK) =>
        Assert.Equal(logK, ConstantSet.LogK(TableWriter.Sum(step, Data), 298.15, Math.Log10(298.15)), 0.006);

    private static Dictionary<string, double> Elements(string formula)
    {
        var total = new Dictionary<string, double>();
        foreach (var part in formula.Split('·'))
        {
            var lead = LeadingNumber().Match(part);
            var factor = lead.Length > 0 ? double.Parse(lead.Value, CultureInfo.InvariantCulture) : 1;
            var at = lead.Length;
            foreach (var (e, n) in Group(part, ref at)) total[e] = total.GetValueOrDefault(e) + factor * n;
        }
        return total;
    }

    private static Dictionary<string, double> Group(string text, ref int at)
    {
        var total = new Dictionary<string, double>();
        while (at < text.Length && text[at] != ')')
        {
            Dictionary<string, double> unit;
            var here = at;
            if (text[at] == '(') { at++; unit = Group(text, ref at); at++; }
            else if (Data.Components.Select(c => (c.Formula, Name: ChargeSuffix().Replace(c.Name, "")))
                .FirstOrDefault(c => c.Formula.StartsWith('C') && c.Name.Length > 3 && string.CompareOrdinal(text, here, c.Name, 0, c.Name.Length) == 0) is { Name: not null } ligand)
            {
                unit = Elements(ligand.Formula);
                at += ligand.Name.Length;
            }
            else
            {
                var symbol = Symbol().Match(text, at);
                Assert.True(symbol.Success && symbol.Index == at && Weights.ContainsKey(symbol.Value), $"{text}: nothing known at {at}");
                unit = new() { [symbol.Value] = 1 };
                at += symbol.Length;
            }
            var number = Number().Match(text, at);
            var n = 1.0;
            if (number.Success && number.Index == at) { n = double.Parse(number.Value, CultureInfo.InvariantCulture); at += number.Length; }
            foreach (var (e, k) in unit) total[e] = total.GetValueOrDefault(e) + n * k;
        }
        return total;
    }

    [GeneratedRegex(@"[+-]\d*$")]
    private static partial Regex ChargeSuffix();

    [GeneratedRegex(@"^\d+(\.\d+)?")]
    private static partial Regex LeadingNumber();

    [GeneratedRegex(@"[A-Z][a-z]?")]
    private static partial Regex Symbol();

    [GeneratedRegex(@"\d+(\.\d+)?")]
    private static partial Regex Number();
}
