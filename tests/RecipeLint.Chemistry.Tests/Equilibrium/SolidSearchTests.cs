using RecipeLint.Chemistry.Equilibrium;
using Xunit.Abstractions;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

/// <summary>The search for the set of solids in stocks as they are mixed.</summary>
public sealed class SolidSearchTests(ITestOutputHelper output)
{
    private static readonly EquilibriumSolver Solver = EquilibriumSolver.Product;
    private static readonly List<Solid> Readily = [.. Solver.Constants.Solids.Where(s => s.Role == SolidRole.FormsReadily)];
    private static readonly List<Solid> WithSalts = [.. Solver.Constants.Solids.Where(s => s.Role is SolidRole.FormsReadily or SolidRole.SolubleSalt)];

    /// <summary>
    /// Stocks for which the set was once not found: a metal all but used up left the balance as a difference of two large numbers, whose
    /// logarithm stopped the iteration; or a solid whose amount came out negative was dropped far from any possible state.
    /// </summary>
    public static TheoryData<double, double?, string> OnceLost() => new()
    {
        { 17.9, 5.98, "Na+ 0.27037720791381453, Ca+2 0.00013977700662067832, Fe+3 0.00030577231992453267, Mn+2 0.0032561351494247884, Zn+2 0.016102830193373777, Cu+2 8.441353231507659E-05, NO3- 0.034612862874803384, H2PO4- 0.003229843954627211, B(OH)3 0.019429515425107305, MoO4-2 0.0009724763806825137" },
        { 0.1, null, "Na+ 0.00017756849138176464, K+ 0.29447255857115573, Mg+2 0.012879276661415643, Mn+2 0.0008375906261346995, Zn+2 0.003768468126152388, Cu+2 0.0002037817816660757, SO4-2 0.015808354317350715, H2PO4- 0.08487753517839405, B(OH)3 0.0015659192896049828, MoO4-2 7.024994953971254E-05, Citrate-3 0.006005201462964754" },
        { 7.8, null, "Na+ 2.1631110418330797E-05, K+ 0.07944760273693423, NH4+ 0.024786829935539982, Mg+2 0.6961039182651512, Fe+3 0.00016680469196531607, Mn+2 0.002155094823723006, Zn+2 0.0005567233715609019, Cu+2 0.0006802710659645163, SO4-2 0.14613241728388493, H2PO4- 0.06704659189613252, B(OH)3 0.007644072954656371, MoO4-2 0.0001663531608660423" },
        { 5.6, null, "Na+ 0.0001924732283378954, K+ 0.15401031229022327, Mg+2 0.32968044808964847, Ca+2 0.0003368980990705776, Mn+2 6.045266683241221E-05, Zn+2 0.0015116498143050033, Cu+2 0.00013217104340399044, NO3- 0.03828741322080635, SO4-2 0.17679575951251825, H2PO4- 0.02818399657298157, B(OH)3 0.0002764249622519969, MoO4-2 5.809876450791458E-06, Citrate-3 0.00028950136407186164" },
        { 37.0, null, "Na+ 0.0006317816022818942, K+ 0.2159402968210896, Ca+2 0.005535271279091887, Fe+2 0.016567001707933675, Fe+3 0.01064805119322595, Mn+2 0.00011486681321275752, Zn+2 0.0006629038252743991, Cu+2 5.470181515210473E-05, Cl- 0.21368152848298486, H2PO4- 0.06249101163551268, B(OH)3 0.011635785811172692, Glycinate- 0.01877347400015653" },
        { 22.4, null, "K+ 1.1808779385011963, Ca+2 0.0036805924314835927, Fe+3 0.00021646636647851638, CO3-2 0.0005315452642574883, H4SiO4 0.1683579753502962" },
        { 26.4, 8.92, "Na+ 0.5703384059566234, Fe+3 4.83623080708603E-05, Zn+2 0.00022934528131124984, CO3-2 0.00033186389151070326, B(OH)3 0.05916388660815603, MoO4-2 0.0003192453451813034" },
        { 6.4, null, "K+ 0.9941662723169427, Ca+2 0.0002412970215852033, Fe+3 0.0015174674669357758, Mn+2 0.00042225874076032424, Zn+2 0.0035519983261381553, Cu+2 0.024178046807010044, Co+2 0.0014227652214372805, Al+3 0.0003897082010551435, Cl- 0.02943020480485284, SO4-2 0.004184191603572427, H4SiO4 0.03689930348509542" },
        { 23.0, null, "Na+ 9.377559822687612E-05, K+ 0.3250645440427141, Mg+2 0.4625991954925828, Fe+3 0.0021976947419733994, Mn+2 4.457478853403351E-05, Zn+2 0.0003203340129238185, Cu+2 8.946200885023384E-05, SO4-2 0.16005301566451027, H2PO4- 0.023843071961910788, B(OH)3 0.0006738587839062451, MoO4-2 7.569211658956565E-06" },
        { 31.7, null, "Na+ 7.709497682180212E-05, K+ 0.06348926784135096, NH4+ 0.0019865971385269027, Mg+2 0.1967406641820296, Fe+3 0.007614519980770868, Mn+2 0.0009089122798505804, Zn+2 0.0005659158837695382, Cu+2 7.000104485545939E-05, SO4-2 0.15564489567143924, H2PO4- 0.024663834029515472, B(OH)3 0.00010851737380203711, MoO4-2 1.721583055746179E-05, EDTA-4 0.00175632352410503, Citrate-3 0.0004937235037605285" },
        { 39.4, 7.24, "K+ 0.012136183260378113, Ca+2 0.02355506758613167, Fe+2 7.320289235856666E-05, Zn+2 0.023560419807580103, Cu+2 0.02279727348239286, Ni+2 0.00024935004022771235, Co+2 0.01620114784372917, Al+3 0.02032810898145388, Cl- 5.554735521047989E-05, SO4-2 0.012836115450872236, B(OH)3 1.2998061129604411E-05, MoO4-2 0.0017200071225333769" },
        { 39.9, null, "Na+ 0.037112285958038504, Fe+3 0.00019944330161064192, Mn+2 0.0033373905904624168, Zn+2 0.027356297916521468, Cl- 0.004124592996703935, NO3- 0.05983292782703663, SO4-2 0.004233437764871373, B(OH)3 0.016571673954457966, MoO4-2 2.1518758145956265E-05, Acetate- 0.0012633464825908736" },
    };

    [Theory]
    [MemberData(nameof(OnceLost))]
    public void StocksOnceLostAreFound(double celsius, double? ph, string totals)
    {
        var input = Solution(celsius, ph, totals);
        Hold(input, Solver.Precipitate(input, WithSalts), WithSalts, totals);
        Hold(input, Solver.Precipitate(input, Readily), Readily, totals);
    }

    private static SolutionInput Solution(double celsius, double? ph, string totals) => new()
    {
        Totals = new ComponentTotals(totals.Split(", ").Select(t => t.Split(' '))
            .Select(t => KeyValuePair.Create(t[0], double.Parse(t[1], System.Globalization.CultureInfo.InvariantCulture)))),
        Celsius = celsius,
        FixedPh = ph,
    };

    /// <summary>
    /// A chelate loses its iron to a solid beside molybdate: the first step made a polymer of seven molybdates and nine protons a hundred
    /// times what there is of it, and the iteration, lost there, was led home by small moves of the solid's constant: 35 and 39 steps.
    /// </summary>
    [Theory]
    [InlineData(8.369824706283316, "Na+ 0.0006407927398480442, K+ 0.0060136831414949535, Fe+3 0.00043887287654861476, Mn+2 0.0003769359899111725, Cu+2 0.00047795061610078, SO4-2 0.0008548866060119524, H2PO4- 0.0060136831414949535, CO3-2 0.001, MoO4-2 0.00010095993164971468, EDTA-4 0.00043887287654861476")]
    [InlineData(18.859666538825103, "Na+ 0.07497798198297526, Fe+3 0.03988778204069835, Cu+2 0.022331037470060884, Ni+2 0.020772215985121308, SO4-2 0.04310325345518219, CO3-2 0.001, MoO4-2 0.017545099971138452, EDTA-4 0.03988778204069835")]
    public void NoStepOverfillsAPolymer(double celsius, string totals)
    {
        var input = Solution(celsius, null, totals);
        var result = Solver.Precipitate(input, WithSalts);
        Hold(input, result, WithSalts, totals);
        Assert.True(result.Final.Iterations <= 20, $"{result.Final.Iterations} steps");
    }

    /// <summary>
    /// Most has set, and less than a quarter of the water is left as brine between the crystals: no solution, but what is left was found and
    /// is said. It was 'nearly all the water' of each of them.
    /// </summary>
    [Theory]
    [InlineData(23.52342447895716, "all but 8 % of the water", "Mg+2 7.223478201764393, Fe+2 0.3357150025878638, SO4-2 7.5591932043522565, CO3-2 0.001")]
    [InlineData(24.377653861594226, "all but 21 % of the water", "NH4+ 1.5977261747222982, Mg+2 6.965121192957797, Fe+2 0.5777553492913746, NO3- 1.5977261747222982, SO4-2 7.5428765422491715, CO3-2 0.001, Citrate-3 0.2374800176487677")]
    [InlineData(35.1807233296245, "nearly all the water", "Mg+2 8.07205209744724, SO4-2 8.07205209744724, CO3-2 0.001")]
    public void WhatSetsToCrystalsSaysHowMuchWaterIsLeft(double celsius, string says, string totals)
    {
        var result = Solver.Precipitate(Solution(celsius, null, totals), WithSalts);
        Assert.False(result.Converged);
        Assert.Contains(says, result.Failure, StringComparison.Ordinal);
        Assert.EndsWith(".", result.Failure, StringComparison.Ordinal);
    }

    /// <summary>Nine in ten thousand were lost before balances beside solids had a straight line through zero; now none of 300,000.</summary>
    [Fact]
    public void SolidsOfRealisticStocksAreFound()
    {
        int all = 0, failed = 0, deposits = 0, most = 0;
        var examples = new List<string>();
        RandomSolutions.ForEach(RealisticStocks.Any, RandomSolutions.Count(3_000), stock =>
        {
            var (kind, input) = stock;
            var allowed = all % 3 == 0 ? WithSalts : Readily;
            var result = Solver.Precipitate(input, allowed);
            Assert.True(result.Initial.Converged, kind + " " + RandomSolutions.Describe(input));
            if (result.Initial.IonicStrength > 6) return;
            all++;
            if (!result.Converged)
            {
                Assert.NotNull(result.Failure);
                failed++;
                examples.Add(kind + " " + RandomSolutions.Describe(input));
                return;
            }
            deposits += result.Deposits.Count;
            most = Math.Max(most, result.Deposits.Count);
            Hold(input, result, allowed, kind + " " + RandomSolutions.Describe(input));
        });
        output.WriteLine($"{all} stocks, {failed} not found, {deposits} deposits, at most {most} together");
        foreach (var e in examples.Take(12)) output.WriteLine(e);
        Assert.True(failed <= 1e-4 * all, $"{failed} of {all} sets of solids were not found");
        Assert.True(deposits > all);
    }

    /// <summary>Equilibrium, phase rule, conservation of every component, and no influence of the order the solids are named in.</summary>
    private static void Hold(SolutionInput input, PrecipitationResult result, List<Solid> allowed, string where)
    {
        Assert.True(result.Converged, result.Failure + " " + where);
        Assert.True(result.Final.MassResidual < 1e-9, $"mass {result.Final.MassResidual} {where}");
        Assert.True(result.Deposits.Count <= input.Totals.Present.Count() + 1, where);
        var left = LeftOver.Indices(input, result);
        foreach (var s in result.Final.Solids)
            if (allowed.Contains(s.Solid)) Assert.True(left[s.Solid.Name] < 1e-7, $"{s.Solid.Name} {left[s.Solid.Name]} {where}");
        foreach (var d in result.Deposits)
        {
            Assert.True(d.MolPerKgInitialWater > 0, where);
            Assert.True(Math.Abs(left[d.Solid.Name]) < 1e-7, $"{d.Solid.Name} {where}");
        }
        foreach (var (name, total) in input.Totals.Present)
        {
            if (name == "CO3-2" && input.CarbonDioxideAtm is not null) continue;
            var bound = result.Deposits.Sum(d => d.MolPerKgInitialWater * d.Solid.Composition.Where(c => c.Key == name).Sum(c => c.Value));
            Assert.True(Math.Abs(result.Remaining[name] * result.FinalWaterKg + bound - total) < 1e-9 * total, $"{name} {where}");
        }
        var reversed = Solver.Precipitate(input, Enumerable.Reverse(allowed));
        Assert.Equal(result.Deposits.Select(d => d.Solid.Name), reversed.Deposits.Select(d => d.Solid.Name));
        Assert.Equal(result.Final.Ph, reversed.Final.Ph);
    }
}
