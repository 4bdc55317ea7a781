using RecipeLint.Chemistry.Substances;

namespace RecipeLint.Analysis.Observations;

/// <summary>
/// Reads free words into signs. A clause is searched for phrases of the vocabulary, the longest first; a test is an agent ("vinegar") with
/// an outcome ("fizzes") in one clause or in two that follow each other; a negation holds for what comes after it in its clause. Never
/// throws.
/// </summary>
public static class ObservationReader
{
    /// <summary>What was seen.</summary>
    public static Observation Read(string text)
    {
        var tokens = ClearBefore(ColourBefore(ObservationWords.Tokens(text)));
        var asked = Questions.Asked(text);
        var alarm = AlarmWords.Of(tokens);
        var (putIn, besides) = InterventionReader.Read(alarm.Left);
        var (harmed, sound, ofTheHit) = PersonWords.Read(besides);
        var (plants, left) = PlantWords.Read(sound);
        var (clauses, unknown, reread) = ObservationWords.Read(left);
        var told = new Telling();
        foreach (var sign in alarm.Signs.Concat(harmed).Concat(GasOf(alarm.OfTheHarm)).Concat(GasOf(ofTheHit)))
        {
            told.Tell(sign, true);
        }

        var parts = JoinedParts.Of(besides);
        if (parts.Count > 0)
        {
            told.Tell("on-joining", true);
        }

        Read(clauses, told);
        var ofTheHurt = InterventionReader.Read(alarm.OfTheHarm).In.Where(p => p.Substance is not null);
        var all = AcidWentIn(VinegarWentIn(Questions.WithoutWhatIsAsked(told.Close(unknown, reread), asked) with
        {
            PutIn = [.. putIn.Concat(ofTheHurt).Distinct()],
            Parts = parts,
            Plants = plants,
        }));
        return told.FizzedByItself ? FizzedByItself(all) : all;
    }

    /// <summary>Signs of a clause by itself, whether it tells or asks.</summary>
    internal static IReadOnlyList<Seen> Signs(string clause)
    {
        var (clauses, unknown, reread) = ObservationWords.Read(ObservationWords.Tokens(clause));
        var told = new Telling();
        Read(clauses, told);
        return told.Close(unknown, reread).Signs;
    }

    /// <summary>Of what hit somebody only gas, heat, smells and when it was say something of the vessel.</summary>
    private static IEnumerable<string> GasOf(IReadOnlyList<string> tokens)
    {
        var (clauses, unknown, reread) = ObservationWords.Read(tokens);
        var told = new Telling();
        Read(clauses, told);
        return told.Close(unknown, reread).Signs
            .Where(s => s.Present && (s.Sign.Kind is SignKind.Gas or SignKind.Smell or SignKind.Time || s.Sign.Id is "bubbles" or "foam"))
            .Select(s => s.Sign.Id);
    }

    private static void Read(IEnumerable<IReadOnlyList<Word>> clauses, Telling told)
    {
        foreach (var clause in clauses)
        {
            foreach (var part in ClauseParts.Split(ClauseParts.Of(clause)))
            {
                ClauseReader.Read(part, told);
            }
        }
    }

    /// <summary>"Was green, now orange": green is gone, and what is told is that the colour changed.</summary>
    private static List<string> ColourBefore(IReadOnlyList<string> tokens)
    {
        var left = new List<string>(tokens);
        for (var i = 0; i + 2 < left.Count; i++)
        {
            var now = left[i + 2].Length == 0 && i + 3 < left.Count ? i + 3 : i + 2;
            if (left[i] is "was" or "were" && left[now] is "now" && IsColour(left[i + 1]))
            {
                (left[i], left[i + 1]) = ("changed", "colour");
                left.Insert(i + 2, "");
            }
        }

        return left;
    }

    /// <summary>"Clear for weeks, today a bit cloudy", "clear at first": it is not clear now.</summary>
    private static List<string> ClearBefore(List<string> tokens)
    {
        for (var i = 0; i + 2 < tokens.Count; i++)
        {
            if (tokens[i] == "clear" && tokens[i + 1] is "for" or "until" or "till" or "at"
                && (tokens[i + 1] != "at" || tokens[i + 2] == "first")
                && (tokens[i + 1] is not "for" || tokens.Skip(i + 2).Any(t => t is "now" or "today" or "then" or "but" or "yesterday")))
            {
                tokens[i] = "";
            }
        }

        return tokens;
    }

    private static bool IsColour(string token) => Vocabulary.Beginning(Stem.Of(token)).Concat(Vocabulary.Beginning(token)).Any(
        p => p.Words.Count == 1 && p.Kind == PhraseKind.Sign && Vocabulary.Sign(p.Id).Kind == SignKind.Colour);

    /// <summary>A deposit that "fizzes" met an acid; where there is none, the liquid itself gives off gas.</summary>
    private static Observation FizzedByItself(Observation told)
    {
        var fizz = told.Signs.Where(s => s is { Present: true, Sign.Id: "vinegar-fizzes" }).ToList();
        return fizz.Count == 0 || told.Signs.Any(s => IsOfADeposit(s) || s is { Present: true, Sign.Kind: SignKind.Colour })
            ? told
            : (told with { Signs = [.. told.Signs.Except(fizz)] }).With([new Seen(Vocabulary.Sign("bubbles"), true)]);
    }

    /// <summary>"After adding vinegar it cleared up": vinegar did it, and far less gives way to that than to a strong acid.</summary>
    private static Observation VinegarWentIn(Observation told)
    {
        var acids = told.PutIn.Where(p => p is { IsAsked: false, Substance.Kind: SubstanceKind.Acid }).ToList();
        var strong = told.Signs.Where(s => s.Sign.Id == "strong-acid-dissolves").ToList();
        return strong.Count == 0 || acids.Count == 0 || acids.Exists(p => p.Substance is not { Id: "vinegar-5" })
            ? told
            : (told with { Signs = [.. told.Signs.Except(strong)] }).With(
                strong.Select(s => new Seen(Vocabulary.Sign("vinegar-dissolves"), s.Present)));
    }

    /// <summary>
    /// Gas where acid went into the liquid itself is no test of a deposit: where none is told, the liquid fizzed.
    /// </summary>
    private static Observation AcidWentIn(Observation told)
    {
        var fizzed = told.Signs.Where(s => s is { Present: true, Sign.Id: "strong-acid-fizzes" or "vinegar-fizzes" or "reductant-fizzes" })
            .ToList();
        return fizzed.Count == 0 || told.Signs.Any(IsOfADeposit)
            || !told.PutIn.Any(p => p is { IsAsked: false, Substance.Kind: SubstanceKind.Acid })
            ? told
            : (told with { Signs = [.. told.Signs.Except(fizzed)] }).With([new Seen(Vocabulary.Sign("acid-gas"), true)]);
    }

    private static bool IsOfADeposit(Seen seen) => seen.Present
        && (seen.Sign.Kind is SignKind.Feel
            || (seen.Sign.Kind is SignKind.Form && seen.Sign.Id is not ("bubbles" or "foam"))
            || seen.Sign.Id is "walls" or "bottom" or "neck" or "on-metal");

    /// <summary>When it showed: only what speaks of time counts, and what cools, warms or acidifies is a time here.</summary>
    public static Observation ReadTime(string text)
    {
        var (clauses, unknown, reread) = ObservationWords.Read(ObservationWords.Tokens(text));
        var told = new Telling();
        foreach (var item in clauses.SelectMany(ClauseParts.Of))
        {
            if (item.Kind == PartKind.Sign && Vocabulary.Sign(item.Id).Kind == SignKind.Time)
            {
                told.Tell(item.Id, true);
            }
            else if (item.Kind == PartKind.Agent && TimeOf(item.Id) is { } time)
            {
                told.Tell(time, true);
            }
            else if (item.Kind == PartKind.Sign && item.Id == "ice")
            {
                told.Tell("after-cooling", true);
            }
        }

        return told.Close(unknown, reread);
    }

    /// <summary>The time that an agent stands for ("after a frost").</summary>
    internal static string? TimeOf(string agent) => agent switch
    {
        "cold" => "after-cooling",
        "warm" => "on-warming",
        "vinegar" or "strong-acid" => "on-acid",
        "alkali" or "bicarbonate" => "on-alkali",
        _ => null,
    };
}

/// <summary>Collects what is told and sorts out what contradicts itself.</summary>
internal sealed class Telling
{
    private static readonly HashSet<SignKind> OfADeposit = [SignKind.Form, SignKind.Feel];

    private readonly List<Seen> _signs = [];
    private readonly List<Sign> _liquid = [];

    /// <summary>Agents named without an outcome so far.</summary>
    public List<string> OpenAgents { get; } = [];

    /// <summary>The agents of the last test that was told.</summary>
    public List<string> LastAgents { get; } = [];

    /// <summary>An outcome told without an agent.</summary>
    public (string Outcome, bool Negated)? OpenOutcome { get; set; }

    /// <summary>True when the kinds of deposit that were looked for were not found.</summary>
    public bool MeansNoDeposit { get; set; }

    public string LastOutcome { get; set; } = "dissolves";

    /// <summary>True when something fizzed and nothing was named that it fizzed with.</summary>
    public bool FizzedByItself { get; set; }

    public void Tell(string sign, bool present)
    {
        var seen = new Seen(Vocabulary.Sign(sign), present);
        if (!_signs.Contains(seen))
        {
            _signs.Add(seen);
        }
    }

    public void TellLiquid(string colour)
    {
        if (colour == "colourless")
        {
            Tell("liquid-clear", true);
        }
        else if (!_liquid.Any(l => l.Id == colour))
        {
            _liquid.Add(Vocabulary.Sign(colour));
        }
    }

    public Observation Close(IReadOnlyList<string> unknown, IReadOnlyList<Reread> reread)
    {
        if (MeansNoDeposit && !_signs.Exists(s => s.Present && OfADeposit.Contains(s.Sign.Kind)))
        {
            Tell("deposit", false);
        }

        var noDeposit = _signs.Exists(s => s is { Present: false, Sign.Id: "deposit" })
            || _signs.Exists(s => s.Present && s.Sign.Id is "liquid-clear" or "normal");
        var deposit = _signs.Exists(s => s.Present && OfADeposit.Contains(s.Sign.Kind));
        if (noDeposit && !deposit)
        {
            // "Clear and blue, nothing at the bottom": the colour is that of the liquid, and there is no place where nothing is.
            foreach (var colour in _signs.Where(s => s.Present && s.Sign.Kind == SignKind.Colour).ToList())
            {
                _signs.Remove(colour);
                TellLiquid(colour.Sign.Id);
            }

            _signs.RemoveAll(s => s.Sign.Kind == SignKind.Place);
        }

        // A kind of smell says more than that there is one; a smell and none is a contradiction.
        if (_signs.Exists(s => s.Present && s.Sign.Kind == SignKind.Smell && s.Sign.Id is not ("smell" or "smell-none")))
        {
            _signs.RemoveAll(s => s is { Present: true, Sign.Id: "smell" });
        }

        if (_signs.Exists(s => s is { Present: false, Sign.Id: "smell" }))
        {
            _signs.RemoveAll(s => s.Sign.Id == "smell");
            Tell("smell-none", true);
        }

        return new Observation { Unknown = unknown, Reread = reread, LiquidColours = [.. _liquid] }.With(_signs);
    }
}
