using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Formats;

/// <summary>
/// The report as JSON; the shape is schema/report.schema.json. Lines and columns count from 1, columns in UTF-16 code units, an end is one
/// past the last character. A key may be added without a new version, none is renamed or removed.
/// </summary>
public static class JsonReport
{
    public const int FormatVersion = 1;

    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void Write(TextWriter writer, Report report)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Options))
        {
            new JsonReportWriter(json, report).Write();
        }

        using var safe = new JsonSafeWriter(writer);
        safe.Write(Encoding.UTF8.GetString(buffer.WrittenSpan));
        safe.Write('\n');
        safe.Flush();
    }
}

/// <summary>Writes one report.</summary>
internal sealed class JsonReportWriter(Utf8JsonWriter json, Report report)
{
    public void Write()
    {
        json.WriteStartObject();
        json.WriteNumber("formatVersion", JsonReport.FormatVersion);
        json.WriteString("kind", "report");
        json.WriteStartObject("tool");
        json.WriteString("name", "RecipeLint");
        Text("version", report.ToolVersion);
        json.WriteEndObject();
        Summary();
        json.WriteStartArray("findings");
        foreach (var finding in PlacedFinding.InOrder(report.Result.Findings, report.Sources))
        {
            json.WriteStartObject();
            Finding(finding);
            Repairs(finding.Finding);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("suppressed");
        foreach (var suppressed in report.Result.Suppressed)
        {
            json.WriteStartObject();
            Finding(PlacedFinding.InOrder([suppressed.Finding], report.Sources)[0]);
            Text("reason", suppressed.Suppression.Reason);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        Texts("assumptions", report.Assumptions.Distinct(StringComparer.Ordinal));
        Texts("faults", report.Result.Faults.Select(f => f.Message));
        json.WriteEndObject();
    }

    private void Summary()
    {
        json.WriteStartObject("summary");
        json.WriteNumber("filesChecked", report.FilesChecked);
        json.WriteNumber("filesWithFindings", report.Result.Findings.Select(f => f.Place.File).Distinct(StringComparer.Ordinal).Count());
        json.WriteNumber("errors", Importance.Count(report, Level.Error));
        json.WriteNumber("warnings", Importance.Count(report, Level.Warning));
        json.WriteNumber("notes", Importance.Count(report, Level.Note));
        json.WriteNumber("suppressed", report.Result.Suppressed.Count);
        json.WriteEndObject();
    }

    private void Finding(PlacedFinding placed)
    {
        var finding = placed.Finding;
        json.WriteStartObject("rule");
        Text("id", finding.Rule.Id);
        Text("name", finding.Rule.Name);
        Text("family", finding.Rule.Family);
        json.WriteEndObject();
        json.WriteString("level", Words.Of(finding.Level));
        json.WriteString("certainty", Words.Of(finding.Certainty));
        Place(placed.Spot);
        Text("pointer", finding.Place.Pointer.Value);
        Text("idPath", finding.IdPath);
        json.WriteString("fingerprint", Fingerprint.Of(finding));
        Text("message", finding.Message);
        if (finding.Measured is { } measured)
        {
            json.WriteStartObject("measured");
            Value(measured.Name, measured.Value, measured.Unit);
            Number("limit", measured.Limit);
            json.WriteEndObject();
        }

        json.WriteStartArray("values");
        foreach (var value in finding.Values)
        {
            json.WriteStartObject();
            Value(value.Name, value.Value, value.Unit);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("related");
        foreach (var (spot, label) in placed.Related)
        {
            json.WriteStartObject();
            Place(spot);
            Text("label", label);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private void Place(Spot spot)
    {
        Text("file", spot.File);
        Position("start", spot.Lines.Start);
        Position("end", spot.Lines.End);
    }

    private void Position(string key, LinePosition position)
    {
        json.WriteStartObject(key);
        json.WriteNumber("line", position.Line);
        json.WriteNumber("column", position.Column);
        json.WriteEndObject();
    }

    private void Repairs(Finding finding)
    {
        if (report.Repairs is not { } all)
        {
            return;
        }

        json.WriteStartArray("repairs");
        foreach (var repair in all.GetValueOrDefault(finding) ?? [])
        {
            json.WriteStartObject();
            Text("name", repair.Name);
            Text("title", repair.Repair.Title);
            json.WriteString("kind", repair.Repair.Kind == RepairKind.Safe ? "safe" : "chemistry");
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private void Value(string name, double value, string unit)
    {
        Text("name", name);
        Number("value", value);
        Text("unit", unit);
    }

    private void Number(string key, double value)
    {
        if (double.IsFinite(value))
        {
            json.WriteNumber(key, value);
        }
        else
        {
            json.WriteNull(key);
        }
    }

    private void Texts(string key, IEnumerable<string> texts)
    {
        json.WriteStartArray(key);
        foreach (var text in texts)
        {
            json.WriteStringValue(Printable.WellFormed(text));
        }

        json.WriteEndArray();
    }

    private void Text(string key, string text) => json.WriteString(key, Printable.WellFormed(text));
}
