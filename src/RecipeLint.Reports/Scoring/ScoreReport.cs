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
    private const int Named = 10;

    /// <param name="title">What was asked about.</param>
    public static Sheet Sheet(BatchScore score, string title) => new(
        "score", title, $"{score.Batches} batch records",
        [
            .. new[]
            {
                new SheetSection("about", "About", About(score)),
                Rules(score),
                Readings(score),
            }.Where(s => !s.IsEmpty),
        ]);

    /// <summary>UTF-8 without a byte order mark, ending in a line feed.</summary>
    public static byte[] Json(BatchScore score)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("formatVersion", 1);
            json.WriteNumber("batches", score.Batches);
            json.WriteNumber("looked", score.Looked);
            json.WriteNumber("rightlyQuiet", score.RightlyQuiet);
            json.WriteNumber("missedByAll", score.MissedByAll);
            json.WriteStartArray("rules");
            foreach (var rule in score.Rules)
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
            json.WriteStartArray("readings");
            foreach (var reading in score.Readings)
            {
                json.WriteStartObject();
                json.WriteString("kind", Name(reading.Kind));
                Write(json, "inside", reading.Inside);
                json.WriteNumber("promised_fraction", 0.95);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("leftOut");
            score.LeftOut.ToList().ForEach(json.WriteStringValue);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return [.. buffer.WrittenSpan, (byte)'\n'];
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
            $"{score.Looked} of {score.Batches} records say what was seen. {score.RightlyQuiet} of them stayed clear with nothing "
                + "foretold; "
                + $"in {score.MissedByAll} something was seen that no rule foretold and no solid explains.",
        };
        if (score.LeftOut.Count > 0)
        {
            says.Add(
                $"Left out, because what was made cannot be followed: {string.Join(", ", score.LeftOut.Take(Named))}"
                    + $"{(score.LeftOut.Count > Named ? " ..." : "")}. 'recipelint check' says why.");
        }

        return says;
    }

    private static SheetSection Rules(BatchScore score) => new(
        "rules", "Rules on what falls out", [],
        new Table(
            [new("rule"), new("hits", true), new("misses", true), new("false alarms", true), new("right when it speaks"), new("found")],
            [
                .. score.Rules.Where(r => r.Hits + r.Misses + r.FalseAlarms > 0).Select(r => (IReadOnlyList<string>)
                [
                    r.Rule, Say.Number(r.Hits), Say.Number(r.Misses), Say.Number(r.FalseAlarms), Text(r.RightWhenItSpeaks), Text(r.Found),
                ]),
            ]),
        $"{score.Rules.Count(r => r.Hits + r.Misses + r.FalseAlarms == 0)} more rules on deposits had nothing to say of these batches.",
        "Shares with the interval that holds the true one with 95 % (Wilson). A few batches tell little.");

    private static SheetSection Readings(BatchScore score) => new(
        "readings", "Readings in the window that is to hold 95 % of them", [],
        new Table(
            [new("reading"), new("inside", true), new("of", true), new("share")],
            [
                .. score.Readings.Select(r => (IReadOnlyList<string>)
                    [Name(r.Kind), Say.Number(r.Inside.Hits), Say.Number(r.Inside.Of), Text(r.Inside)]),
            ]));

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
