using System.Text.Json;
using RecipeLint.Chemistry.Data;

namespace RecipeLint.Analysis.Observations;

/// <summary>What a phrase of everyday language stands for.</summary>
internal enum PhraseKind
{
    Sign,

    /// <summary>What a test is done with ("vinegar").</summary>
    Agent,

    /// <summary>What it did ("fizzes").</summary>
    Outcome,
}

/// <summary>One phrase of the vocabulary as stems.</summary>
/// <param name="Spelled">As the data spell them.</param>
/// <param name="Exact">True when the word must stand as written.</param>
internal sealed record Phrase(IReadOnlyList<string> Words, IReadOnlyList<string> Spelled, bool Exact, PhraseKind Kind, string Id);

/// <summary>The controlled vocabulary of signs and the everyday words for them.</summary>
public static class Vocabulary
{
    private static readonly Lazy<Content> Data = new(Read);

    /// <summary>Every sign of the vocabulary; the signs of tests last.</summary>
    public static IReadOnlyCollection<Sign> Signs => Data.Value.Signs.Values;

    /// <exception cref="InvalidOperationException">There is no such sign.</exception>
    public static Sign Sign(string id) =>
        Data.Value.Signs.GetValueOrDefault(id) ?? throw new InvalidOperationException($"There is no sign '{id}'.");

    /// <summary>The sign of a test with its outcome; null when no such outcome tells anything.</summary>
    internal static Sign? Test(string agent, string outcome) => Data.Value.Signs.GetValueOrDefault($"{agent}-{outcome}");

    /// <summary>Phrases by their first word, longest first.</summary>
    internal static IReadOnlyList<Phrase> Beginning(string word) => Data.Value.ByFirst.GetValueOrDefault(word) ?? [];

    internal static IReadOnlySet<string> LiquidWords => Data.Value.LiquidWords;

    internal static IReadOnlySet<string> Negations => Data.Value.Negations;

    internal static IReadOnlySet<string> Breaks => Data.Value.Breaks;

    /// <summary>Words that carry no sign; as written and as stems.</summary>
    internal static IReadOnlySet<string> Fillers => Data.Value.Fillers;

    /// <summary>Words that carry no sign and are no slip of the pen for one, though near to one.</summary>
    internal static IReadOnlySet<string> Ordinary => Data.Value.Ordinary;

    /// <summary>Every word that a phrase holds, as a stem.</summary>
    internal static IReadOnlyCollection<string> Known => Data.Value.Known;

    /// <summary>The same words as the data spell them.</summary>
    internal static IReadOnlyCollection<string> KnownAsWritten => Data.Value.KnownAsWritten;

    internal static bool IsKnown(string raw, string stem) =>
        Data.Value.Known.Contains(stem) || Data.Value.Known.Contains(raw) || Data.Value.Fillers.Contains(
            raw) || Data.Value.Fillers.Contains(stem)
        || Data.Value.Negations.Contains(raw) || Data.Value.Breaks.Contains(raw) || Data.Value.LiquidWords.Contains(stem);

    private static Content Read()
    {
        using var document = Open();
        var root = document.RootElement;
        var signs = new Dictionary<string, Sign>(StringComparer.Ordinal);
        var phrases = new List<Phrase>();
        foreach (var item in root.GetProperty("signs").EnumerateArray())
        {
            var id = item.GetProperty("id").GetString()!;
            var say = item.GetProperty("say").GetString()!;
            var kind = Enum.Parse<SignKind>(item.GetProperty("kind").GetString()!, ignoreCase: true);
            var sayNot = item.TryGetProperty("sayNot", out var not) ? not.GetString()! : NotText(id, kind, say);
            signs.Add(id, new Sign(id, kind, say, sayNot, Texts(item, "kin")));
            phrases.AddRange(Phrases(item, PhraseKind.Sign, id));
        }

        foreach (var (list, kind) in new[] { ("agents", PhraseKind.Agent), ("outcomes", PhraseKind.Outcome) })
        {
            foreach (var item in root.GetProperty(list).EnumerateArray())
            {
                phrases.AddRange(Phrases(item, kind, item.GetProperty("id").GetString()!));
            }
        }

        foreach (var agent in root.GetProperty("agents").EnumerateArray())
        {
            AddTests(signs, agent.GetProperty("id").GetString()!, agent.GetProperty("say").GetString()!);
        }

        AddOtherTests(signs);
        var byFirst = phrases.GroupBy(p => p.Words[0], StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => (IReadOnlyList<Phrase>)[.. g.OrderByDescending(p => p.Words.Count)], StringComparer.Ordinal);
        var fillers = Texts(root, "fillers").SelectMany(f => f.Split(' ')).ToList();
        return new Content(
            signs,
            byFirst,
            [.. Texts(root, "liquidWords").Select(Stem.Of)],
            [.. Texts(root, "negations")],
            [.. Texts(root, "breaks")],
            [.. fillers, .. fillers.Select(Stem.Of)],
            [.. Texts(root, "ordinary")],
            [.. phrases.SelectMany(p => p.Words)],
            [.. phrases.SelectMany(p => p.Spelled)]);
    }

    private static JsonDocument Open() =>
        EmbeddedJson.Open(typeof(Vocabulary).Assembly, "RecipeLint.Analysis.Observations.vocabulary.json");

    private static IReadOnlyList<string> Texts(JsonElement item, string name) =>
        item.TryGetProperty(name, out var list) ? [.. list.EnumerateArray().Select(e => e.GetString()!)] : [];

    private static IEnumerable<Phrase> Phrases(JsonElement item, PhraseKind kind, string id)
    {
        foreach (var text in Texts(item, "words"))
        {
            var exact = text[0] == '=';
            var words = (exact ? text[1..] : text).Split(' ');
            yield return new Phrase(exact ? words : [.. words.Select(Stem.Of)], words, exact, kind, id);
        }
    }

    private static string NotText(string id, SignKind kind, string say) => kind switch
    {
        _ when id == "deposit" => "no deposit",
        SignKind.Smell when id == "smell" => "no smell",
        SignKind.Feel or SignKind.Place or SignKind.Time or SignKind.Liquid => "not " + say,
        _ => "no " + (say.StartsWith("a ", StringComparison.Ordinal) ? say[2..] : say),
    };

    private static void AddTests(Dictionary<string, Sign> signs, string agent, string say)
    {
        var way = agent switch
        {
            "warm" or "cold" or "shake" => "on " + say,
            "flame" => "over a flame",
            _ => "in " + say,
        };
        Add("dissolves", $"dissolves {way}", $"does not dissolve {way}");
        Add("fizzes", $"fizzes with {say}", $"no fizz with {say}");

        void Add(string outcome, string yes, string no) =>
            signs.Add($"{agent}-{outcome}", new Sign($"{agent}-{outcome}", SignKind.Test, yes, no, []));
    }

    private static void AddOtherTests(Dictionary<string, Sign> signs)
    {
        (string Id, string Yes, string No)[] others =
        [
            ("warm-worse", "more of it on warming", "not more of it on warming"),
            ("alkali-browns", "turns brown with alkali", "does not turn brown with alkali"),
            ("alkali-ammonia", "smells of ammonia with alkali", "no ammonia with alkali"),
            ("flame-burns", "chars over a flame", "does not char over a flame"),
            ("flame-melts", "melts and goes off over a flame", "does not melt over a flame"),
            ("flame-sparks", "sparks over a flame", "does not spark over a flame"),
            ("flame-green", "colours a flame green", "no green flame"),
            ("flame-violet", "colours a flame violet", "no violet flame"),
            ("magnet-pulls", "is drawn by a magnet", "is not drawn by a magnet"),
        ];
        foreach (var (id, yes, no) in others)
        {
            signs.Add(id, new Sign(id, SignKind.Test, yes, no, []));
        }
    }

    private sealed record Content(
        Dictionary<string, Sign> Signs,
        Dictionary<string, IReadOnlyList<Phrase>> ByFirst,
        HashSet<string> LiquidWords,
        HashSet<string> Negations,
        HashSet<string> Breaks,
        HashSet<string> Fillers,
        HashSet<string> Ordinary,
        HashSet<string> Known,
        HashSet<string> KnownAsWritten);
}
