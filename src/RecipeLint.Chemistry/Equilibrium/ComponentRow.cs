namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>What a component does in a stock; one may have several.</summary>
[Flags]
public enum ComponentRoles
{
    None = 0,

    /// <summary>A metal that chelates hold.</summary>
    Metal = 1,

    /// <summary>A metal that is fed in traces.</summary>
    TraceMetal = 2,

    /// <summary>Holds metals strongly.</summary>
    Chelator = 4,

    /// <summary>Holds metals weakly.</summary>
    Ligand = 8,

    /// <summary>Its undissociated acid keeps microbes down.</summary>
    Preservative = 16,

    /// <summary>Microbes live on it.</summary>
    Food = 32,
}

/// <summary>What is known of a component: one row of Data/thermo/components.json.</summary>
/// <param name="Name">The name facts and constants use ("Ca+2"); a constant of <see cref="Component"/>.</param>
/// <param name="Word">What people call it ("calcium").</param>
/// <param name="Charge">In elementary charges, as written.</param>
/// <param name="FeedCharge">Charge of the form that prevails near pH 5.8: -1 for carbonate, -2 for EDTA.</param>
/// <param name="Formula">Its atoms without the charge.</param>
/// <param name="MolarMassGramsPerMole">g/mol.</param>
/// <param name="Rank">Of two metals the lower takes the chelator, of two holders the lower takes the metal; null for what is
/// neither.</param>
/// <param name="Nitrogen">The form in which a label counts its nitrogen (nitrate, ammonium, organic); null when it holds none.</param>
public sealed record ComponentRow(
    string Name, string Word, ComponentRoles Roles, int Charge, int FeedCharge, string Formula, double MolarMassGramsPerMole, int? Rank,
    string? Nitrogen)
{
    /// <summary>Whether it has one of the roles.</summary>
    public bool Is(ComponentRoles roles) => (Roles & roles) != 0;
}
