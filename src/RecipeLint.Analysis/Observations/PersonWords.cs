namespace RecipeLint.Analysis.Observations;

/// <summary>
/// Hears that somebody was hit or hurt, or that an animal got at it, before "burning" reads as a flame test and "spat" as nothing. Errs on
/// the safe side: what it hears only ever asks for first aid. Everyday words: common practice, no source. Pure; never throws.
/// </summary>
internal static class PersonWords
{
    /// <summary>A part of the body that what was splashed can burn.</summary>
    private static readonly HashSet<string> Body = new(StringComparer.Ordinal)
    {
        "hand", "hands", "finger", "fingers", "thumb", "palm", "wrist", "arm", "arms", "skin", "eye", "eyes", "eyelid", "face", "cheek",
        "lip", "lips", "leg", "legs", "foot", "feet", "toe", "toes", "chest", "forearm", "knuckles",
    };

    /// <summary>Eyes that burn may have met fumes alone; the vocabulary has its own words for that.</summary>
    private static readonly HashSet<string> Eyes = new(StringComparer.Ordinal) { "eye", "eyes", "eyelid" };

    private static readonly HashSet<string> Person = new(StringComparer.Ordinal)
    {
        "me", "him", "her", "us", "myself", "himself", "herself", "worker", "workers", "helper", "colleague", "trainee", "somebody",
        "someone", "child", "boy", "girl", "kid", "man", "woman",
    };

    /// <summary>How it comes onto somebody.</summary>
    private static readonly HashSet<string> Hits = new(StringComparer.Ordinal)
    {
        "splash", "splashed", "splashes", "splashing", "spat", "spits", "spit", "spitting", "spurted", "spurts", "squirted", "sprayed",
        "splattered", "spattered", "hit", "hits", "flew",
    };

    /// <summary>The same, where a part of the body is named: "got some on my hand".</summary>
    private static readonly HashSet<string> Reaches = new(StringComparer.Ordinal)
    {
        "got", "get", "gets", "went", "ran", "dripped", "spilled", "spilt", "poured", "tipped", "dropped", "came", "have", "has", "had",
    };

    /// <summary>Where gas is felt first: what burns there was breathed in.</summary>
    private static readonly HashSet<string> Airways = new(StringComparer.Ordinal)
    {
        "nose", "nostrils", "throat", "lungs", "airways", "windpipe",
    };

    /// <summary>What brings it from a glove or a hand into an eye.</summary>
    private static readonly HashSet<string> Rubs = new(StringComparer.Ordinal)
    {
        "rub", "rubbed", "rubs", "rubbing", "wiped", "touched", "scratched",
    };

    private static readonly HashSet<string> Gloves = new(StringComparer.Ordinal) { "glove", "gloves", "apron", "goggles" };

    private static readonly HashSet<string> Gives = new(StringComparer.Ordinal)
    {
        "dissolved", "dissolves", "dissolving", "melted", "melts", "melting", "hole", "holes", "leaked", "perished", "eaten",
    };

    private static readonly HashSet<string> Onto = new(StringComparer.Ordinal) { "on", "onto", "in", "into", "over", "at" };

    /// <summary>What it does to somebody; none of it is a bench test then.</summary>
    private static readonly HashSet<string> Hurts = new(StringComparer.Ordinal)
    {
        "burn", "burns", "burning", "burnt", "burned", "sting", "stings", "stinging", "stung", "hurt", "hurts", "hurting", "itch", "itches",
        "itching", "itchy", "sore", "smarts", "smarting", "blister", "blisters", "blistered", "rash", "numb", "irritated", "peeling",
    };

    private static readonly HashSet<string> Animals = new(StringComparer.Ordinal)
    {
        "dog", "cat", "puppy", "kitten", "horse", "pony", "goat", "sheep", "cow", "calf", "pig", "hen", "hens", "chicken", "chickens",
        "duck", "ducks", "rabbit", "pet", "child", "kid", "toddler", "baby", "boy", "girl",
    };

    private static readonly HashSet<string> Eats = new(StringComparer.Ordinal)
    {
        "lick", "licked", "licks", "licking", "lapped", "ate", "eaten", "eating", "chewed", "tasted", "sipped", "drank", "drinking",
        "drunk", "swallowed", "nibbled",
    };

    /// <summary>Words that say it did not happen, close before the one that says it did.</summary>
    private static readonly HashSet<string> Not = new(StringComparer.Ordinal)
    {
        "no", "not", "never", "nobody", "noone", "without", "didnt", "hasnt", "wasnt", "isnt", "doesnt", "none",
    };

    private const int FarFromNot = 4, FarFromBody = 4;

    /// <summary>
    /// The signs that were heard, the tokens that tell of something else, and those of clauses that say what hit somebody: these describe
    /// no deposit.
    /// </summary>
    /// <param name="tokens">In lower case; an empty one stands for punctuation.</param>
    public static (IReadOnlyList<string> Signs, IReadOnlyList<string> Left, IReadOnlyList<string> OfTheHit) Read(
        IReadOnlyList<string> tokens)
    {
        var signs = new List<string>();
        var (left, ofTheHit) = (new List<string>(), new List<string>());
        var clause = new List<string>();
        foreach (var token in tokens.Append(""))
        {
            if (token.Length > 0)
            {
                clause.Add(token);
                continue;
            }

            Close(clause, signs, left, ofTheHit);
            left.Add(token);
            ofTheHit.Add(token);
            clause.Clear();
        }

        return (signs, left, ofTheHit);
    }

    private static void Close(List<string> clause, List<string> signs, List<string> left, List<string> ofTheHit)
    {
        if (IsSwallowed(clause) && !signs.Contains("swallowed"))
        {
            signs.Add("swallowed");
        }

        if (IsBreathed(clause) && !signs.Contains("eyes-water"))
        {
            signs.Add("eyes-water");
            left.AddRange(clause.Where(t => !Hurts.Contains(t)));
            return;
        }

        if (!IsHit(clause))
        {
            left.AddRange(clause);
            return;
        }

        if (!signs.Contains("splashed"))
        {
            signs.Add("splashed");
        }

        ofTheHit.AddRange(clause.Where(t => !Hurts.Contains(t) && t != "skin"));
    }

    private static bool IsSwallowed(List<string> clause) =>
        clause.Exists(Animals.Contains) && At(clause, Eats).Any(i => !IsTakenBack(clause, i));

    private static bool IsBreathed(List<string> clause) =>
        clause.Exists(Airways.Contains) && At(clause, Hurts).Any(i => !IsTakenBack(clause, i));

    private static bool IsHit(List<string> clause)
    {
        if (At(clause, Hits).Any(i => !IsTakenBack(clause, i) && Names(clause, i, Person)))
        {
            return true;
        }

        if (At(clause, Rubs).Any(i => !IsTakenBack(clause, i) && Names(clause, i, Eyes))
            || (clause.Exists(Gloves.Contains) && At(clause, Gives).Any(i => !IsTakenBack(clause, i))))
        {
            return true;
        }

        var bodies = At(clause, Body).Where(i => !IsTool(clause, i)).ToList();
        return bodies.Count > 0
            && ((bodies.Exists(b => !Eyes.Contains(clause[b])) && At(clause, Hurts).Any(i => !IsTakenBack(clause, i)))
                || At(clause, Hits).Concat(At(clause, Reaches)).Any(
                    i => !IsTakenBack(clause, i) && bodies.Exists(b => b > i && LeadsTo(clause, i, b))));
    }

    /// <summary>"By hand", "at hand", "hand warm": no hand that was hit.</summary>
    private static bool IsTool(List<string> clause, int at) => clause[at] is "hand" or "hands"
        && ((at > 0 && clause[at - 1] is "by" or "at" or "gloved" or "second" or "other")
            || (at + 1 < clause.Count && clause[at + 1] is "warm" or "held" or "lens"));

    /// <summary>"On my hand", "in the worker's eye".</summary>
    private static bool LeadsTo(List<string> clause, int from, int body) =>
        !clause.Skip(from).Take(body - from).Any(t => t is "none" or "nothing")
            && clause.Take(body).Skip(Math.Max(from, body - FarFromBody)).Any(Onto.Contains);

    /// <summary>"Spat at me", "splashed me": the person stands right behind.</summary>
    private static bool Names(List<string> clause, int from, HashSet<string> people) =>
        clause.Skip(from + 1).Take(FarFromBody).Any(people.Contains);

    private static IEnumerable<int> At(List<string> clause, HashSet<string> words) =>
        Enumerable.Range(0, clause.Count).Where(i => words.Contains(clause[i]));

    private static bool IsTakenBack(List<string> clause, int at) =>
        clause.Skip(Math.Max(0, at - FarFromNot)).Take(at - Math.Max(0, at - FarFromNot)).Any(Not.Contains);
}
