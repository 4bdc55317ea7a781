using System.Buffers;
using System.Text.Json;
using RecipeLint.Advice.Scoring;
using RecipeLint.Analysis.Readings;
using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Reports.Show;
using RecipeLint.Reports.Tables;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Scoring;

/// <summary>How the rules did over all batches, as a sheet and as JSON.</summary>
public static class ScoreReport
{
    /// <summary>Version of the JSON's shape; a key may be added without a new version, none is renamed or removed.</summary>
    public const int FormatVersion = 1;

    private const int Named = 10;

    private const string Interval =
        "Shares with the interval that holds the true one with 95 % (Wilson). A few batches tell little.";

    /// <param name="title">What was asked about.</param>
    public static Sheet Sheet(BatchScore score, string title) => new(
        "score", title, Records(score.Batches),
        [
            .. new[]
            {
                new SheetSection("about", "About", About(score)),
                Rules(score),
                Graded(
                    "ph", "Rules on the pH of a stock, against the pH that was read", score.PhRules,
                    "Foretold from the computed pH; right where the pH that was read puts the stock on the same side of the limit."),
                Graded(
                    "tanks", "Rules on recipes, against the tanks that were mixed", score.TankRules,
                    "What falls out against what was seen; pH and EC against what was read: right where the reading is on the same side of "
                        + "the limit."),
                Graded(
                    "hazards", "Dangers, against what was noticed", score.Hazards,
                    "A danger that nobody noticed may still be there: a false alarm here is no leave to mix it."),
                Weights(score),
                Readings("readings", "Readings in the window that is to hold 95 % of them", score.Readings),
                Readings("tank-readings", "The same for readings of tanks", score.TankReadings),
            }.Where(s => !s.IsEmpty),
        ]);

    /// <summary>UTF-8 without a byte order mark, ending in a line feed.</summary>
    public static byte[] Json(BatchScore score)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("formatVersion", FormatVersion);
            json.WriteString("kind", "score");
            json.WriteNumber("batches", score.Batches);
            json.WriteNumber("looked", score.Looked);
            json.WriteNumber("rightlyQuiet", score.RightlyQuiet);
            json.WriteNumber("missedByAll", score.MissedByAll);
            Write(json, "rules", score.Rules);
            Write(json, "phRules", score.PhRules);
            Write(json, "tankRules", score.TankRules);
            Write(json, "hazards", score.Hazards);
            Write(json, "weights", score.Weights);
            Write(json, "readings", score.Readings);
            Write(json, "tankReadings", score.TankReadings);
            json.WriteStartArray("leftOut");
            score.LeftOut.ToList().ForEach(json.WriteStringValue);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return [.. buffer.WrittenSpan, (byte)'\n'];
    }

    private static void Write(Utf8JsonWriter json, string name, IReadOnlyList<RuleScore> rules)
    {
        json.WriteStartArray(name);
        foreach (var rule in rules)
        {
            json.WriteStartObject();
            json.WriteString("rule", rule.Rule);
            json.WriteNumber("hits", rule.Hits);
            json.WriteNumber("misses", rule.Misses);
            json.WriteNumber("falseAlarms", rule.FalseAlarms);
            Write(json, "rightWhenItSpeaks", rule.RightWhenItSpeaks);
            Write(json, "found", rule.Found);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, string name, IReadOnlyList<ReadingScore> readings)
    {
        json.WriteStartArray(name);
        foreach (var reading in readings)
        {
            json.WriteStartObject();
            json.WriteString("kind", Name(reading.Kind));
            Write(json, "inside", reading.Inside);
            json.WriteNumber("promised_fraction", 0.95);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, string name, Proportion share)
    {
        var (low, high) = share.Interval;
        json.WriteStartObject(name);
        json.WriteNumber("hits", share.Hits);
        json.WriteNumber("of", share.Of);
        json.WriteNumber("low_fraction", low);
        json.WriteNumber("high_fraction", high);
        json.WriteEndObject();
    }

    private static List<string> About(BatchScore score)
    {
        var says = new List<string>
        {
            $"{Records(score.Batches)}, {score.Looked} with a word on whether something fell out: {score.RightlyQuiet} clear with nothing "
                + $"foretold, {score.MissedByAll} with something that no rule foretold and no solid explains.",
        };
        if (score.LeftOut.Count > 0)
        {
            says.Add(
                $"Left out, because what was made cannot be followed: {string.Join(", ", score.LeftOut.Take(Named))}"
                    + $"{(score.LeftOut.Count > Named ? " ..." : "")}. 'recipelint check' says why.");
        }

        says.Add("Graded is what the record of a bottle or a tank can prove right or wrong: what falls out, pH, EC, dangers and weights. "
            + "Rules on what plants need, on waters and on how files are written are not.");
        return says;
    }

    private static SheetSection Rules(BatchScore score)
    {
        var silent = score.Rules.Count(r => !r.IsTold);
        return Graded("rules", "Rules on what falls out", score.Rules, silent == score.Rules.Count
            ? $"None of the {silent} rules on deposits had anything to say of these batches, and nothing was seen that they look for."
            : $"Of {silent} more rules on deposits these batches tell nothing.") is { IsEmpty: false } section
            ? section with { Notes = [.. section.Notes, Interval] }
            : new SheetSection("rules", "Rules on what falls out", []);
    }

    private static SheetSection Graded(string key, string title, IReadOnlyList<RuleScore> rules, string note) => rules.Count == 0
        ? new SheetSection(key, title, [])
        : new SheetSection(
            key, title, [],
            new Table(
                [
                    new("rule"), new("hits", true), new("misses", true), new("false alarms", true), new("right when it speaks"),
                    new("found"),
                ],
                [
                    .. rules.Where(r => r.IsTold || key is "ph" or "tanks").Select(r => (IReadOnlyList<string>)
                    [
                        r.Rule, Say.Number(r.Hits), Say.Number(r.Misses), Say.Number(r.FalseAlarms), Text(r.RightWhenItSpeaks),
                        Text(r.Found),
                    ]),
                ]),
            note);

    private static SheetSection Weights(BatchScore score) => new(
        "weights", "Amounts as the files ask for",
        score.Weights.Of == 0 ? [] :
        [
            $"{score.Weights.Hits} of {score.Weights.Of} recorded amounts are as near as the rule on weighing allows: "
                + $"{Text(score.Weights)}.",
        ]);

    private static SheetSection Readings(string key, string title, IReadOnlyList<ReadingScore> readings) => new(
        key, title, [],
        new Table(
            [new("reading"), new("inside", true), new("of", true), new("share")],
            [
                .. readings.Select(r => (IReadOnlyList<string>)
                    [Name(r.Kind), Say.Number(r.Inside.Hits), Say.Number(r.Inside.Of), Text(r.Inside)]),
            ]));

    private static string Records(int count) => count == 1 ? "1 batch record" : $"{count} batch records";

    private static string Name(ReadingKind kind) => kind switch
    {
        ReadingKind.Ph => "pH",
        ReadingKind.Conductivity => "conductivity",
        _ => "density",
    };

    private static string Text(Proportion share)
    {
        var (low, high) = share.Interval;
        return share.Of == 0 ? "" : $"{Percent(share.Share)} % ({Percent(low)} to {Percent(high)} %)";

        static string Percent(double fraction) => Say.Number(Math.Round(100 * fraction));
    }
}
