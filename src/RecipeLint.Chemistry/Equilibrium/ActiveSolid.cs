namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>A solid that is, or may come to be, in equilibrium with the solution, with its amount in mol per kg of initial water.</summary>
internal sealed class ActiveSolid
{
    /// <summary>Its place in the constant set.</summary>
    public required int Index { get; init; }

    /// <summary>Components it is made of and with what numbers; H+ is among them, water is not.</summary>
    public required int[] Term { get; init; }
    public required double[] Coefficient { get; init; }

    public required double Water { get; init; }
    public required double Proton { get; init; }
    public required double LnK { get; init; }

    /// <summary>
    /// ln of the product of total molalities in the saturated solution of the pure salt, by the handbook; null for what is measured by its
    /// activity product alone.
    /// </summary>
    public double? LnPure { get; init; }

    /// <summary>Shares of its components that still have their protons, where they can lose any, for the product of totals.</summary>
    public ProtonShare[] Protonated { get; init; } = [];

    /// <summary>What else is dissolved that holds more of it, by the numbers of this solution.</summary>
    public SaltsInCompany.Pair[] HeldBy { get; init; } = [];

    public double Amount { get; set; }
    public double Saved { get; set; }

    /// <summary>Shift of ln K while the solver approaches a hard case; 0 in any result.</summary>
    public double Offset { get; set; }
}
