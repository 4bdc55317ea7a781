namespace RecipeLint.Analysis.Solutions;

/// <summary>Hydrogen peroxide among what a solution holds.</summary>
public static class HydrogenPeroxide
{
    /// <summary>Its name in the composition of substances.</summary>
    public const string Component = "inert:H2O2";

    /// <summary>g/mol, from CIAAW weights.</summary>
    public const double GramsPerMole = 34.014;
}
