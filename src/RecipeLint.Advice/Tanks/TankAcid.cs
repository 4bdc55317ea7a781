using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis.Judgement;

namespace RecipeLint.Advice.Tanks;

/// <summary>What acid does to a deposit of the tank or the source water, tried before it is advised.</summary>
/// <param name="ClearPh">The highest pH from 4 up at which it stays dissolved; null where none is found.</param>
/// <param name="Harm">What acid harms there; null for nothing.</param>
public sealed record TankAcid(double? ClearPh, AcidHarm? Harm)
{
    /// <summary>True where a lower pH keeps it dissolved and harms nothing else.</summary>
    public bool Helps => ClearPh is not null && Harm is null;

    /// <summary>Null where nothing falls out, and of what concentrates or dries, whose pH nobody sets.</summary>
    internal static TankAcid? Of(TankChemistry chemistry, RankedCause cause, TankMoment? moment)
    {
        if (moment is null or TankMoment.Meeting or TankMoment.Drying
            || cause.Solid is not { Standing: Standing.Forms, State: { } state, Solid: { } solid }
            || DepositJudgement.Of(state, DepositLimits.Default).Deposits.FirstOrDefault(d => d.Solid == solid) is not { } deposit)
        {
            return null;
        }

        var clear = TankJudgement.NearestPh(deposit);
        return new TankAcid(
            clear, clear is { } ph && moment is not (TankMoment.Water or TankMoment.Warm) ? AcidTrial.To(chemistry.Recipe, ph) : null);
    }
}
