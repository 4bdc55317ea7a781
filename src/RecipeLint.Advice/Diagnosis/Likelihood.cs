using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>
/// How probable it is that people tell a sign of a bottle with a given cause. The figures are judgement, no source: "often" stands for a
/// good half of all descriptions, "sometimes" for a quarter, a sign of like name for less, anything else for the slips that people make.
/// </summary>
internal static class Likelihood
{
    /// <summary>
    /// Chance that a sign is told where the data call it frequent, occasional, akin to a frequent or occasional one, not listed, or
    /// excluded.
    /// </summary>
    private readonly record struct Row(double Often, double Sometimes, double KinOften, double KinSometimes, double Other, double Never);

    private static readonly Row Plain = new(0.55, 0.25, 0.22, 0.12, 0.05, 0.01);

    /// <summary>People are less sure of when and where than of what.</summary>
    private static readonly Row Loose = new(0.5, 0.28, 0.22, 0.16, 0.09, 0.025);

    /// <summary>A smell that everybody knows is hardly ever told of what has none: salts smell of nothing.</summary>
    private static readonly Row Strong = new(0.55, 0.25, 0.22, 0.12, 0.003, 0.002);

    /// <summary>
    /// Chance that a bench test comes out positive where the data say yes, partly, no, or nothing. Where nothing lies there nothing
    /// dissolves, fizzes or melts.
    /// </summary>
    private const double TestYes = 0.92, TestPartly = 0.5, TestNo = 0.06, TestUnknown = 0.3;

    /// <summary>Chance that "a deposit" fits a cause that is one, and one that is not.</summary>
    private const double DepositSeen = 0.85, DepositElse = 0.2;

    /// <summary>What someone says who looks for a sign and does not find it: less telling than finding it.</summary>
    private const double AbsenceMatters = 0.8;

    /// <summary>Chance that this sign is told, or told to be absent, of a bottle with this cause.</summary>
    public static double Of(Cause cause, Seen seen)
    {
        if (seen.Sign.Kind == SignKind.Test)
        {
            var yes = cause.Tests.TryGetValue(seen.Sign.Id, out var behaviour)
                ? behaviour switch { Behaviour.Yes => TestYes, Behaviour.Partly => TestPartly, _ => TestNo }
                : cause.IsDeposit || seen.Sign.Id is "shake-dissolves" ? TestUnknown : TestNo;
            return seen.Present ? yes : 1 - yes;
        }

        if (seen.Sign.Id == "deposit")
        {
            var there = cause.IsDeposit ? DepositSeen : DepositElse;
            return seen.Present ? there : 1 - there;
        }

        var row = seen.Sign.Id is "smell-ammonia" or "smell-chlorine" or "smell-rotten-eggs" or "smell-yeasty" ? Strong
            : seen.Sign.Kind is SignKind.Time or SignKind.Place or SignKind.Feel ? Loose : Plain;
        var told = Told(cause, seen.Sign, row);
        return seen.Present ? told : 1 - (AbsenceMatters * told);
    }

    /// <summary>True where a sign, once told, is one that this cause shows: listed for it, or akin to one that is.</summary>
    public static bool IsOwn(Cause cause, Sign sign) => sign.Kind == SignKind.Test
        ? cause.Tests.TryGetValue(sign.Id, out var behaviour) && behaviour != Behaviour.No
        : sign.Id == "deposit"
        ? cause.IsDeposit
        : !cause.Never.Contains(sign.Id)
            && sign.Kin.Prepend(sign.Id).Any(s => cause.Often.Contains(s) || cause.Sometimes.Contains(s));

    private static double Told(Cause cause, Sign sign, Row row)
    {
        if (cause.Often.Contains(sign.Id))
        {
            return row.Often;
        }

        if (cause.Sometimes.Contains(sign.Id))
        {
            return row.Sometimes;
        }

        if (cause.Never.Contains(sign.Id))
        {
            return row.Never;
        }

        return sign.Kin.Any(cause.Often.Contains) ? row.KinOften
            : sign.Kin.Any(cause.Sometimes.Contains) ? row.KinSometimes
            : row.Other;
    }
}
