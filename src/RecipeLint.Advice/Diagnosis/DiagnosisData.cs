using System.Text.Json;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Data;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>The embedded data of the diagnosis. A fault in them is a fault of the build and throws.</summary>
public static class DiagnosisData
{
    private static readonly Lazy<IReadOnlyList<Cause>> LoadedCauses = new(ReadCauses);

    private static readonly Lazy<IReadOnlyList<Question>> LoadedQuestions = new(ReadQuestions);

    /// <summary>Every known cause, in the order of the file.</summary>
    public static IReadOnlyList<Cause> Causes => LoadedCauses.Value;

    /// <summary>Questions and bench tests, easy ones first.</summary>
    public static IReadOnlyList<Question> Questions => LoadedQuestions.Value;

    /// <exception cref="InvalidOperationException">There is no such cause.</exception>
    public static Cause Cause(string id) =>
        Causes.FirstOrDefault(c => c.Id == id) ?? throw new InvalidOperationException($"There is no cause '{id}'.");

    /// <param name="room">The folder whose data it is.</param>
    internal static JsonDocument Open(string file, string room = "Diagnosis") =>
        EmbeddedJson.Open(typeof(DiagnosisData).Assembly, $"RecipeLint.Advice.{room}.{file}.json");

    internal static IReadOnlyList<string> Texts(JsonElement item, string name) =>
        item.TryGetProperty(name, out var list) ? [.. list.EnumerateArray().Select(e => e.GetString()!)] : [];

    private static IReadOnlyList<Cause> ReadCauses()
    {
        using var document = Open("causes");
        return [.. document.RootElement.GetProperty("causes").EnumerateArray().Select(ReadCause)];
    }

    private static double? Number(JsonElement item, string name) => item.TryGetProperty(name, out var value) ? value.GetDouble() : null;

    internal static Cause ReadCause(JsonElement item) => new()
    {
        Id = Text(item, "id"),
        Name = Text(item, "name"),
        Frequency = Enum.Parse<Frequency>(Text(item, "frequency"), ignoreCase: true),
        NothingWrong = item.TryGetProperty("nothingWrong", out var normal) && normal.GetBoolean(),
        Solids = Texts(item, "solids"),
        Needs = Texts(item, "needs"),
        NeedsAnyOf = Texts(item, "needsAnyOf"),
        MadeLikelyBy = Texts(item, "madeLikelyBy"),
        Often = Signs(item, "often"),
        Sometimes = Signs(item, "sometimes"),
        Never = Signs(item, "never"),
        Tests = item.GetProperty("tests").EnumerateObject()
            .ToDictionary(t => Vocabulary.Sign(t.Name).Id, t => Enum.Parse<Behaviour>(
                t.Value.GetString()!, ignoreCase: true), StringComparer.Ordinal),
        Rescue = Enum.Parse<Rescue>(Text(item, "rescue"), ignoreCase: true),
        RescueSay = Text(item, "rescueSay"),
        RescueUses = Texts(item, "rescueUses"),
        RescuePh = Number(item, "rescuePh"),
        Change = Text(item, "change"),
        ChangeUses = Texts(item, "changeUses"),
        ChangePh = Number(item, "changePh"),
        Dangers = item.TryGetProperty("dangers", out var dangers)
            ? [.. dangers.EnumerateArray().Select(d => new CauseDanger(Kind(Text(d, "hazard")), Text(d, "from")))] : [],
        IsHazard = item.TryGetProperty("isHazard", out var hazard) ? Kind(hazard.GetString()!) : null,
        Source = Text(item, "source"),
        Confidence = Enum.Parse<Confidence>(Text(item, "confidence"), ignoreCase: true),
    };

    /// <summary>"hydrogen-sulfide" is HydrogenSulfide.</summary>
    private static HazardKind Kind(string id) => Enum.Parse<HazardKind>(id.Replace("-", "", StringComparison.Ordinal), ignoreCase: true);

    private static IReadOnlyList<Question> ReadQuestions()
    {
        using var document = Open("questions");
        return
        [
            .. document.RootElement.GetProperty("questions").EnumerateArray().Select(q => new Question(
                Text(q, "id"),
                Text(q, "ask"),
                q.TryGetProperty("do", out var act) ? act.GetString() : null,
                q.TryGetProperty("caution", out var caution) ? caution.GetString() : null,
                q.TryGetProperty("ease", out var ease) ? ease.GetDouble() : 1,
                [
                    .. q.GetProperty("answers").EnumerateArray().Select(a =>
                        new Answer(Text(a, "say"), [.. Texts(a, "signs").Select(s => new Seen(Vocabulary.Sign(s[1..]), s[0] == '+'))])),
                ],
                q.TryGetProperty("act", out var asked) ? asked.GetString() : null)),
        ];
    }

    private static HashSet<string> Signs(JsonElement item, string name) =>
        [.. Texts(item, name).Select(s => Vocabulary.Sign(s).Id)];

    private static string Text(JsonElement item, string name) => item.GetProperty(name).GetString()!;
}
