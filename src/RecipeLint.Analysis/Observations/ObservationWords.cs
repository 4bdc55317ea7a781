using System.Text;
using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Observations;

/// <summary>A word as written and its stem.</summary>
internal sealed record Word(string Raw, string Stem);

/// <summary>Breaks free text into clauses of words, and mends slips of spelling.</summary>
internal static class ObservationWords
{
    private const int LongestWord = 40, LongestText = 2000;

    /// <summary>Clauses in their order; punctuation and words such as "but" part them.</summary>
    public static (IReadOnlyList<IReadOnlyList<Word>> Clauses, IReadOnlyList<string> Unknown, IReadOnlyList<Reread> Reread) Read(
        IReadOnlyList<string> tokens)
    {
        var clauses = new List<IReadOnlyList<Word>>();
        var clause = new List<Word>();
        var (unknown, reread) = (new List<string>(), new List<Reread>());
        foreach (var token in tokens)
        {
            if (token.Length == 0 || Vocabulary.Breaks.Contains(token))
            {
                Close();
                continue;
            }

            var stem = Stem.Of(token);
            if (!Vocabulary.IsKnown(token, stem) && !InterventionReader.Knows(token) && !AlarmWords.Knows(token)
                && !char.IsDigit(token[0]) && token.Length > 1)
            {
                if (!Vocabulary.Ordinary.Contains(token)
                    && (Mend(stem, Vocabulary.Known) ?? Mend(token, Vocabulary.KnownAsWritten)) is { } meant)
                {
                    reread.Add(new Reread(token, meant));
                    clause.Add(new Word(meant, Stem.Of(meant)));
                    continue;
                }

                if (!unknown.Contains(token))
                {
                    unknown.Add(token);
                }
            }

            clause.Add(new Word(token, stem));
        }

        Close();
        return (clauses, unknown, reread);

        void Close()
        {
            if (clause.Count > 0)
            {
                clauses.Add(clause);
                clause = [];
            }
        }
    }

    /// <summary>Words in lower case; an empty one stands for punctuation. What is longer than anyone tells is cut.</summary>
    public static IReadOnlyList<string> Tokens(string text) => [.. Split(text.Length > LongestText ? text[..LongestText] : text)];

    private static IEnumerable<string> Split(string text)
    {
        var word = new StringBuilder();
        foreach (var c in text.ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(c) && word.Length < LongestWord)
            {
                word.Append(c);
            }
            else if (c is '\'' or '’')
            {
                // "doesn't" and "doesnt" are one word.
            }
            else
            {
                if (word.Length > 0)
                {
                    yield return word.ToString();
                    word.Clear();
                }

                if (c is ',' or ';' or '.' or ':' or '!' or '?' or '(' or ')' or '—' or '–' or '\n')
                {
                    yield return "";
                }
            }
        }

        if (word.Length > 0)
        {
            yield return word.ToString();
        }
    }

    /// <summary>
    /// The word of the vocabulary that this one was meant to be. A short word must only lack a letter, double one or have two swapped, a
    /// longer one may differ in one letter and only a long one in two, so that an ordinary word is not taken for a sign.
    /// </summary>
    private static string? Mend(string stem, IEnumerable<string> vocabulary)
    {
        if (stem.Length < 4)
        {
            return null;
        }

        var limit = stem.Length >= 8 ? 2 : 1;
        string? best = null;
        var least = limit + 1;
        foreach (var known in vocabulary)
        {
            if (known.Length < 4 || known[0] != stem[0])
            {
                continue;
            }

            var distance = EditDistance.Of(stem, known, limit);
            var slight =
                distance == 1 && (known.Length > stem.Length || (known.Length == stem.Length && known.Order().SequenceEqual(stem.Order())));
            slight |= distance == 1 && known.Length < stem.Length && stem.Length >= 5;
            slight |= distance == 1 && known.Length == stem.Length && stem.Length >= 6 && OneVowelForAnother(stem, known);
            if (distance <= limit
                && (slight || stem.Length >= 7)
                && (distance < least || (distance == least && string.CompareOrdinal(known, best) < 0)))
            {
                (best, least) = (known, distance);
            }
        }

        return best;
    }

    /// <summary>"Bottem", "cristal": the ear does not tell the vowels apart.</summary>
    private static bool OneVowelForAnother(string written, string known)
    {
        const string Vowels = "aeiouy";
        var i = 0;
        while (i < written.Length && written[i] == known[i])
        {
            i++;
        }

        return i < written.Length && Vowels.Contains(written[i], StringComparison.Ordinal)
            && Vowels.Contains(known[i], StringComparison.Ordinal);
    }
}
