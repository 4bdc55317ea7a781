using RecipeLint.Analysis.Uncertainty;

namespace RecipeLint.Analysis.Tests.Uncertainty;

/// <summary>The kernel against worked examples, to the digits they print.</summary>
public sealed class PublishedExamplesTests
{
    private static readonly ErrorSource One = new("1", "one");

    // EURACHEM/CITAC Guide CG 4, QUAM:2012, example A1, preparation of a calibration standard (measurementuncertainty.org/guide/app_a_example1.html;
    // the unrounded u(V) from the budget file of the same example at metrodata.de).
    [Fact]
    public void QuamA1CadmiumStandard()
    {
        var purity = Uncertain.Measured(0.9999, (new("P", "purity"), StandardUncertainty.Rectangular(0.0001)));
        var mass = Uncertain.Measured(100.28, (new("m", "mass"), 0.05));
        var volume = Uncertain.Measured(
            100.0,
            (new("cal", "calibration"), StandardUncertainty.Triangular(0.1)),
            (new("rep", "filling"), 0.02),
            (new("T", "temperature"), StandardUncertainty.Rectangular(100 * 2.1e-4 * 4)));
        Assert.Equal(0.000058, purity.Standard, 6);
        Assert.Equal(0.0664730521840743, volume.Standard, 15);
        Assert.Equal(0.07, volume.Standard, 2);

        // The guide goes on with the standard uncertainties of its table A1.3, as rounded there; unrounded they give 0.84 mg/L.
        var c = 1000 * Uncertain.Measured(100.28, (new("m", "mass"), 0.05)) * Uncertain.Measured(0.9999, (new("P", "purity"), 0.000058))
            / Uncertain.Measured(100.0, (new("V", "volume"), 0.07));
        Assert.Equal(1002.7, c.Value, 1);
        Assert.Equal(0.9, c.Standard, 1);
        Assert.Equal(0.0009, c.RelativeStandard!.Value, 4);
        Assert.Equal(1.8, 2 * Math.Round(c.Standard, 1), 12);
        Assert.Equal(["V", "m", "P"], c.Shares.Select(s => s.Source.Id));
        Assert.Equal(0.84, (1000 * mass * purity / volume).Standard, 2);
    }

    // EURACHEM/CITAC Guide CG 4, QUAM:2012, example A2, standardising sodium hydroxide with potassium hydrogen phthalate
    // (measurementuncertainty.org/guide/app_a_example2.html; the same table in D. Harvey, Analytical Chemistry 2.0).
    [Fact]
    public void QuamA2SodiumHydroxide()
    {
        // The guide rounds the linearity to 0.09 mg before it counts it twice, for tare and gross.
        var linearity = Math.Round(StandardUncertainty.Rectangular(0.15), 2);
        Assert.Equal(0.09, linearity);
        Assert.Equal(0.13, Uncertain.Measured(388.8, (new("tare", ""), linearity), (new("gross", ""), linearity)).Standard, 2);

        var repeatability = Uncertain.Measured(1, (new("rep", "repeatability"), 0.0005));
        var mass = Uncertain.Measured(0.3888, (new("m", "mass"), 0.00013));
        var purity = Uncertain.Measured(1.0, (new("P", "purity"), 0.00029));
        var molarMass = Uncertain.Measured(204.2212, (new("M", "molar mass"), 0.0038));
        var volume = Uncertain.Measured(18.64, (new("V", "volume"), 0.013));
        Assert.Equal(0.00029, StandardUncertainty.Rectangular(0.0005), 5);

        var concentration = 1000 * repeatability * mass * purity / (molarMass * volume);
        Assert.Equal(0.10214, concentration.Value, 5);
        Assert.Equal(0.00010, concentration.Standard, 5);
        Assert.Equal(0.00097, concentration.RelativeStandard!.Value, 5);
        Assert.Equal(0.0002, concentration.Expanded(), 4);
        Assert.Equal("V", concentration.Shares[0].Source.Id);
    }

    // JCGM 100:2008, 5.2.2, example: ten resistors of 1000 ohm, each calibrated against one standard resistor with u = 100 mohm, in series:
    // u = 1 ohm; taken as independent it would be the wrong 0.32 ohm. (Recalled.)
    [Fact]
    public void Gum522TenResistorsFromOneStandard()
    {
        var shared = Uncertain.Sum(Enumerable.Range(0, 10).Select(_ => Uncertain.Measured(1000, (One, 0.1))));
        Assert.Equal(10_000, shared.Value);
        Assert.Equal(1.0, shared.Standard, 12);

        var independent = Uncertain.Sum(Enumerable.Range(0, 10).Select(i => Uncertain.Measured(1000, (new($"{i}", ""), 0.1))));
        Assert.Equal(0.32, independent.Standard, 2);
    }

    // JCGM 100:2008, H.1, end-gauge calibration: l = ls + d - ls (dalpha theta + alphas dtheta). Standard uncertainties of table H.1 and the printed
    // components 25, 9.7, 2.9 and 16.6 nm, u_c = 32 nm. (Recalled.)
    [Fact]
    public void GumH1EndGauge()
    {
        const double Nanometre = 1e-6; // in mm
        var standard = Uncertain.Measured(50.000623, (new("ls", ""), 25 * Nanometre));
        var difference = Uncertain.Measured(215 * Nanometre, (new("d", ""), 9.7 * Nanometre));
        var expansion = Uncertain.Measured(11.5e-6, (new("alphas", ""), StandardUncertainty.Rectangular(2e-6)));
        var temperature = Uncertain.Measured(-0.1, (new("theta", ""), 0.41));
        var expansionDifference = Uncertain.Measured(0, (new("dalpha", ""), StandardUncertainty.Rectangular(1e-6)));
        var temperatureDifference = Uncertain.Measured(0, (new("dtheta", ""), StandardUncertainty.Rectangular(0.05)));
        var length = standard + difference - (standard * ((expansionDifference * temperature) + (expansion * temperatureDifference)));

        Assert.Equal(50.000838, length.Value, 6);
        Assert.Equal(32, length.Standard / Nanometre, 0);
        var shares = length.Shares.ToDictionary(s => s.Source.Id, s => Math.Sqrt(s.Fraction) * length.Standard / Nanometre);
        Assert.Equal(25, shares["ls"], 1);
        Assert.Equal(16.6, shares["dtheta"], 1);
        Assert.Equal(9.7, shares["d"], 1);
        Assert.Equal(2.9, shares["dalpha"], 1);
        Assert.Equal(["ls", "dtheta", "d", "dalpha"], length.Shares.Select(s => s.Source.Id));
    }

    // JCGM 100:2008, H.2, resistance and reactance from five simultaneous readings (tables H.2 to H.4; recalled). Each set of readings is one error
    // source that voltage, current and phase share: (x_k - mean) / sqrt(n (n - 1)) gives back the means' variances and covariances exactly.
    [Fact]
    public void GumH2ResistanceAndReactance()
    {
        double[] volts = [5.007, 4.994, 5.005, 4.990, 4.999];
        double[] amperes = [19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3];
        double[] radians = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
        var (voltage, current, phase) = (Mean(volts), Mean(amperes), Mean(radians));
        Assert.Equal(4.9990, voltage.Value, 4);
        Assert.Equal(0.0032, voltage.Standard, 4);
        Assert.Equal(19.6610e-3, current.Value, 7);
        Assert.Equal(0.0095e-3, current.Standard, 7);
        Assert.Equal(1.04446, phase.Value, 5);
        Assert.Equal(0.00075, phase.Standard, 5);
        Assert.Equal(-0.36, voltage.Correlation(current)!.Value, 2);
        Assert.Equal(0.86, voltage.Correlation(phase)!.Value, 2);
        Assert.Equal(-0.65, current.Correlation(phase)!.Value, 2);

        var impedance = voltage / current;
        var resistance = impedance * Uncertain.Combine(Math.Cos(phase.Value), (phase, -Math.Sin(phase.Value)));
        var reactance = impedance * Uncertain.Combine(Math.Sin(phase.Value), (phase, Math.Cos(phase.Value)));
        Assert.Equal((127.732, 0.071), Rounded(resistance));
        Assert.Equal((219.847, 0.296), Rounded(reactance)); // the annex prints 0.295; 0.2956 before rounding
        Assert.Equal((254.260, 0.236), Rounded(impedance));
        Assert.Equal(-0.588, resistance.Correlation(reactance)!.Value, 3);
        Assert.Equal(-0.485, resistance.Correlation(impedance)!.Value, 3);
        Assert.Equal(0.993, reactance.Correlation(impedance)!.Value, 3);

        // The annex's second approach, the three results of each set averaged, prints the same figures; there the 0.295 is exact.
        var sets = volts.Zip(amperes, radians).Select(k => (Z: k.First / k.Second, Phase: k.Third)).ToList();
        Assert.Equal((127.732, 0.071), Rounded(Mean([.. sets.Select(k => k.Z * Math.Cos(k.Phase))])));
        Assert.Equal((219.847, 0.295), Rounded(Mean([.. sets.Select(k => k.Z * Math.Sin(k.Phase))])));
        Assert.Equal((254.260, 0.236), Rounded(Mean([.. sets.Select(k => k.Z)])));
    }

    private static Uncertain Mean(double[] readings)
    {
        var mean = readings.Average();
        var scale = Math.Sqrt(readings.Length * (readings.Length - 1));
        return Uncertain.Measured(mean, readings.Select((x, k) => (new ErrorSource($"set {k}", ""), (x - mean) / scale)));
    }

    private static (double Value, double Standard) Rounded(Uncertain value) => (Math.Round(value.Value, 3), Math.Round(value.Standard, 3));
}
