using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Batches;
using RecipeLint.Analysis.Readings;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Advice.Scoring;

/// <summary>How often a rule was right about what was seen in batches.</summary>
/// <param name="Rule">Name of a rule on deposits.</param>
/// <param name="Hits">It foretold a deposit and something was seen.</param>
/// <param name="Misses">Something was seen that no rule foretold and whose likeliest cause is a solid of this rule.</param>
/// <param name="FalseAlarms">It foretold a deposit and the batch stayed clear.</param>
public sealed record RuleScore(string Rule, int Hits, int Misses, int FalseAlarms)
{
    /// <summary>Of the batches in which it spoke.</summary>
    public Proportion RightWhenItSpeaks => new(Hits, Hits + FalseAlarms);

    /// <summary>Of the batches in which it should have spoken.</summary>
    public Proportion Found => new(Hits, Hits + Misses);
}

/// <summary>How many readings of a kind lay in the window that is to hold 95 % of them.</summary>
public sealed record ReadingScore(ReadingKind Kind, Proportion Inside);

/// <summary>What batch records say of the rules that foretell deposits, and of the windows of readings. Pure.</summary>
/// <param name="Batches">Records that were read.</param>
/// <param name="Looked">Those that say whether something fell out and could be followed; a smell alone says nothing of that.</param>
/// <param name="RightlyQuiet">Clear, and nothing foretold.</param>
/// <param name="MissedByAll">Something was seen that no rule foretold, and no solid is its likeliest cause.</param>
/// <param name="Rules">Every rule on deposits, those with anything to tell first.</param>
/// <param name="LeftOut">Records that cannot be followed, by file.</param>
public sealed record BatchScore(
    int Batches,
    int Looked,
    int RightlyQuiet,
    int MissedByAll,
    IReadOnlyList<RuleScore> Rules,
    IReadOnlyList<ReadingScore> Readings,
    IReadOnlyList<string> LeftOut)
{
    public static BatchScore Of(Facts facts)
    {
        var tally = new Tally();
        foreach (var batch in facts.Workspace.Batches)
        {
            if (BatchForecast.Of(facts, batch) is { IsWhole: true } forecast)
            {
                tally.Take(forecast, facts);
            }
            else
            {
                tally.LeftOut.Add(batch.File);
            }
        }

        return tally.Close(facts.Workspace.Batches.Count);
    }

    private sealed class Tally
    {
        private readonly Dictionary<string, (int Hits, int Misses, int FalseAlarms)> _rules = new(StringComparer.Ordinal);
        private readonly SortedDictionary<ReadingKind, (int Inside, int All)> _readings = [];
        private int _looked, _quiet, _missedByAll;

        public List<string> LeftOut { get; } = [];

        public void Take(BatchForecast forecast, Facts facts)
        {
            foreach (var reading in BatchReadings.Of(forecast).Where(r => r.Expected is not null))
            {
                var (inside, all) = _readings.GetValueOrDefault(reading.Kind);
                _readings[reading.Kind] = (inside + (reading.Expected!.Value.Holds(reading.Value) ? 1 : 0), all + 1);
            }

            if (forecast.Clouded.Any() || forecast.Sights.Any(s => s.IsClear))
            {
                _looked++;
                Sights(forecast, facts);
            }
        }

        public BatchScore Close(int batches) => new(
            batches,
            _looked,
            _quiet,
            _missedByAll,
            [
                .. Analysis.Judgement.DepositOwner.Listed
                    .Select(o => (o.Name, Counts: _rules.GetValueOrDefault(o.Name)))
                    .Select(r => new RuleScore(r.Name, r.Counts.Hits, r.Counts.Misses, r.Counts.FalseAlarms))
                    .OrderByDescending(r => r.Hits + r.Misses + r.FalseAlarms)
                    .ThenBy(r => r.Rule, StringComparer.Ordinal),
            ],
            [.. _readings.Select(r => new ReadingScore(r.Key, new Proportion(r.Value.Inside, r.Value.All)))],
            LeftOut);

        private void Sights(BatchForecast forecast, Facts facts)
        {
            var limits = DepositOptions.Of(facts.Workspace.SettingsFor(forecast.Batch.File));
            var seen = forecast.Clouded.ToList();
            var foretold = (seen.Count > 0 ? seen : forecast.Sights)
                .SelectMany(s => forecast.At(s.Sight, limits).Deposits)
                .Select(d => d.Owner.Name)
                .Distinct(StringComparer.Ordinal)
                .ToList();
            if (seen.Count > 0 && foretold.Count == 0)
            {
                Missed(forecast, seen[0]);
            }

            foreach (var rule in foretold)
            {
                var (hits, misses, alarms) = _rules.GetValueOrDefault(rule);
                _rules[rule] = seen.Count > 0 ? (hits + 1, misses, alarms) : (hits, misses, alarms + 1);
            }

            _quiet += seen.Count == 0 && foretold.Count == 0 ? 1 : 0;
        }

        /// <summary>To whose solids the words point most.</summary>
        private void Missed(BatchForecast forecast, SightReading sight)
        {
            var causes = Diagnoser.Of(forecast.Made, sight.Told, sight.Sight.At?.Value.Low).Causes;
            if (causes.Count > 0 && causes[0].Solid.Solid?.Owner is { } owner)
            {
                var (hits, misses, alarms) = _rules.GetValueOrDefault(owner);
                _rules[owner] = (hits, misses + 1, alarms);
            }
            else
            {
                _missedByAll++;
            }
        }
    }
}
