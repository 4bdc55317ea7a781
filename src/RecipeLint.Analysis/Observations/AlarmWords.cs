using System.Collections.Frozen;
using RecipeLint.Chemistry.Data;

namespace RecipeLint.Analysis.Observations;

/// <summary>What of a text tells of an emergency.</summary>
/// <param name="Signs">Signs of the vocabulary, each once.</param>
/// <param name="Left">The tokens that tell of something else.</param>
/// <param name="OfTheHarm">The tokens of clauses on people and animals; of these only gas, smells and when it was are read.</param>
internal sealed record Alarm(IReadOnlyList<string> Signs, IReadOnlyList<string> Left, IReadOnlyList<string> OfTheHarm);

/// <summary>
/// Hears that somebody or an animal is harmed, that something burst, burns or gives off gas, in families of words and not in sentences.
/// What speaks of a person or an animal and is not understood is an emergency too. Errs on the safe side. Pure; never throws.
/// </summary>
internal static class AlarmWords
{
    private const int FarFromNot = 4, LongestPhrase = 5;

    private static readonly Lazy<Families> Data = new(Read);

    /// <summary>Takes back what follows; "no longer", "not breathing" and the like stand in phrases of their own.</summary>
    private static readonly FrozenSet<string> Not = new[]
    {
        "no", "not", "never", "nobody", "noone", "nothing", "without", "didnt", "hasnt", "wasnt", "isnt", "doesnt", "none", "neither",
        "nor", "wont",
    }.ToFrozenSet(StringComparer.Ordinal);

    /// <param name="tokens">In lower case; an empty one stands for punctuation.</param>
    public static Alarm Of(IReadOnlyList<string> tokens)
    {
        var words = Data.Value;
        var told = new HashSet<string>(StringComparer.Ordinal);
        var (left, harm) = (new List<string>(), new List<string>());
        var flame = tokens.Any(t => words.FlameTests.Has(t));
        foreach (var clause in Clauses(tokens))
        {
            var person = OfPeople(clause, words).ToList();
            told.UnionWith(person);
            var rest = OfVessel(clause, words, flame, told);
            (person.Count > 0 ? harm : left).AddRange(rest);
            left.Add("");
            harm.Add("");
        }

        return new Alarm([.. told.Order(StringComparer.Ordinal)], left, harm);
    }

    /// <summary>True for a word that an emergency is told with, so that it is not taken for a slip of the pen.</summary>
    public static bool Knows(string token) => Data.Value.Burst.Has(token) || Data.Value.Fire.Has(token) || Data.Value.Harm.Has(token)
        || Data.Value.Gases.Has(token) || Data.Value.Animals.Has(token) || Data.Value.Clothing.Has(token) || Data.Value.People.Has(token);

    private static IEnumerable<string> OfPeople(string[] clause, Families words)
    {
        var harmed = false;
        foreach (var (family, sign) in new[]
        {
            (words.Harm, "collapsed"), (words.Inhaled, "breathed-in"), (words.Mouthed, "swallowed"),
        })
        {
            // "Headache" and "wheezing" have their sign in the vocabulary already.
            if (Hits(clause, family).Any(at => (family == words.Harm && (IsOwnWord(clause[at]) || IsOfPlants(clause, at, words))) ? false
                : !IsTakenBack(clause, at)))
            {
                harmed = true;
                yield return sign;
            }
        }

        if (Enumerable.Range(0, clause.Length).Any(i => words.HarmEnds.HasPhrase(clause[i..])))
        {
            harmed = true;
            yield return "collapsed";
        }

        if (OfAnimals(clause, words) is { } animal)
        {
            yield return animal;
            yield break;
        }

        foreach (var sign in OfBodies(clause, words).Concat(OfMouths(clause, words)))
        {
            harmed = true;
            yield return sign;
        }

        if (!harmed && IsUntold(clause, words))
        {
            yield return "not-understood";
        }
    }

    /// <summary>"The leaves got burned": nobody is hurt where no one is named.</summary>
    private static bool IsOfPlants(string[] clause, int at, Families words) => words.PlantHarm.Has(clause[at])
        && clause.Any(words.Plants.Has)
        && !clause.Any(t => words.People.Has(t) || words.Children.Has(t) || words.PlainBody.Has(t) || words.Animals.Has(t));

    /// <summary>True for a word that a sign of the vocabulary has already.</summary>
    private static bool IsOwnWord(string word) => Vocabulary.Beginning(Stem.Of(word)).Concat(Vocabulary.Beginning(word))
        .Any(p => p.Words.Count == 1 && p.Kind == PhraseKind.Sign && IsOfPeople(p.Id));

    /// <summary>"The hens are dead", "my dog licked it": whatever is told of an animal that is not only compared with.</summary>
    private static string? OfAnimals(string[] clause, Families words)
    {
        var at = Array.FindIndex(clause, words.Animals.Has);
        var spoken = at < 0
            || (at + 1 < clause.Length && words.AnimalThings.Has(clause[at + 1]))
            || IsMadeOf(clause, at)
            || clause.Take(at).Skip(Math.Max(0, at - 2)).Any(t => t is "like" or "of" or "to" or "no")
            || clause.Any(words.Smells.Has);
        return spoken || Hits(clause, words.AnimalFates).Any(i => IsTakenBack(clause, i)) ? null : "animal-harmed";
    }

    /// <summary>"A hedgehog of crystals" is a shape; "a dog of the neighbour's" is a dog.</summary>
    private static bool IsMadeOf(string[] clause, int at) =>
        at + 2 < clause.Length && clause[at + 1] == "of"
        && Vocabulary.Beginning(Stem.Of(clause[at + 2])).Concat(Vocabulary.Beginning(clause[at + 2]))
            .Any(p => p.Words.Count == 1 && p.Kind == PhraseKind.Sign && Vocabulary.Sign(p.Id).Kind == SignKind.Form);

    /// <summary>Parts of the body and what is worn, with what reached or hurts them.</summary>
    private static IEnumerable<string> OfBodies(string[] clause, Families words)
    {
        var body = Parts(clause, words).ToList();
        var coloured = body.Count == 0 ? -1 : Array.FindIndex(clause, body[0], words.Colours.Has);
        if (coloured >= 0 && words.Cyanosis.Has(clause[coloured]))
        {
            yield return "collapsed";
            yield break;
        }

        var worn = Hits(clause, words.Clothing).Where(i => !IsTakenBack(clause, i)).ToList();
        if ((worn.Count > 0 && Hits(clause, words.Reaches).Any(i => !IsTakenBack(clause, i)))
            || (coloured >= 0 && !IsTakenBack(clause, coloured)))
        {
            yield return "splashed";
        }
    }

    /// <summary>What a person, and a small child above all, may have eaten or drunk of it.</summary>
    private static IEnumerable<string> OfMouths(string[] clause, Families words)
    {
        var someone = clause.Any(words.People.Has) || clause.Any(words.Children.Has);
        if ((someone && Hits(clause, words.Eats).Any(i => !IsTakenBack(clause, i) && !IsCompared(clause, i) && !IsAmount(clause, i)))
            || (Array.FindIndex(clause, words.Children.Has) is >= 0 and var child && !IsTakenBack(clause, child)
                && clause.Skip(child + 1).Any(words.ChildDoes.Has) && !clause.Skip(child).Any(Not.Contains)))
        {
            yield return "swallowed";
        }
    }

    /// <summary>"A bit of vinegar" bites nobody.</summary>
    private static bool IsAmount(string[] clause, int at) =>
        clause[at] == "bit" && at > 0 && (clause[at - 1] is "a" or "little" or "tiny" or "wee" or "small" or "one" or "last" or "every");

    private static bool IsCompared(string[] clause, int at) => clause.Take(at).Any(t => t is "looks" or "look" or "like");

    /// <summary>
    /// Something is told of a person or of what somebody wears and no family of words fits: a part of the body that belongs to somebody, or
    /// a person of whom a word is told that nobody here knows.
    /// </summary>
    private static bool IsUntold(string[] clause, Families words)
    {
        if (clause.Any(Not.Contains) || IsHeard(clause))
        {
            return false;
        }

        var owned = Enumerable.Range(1, Math.Max(0, clause.Length - 1)).Any(i =>
            (words.Body.Has(clause[i]) || words.Worn.Has(clause[i])) && words.Owners.Has(clause[i - 1]));
        var lens = clause.Contains("lens") && clause.Contains("contact");
        if (lens || (owned && !clause.Any(words.Done.Has)))
        {
            return true;
        }

        // "I am frobbed": of a state that has a name here the other readers speak.
        return Enumerable.Range(0, clause.Length).Any(i => words.People.Has(clause[i]) && StateOf(clause, i, words) is { } state
            && !Vocabulary.IsKnown(state, Stem.Of(state)) && !InterventionReader.Knows(state) && !words.Done.Has(state)
            && !Vocabulary.Ordinary.Contains(state));
    }

    /// <summary>True where the other readers hear what happened to somebody.</summary>
    private static bool IsHeard(string[] clause) => PersonWords.Read(clause).Signs.Count > 0
        || ClauseParts.Of([.. clause.Select(t => new Word(t, Stem.Of(t)))]).Any(p => p.Kind == PartKind.Sign && IsOfPeople(p.Id));

    private static bool IsOfPeople(string sign) => sign is "eyes-water" or "collapsed" or "splashed" or "swallowed";

    /// <summary>"I am X", "he feels X", "she X".</summary>
    private static string? StateOf(string[] clause, int person, Families words)
    {
        var next = person + 1;
        if (next < clause.Length && words.States.Has(clause[next]))
        {
            next++;
        }

        return next == clause.Length - 1 && clause[next].Length > 2 && !char.IsDigit(clause[next][0]) ? clause[next] : null;
    }

    /// <summary>Parts of the body that are somebody's, or can be nothing else.</summary>
    private static IEnumerable<int> Parts(string[] clause, Families words) => Enumerable.Range(0, clause.Length).Where(i =>
        words.Body.Has(clause[i])
        && (words.PlainBody.Has(clause[i]) || (i > 0 && words.Owners.Has(clause[i - 1])) || IsToldFirst(clause, i, words))
        && !(i > 0 && words.Things.Has(clause[i - 1])));

    /// <summary>"Hands went white": nobody tells so of anything but somebody's.</summary>
    private static bool IsToldFirst(string[] clause, int at, Families words) =>
        at == 0 && clause.Length > 1 && words.States.Has(clause[1]) && clause[0] is ("hand" or "hands" or "feet" or "foot" or "face");

    /// <summary>Burst, fire and gas; gives the clause without the words that would read as a look of the deposit.</summary>
    private static IEnumerable<string> OfVessel(string[] clause, Families words, bool flame, HashSet<string> told)
    {
        if (!clause.Any(words.Frost.Has) && Hits(clause, words.Burst).Any(i => !IsTakenBack(clause, i)
            && !clause.Take(i).Skip(Math.Max(0, i - 2)).Contains("like")))
        {
            told.Add("burst");
        }

        if (clause.Any(words.FireThings.Has) && Hits(clause, words.FireWords).Any(i => !IsTakenBack(clause, i)))
        {
            told.Add("burns-by-itself");
            return clause.Where(t => !words.FireWords.Has(t));
        }

        if (!flame && Hits(clause, words.Fire).Any(i => !IsTakenBack(clause, i)))
        {
            told.Add("burns-by-itself");
            return clause.Where(t => !words.Fire.Has(t));
        }

        if (clause.Any(words.Smells.Has)
            && (Hits(clause, words.GasSmells).Any(i => !IsTakenBack(clause, i)) || SmellsUnknown(clause, words)))
        {
            told.Add("not-understood");
            return [];
        }

        if (Hits(clause, words.GasSmells).FirstOrDefault(i => clause[i].StartsWith("bitter", StringComparison.Ordinal), -1) >= 0)
        {
            told.Add("not-understood");
            return [];
        }

        return flame ? clause : WithoutGas(clause, words, told);
    }

    /// <summary>"Smells of frobnicate".</summary>
    private static bool SmellsUnknown(string[] clause, Families words)
    {
        var at = Array.FindIndex(clause, words.Smells.Has);
        return at + 2 < clause.Length && clause[at + 1] is "of" or "like" && !IsTakenBack(clause, at)
            && clause[^1] is { Length: > 3 } what && !Vocabulary.IsKnown(what, Stem.Of(what)) && !InterventionReader.Knows(what)
            && !words.Animals.Has(what) && clause.Length - at < 5;
    }

    /// <summary>Vapour, fumes and smoke of any colour, and gas, mist and air that have one.</summary>
    private static IEnumerable<string> WithoutGas(string[] clause, Families words, HashSet<string> told)
    {
        var plain = Hits(clause, words.Gases).FirstOrDefault(-1);
        var at = plain >= 0 ? plain : Hits(clause, words.ColouredGases).FirstOrDefault(-1);
        if (at < 0 || IsTakenBack(clause, at))
        {
            return clause;
        }

        var colours = Enumerable.Range(Math.Max(0, at - 3), Math.Min(3, at)).Where(i => words.BrownGas.Has(clause[i])
            || words.GreenGas.Has(clause[i]) || words.OtherGas.Has(clause[i])).ToList();
        if (plain < 0 && colours.Count == 0)
        {
            return clause;
        }

        told.Add(colours.Exists(i => words.BrownGas.Has(clause[i])) ? "brown-fumes"
            : colours.Exists(i => words.GreenGas.Has(clause[i])) ? "green-fumes"
            : "fumes");
        return clause.Where((_, i) => i != at && !colours.Contains(i));
    }

    private static bool IsTakenBack(string[] clause, int at) =>
        clause.Skip(Math.Max(0, at - FarFromNot)).Take(at - Math.Max(0, at - FarFromNot)).Any(Not.Contains);

    private static IEnumerable<int> Hits(string[] clause, Family family) =>
        Enumerable.Range(0, clause.Length).Where(i => family.Has(clause[i]) || family.HasPhrase(clause, i));

    private static IEnumerable<string[]> Clauses(IReadOnlyList<string> tokens)
    {
        var clause = new List<string>();
        foreach (var token in tokens.Append(""))
        {
            if (token.Length > 0)
            {
                clause.Add(token);
            }
            else if (clause.Count > 0)
            {
                yield return [.. clause];
                clause.Clear();
            }
        }
    }

    private static Families Read()
    {
        using var document = EmbeddedJson.Open(typeof(AlarmWords).Assembly, "RecipeLint.Analysis.Observations.alarms.json");
        var root = document.RootElement;
        Family Of(params string[] names) => new(names.SelectMany(n => root.GetProperty(n).EnumerateArray()).Select(e => e.GetString()!));
        return new Families(
            Of("people"), Of("children"), Of("owners"), Of("body"), Of("plainBody"), Of("clothing"), Of("worn"), Of("reaches"),
            Of("colours"), Of("cyanosis"), Of("harm", "harmPhrases"), Of("harmEnds"), Of("inhaled"), Of("mouthed"), Of("eats"),
            Of("childDoes"), Of("animals"), Of("animalThings"), Of("eats", "animalFates"), Of("burst"), Of("frost"), Of("fire"),
            Of("flameTests"), Of("gases"), Of("colouredGases"), Of("brownGas"), Of("greenGas"), Of("otherGas"), Of("smells"),
            Of("things"), Of("gasSmells"), Of("states"), Of("done"),
            Of("fireThings"), Of("fireWords"), Of("plants"), Of("plantHarm"));
    }

    /// <summary>Words, beginnings of words and phrases of one family.</summary>
    private sealed class Family
    {
        private readonly FrozenSet<string> _words, _phrases;
        private readonly string[] _beginnings;

        public Family(IEnumerable<string> all)
        {
            List<string> texts = [.. all];
            _words = texts.Where(t => !t.Contains(' ', StringComparison.Ordinal) && t[^1] != '*').ToFrozenSet(StringComparer.Ordinal);
            _phrases = texts.Where(t => t.Contains(' ', StringComparison.Ordinal)).Select(t => t.TrimEnd('*'))
                .ToFrozenSet(StringComparer.Ordinal);
            _beginnings = [.. texts.Where(t => !t.Contains(' ', StringComparison.Ordinal) && t[^1] == '*').Select(t => t[..^1])];
        }

        public bool Has(string word) =>
            _words.Contains(word) || Array.Exists(_beginnings, b => word.StartsWith(b, StringComparison.Ordinal));

        /// <summary>True when the words are one of its phrases and nothing more.</summary>
        public bool HasPhrase(string[] words) => _phrases.Contains(string.Join(' ', words));

        public bool HasPhrase(string[] clause, int at)
        {
            for (var length = Math.Min(LongestPhrase, clause.Length - at); length > 1; length--)
            {
                if (_phrases.Contains(string.Join(' ', clause, at, length)))
                {
                    return true;
                }
            }

            return false;
        }
    }

    private sealed record Families(
        Family People, Family Children, Family Owners, Family Body, Family PlainBody, Family Clothing, Family Worn, Family Reaches,
        Family Colours, Family Cyanosis, Family Harm, Family HarmEnds, Family Inhaled, Family Mouthed, Family Eats, Family ChildDoes,
        Family Animals, Family AnimalThings, Family AnimalFates, Family Burst, Family Frost, Family Fire, Family FlameTests, Family Gases,
        Family ColouredGases, Family BrownGas, Family GreenGas, Family OtherGas, Family Smells, Family Things, Family GasSmells,
        Family States, Family Done, Family FireThings, Family FireWords, Family Plants, Family PlantHarm);
}
