namespace RecipeLint.Recipes.Quantities;

/// <summary>What "ppm" means where it stands.</summary>
public enum PpmMeaning
{
    /// <summary>mg/L or mg/kg, of the salt or of the element: not decided for the writer.</summary>
    Ambiguous,

    /// <summary>mg/L, in thin solutions.</summary>
    MilligramsPerLitre,

    /// <summary>mg/kg, in solids.</summary>
    MilligramsPerKilogram,

    /// <summary>A conductivity meter's scale of 500 or 700 per mS/cm.</summary>
    ConductivityScale,
}

/// <summary>What kind of quantity is due at a place, so that a wrong one can be named.</summary>
/// <param name="Accepts">Dimensions in the order they are offered in messages.</param>
/// <param name="Examples">Texts that would do, the plainest first.</param>
public sealed record Due(IReadOnlyList<Dimension> Accepts, IReadOnlyList<string> Examples)
{
    /// <summary>What is weighed or poured; a density or a conductivity is never in the thousands.</summary>
    internal bool IsAmount => Accepts.Contains(Dimension.Mass) || Accepts.Contains(Dimension.Volume);

    public PpmMeaning Ppm { get; init; }

    /// <summary>"99 %" without a basis is by mass here.</summary>
    public bool PlainPercentIsByMass { get; init; }

    public bool AllowRange { get; init; }

    public bool AllowTolerance { get; init; }

    /// <summary>What may stand after "as".</summary>
    public IReadOnlyList<string> Bases { get; init; } = [];

    /// <summary>A word that has to stand in front ("pH").</summary>
    public string? Prefix { get; init; }

    /// <summary>Units to offer when none was written; the first one is the usual one.</summary>
    public IReadOnlyList<string> UsualUnits { get; init; } = [];

    public static Due Mass { get; } = new([Dimension.Mass], ["24 g", "350 mg"]) { UsualUnits = ["g", "mg", "kg"] };

    public static Due Volume { get; } = new([Dimension.Volume], ["1.4 L", "250 mL"]) { UsualUnits = ["L", "mL"] };

    /// <summary>How much of something goes in, in whatever way it is measured.</summary>
    public static Due Portion { get; } =
        new(
            [
                Dimension.Mass, Dimension.Volume, Dimension.Amount, Dimension.Drops,
                Dimension.MassConcentration, Dimension.AmountConcentration, Dimension.Dose,
            ],
            ["24 g", "90 mL", "1.2 g/L"])
        {
            AllowTolerance = true,
            UsualUnits = ["g", "mL", "mg"],
        };

    public static Due Dose { get; } = new([Dimension.Dose], ["1 mL/L", "1:100"]) { UsualUnits = ["mL/L"] };

    public static Due Temperatures { get; } = new([Dimension.Temperature], ["4..30 °C", "20 °C"])
    {
        AllowRange = true,
        UsualUnits = ["°C", "°F"],
    };

    public static Due Duration { get; } = new([Dimension.Duration], ["6 months", "14 days"]) { UsualUnits = ["months", "weeks", "days"] };

    /// <summary>How pure: by mass.</summary>
    public static Due Assay { get; } = new([Dimension.MassFraction], ["99 %"]) { PlainPercentIsByMass = true, UsualUnits = ["%"] };

    /// <summary>How strong a solution is.</summary>
    public static Due Strength { get; } =
        new([Dimension.MassFraction, Dimension.MassConcentration, Dimension.AmountConcentration], ["38 % w/w", "10 % w/v", "1 mol/L"])
        {
            UsualUnits = ["% w/w", "% w/v", "mol/L"],
        };

    /// <summary>A share by mass in a product: per cent, or mg/kg for traces.</summary>
    public static Due Content { get; } = new([Dimension.MassFraction], ["14.5 %", "5 mg/kg"])
    {
        PlainPercentIsByMass = true,
        Ppm = PpmMeaning.MilligramsPerKilogram,
        UsualUnits = ["%", "mg/kg"],
    };

    /// <summary>A figure of a label: by mass, or of a liquid by volume.</summary>
    public static Due LabelContent { get; } = Content with
    {
        Accepts = [Dimension.MassFraction, Dimension.MassConcentration],
        Examples = ["14.5 %", "8 % w/v"],
        UsualUnits = ["%", "% w/v", "mg/kg"],
    };

    public static Due Density { get; } = new([Dimension.Density], ["1.23 g/mL", "1.23 kg/L"]) { UsualUnits = ["g/mL"] };

    public static Due MolarMass { get; } = new([Dimension.MolarMass], ["236.15 g/mol"]) { UsualUnits = ["g/mol"] };

    public static Due Conductivity { get; } = new([Dimension.Conductivity], ["0.55 mS/cm", "550 µS/cm"])
    {
        Ppm = PpmMeaning.ConductivityScale,
        AllowRange = true,
        AllowTolerance = true,
        UsualUnits = ["mS/cm", "µS/cm"],
    };

    public static Due Ph { get; } = new([Dimension.Number], ["5.8", "5.8 ± 0.2", "7.2..7.8"]) { AllowRange = true, AllowTolerance = true };

    /// <summary>"pH 3.0 ± 0.2".</summary>
    public static Due PhStep { get; } = new([Dimension.Number], ["pH 3.0", "pH 3.0 ± 0.2"]) { AllowTolerance = true, Prefix = "pH" };

    /// <summary>A value of a water analysis.</summary>
    public static Due Analyte { get; } =
        new([Dimension.MassConcentration, Dimension.AmountConcentration, Dimension.ChargeConcentration], ["82 mg/L", "2 mmol/L", "3 meq/L"])
        {
            Ppm = PpmMeaning.MilligramsPerLitre,
            AllowRange = true,
            UsualUnits = ["mg/L", "mmol/L", "meq/L"],
        };

    /// <summary>Hardness or alkalinity of a water.</summary>
    public static Due Hardness { get; } =
        new(
            [Dimension.MassConcentration, Dimension.ChargeConcentration, Dimension.AmountConcentration, Dimension.HardnessDegree],
            ["180 mg/L as CaCO3", "3.6 meq/L", "10 °dH"])
        {
            Ppm = PpmMeaning.MilligramsPerLitre,
            AllowRange = true,
            UsualUnits = ["mg/L as CaCO3", "meq/L", "°dH"],
        };
}
