using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Quantities;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>
/// Ranks causes by the odds of naive Bayes: how often a cause is met, what the chemistry says of it, and how well each sign fits
/// (<see cref="Likelihood"/>). Signs of one kind say much the same (white, cream, pale), so n of them count as the square root of n; the
/// sum is tempered, because no sign is independent of the others. The weights are judgement, no source.
/// </summary>
internal static class CauseRanking
{
    /// <summary>Share of the summed log-odds that is believed.</summary>
    private const double Temper = 0.8;

    /// <summary>A reason weaker than this against the average cause is not worth a line.</summary>
    private const double WorthSaying = 0.35;

    /// <summary>Most probable first; the same input always gives the same order.</summary>
    /// <param name="causes">All that it could be, at least one.</param>
    public static IReadOnlyList<RankedCause> Of(IReadOnlyList<Entry> causes, Observation observation)
    {
        var averages = observation.Signs.ToDictionary(s => s, s => causes.Average(c => Math.Log(Likelihood.Of(c.Cause, s))));
        var scored = causes.Select(c => Score(c, observation, averages)).ToList();
        var best = scored.Max(s => s.Score);
        var total = scored.Sum(s => Math.Exp(Temper * (s.Score - best)));
        return
        [
            .. scored
                .Select(s => s with { Share = Math.Exp(Temper * (s.Score - best)) / total })
                .OrderByDescending(r => Rounding.SixDigits(r.Share))
                .ThenBy(r => r.Cause.Id, StringComparer.Ordinal),
        ];
    }

    /// <summary>
    /// The same where a cause has to show in what was seen: that a feed could do it does not tell that it did.
    /// </summary>
    public static IReadOnlyList<RankedCause> OfOwnSigns(IReadOnlyList<Entry> causes, Observation observation)
    {
        List<Seen> present = [.. observation.Signs.Where(s => s.Present)];
        return
        [
            .. Of(causes, observation).Select(r => r with
            {
                HasOwnSign = present.Count == 0 || present.Exists(s => Likelihood.IsOwn(r.Cause, s.Sign)),
            }),
        ];
    }

    private static RankedCause Score(Entry entry, Observation observation, Dictionary<Seen, double> averages)
    {
        var score = Prior(entry.Cause.Frequency) + entry.Reasons.Sum(r => r.Weight);
        var evidence = entry.Reasons.ToList();
        foreach (var kind in observation.Signs.GroupBy(s => s.Sign.Kind))
        {
            // Each bench test stands for itself; looks overlap.
            var weight = kind.Key == SignKind.Test ? 1 : 1 / Math.Sqrt(kind.Count());
            score += weight * kind.Sum(s => Math.Log(Likelihood.Of(entry.Cause, s)));
            evidence.AddRange(
                kind.Select(s => new Evidence(s.Say, Math.Log(Likelihood.Of(entry.Cause, s)) - averages[s], FromStock: false)));
        }

        return new RankedCause(
            entry.Cause, score, 0, [.. evidence.Where(e => e.Text.Length > 0 && Math.Abs(e.Weight) >= WorthSaying)], entry.Solid);
    }

    private static double Prior(Frequency frequency) => frequency switch
    {
        Frequency.Common => 0,
        Frequency.Occasional => -0.4,
        _ => -1.0,
    };

    /// <summary>A cause with what the chemistry says of it.</summary>
    internal sealed record Entry(Cause Cause, SolidVerdict Solid, IReadOnlyList<Evidence> Reasons);
}
