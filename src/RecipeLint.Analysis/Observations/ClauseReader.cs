namespace RecipeLint.Analysis.Observations;

/// <summary>Reads one clause into signs and tests.</summary>
internal static class ClauseReader
{
    /// <summary>Outcomes that need no agent to be understood.</summary>
    private static readonly Dictionary<string, string> OwnAgent = new(StringComparer.Ordinal)
    {
        ["fizzes"] = "vinegar",
        ["burns"] = "flame",
        ["sublimes"] = "flame",
        ["sparks"] = "flame",
        ["pulls"] = "magnet",
    };

    /// <summary>Who looks for one of these and finds none says that there is no deposit.</summary>
    private static readonly HashSet<string> AnyDeposit = new(StringComparer.Ordinal)
    {
        "crystals",
        "sediment",
        "specks",
        "powder",
        "sand",
        "floc",
        "crust",
    };

    public static void Read(IReadOnlyList<ClausePart> raw, Telling told)
    {
        var parts = Settle(raw, told);
        var agents = Numbered(parts, PartKind.Agent);
        var outcomes = Numbered(parts, PartKind.Outcome);
        var consumed = new HashSet<int>();
        if (outcomes.Count > 0)
        {
            ReadOutcomes(parts, agents, outcomes, told);
        }
        else if (agents.Count > 0)
        {
            ReadAgents(parts, agents, told);
        }

        ReadColourChanges(parts, agents, told, consumed);
        ReadSigns(parts, agents.Count > 0 && outcomes.Count > 0 ? outcomes[0].At : int.MaxValue, consumed, told);
    }

    /// <summary>Decides words with two meanings by what stands beside them.</summary>
    private static List<ClausePart> Settle(IReadOnlyList<ClausePart> raw, Telling told)
    {
        var agent = raw.Any(p => p.Kind == PartKind.Agent)
            || (told.OpenAgents.Count > 0 && !raw.Any(p => p is { Kind: PartKind.Sign, AsOutcome: null }));
        var outcome = raw.Any(p => p.Kind == PartKind.Outcome);
        var acid = raw.Any(p => p is { Kind: PartKind.Agent, Id: "vinegar" or "strong-acid" });
        var fizzing = raw.Any(p => p.Kind == PartKind.Agent && p.Id is not ("cold" or "shake" or "water"));
        var parts = new List<ClausePart>(raw.Count);

        // "No smell of chlorine", "no rotten egg smell": one statement about the kind, none about smells at all.
        var named = raw.Any(p => p.Kind == PartKind.Sign && IsKindOfSmell(p.Id));
        foreach (var part in raw.Where(p => !named || p is not { Kind: PartKind.Sign, Id: "smell" }))
        {
            parts.Add(part switch
            {
                { Kind: PartKind.Sign, AsOutcome: "fizzes" } when fizzing
                    || (agent && told.OpenAgents.Exists(a => a is not ("cold" or "shake" or "water")))
                    => new ClausePart(PartKind.Outcome, "fizzes"),
                // "Spits when I drip lemon juice on".
                { Kind: PartKind.Outcome, Id: "sparks" } when acid => new ClausePart(PartKind.Outcome, "fizzes"),
                { Kind: PartKind.Sign, AsOutcome: { } other } when agent && other is not "fizzes" =>
                    new ClausePart(PartKind.Outcome, other),
                { Kind: PartKind.Sign, AsAgent: { } other } when outcome && part.Id is not ("ice" or "smell-ammonia") =>
                    new ClausePart(PartKind.Agent, other),
                _ => part,
            });
        }

        return WithoutWhatItSmellsOf(parts);
    }

    /// <summary>"Rubber smell", "smells of burnt wax": neither rubber nor wax was seen.</summary>
    private static List<ClausePart> WithoutWhatItSmellsOf(List<ClausePart> parts)
    {
        var smell = parts.FindIndex(p => p is { Kind: PartKind.Sign, Id: "smell" });
        if (smell < 0)
        {
            return parts;
        }

        if (smell + 1 < parts.Count && parts[smell + 1] is { Kind: PartKind.Other, Id: "of" or "like" })
        {
            return parts[..(smell + 1)];
        }

        return smell == parts.Count - 1 && smell > 0 && parts[smell - 1] is { Kind: PartKind.Sign } before
            && Vocabulary.Sign(before.Id).Kind == SignKind.Form ? [.. parts[..(smell - 1)], parts[smell]] : parts;
    }

    private static bool IsKindOfSmell(string sign) =>
        Vocabulary.Sign(sign).Kind == SignKind.Smell && sign is not ("smell" or "smell-none" or "vinegar-gone");

    private static void ReadOutcomes(
        List<ClausePart> parts, List<(int At, string Id)> agents, List<(int At, string Id)> outcomes, Telling told)
    {
        foreach (var (at, id) in outcomes)
        {
            var negated = IsNegated(parts, at, outcomes);
            var mine = agents.Where(a => NearestOutcome(outcomes, a.At) == at).Select(a => a.Id).ToList();
            if (mine.Count == 0)
            {
                // "Dissolves in vinegar without fizzing": the agent serves both.
                mine = agents.Count == 0
                    ? Borrowed(parts, id, negated, told)
                    : id is "dissolves" or "fizzes" or "stays" ? [agents.MinBy(a => Math.Abs(a.At - at)).Id] : [];
            }

            var nothing = parts.Take(at).Any(p => p is { Kind: PartKind.Negation, Id: "nothing" });
            if (mine.Count == 0 && id == "dissolves" && nothing)
            {
                mine = ["warm", "vinegar", "strong-acid"];
            }

            if (mine.Count == 0 && id == "dissolves" && parts.FindIndex(IsAcidGoingIn) is >= 0 and var acid)
            {
                // "After adding acid it cleared up" tells a test and not when it clouded.
                mine = ["strong-acid"];
                parts[acid] = new ClausePart(PartKind.Other, parts[acid].Id);
            }

            if (mine.Count == 0)
            {
                told.OpenOutcome = (id, negated);
                told.LastOutcome = id is "dissolves" or "fizzes" ? id : told.LastOutcome;
                continue;
            }

            foreach (var agent in mine)
            {
                Tell(agent, id, negated, told);
            }

            if (parts.Any(p => p.Kind == PartKind.Only) && mine.Contains("strong-acid") && id == "dissolves" && !negated)
            {
                Tell("vinegar", "dissolves", true, told);
            }

            Remember(mine, id, told);
        }
    }

    private static bool IsAcidGoingIn(ClausePart part) => part is { Kind: PartKind.Sign, Id: "on-acid" };

    /// <summary>An agent from the clause before, or the one that goes without saying.</summary>
    private static List<string> Borrowed(List<ClausePart> parts, string outcome, bool negated, Telling told)
    {
        if (told.OpenAgents.Count > 0)
        {
            return [.. told.OpenAgents];
        }

        if (told.LastAgents.Count > 0
            && (parts.Any(p => p.Kind == PartKind.ThatAgent) || !parts.Any(p => p.Kind == PartKind.Sign))
            && outcome is "dissolves" or "fizzes" or "stays" or "helps")
        {
            return [.. told.LastAgents];
        }

        if (negated && outcome == "fizzes")
        {
            // "No fizz" of a bottle that nobody put anything in.
            return [];
        }

        told.FizzedByItself |= outcome == "fizzes";
        return OwnAgent.TryGetValue(outcome, out var own) ? [own] : [];
    }

    private static void ReadAgents(List<ClausePart> parts, List<(int At, string Id)> agents, Telling told)
    {
        var first = agents[0].At;
        if (parts.Any(p => p is { Kind: PartKind.Negation, Id: "nothing" or "none" or "zero" }))
        {
            All("stays", false);
        }
        else if (parts.Take(first).Any(p => p.Kind == PartKind.Negation))
        {
            if (WasNotTried(parts, first, told))
            {
                return;
            }

            All(told.LastOutcome, true);
        }
        else if (parts.FindIndex(p => p is { Kind: PartKind.Sign, Id: "colourless" or "liquid-clear" }) is >= 0 and var clear
            && agents.TrueForAll(a => a.Id is not ("cold" or "flame" or "magnet"))
                && !parts.Any(p => p.Kind == PartKind.Sign && Vocabulary.Sign(p.Id).Kind == SignKind.Form))
        {
            // "Clear after stirring".
            parts[clear] = new ClausePart(PartKind.Other, parts[clear].Id);
            All("dissolves", false);
        }
        else if (told.OpenOutcome is { } open && !parts.Any(p => p.Kind == PartKind.Sign))
        {
            All(open.Outcome, open.Negated);
        }
        else
        {
            told.OpenAgents.Clear();
            told.OpenAgents.AddRange(agents.Select(a => a.Id));
            foreach (var (_, id) in agents.Where(a => a.Id == "cold" || Follows(parts, a.At)))
            {
                if (ObservationReader.TimeOf(id) is { } time)
                {
                    told.Tell(time, true);
                }
            }
        }

        void All(string outcome, bool negated)
        {
            foreach (var (_, id) in agents)
            {
                Tell(id, outcome, negated, told);
            }

            Remember([.. agents.Select(a => a.Id)], outcome, told);
        }
    }

    /// <summary>"Never hot", "I have not tried acid": without a test before it, or "not in vinegar", nothing was tried.</summary>
    private static bool WasNotTried(List<ClausePart> parts, int agent, Telling told) =>
        told.LastAgents.Count == 0 && told.OpenOutcome is null
        && parts[agent - 1] is not { Kind: PartKind.Other, Id: "in" or "with" or "by" or "on" };

    /// <summary>"After potassium hydroxide": the agent says when.</summary>
    private static bool Follows(List<ClausePart> parts, int agent) =>
        agent > 0 && parts[agent - 1] is { Kind: PartKind.Other, Id: "after" or "once" or "since" };

    private static void Remember(List<string> agents, string outcome, Telling told)
    {
        told.OpenAgents.Clear();
        told.OpenOutcome = null;
        told.LastAgents.Clear();
        told.LastAgents.AddRange(agents);
        told.LastOutcome = outcome is "dissolves" or "fizzes" ? outcome : told.LastOutcome;
    }

    private static void Tell(string agent, string outcome, bool negated, Telling told)
    {
        switch (outcome)
        {
            case "dissolves" when agent == "flame":
                told.Tell("flame-melts", !negated);
                break;
            case "sublimes":
                told.Tell("flame-melts", !negated);
                break;
            case "burns" or "sparks":
                told.Tell("flame-" + outcome, !negated);
                break;
            case "pulls":
                told.Tell("magnet-pulls", !negated);
                break;
            case "helps":
                TellTest(agent, "dissolves", !negated, told);
                break;
            case "stays":
                // "No effect": neither dissolves nor fizzes. "Does not stay" says that it goes.
                TellTest(agent, "dissolves", negated, told);
                if (!negated && agent is "vinegar" or "strong-acid")
                {
                    TellTest(agent, "fizzes", false, told);
                }

                break;
            case "worse" when agent == "warm":
                told.Tell("warm-worse", !negated);
                TellTest("warm", "dissolves", false, told);
                break;
            case "returns" when agent == "shake":
                // What settles again after shaking has not dissolved by it.
                TellTest("shake", "dissolves", negated, told);
                break;
            case "worse" or "appears" or "returns" or "turns":
                if (!negated && outcome != "turns" && ObservationReader.TimeOf(agent) is { } time)
                {
                    told.Tell(time, true);
                }

                break;
            default:
                TellTest(agent, outcome, !negated, told);
                break;
        }
    }

    private static void TellTest(string agent, string outcome, bool yes, Telling told)
    {
        if (Vocabulary.Test(agent, outcome) is { } sign)
        {
            told.Tell(sign.Id, yes);
        }
    }

    /// <summary>A colour that an agent brings about is the outcome of a test, not the colour of the deposit.</summary>
    private static void ReadColourChanges(List<ClausePart> parts, List<(int At, string Id)> agents, Telling told, HashSet<int> consumed)
    {
        for (var i = 0; i < parts.Count; i++)
        {
            if (parts[i].Kind != PartKind.Sign || agents.Count == 0)
            {
                continue;
            }

            var agent = agents.OrderBy(a => Math.Abs(a.At - i)).First().Id;
            var sign = (agent, parts[i].Id) switch
            {
                ("alkali" or "bicarbonate", "brown" or "rust") => "alkali-browns",
                ("alkali", "smell-ammonia") => "alkali-ammonia",
                ("flame", "green" or "blue-green") => "flame-green",
                ("flame", "purple") => "flame-violet",
                ("flame", "black") => "flame-burns",
                ("reductant", "colourless" or "liquid-faded") => "reductant-dissolves",
                ("bleach", "white" or "colourless" or "liquid-faded") => "bleach-dissolves",
                _ => null,
            };
            if (sign is not null)
            {
                told.Tell(sign, !IsNegated(parts, i, []));
                consumed.Add(i);
                Remember([agent], "turns", told);
            }
        }
    }

    /// <param name="testFrom">From this part on a colour belongs to what a test did.</param>
    private static void ReadSigns(List<ClausePart> parts, int testFrom, HashSet<int> consumed, Telling told)
    {
        var negated = false;
        for (var i = 0; i < parts.Count; i++)
        {
            switch (parts[i].Kind)
            {
                case PartKind.Negation:
                    negated = true;
                    if (parts[i].Id is "nothing" or "none" && !parts.Any(p => p.Kind is PartKind.Agent or PartKind.Outcome)
                        && told.OpenAgents.Count == 0
                            && !parts.Skip(i + 1).Any(p => p.Kind == PartKind.Sign && Vocabulary.Sign(p.Id).Kind != SignKind.Place))
                    {
                        told.Tell("deposit", false);
                    }
                    else if (parts[i].Id == "nothing" && told.OpenAgents.Count > 0 && parts.Count(p => p.Kind != PartKind.Other) == 1)
                    {
                        foreach (var agent in told.OpenAgents.ToList())
                        {
                            Tell(agent, "stays", false, told);
                        }

                        Remember([.. told.OpenAgents], "stays", told);
                    }

                    break;
                case PartKind.And:
                    negated = false;
                    break;
                case PartKind.Sign when !consumed.Contains(i):
                    TellSign(parts, i, negated, i > testFrom, told);
                    negated = negated && (IsJoined(parts, i) || IsModifier(parts, i));
                    break;
                default:
                    break;
            }
        }
    }

    private static bool IsJoined(List<ClausePart> parts, int i) => i + 1 < parts.Count && parts[i + 1].Kind == PartKind.Or;

    /// <summary>"No white crystals": the negation reaches through the colour to the thing.</summary>
    private static bool IsModifier(List<ClausePart> parts, int i) =>
        i + 1 < parts.Count && parts[i + 1].Kind == PartKind.Sign && Vocabulary.Sign(parts[i].Id).Kind is SignKind.Colour or SignKind.Feel;

    private static void TellSign(List<ClausePart> parts, int i, bool negated, bool afterTest, Telling told)
    {
        var sign = Vocabulary.Sign(parts[i].Id);
        switch (sign.Kind)
        {
            case SignKind.Colour when afterTest:
                break;
            case SignKind.Colour when OfLiquid(parts, i):
                if (!negated)
                {
                    told.TellLiquid(sign.Id);
                }

                break;
            case SignKind.Colour or SignKind.Place or SignKind.Time or SignKind.Liquid when negated:
                if (sign.Id is "normal" or "liquid-changed" or "liquid-faded")
                {
                    told.Tell(sign.Id, false);
                }

                break;
            case SignKind.Form or SignKind.Feel or SignKind.Gas or SignKind.Smell:
                told.Tell(sign.Id, !negated);
                told.MeansNoDeposit |= negated && AnyDeposit.Contains(sign.Id);

                break;
            default:
                told.Tell(sign.Id, true);
                break;
        }
    }

    /// <summary>True for a colour of the liquid: "blue solution", "the liquid turned yellow", and a lone "clear".</summary>
    private static bool OfLiquid(List<ClausePart> parts, int i)
    {
        bool FormWithin(int from, int to) => parts.Skip(from).Take(to - from)
            .Any(p => p.Kind == PartKind.Sign && Vocabulary.Sign(p.Id).Kind is SignKind.Form);

        for (var n = i + 1; n < parts.Count && n <= i + 3; n++)
        {
            if (parts[n].Kind == PartKind.Liquid)
            {
                return true;
            }

            if (parts[n].Kind == PartKind.Sign && Vocabulary.Sign(parts[n].Id).Kind is SignKind.Form)
            {
                return false;
            }
        }

        var before = parts.FindLastIndex(i, p => p.Kind == PartKind.Liquid);
        if (before >= 0 && !FormWithin(before, i) && !FormWithin(i + 1, Math.Min(parts.Count, i + 4)))
        {
            return true;
        }

        return parts[i].Id == "colourless"
            && !FormWithin(0, parts.Count)
            && parts.All(p => p.Kind != PartKind.Sign || p.Id is "colourless" || Vocabulary.Sign(p.Id).Kind != SignKind.Feel);
    }

    private static bool IsNegated(List<ClausePart> parts, int at, List<(int At, string Id)> outcomes)
    {
        var from = outcomes.Where(o => o.At < at).Select(o => o.At + 1).DefaultIfEmpty(0).Max();
        return parts.Skip(from).Take(at - from).Any(p => p.Kind == PartKind.Negation)
            || (at + 1 < parts.Count && parts[at + 1] is { Kind: PartKind.Negation, Id: "not" or "nothing" or "neither" });
    }

    private static int NearestOutcome(List<(int At, string Id)> outcomes, int agent) =>
        outcomes.OrderBy(o => Math.Abs(o.At - agent)).ThenBy(o => o.At).First().At;

    private static List<(int At, string Id)> Numbered(List<ClausePart> parts, PartKind kind)
    {
        var found = new List<(int, string)>();
        for (var i = 0; i < parts.Count; i++)
        {
            if (parts[i].Kind == kind)
            {
                found.Add((i, parts[i].Id));
            }
        }

        return found;
    }
}
