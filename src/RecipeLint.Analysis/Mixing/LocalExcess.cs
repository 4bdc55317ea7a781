using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Solutions;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Mixing;

/// <summary>A solid that forms where what is poured meets what stands in the vessel, although the stirred vessel is clear of it.</summary>
/// <param name="Solid">What forms.</param>
/// <param name="ShareOfPoured">Part of what is poured in the local mixture with the worst of it, by water, 0 to 1.</param>
/// <param name="Index">Saturation index there.</param>
/// <param name="Ph">pH there.</param>
/// <param name="Concentration">g of solid per litre of the local mixture.</param>
/// <param name="AtATime">
/// How much there is of it at any moment, when <see cref="LocalExcessLine.PlumeShare"/> of the addition is not yet stirred in: a scale to
/// compare orders by, not a forecast.
/// </param>
public sealed record LocalExcess(Solid Solid, double ShareOfPoured, double Index, double Ph, MassConcentration Concentration, Mass AtATime);

/// <summary>
/// The mixing line: every proportion between the vessel and what is poured into it is present somewhere until it is stirred in. A salt
/// meets the vessel as its own saturated solution.
/// </summary>
internal static class LocalExcessLine
{
    /// <summary>
    /// Part of an addition that is not yet stirred in at any moment (common practice, no source: added over a minute, mixed in some
    /// seconds).
    /// </summary>
    public const double PlumeShare = 0.05;

    /// <summary>The richest local mixture looked at, by water; nearer to what is poured the model of activities ends.</summary>
    private const double RichestShare = 0.6;

    /// <summary>Points between the stirred vessel and the richest mixture, evenly on a logarithmic scale.</summary>
    private const int Points = 4;

    /// <summary>g of water to 100 g of a salt whose solubility is not known (common practice, no source).</summary>
    private const double WaterTo100GramsUnknown = 200;

    /// <summary>Solids of the mixing line that the stirred vessel does not hold; the most at a time first.</summary>
    /// <param name="before">The vessel before.</param>
    /// <param name="after">The vessel after.</param>
    /// <param name="bulk">State of the vessel after.</param>
    /// <returns>And the Newton steps that it took to know.</returns>
    public static (IReadOnlyList<LocalExcess> Solids, int Effort) Of(
        VesselContents before, VesselContents after, ComponentMoles locked, MixingState bulk, double celsius)
    {
        var (standing, standingWater) = VesselSettling.Dissolved(before, locked);
        if (standingWater <= 0 || bulk.Failure is not null || Stream(before, after, celsius) is not { } stream)
        {
            return ([], 0);
        }

        var effort = 0;
        var worst = new Dictionary<string, LocalExcess>(StringComparer.Ordinal);
        foreach (var share in Shares(stream.WaterGrams / (standingWater + stream.WaterGrams)))
        {
            // Per kg of water of the local mixture.
            var moles = ComponentMoles.Sum(
                [standing.Times((1 - share) * 1000 / standingWater), stream.Moles.Times(share * 1000 / stream.WaterGrams)]);
            var mix = SolutionMix.InWater(moles, new Mass(1000));
            if (mix.Failure is not null)
            {
                continue;
            }

            var state =
                StateSolver.Solve(mix, new StateRequest(StateMoment.Mixing, bulk.At, false, []) { Narrow = s => MayForm(s, after, bulk) });
            effort += state.Effort;
            if (!state.IsSolved || state.IsBeyondTheModel)
            {
                continue;
            }

            foreach (var deposit in state.Deposits.Where(d => !d.ByHandbook))
            {
                var grams = deposit.Mass.GramsPerLitre / mix.KilogramsWaterPerLitre;
                var excess = new LocalExcess(
                    deposit.Solid,
                    share,
                    deposit.Index,
                    state.PhBeforeDeposit,
                    deposit.Mass,
                    new Mass(grams * PlumeShare * stream.WaterGrams / 1000 / share));
                if (!worst.TryGetValue(deposit.Solid.Name, out var known) || excess.AtATime > known.AtATime)
                {
                    worst[deposit.Solid.Name] = excess;
                }
            }
        }

        return ([.. worst.Values.OrderByDescending(e => e.AtATime).ThenBy(e => e.Solid.Name, StringComparer.Ordinal)], effort);
    }

    /// <summary>What forms within minutes, is not in the stirred vessel already, and is no salt that was put in and dissolves.</summary>
    private static bool MayForm(SolidIndex s, VesselContents after, MixingState bulk) =>
        s.Solid.Role == SolidRole.FormsReadily && s.Index > Redissolving.Of(s.Solid).StartsAt && bulk.Find(s.Solid.Name) is null
        && VesselSettling.SaltOf(after, s.Solid) is null;

    /// <summary>Parts of what is poured in the local mixture, by water, above that of the stirred vessel.</summary>
    private static IEnumerable<double> Shares(double stirred) => stirred >= RichestShare
        ? []
        : Enumerable.Range(1, Points).Select(i => stirred * Math.Pow(RichestShare / stirred, (double)i / Points));

    /// <summary>What is poured, as the solution it meets the vessel as; null when nothing that dissolves is poured.</summary>
    private static (ComponentMoles Moles, double WaterGrams)? Stream(
        VesselContents before, VesselContents after, double celsius)
    {
        var moles = ComponentMoles.Sum([after.Moles, before.Moles.Times(-1)]);
        moles = ComponentMoles.Of(moles.Where(m => Math.Abs(m.Value) > 1e-15));
        var water = after.Solvent.Grams - before.Solvent.Grams;
        foreach (var salt in after.Additions
            .Skip(before.Additions.Count)
            .Where(a => a.Substance.Form == PhysicalForm.Solid && !a.ThroughAliquot))
        {
            water += HandbookSolubility.GramsPer100GramsWater(salt.Substance, celsius) is > 0 and var solubility
                ? VesselContents.PureGrams(salt) / solubility * 100
                : salt.Mass.Grams * WaterTo100GramsUnknown / 100;
        }

        return moles.Any(m => m.Key != Component.Hydrogen) && water > 0 ? (moles, water) : null;
    }
}
