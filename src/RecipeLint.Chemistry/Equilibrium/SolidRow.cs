namespace RecipeLint.Chemistry.Equilibrium;

/// <summary>What is known of a solid beside its constant: one row of Data/thermo/solids.json. Null where the data say nothing.</summary>
internal sealed record SolidRow(
    string? Called,
    string? Owner,
    double Spread,
    string? SpreadBecause,
    double StartsInStorage,
    string? StartsInStorageSource,
    double? StartsWhileMixing,
    string? StartsWhileMixingSource,
    bool? RedissolvesSlowly,
    string? RedissolvesBecause,
    string? RedissolvesSource,
    string? Look,
    bool TemperatureKnown);

/// <summary>How a solid that formed behaves once the solution could take it up again.</summary>
/// <param name="Slowly">True when it outlasts the mixing: it counts as permanent once formed.</param>
/// <param name="Because">Why.</param>
/// <param name="Source">Where that comes from.</param>
public sealed record Redissolution(bool Slowly, string Because, string Source);
