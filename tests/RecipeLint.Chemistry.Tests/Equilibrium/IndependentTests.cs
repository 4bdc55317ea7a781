using CsCheck;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Workbench.Tables;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>
/// The solver against arithmetic of its own kind: the constants as they stand in the data files, the law of mass action, SIT and the
/// balances written out once more, plainly, and for small solutions solved by nothing but bisection.
/// </summary>
public sealed class IndependentTests
{
    private const double R = 8.314462618, Ln10 = 2.302585092994046, WaterMolesPerKg = 55.50837;
    private static readonly ThermoData Data = ThermoData.Load();
    private static readonly Dictionary<string, int> Charges = Data.Components.ToDictionary(c => c.Name, c => c.Charge)
        .Concat(Data.UsedSpecies.ToDictionary(s => s.Name, s => s.Charge)).ToDictionary(p => p.Key, p => p.Value);

    private static readonly EquilibriumSolver Plain = new(ConstantSet.ReferencePlain), Extended = new(ConstantSet.ReferenceExtended);

    private static double LogK(ThermoData.Species s, double kelvin) =>
        s.LogK + 1000 * (s.DH ?? 0) / (R * Ln10) * (1 / 298.15 - 1 / kelvin);

    /// <summary>log10 of every activity coefficient, "H2O" standing for log10 of the water activity.</summary>
    private static Dictionary<string, double> Activities(IReadOnlyDictionary<string, double> molality, double celsius, bool extended)
    {
        double ionic = 0, sum = 0;
        foreach (var (name, m) in molality)
        {
            ionic += 0.5 * m * Charges[name] * Charges[name];
            sum += m;
        }
        double a = DebyeHueckel.A(celsius), root = Math.Sqrt(ionic), t = 1 + 1.5 * root;
        var log = molality.Keys.ToDictionary(n => n, n => -a * Charges[n] * Charges[n] * root / t);
        var pairs = Data.Plain.ToDictionary(p => (p.I, p.J));
        if (extended)
            foreach (var p in Data.Extended)
            {
                pairs.Remove((p.J, p.I));
                pairs[(p.I, p.J)] = p;
            }
        double mixed = 0;
        foreach (var p in pairs.Values)
        {
            if (!molality.TryGetValue(p.I, out var i) || !molality.TryGetValue(p.J, out var j)) continue;
            // The coefficients are on the log10 scale.
            var e = p.Eps + p.EpsLogI * Math.Log10(ionic);
            log[p.I] += e * j;
            log[p.J] += e * i;
            mixed += Ln10 * e * i * j;
        }
        var osmotic = -2 * Ln10 * a / (1.5 * 1.5 * 1.5) * (t - 2 * Math.Log(t) - 1 / t);
        log["H2O"] = -(sum + osmotic + mixed) / WaterMolesPerKg / Ln10;
        return log;
    }

    private static Gen<SolutionInput> Cases => Gen.Select(RandomSolutions.Amounts(-9, -0.5, 20), RandomSolutions.Between(0, 45), Gen.Int[0, 3], RandomSolutions.Between(2, 11),
        (amounts, celsius, mode, ph) => new SolutionInput
        {
            Totals = new ComponentTotals(amounts),
            Celsius = celsius,
            FixedPh = mode is 0 or 1 ? mode == 1 ? Math.Min(ph, 9) : ph : null,
            CarbonDioxideAtm = mode is 1 or 2 ? 4.2e-4 : null,
        });

    /// <summary>Every mass action, balance and activity of random solutions, traces of 1e-9 mol/kg and open ones included.</summary>
    [Fact]
    public void EveryEquationHolds()
    {
        var tried = 0;
        RandomSolutions.ForEach(Cases, RandomSolutions.Count(400), input =>
        {
            foreach (var extended in (bool[])[false, true])
            {
                var state = (extended ? Extended : Plain).Solve(input);
                if (!state.Converged || state.IonicStrength > 6) continue;
                tried++;
                var where = RandomSolutions.Describe(input);
                var m = state.Species.ToDictionary(s => s.Name, s => s.MolPerKg);
                var log = Activities(m, input.Celsius, extended);
                double Log(string name) => name == "H2O" ? log["H2O"] : Math.Log10(m[name]) + log[name];
                Assert.True(Math.Abs(Math.Log10(state.WaterActivity) - log["H2O"]) < 1e-8, "water " + where);
                Assert.True(Math.Abs(state.Ph + Log("H+")) < 1e-8, "pH " + where);
                if (input.FixedPh is { } ph) Assert.True(Math.Abs(state.Ph - ph) < 1e-8, "given pH " + where);
                var sums = Data.Components.Where(c => c.Name != "H2O").ToDictionary(c => c.Name, c => m.GetValueOrDefault(c.Name));
                double charge = m.Sum(s => Charges[s.Key] * s.Value), size = m.Sum(s => Math.Abs(Charges[s.Key]) * s.Value);
                foreach (var s in Data.UsedSpecies.Where(s => !s.ProductOnly))
                {
                    if (s.Reaction.Terms.Any(t => t.Component != "H2O" && !m.ContainsKey(t.Component)))
                    {
                        Assert.DoesNotContain(s.Name, m.Keys);
                        continue;
                    }
                    foreach (var (component, n) in s.Reaction.Terms) if (component != "H2O") sums[component] += n * m[s.Name];
                    // Below 1e-32 mol/kg nothing is kept.
                    if (m[s.Name] < 1e-30) continue;
                    var made = LogK(s, input.Celsius + 273.15) + s.Reaction.Terms.Sum(t => t.Coefficient * Log(t.Component));
                    Assert.True(Math.Abs(Log(s.Name) - made) < 1e-7, $"{s.Name} {Log(s.Name)} {made} {where}");
                }
                foreach (var (name, total) in input.Totals.Present)
                    if (name != "CO3-2" || input.CarbonDioxideAtm is null)
                        Assert.True(Math.Abs(sums[name] / total - 1) < 1e-9, $"{name} {sums[name]} {where}");
                if (input.FixedPh is null) Assert.True(Math.Abs(charge) < 1e-9 * size, $"charge {charge} {where}");
                if (input.CarbonDioxideAtm is { } air)
                    Assert.True(Math.Abs(Log("CO3-2") + 2 * Log("H+") - Log("H2O") - Math.Log10(air)
                        - (Data.Gas.ReferenceLogK + 1000 * Data.Gas.ReferenceDH / (R * Ln10) * (1 / 298.15 - 1 / (input.Celsius + 273.15)))) < 1e-7, "gas " + where);
            }
        });
        Assert.True(tried > 500, $"{tried}");
    }

    private static Gen<SolutionInput> Small => Gen.Select(
        Gen.Int[0, 5], RandomSolutions.Between(-6, -0.7).Array[5], RandomSolutions.Between(0, 45),
        (kind, logs, celsius) =>
        {
            string[][] kinds =
            [
                ["K+", "H2PO4-", "NO3-"], ["Ca+2", "SO4-2", "Na+", "Cl-"], ["Mg+2", "NH4+", "H2PO4-", "SO4-2"],
                ["Na+", "CO3-2", "Ca+2", "B(OH)3"], ["Zn+2", "Citrate-3", "K+", "NO3-"], ["Fe+3", "EDTA-4", "Na+", "Cl-"],
            ];
            return new SolutionInput
            {
                Totals = new ComponentTotals(kinds[kind].Select((n, i) => KeyValuePair.Create(n, Math.Pow(10, logs[i])))),
                Celsius = celsius,
            };
        });

    /// <summary>
    /// Small solutions solved by bisection alone: each component's balance in turn inside, the charge by pH around it, activity
    /// coefficients held and renewed outside. Slow, and with nothing in common with the solver.
    /// </summary>
    [Fact]
    public void BisectionFindsTheSameState()
    {
        var agreed = 0;
        RandomSolutions.ForEach(Small, 60, input =>
        {
            var state = Extended.Solve(input);
            Assert.True(state.Converged, RandomSolutions.Describe(input));
            if (state.IonicStrength > 2 || Bisect(input) is not { } ph) return;
            Assert.True(Math.Abs(state.Ph - ph) < 1e-4, $"pH {state.Ph}, by bisection {ph}: {RandomSolutions.Describe(input)}");
            agreed++;
        });
        Assert.True(agreed >= 45, $"{agreed}");
    }

    /// <summary>The pH, or null when the activity coefficients did not come to rest.</summary>
    private static double? Bisect(SolutionInput input)
    {
        var totals = input.Totals.Present.ToDictionary(p => p.Key, p => p.Value);
        var names = totals.Keys.Append("H+").ToHashSet();
        var species = Data.UsedSpecies.Where(s => !s.ProductOnly && s.Reaction.Terms.All(t => t.Component == "H2O" || names.Contains(t.Component)))
            .Select(s => (s.Name, s.Charge, Terms: s.Reaction.Terms.Where(t => t.Component != "H2O").ToList(),
                Water: s.Reaction.Terms.Where(t => t.Component == "H2O").Sum(t => t.Coefficient), LogK: LogK(s, input.Celsius + 273.15))).ToList();
        var free = totals.ToDictionary(t => t.Key, t => Math.Log10(t.Value));
        var gamma = names.Concat(species.Select(s => s.Name)).Append("H2O").ToDictionary(n => n, _ => 0.0);
        double before = double.NaN;
        for (var round = 0; round < 60; round++)
        {
            double low = 0, high = 14;
            var m = new Dictionary<string, double>();
            for (var k = 0; k < 40; k++)
            {
                var ph = (low + high) / 2;
                m = Distribution(ph);
                if (m.Sum(s => Charges[s.Key] * s.Value) > 0) low = ph; else high = ph;
            }
            var now = Activities(m, input.Celsius, extended: true);
            foreach (var n in gamma.Keys) gamma[n] += 0.7 * (now[n] - gamma[n]);
            var found = (low + high) / 2;
            if (Math.Abs(found - before) < 1e-7) return found;
            before = found;
        }
        return null;

        Dictionary<string, double> Distribution(double ph)
        {
            double LogMolality((string Name, int Charge, List<(string Component, double Coefficient)> Terms, double Water, double LogK) s) =>
                s.LogK - gamma[s.Name] + s.Water * gamma["H2O"]
                + s.Terms.Sum(t => t.Coefficient * (t.Component == "H+" ? -ph : free[t.Component] + gamma[t.Component]));
            for (var sweep = 0; sweep < 400; sweep++)
            {
                double moved = 0;
                foreach (var (component, total) in totals)
                {
                    var with = species.Where(s => s.Terms.Any(t => t.Component == component))
                        .Select(s => (Log: LogMolality(s) - s.Terms.First(t => t.Component == component).Coefficient * free[component],
                            N: s.Terms.First(t => t.Component == component).Coefficient)).ToList();
                    double low = Math.Log10(total) - 40, high = Math.Log10(total);
                    for (var k = 0; k < 60; k++)
                    {
                        var x = (low + high) / 2;
                        var sum = Math.Pow(10, x) + with.Sum(s => s.N * Math.Pow(10, s.Log + s.N * x));
                        if (sum < total) low = x; else high = x;
                    }
                    moved = Math.Max(moved, Math.Abs(free[component] - low));
                    free[component] = low;
                }
                if (moved < 1e-10) break;
            }
            var m = free.ToDictionary(f => f.Key, f => Math.Pow(10, f.Value));
            m["H+"] = Math.Pow(10, -ph - gamma["H+"]);
            foreach (var s in species) m[s.Name] = Math.Pow(10, LogMolality(s));
            return m;
        }
    }
}
