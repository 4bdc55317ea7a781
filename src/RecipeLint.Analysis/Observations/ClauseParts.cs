namespace RecipeLint.Analysis.Observations;

/// <summary>What a part of a clause is.</summary>
internal enum PartKind
{
    Sign,
    Agent,
    Outcome,
    Negation,
    Liquid,

    /// <summary>"or", "nor": a negation before it holds after it too.</summary>
    Or,
    And,

    /// <summary>"it", "them" after a preposition: the agent named before.</summary>
    ThatAgent,
    Only,
    Other,
}

/// <summary>A part of a clause.</summary>
/// <param name="Id">Sign, agent or outcome; the word as written for the others.</param>
/// <param name="AsOutcome">An outcome that the same word means beside an agent ("foam"); null for none.</param>
/// <param name="AsAgent">An agent that the same word means beside an outcome.</param>
internal sealed record ClausePart(PartKind Kind, string Id, string? AsOutcome = null, string? AsAgent = null);

/// <summary>Finds the phrases of a clause.</summary>
internal static class ClauseParts
{
    /// <summary>Words that may stand inside a phrase without being part of it.</summary>
    private static readonly HashSet<string> Skipped = new(StringComparer.Ordinal)
    {
        "a", "an", "the", "my", "its", "it", "is", "was", "of", "some", "has", "had", "have", "very", "them", "bit", "are", "were",
        "few", "couple", "two", "three", "five", "ten",
    };

    /// <summary>Words that say what became of a liquid ("gone to jelly"), and elsewhere that something went away or helped.</summary>
    private static readonly HashSet<string> Became = new(StringComparer.Ordinal) { "gone", "went", "goes", "going" };

    private static readonly HashSet<string> BeforeALook = new(StringComparer.Ordinal)
    {
        "to", "into", "all", "very", "a", "an", "bit", "quite", "totally", "completely", "slightly", "like", "thick",
    };

    /// <summary>Looks that a whole liquid takes on.</summary>
    private static readonly HashSet<string> Looks = new(StringComparer.Ordinal)
    {
        "jelly", "slime", "cloud", "milky", "haze", "curds",
    };

    /// <summary>The parts of a clause in their order; the longest phrase that fits wins.</summary>
    public static IReadOnlyList<ClausePart> Of(IReadOnlyList<Word> words)
    {
        var parts = new List<ClausePart>();
        for (var i = 0; i < words.Count;)
        {
            var (matches, length) = Match(words, i);
            if (length <= 1 && Became.Contains(words[i].Raw) && LeadsToALook(words, i + 1))
            {
                parts.Add(new ClausePart(PartKind.Outcome, "appears"));
                i++;
                continue;
            }

            if (length > 0 && !(length == 1 && IsNegation(words[i])))
            {
                parts.Add(PartOf(matches));
                i += length;
                continue;
            }

            parts.Add(Plain(words, i));
            i++;
        }

        return parts;
    }

    private static bool LeadsToALook(IReadOnlyList<Word> words, int from)
    {
        var i = from;
        while (i < words.Count && i < from + 3 && BeforeALook.Contains(words[i].Raw))
        {
            i++;
        }

        return i < words.Count && Match(words, i).Matches.Exists(m => m.Kind == PhraseKind.Sign && Looks.Contains(m.Id));
    }

    /// <summary>Parts a clause at "and" where a new test or statement begins after it.</summary>
    public static IEnumerable<IReadOnlyList<ClausePart>> Split(IReadOnlyList<ClausePart> parts)
    {
        var start = 0;
        for (var i = 0; i < parts.Count; i++)
        {
            if (parts[i].Kind != PartKind.And)
            {
                continue;
            }

            if (parts.Skip(i + 1).Any(IsOutcome) && parts.Take(i).Skip(start).Any(p => IsOutcome(p) || p.Kind == PartKind.Sign))
            {
                yield return [.. parts.Take(i).Skip(start)];
                start = i + 1;
            }
        }

        yield return [.. parts.Skip(start)];
    }

    private static bool IsOutcome(ClausePart part) => part.Kind == PartKind.Outcome || part.AsOutcome is not null;

    private static bool IsNegation(Word word) => Vocabulary.Negations.Contains(word.Raw);

    /// <summary>All readings of the longest phrase that begins here, and how many words it takes.</summary>
    private static (List<Phrase> Matches, int Length) Match(IReadOnlyList<Word> words, int at)
    {
        var best = new List<Phrase>();
        var (length, most) = (0, 0);
        foreach (var phrase in Vocabulary.Beginning(words[at].Stem).Concat(Vocabulary.Beginning(words[at].Raw)).Distinct())
        {
            if (Length(phrase, words, at) is not { } taken || phrase.Words.Count < most)
            {
                continue;
            }

            if (phrase.Words.Count > most)
            {
                best.Clear();
                (length, most) = (taken, phrase.Words.Count);
            }

            best.Add(phrase);
        }

        return (best, length);
    }

    private static int? Length(Phrase phrase, IReadOnlyList<Word> words, int at)
    {
        var i = at;
        for (var n = 0; n < phrase.Words.Count; n++)
        {
            while (n > 0 && i < words.Count && !Fits(phrase, n, words[i]) && Skipped.Contains(words[i].Raw))
            {
                i++;
            }

            if (i >= words.Count || !Fits(phrase, n, words[i]))
            {
                return null;
            }

            i++;
        }

        return i - at;
    }

    private static bool Fits(Phrase phrase, int n, Word word) => phrase.Exact ? phrase.Words[n] == word.Raw : phrase.Words[n] == word.Stem;

    private static ClausePart PartOf(List<Phrase> matches)
    {
        var sign = matches.Find(m => m.Kind == PhraseKind.Sign)?.Id;
        var outcome = matches.Find(m => m.Kind == PhraseKind.Outcome)?.Id;
        var agent = matches.Find(m => m.Kind == PhraseKind.Agent)?.Id;
        return sign is not null ? new ClausePart(PartKind.Sign, sign, outcome, agent)
            : outcome is not null ? new ClausePart(PartKind.Outcome, outcome, null, agent)
            : new ClausePart(PartKind.Agent, agent!);
    }

    private static ClausePart Plain(IReadOnlyList<Word> words, int i)
    {
        var raw = words[i].Raw;
        return raw switch
        {
            _ when IsNegation(words[i]) => new ClausePart(PartKind.Negation, raw),
            _ when Vocabulary.LiquidWords.Contains(words[i].Stem) => new ClausePart(PartKind.Liquid, raw),
            "or" or "nor" => new ClausePart(PartKind.Or, raw),
            "and" => new ClausePart(PartKind.And, raw),
            "only" => new ClausePart(PartKind.Only, raw),
            "it" or "them" or "that" when i > 0 && words[i - 1].Raw is "in" or "with" or "by" => new ClausePart(PartKind.ThatAgent, raw),
            "too" or "either" => new ClausePart(PartKind.ThatAgent, raw),
            _ => new ClausePart(PartKind.Other, raw),
        };
    }
}
