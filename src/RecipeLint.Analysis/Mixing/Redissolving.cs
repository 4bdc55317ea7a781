using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Analysis.Mixing;

/// <summary>
/// How a solid that formed on the way behaves once the solution could take it up again, as its row of the constants says.
/// </summary>
/// <param name="Slowly">True when it outlasts the mixing: it counts as permanent once formed.</param>
/// <param name="Because">Why.</param>
/// <param name="StartsAt">Saturation index from which it forms within the minutes of mixing; infinite when it takes longer.</param>
public sealed record Redissolving(bool Slowly, string Because, double StartsAt)
{
    /// <summary>Twice saturation (common practice, no source), for a solid whose row says nothing: one that forms over weeks.</summary>
    private const double UsualStart = 0.3;

    /// <summary>A solid without an entry counts as slow.</summary>
    public static Redissolving Of(Solid solid) => solid.Redissolves is { } known
        ? new Redissolving(known.Slowly, known.Because, solid.StartsWhileMixing ?? UsualStart)
        : new Redissolving(true, "How fast it dissolves again is not known.", UsualStart);
}
