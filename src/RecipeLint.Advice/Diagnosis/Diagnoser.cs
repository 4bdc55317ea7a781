using RecipeLint.Analysis;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Equilibrium;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>
/// Why a bottle looks as it does: what the chemistry of this stock says of each cause, ranked by <see cref="CauseRanking"/> together with
/// what was seen. The weights are judgement, no source; the chemistry is the engine's.
/// </summary>
public static class Diagnoser
{
    /// <summary>g/L that nobody overlooks; less may stay supersaturated for long.</summary>
    private const double SurelyVisible = 1;

    internal const double MissingNeed = -3, HasNeeds = 0.7, HasTrait = 1.1, HasTraitSlightly = 0.4, AllTraitsMissing = -1.2,
        BroughtByWater = 1, ProvedByFizz = 2, GelOfSilicate = 2.6,
        NothingWrongDespiteDeposit = -1.2, NothingWrongDespiteALittle = -0.4,
        ColourAsExpected = 1.2, OnlyColourAsExpected = 2.6, ColourNotExpected = -1.0;

    /// <summary>Causes of what was seen, most probable first; the same input always gives the same order.</summary>
    /// <param name="seenAt">Temperature it was seen at; null when it was not told.</param>
    public static BottleDiagnosis Of(StockFacts stock, Observation observation, Temperature? seenAt)
    {
        var chemistry = BottleChemistry.Of(stock, seenAt, observation.PutIn);
        var traits = new StockTraits(
            stock, chemistry.Mixing, seenAt, observation.PutIn, observation.Of("ice") == true);
        var liquid = new LiquidColour(stock);
        observation = liquid.Claim(observation);
        var fizzed = HasFizzed(observation);
        var causes = DiagnosisData.Causes.Select(cause =>
        {
            var solid = chemistry.Of(cause);
            return new CauseRanking.Entry(
                cause,
                solid,
                [
                    .. (SilicateWentIn(cause, observation) ?? AcidOnSilicate(cause, observation, stock)) is { } late
                        ? [late]
                        : StockReasons(cause, solid, chemistry, traits, fizzed),
                    .. LiquidReasons(cause, observation, liquid, chemistry),
                ]);
        });
        var ranked = CauseRanking.Of([.. causes], observation);
        var hazards = BottleHazards.WithCorrosion(BottleHazards.Of(stock, observation), stock, chemistry.AtSeen);
        return new BottleDiagnosis(
            observation, chemistry, ranked,
            observation.TellsNoCause ? hazards : BottleHazards.With(hazards, BottleDiagnosis.Listed(ranked)));
    }

    /// <summary>What fizzes with acid is a carbonate, wherever it came from.</summary>
    internal static bool HasFizzed(Observation observation) =>
        observation.Of("vinegar-fizzes") == true || observation.Of("strong-acid-fizzes") == true;

    /// <summary>Silicate that somebody put in met whatever stood there already.</summary>
    internal static Evidence? SilicateWentIn(Cause cause, Observation observation) =>
        cause.Id == "silica-gel" && observation.PutIn.Any(p => p.Substance?.Kind == SubstanceKind.Silicate)
            ? new Evidence(
                "silicate gels where it meets acid, calcium or magnesium, and went in with the rest already there", GelOfSilicate)
            : null;

    /// <summary>Acid that went into silicate takes away the alkali that keeps it dissolved.</summary>
    private static Evidence? AcidOnSilicate(Cause cause, Observation observation, StockFacts stock) =>
        cause.Id == "silica-gel"
        && (observation.Of("on-acid") == true || observation.PutIn.Any(p => p is { IsAsked: false, Substance.Kind: SubstanceKind.Acid }))
        && stock.Additions.Any(a => a.Substance.Kind == SubstanceKind.Silicate)
            ? new Evidence("acid takes away the alkali that keeps silicate dissolved, and it gels", GelOfSilicate)
            : null;

    /// <summary>What a component that the recipe does not name says against a cause.</summary>
    internal static double Lacking(IReadOnlyCollection<string> missing, bool waterMayBringIt, bool fizzed) =>
        !missing.All(m => m is Component.Calcium or Component.Carbonate) ? MissingNeed
            : MissingNeed + (waterMayBringIt ? BroughtByWater : 0) + (fizzed ? ProvedByFizz : 0);

    private static IEnumerable<Evidence> StockReasons(
        Cause cause, SolidVerdict solid, BottleChemistry chemistry, StockTraits traits, bool fizzed)
    {
        var missing = cause.Needs.Where(n => !traits.Has(n)).ToList();
        if (missing.Count > 0)
        {
            // Water of a well or a tap brings calcium and carbonate that no line of the recipe names.
            yield return new Evidence(
                $"the recipe brings no {string.Join(" and no ", missing.Select(traits.NameOfLacking))}", Lacking(missing, true, fizzed));
            yield break;
        }

        if (cause.NeedsAnyOf.Count > 0 && !cause.NeedsAnyOf.Any(n => traits.Of(n).Holds != false))
        {
            yield return new Evidence(traits.Of(cause.NeedsAnyOf[0]).Because, MissingNeed);
            yield break;
        }

        // What comes into the bottle with a cleaner or an extract need not stand in the recipe.
        var carriedIn = solid.Standing == Standing.Absent && cause.MadeLikelyBy.Count > 0;
        if (solid.Standing != Standing.Unknown && !carriedIn)
        {
            yield return SolidReason(solid, chemistry);
            yield break;
        }

        if (cause.Solids.Count == 0 && cause.Needs.Count + cause.NeedsAnyOf.Count > 0)
        {
            var needed = cause.Needs
                .Concat(cause.NeedsAnyOf.Where(n => traits.Of(n).Holds == true).Take(1))
                .Select(n => traits.Of(n).Because)
                .Distinct();
            yield return new Evidence(string.Join(" and ", needed), HasNeeds);
        }

        var known = cause.MadeLikelyBy.Select(traits.Of).ToList();
        if (known.Count == 0)
        {
            yield break;
        }

        if (known.Find(t => t.Holds == true) is { Holds: true } holds)
        {
            yield return new Evidence(holds.Because, holds.IsSlight ? HasTraitSlightly : HasTrait);
        }

        if (known.FindAll(t => t.Holds == false) is { Count: > 0 } against && against.Count == known.Count)
        {
            yield return new Evidence(against[0].Because, against[0].RulesOut ? MissingNeed : AllTraitsMissing);
        }
    }

    private static Evidence SolidReason(SolidVerdict solid, BottleChemistry chemistry) => SolidReason(
        solid,
        solid.State is null ? "" : chemistry.When(solid.State),
        solid.Standing == Standing.Forms ? Outweighed(solid, chemistry) : 0);

    /// <summary>What the engine says of a cause's solids.</summary>
    /// <param name="at">Where or when, for the end of the sentence.</param>
    /// <param name="outweighed">What a larger deposit beside it takes away; 0 or less.</param>
    internal static Evidence SolidReason(SolidVerdict solid, string at, double outweighed)
    {
        return solid.Standing switch
        {
            Standing.Forms => new Evidence(
                $"{DiagnosisWords.Grams(solid.GramsPerLitre)}/L of it falls out {at}",
                (solid.GramsPerLitre >= 1 ? 2.6 : solid.GramsPerLitre >= 0.1 ? 2.0 : 1.3) + outweighed),
            Standing.Above => new Evidence(
                $"its ions are {DiagnosisWords.Times(solid.Index!.Value)} what saturates {at}",
                solid.Solid?.Role == SolidRole.FormsSlowly ? 0.6 : 1.3),
            Standing.Close => new Evidence($"it is close to saturation {at}", 0.7),
            Standing.Below => new Evidence($"it stays dissolved {at}, though not by far", -1.0),
            // Frost, air or a splash of acid lets go what holds it.
            Standing.Held => new Evidence(solid.HeldBecause!, -0.6),
            Standing.FarBelow => new Evidence($"it is far from falling out {at}", -2.2),
            _ => new Evidence("its ions are not all in the recipe", MissingNeed),
        };
    }

    /// <summary>What is seen is mostly the largest deposit: a small one beside it loses a little.</summary>
    private static double Outweighed(SolidVerdict solid, BottleChemistry chemistry)
    {
        var most = chemistry.DepositsAt(solid.State!).Select(d => d.GramsPerLitre).Append(solid.GramsPerLitre).Max();
        return Math.Max(-0.8, 0.4 * Math.Log(solid.GramsPerLitre / most));
    }

    private static IEnumerable<Evidence> LiquidReasons(Cause cause, Observation observation, LiquidColour liquid, BottleChemistry chemistry)
    {
        if (cause.Id == "nothing-wrong" && chemistry.DepositsSeen is [{ GramsPerLitre: > 0 and var grams }, ..])
        {
            yield return new Evidence($"{DiagnosisWords.Grams(grams)}/L of solid should fall out {DiagnosisWords.At(chemistry.AtSeen)}",
                grams >= SurelyVisible ? NothingWrongDespiteDeposit : NothingWrongDespiteALittle);
        }

        if (observation.LiquidColours.Count > 0 && liquid.IsKnown)
        {
            var fits = observation.LiquidColours.All(liquid.Fits);
            var shades = string.Join(" and ", observation.LiquidColours.Select(c => c.Say));
            if (cause.Id == "nothing-wrong")
            {
                yield return fits
                    ? new Evidence(
                        $"{shades} is the colour this stock should have",
                        observation.Signs.Any(s => s.Present && s.Sign.Kind != SignKind.Time) ? ColourAsExpected : OnlyColourAsExpected)
                    : new Evidence($"{shades} is not the colour this stock should have", ColourNotExpected);
            }
            else if (observation.LiquidColours.Any(c => !liquid.Fits(c) && cause.Often.Contains(c.Id))
                || (!fits && (cause.Often.Contains("liquid-changed")
                    || cause.Sometimes.Contains("liquid-changed")
                    || cause.Often.Contains("liquid-darker"))))
            {
                yield return new Evidence($"the liquid should not be {shades}", -ColourNotExpected);
            }
        }
    }
}
