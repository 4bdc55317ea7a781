using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tanks;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Batches;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Readings;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Recipes.Batches;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Workings;

namespace RecipeLint.Advice.Scoring;

/// <summary>How often a rule was right about what was seen in batches.</summary>
/// <param name="Rule">Name of a rule, or of a hazard.</param>
/// <param name="Hits">It foretold something and that is what was seen or read.</param>
/// <param name="Misses">
/// It was seen or read and not foretold. A deposit that no rule foretold is missed by the rule whose solid is its likeliest cause.
/// </param>
/// <param name="FalseAlarms">It was foretold and not so.</param>
public sealed record RuleScore(string Rule, int Hits, int Misses, int FalseAlarms)
{
    /// <summary>Of the batches in which it spoke.</summary>
    public Proportion RightWhenItSpeaks => new(Hits, Hits + FalseAlarms);

    /// <summary>Of the batches in which it should have spoken.</summary>
    public Proportion Found => new(Hits, Hits + Misses);

    /// <summary>True where batches told anything of it.</summary>
    public bool IsTold => Hits + Misses + FalseAlarms > 0;
}

/// <summary>How many readings of a kind lay in the window that is to hold 95 % of them.</summary>
public sealed record ReadingScore(ReadingKind Kind, Proportion Inside);

/// <summary>What batch records say of the rules that foretell deposits, and of the windows of readings. Pure.</summary>
/// <param name="Batches">Records that were read.</param>
/// <param name="Looked">Those that say whether something fell out and could be followed; a smell alone says nothing of that.</param>
/// <param name="RightlyQuiet">Clear, and nothing foretold.</param>
/// <param name="MissedByAll">Something was seen that no rule foretold, and no solid is its likeliest cause.</param>
/// <param name="Rules">Every rule on deposits, those with anything to tell first.</param>
/// <param name="PhRules">Rules that turn on the pH of a stock, held against the pH that was read; those it was read for.</param>
/// <param name="TankRules">Rules on recipes: what falls out of the tank, its pH and its EC; those that tanks tell of.</param>
/// <param name="Hazards">Hazards that were foretold or noticed, by their name.</param>
/// <param name="Weights">Of the amounts that records state, those as near to the stock file as the rule on weighing allows.</param>
/// <param name="TankReadings">The same for readings of tanks.</param>
/// <param name="LeftOut">Records that cannot be followed, by file.</param>
public sealed record BatchScore(
    int Batches,
    int Looked,
    int RightlyQuiet,
    int MissedByAll,
    IReadOnlyList<RuleScore> Rules,
    IReadOnlyList<RuleScore> PhRules,
    IReadOnlyList<RuleScore> TankRules,
    IReadOnlyList<RuleScore> Hazards,
    Proportion Weights,
    IReadOnlyList<ReadingScore> Readings,
    IReadOnlyList<ReadingScore> TankReadings,
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

        return tally.Close(facts);
    }

    private sealed class Tally
    {
        private readonly Grades _rules = new();
        private readonly Grades _phRules = new();
        private readonly Grades _tankRules = new();
        private readonly Grades _hazards = new();
        private readonly SortedDictionary<ReadingKind, (int Inside, int All)> _readings = [];
        private readonly SortedDictionary<ReadingKind, (int Inside, int All)> _tankReadings = [];
        private int _looked, _quiet, _missedByAll;

        public List<string> LeftOut { get; } = [];

        public void Take(BatchForecast forecast, Facts facts)
        {
            var windows = forecast is TankForecast ? _tankReadings : _readings;
            foreach (var reading in forecast.Readings)
            {
                if (reading.Expected is { } window)
                {
                    var (inside, all) = windows.GetValueOrDefault(reading.Kind);
                    windows[reading.Kind] = (inside + (window.Holds(reading.Value) ? 1 : 0), all + 1);
                }

                Metered(forecast, reading, facts);
            }

            Dangers(forecast);
            if (forecast.Clouded.Any() || forecast.Sights.Any(s => s.IsClear))
            {
                _looked++;
                Sights(forecast, facts);
            }
        }

        public BatchScore Close(Facts facts) => new(
            facts.Workspace.Batches.Count,
            _looked,
            _quiet,
            _missedByAll,
            [
                .. Analysis.Judgement.DepositOwner.Listed
                    .Select(o => _rules.Of(o.Name))
                    .OrderByDescending(r => r.Hits + r.Misses + r.FalseAlarms)
                    .ThenBy(r => r.Rule, StringComparer.Ordinal),
            ],
            [.. _phRules.All],
            [.. _tankRules.All],
            [.. _hazards.All.Where(h => h.IsTold)],
            Share([.. Gradable.Weighed(facts)]),
            Scores(_readings),
            Scores(_tankReadings),
            LeftOut);

        private static IReadOnlyList<ReadingScore> Scores(SortedDictionary<ReadingKind, (int Inside, int All)> readings) =>
            [.. readings.Select(r => new ReadingScore(r.Key, new Proportion(r.Value.Inside, r.Value.All)))];

        /// <summary>Rules that a meter can prove right or wrong.</summary>
        private void Metered(BatchForecast forecast, CheckedReading reading, Facts facts)
        {
            var verdicts = (forecast, reading.Kind) switch
            {
                (TankForecast tank, ReadingKind.Ph) => Gradable.ByMeter(facts, tank.Made, Meter.TankPh, reading.Value),
                (TankForecast tank, ReadingKind.Conductivity) =>
                    Gradable.ByMeter(facts, tank.Made, Meter.TankConductivity, reading.Value),
                (BottleForecast bottle, ReadingKind.Ph) when reading.Entry.Dilution == 1 =>
                    Gradable.ByPh(facts, bottle.Made, reading.Value),
                _ => [],
            };
            var grades = forecast is TankForecast ? _tankRules : _phRules;
            foreach (var verdict in verdicts)
            {
                grades.Add(verdict.Rule, verdict.Foretold, verdict.Measured);
            }
        }

        private static Proportion Share(List<bool> right) => new(right.Count(r => r), right.Count);

        private void Sights(BatchForecast forecast, Facts facts)
        {
            var seen = forecast.Clouded.ToList();
            var foretold = (seen.Count > 0 ? seen : forecast.Sights)
                .SelectMany(s => Foretold(forecast, s.Sight, facts))
                .Distinct(StringComparer.Ordinal)
                .ToList();
            if (seen.Count > 0 && foretold.Count == 0)
            {
                Missed(forecast, seen[0]);
            }

            var grades = forecast is TankForecast ? _tankRules : _rules;
            foretold.ForEach(rule => grades.Add(rule, true, seen.Count > 0));

            _quiet += seen.Count == 0 && foretold.Count == 0 ? 1 : 0;
        }

        /// <summary>Rules by which something falls out until the time of a sight.</summary>
        private static IEnumerable<string> Foretold(BatchForecast forecast, BatchSight sight, Facts facts)
        {
            var shop = facts.Workspace.SettingsFor(forecast.Batch.File);
            if (forecast is not TankForecast tank)
            {
                return ((BottleForecast)forecast).At(sight, DepositOptions.Of(shop)).Deposits.Select(d => d.Owner.Name);
            }

            var deposits = tank.At(sight, DepositOptions.OfTank(shop));
            return
            [
                .. deposits.Any(d => d.Counts) ? [RuleNames.TankPrecipitate] : Array.Empty<string>(),
                .. deposits.Any(d => !d.IsNotTheChelates && d.Deposit.Counts) ? Gradable.IronLetGo(facts, tank.Made) : [],
            ];
        }

        /// <summary>What the contents can do to people, against what somebody noticed; only of records that say what was seen.</summary>
        private void Dangers(BatchForecast forecast)
        {
            if (forecast.Sights.Count == 0)
            {
                return;
            }

            var contents = forecast.Hazards;
            var foretold = contents.Present.Select(h => h.Kind).ToHashSet();
            var noticed = forecast.Sights.SelectMany(s => s.Dangers(contents.Holding)).ToHashSet();
            foreach (var kind in foretold.Union(noticed))
            {
                _hazards.Add(HazardText.Of(kind).Name, foretold.Contains(kind), noticed.Contains(kind));
            }
        }

        /// <summary>To whose solids the words point most.</summary>
        private void Missed(BatchForecast forecast, SightReading sight)
        {
            var at = sight.Sight.At?.Value.Low;
            if (forecast is BottleForecast bottle && Diagnoser.Of(bottle.Made, sight.Told, at).Causes is [var cause, ..]
                && cause.Solid.Solid?.Owner is { } owner)
            {
                _rules.Add(owner, false, true);
            }
            else if (forecast is TankForecast tank && TankDiagnoser.Of(tank.Made, sight.Told, at).Causes is [var likeliest, ..]
                && likeliest is { Moment: TankMoment.Poured or TankMoment.Air or TankMoment.Adjusted, Ranked.Solid.Solid.Owner: not null })
            {
                _tankRules.Add(RuleNames.TankPrecipitate, false, true);
            }
            else
            {
                _missedByAll++;
            }
        }
    }

    /// <summary>Counts by name.</summary>
    private sealed class Grades
    {
        private readonly SortedDictionary<string, RuleScore> _counts = new(StringComparer.Ordinal);

        public IEnumerable<RuleScore> All => _counts.Values;

        public RuleScore Of(string name) => _counts.GetValueOrDefault(name) ?? new RuleScore(name, 0, 0, 0);

        /// <param name="really">True where it was seen or read.</param>
        public void Add(string name, bool foretold, bool really)
        {
            var score = Of(name);
            _counts[name] = (foretold, really) switch
            {
                (true, true) => score with { Hits = score.Hits + 1 },
                (false, true) => score with { Misses = score.Misses + 1 },
                (true, false) => score with { FalseAlarms = score.FalseAlarms + 1 },
                _ => score,
            };
        }
    }
}
