using System.Text.Json;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Data;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>The embedded data of the diagnosis. A fault in them is a fault of the build and throws.</summary>
public static class DiagnosisData
{
    private static readonly Lazy<SharedSentences> LoadedSentences = new(ReadSentences);

    private static readonly Lazy<IReadOnlyList<Cause>> LoadedCauses = new(ReadCauses);

    private static readonly Lazy<IReadOnlyList<Question>> LoadedQuestions = new(ReadQuestions);

    /// <summary>Every known cause, in the order of the file.</summary>
    public static IReadOnlyList<Cause> Causes => LoadedCauses.Value;

    /// <summary>What the texts of causes share, with the sentences of the hazards.</summary>
    internal static SharedSentences Sentences => LoadedSentences.Value;

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
        return [.. document.RootElement.GetProperty("causes").EnumerateArray().Select(c => ReadCause(c, Sentences))];
    }

    private static SharedSentences ReadSentences()
    {
        using var document = Open("causes");
        return SharedSentences.Of(document.RootElement, HazardData.Sentences);
    }

    private static double? Number(JsonElement item, string name) => item.TryGetProperty(name, out var value) ? value.GetDouble() : null;

    /// <param name="sentences">What its texts share with others.</param>
    internal static Cause ReadCause(JsonElement item, SharedSentences sentences) => new()
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
        RescueSay = Careful(sentences.In(Text(item, "rescueSay")), Texts(item, "rescueUses"), sentences),
        RescueUses = Texts(item, "rescueUses"),
        RescueWarm = item.TryGetProperty("rescueWarm", out var warm) ? sentences.In(warm.GetString()!) : "",
        RescuePh = Number(item, "rescuePh"),
        Change = sentences.In(Text(item, "change")),
        ChangeAcid = item.TryGetProperty("changeAcid", out var sour) ? sentences.In(sour.GetString()!) : "",
        ChangeUses = Texts(item, "changeUses"),
        ChangePh = Number(item, "changePh"),
        Dangers = item.TryGetProperty("dangers", out var dangers)
            ? [.. dangers.EnumerateArray().Select(d => new CauseDanger(Kind(Text(d, "hazard")), Text(d, "from")))] : [],
        IsHazard = item.TryGetProperty("isHazard", out var hazard) ? Kind(hazard.GetString()!) : null,
        Source = Text(item, "source"),
        Confidence = Enum.Parse<Confidence>(Text(item, "confidence"), ignoreCase: true),
    };

    /// <summary>Who warms is told how, and who pours acid or lye is told so once, where the text itself does not.</summary>
    private static string Careful(string rescue, IReadOnlyList<string> uses, SharedSentences sentences)
    {
        var warm = uses.Contains("heat") ? " " + sentences["warm"] : "";
        var pour = uses.Any(u => u is "acid" or "alkali") && !rescue.Contains("oggles", StringComparison.Ordinal)
            ? " " + sentences["pour"] : "";
        return rescue + warm + pour;
    }

    /// <summary>"hydrogen-sulfide" is HydrogenSulfide.</summary>
    private static HazardKind Kind(string id) => Enum.Parse<HazardKind>(id.Replace("-", "", StringComparison.Ordinal), ignoreCase: true);

    private static IReadOnlyList<Question> ReadQuestions()
    {
        using var document = Open("questions");
        var after = Text(document.RootElement, "afterTest");
        return
        [
            .. document.RootElement.GetProperty("questions").EnumerateArray().Select(q => new Question(
                Text(q, "id"),
                Text(q, "ask"),
                q.TryGetProperty("do", out var act) ? act.GetString() : null,
                Caution(q, after),
                q.TryGetProperty("ease", out var ease) ? ease.GetDouble() : 1,
                [
                    .. q.GetProperty("answers").EnumerateArray().Select(a =>
                        new Answer(Text(a, "say"), [.. Texts(a, "signs").Select(s => new Seen(Vocabulary.Sign(s[1..]), s[0] == '+'))])),
                ],
                q.TryGetProperty("act", out var asked) ? asked.GetString() : null)),
        ];
    }

    /// <summary>What was taken out for a test does not go back; turning the bottle over takes nothing out.</summary>
    private static string? Caution(JsonElement question, string after)
    {
        var own = question.TryGetProperty("caution", out var caution) ? caution.GetString() : null;
        return question.TryGetProperty("do", out _) && Text(question, "act") != "shake" ? $"{own} {after}".TrimStart() : own;
    }

    private static HashSet<string> Signs(JsonElement item, string name) =>
        [.. Texts(item, name).Select(s => Vocabulary.Sign(s).Id)];

    private static string Text(JsonElement item, string name) => item.GetProperty(name).GetString()!;
}
