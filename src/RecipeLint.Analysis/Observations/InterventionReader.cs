using System.Collections.Frozen;
using System.Text.Json;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Chemistry.Composition;
using RecipeLint.Chemistry.Data;
using RecipeLint.Chemistry.Substances;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Observations;

/// <summary>
/// Reads out of free words what somebody put in: an act ("poured"), a reagent ("bleach") in the same clause or in the next, no trial on a
/// spoonful. What somebody asks whether to put in counts as asked, and of bleach every mention but a smell and a test. Errs on the safe
/// side: what was put in is only ever asked of the hazard gate. Never throws.
/// </summary>
internal static class InterventionReader
{
    private const int LongestPhrase = 5, FarFromNot = 4;

    private static readonly Lazy<Words> Data = new(Read);

    /// <summary>What went in, each once, and the same tokens without the reagents that would read as a sign.</summary>
    /// <param name="tokens">In lower case; an empty one stands for punctuation.</param>
    public static (IReadOnlyList<PutIn> In, IReadOnlyList<string> Left) Read(IReadOnlyList<string> tokens)
    {
        var words = Data.Value;
        var found = new List<PutIn>();
        var left = new List<string>();
        var acted = false;
        var alarmed = tokens.Any(words.Alarms.Contains);
        foreach (var clause in Clauses(tokens))
        {
            var act = ActOf(clause);
            var done = act == Act.Done;
            var named = Reagents(clause).Concat(Bleached(clause)).ToList();
            var trial = Enumerable.Range(0, clause.Length)
                .Any(i => words.Samples.Contains(clause[i]) && !named.Exists(n => i >= n.Start && i < n.Start + n.Length));
            named = trial ? [] : named;
            var acts = act != Act.None || acted;
            var counting = named.Where(n => acts || (IsBleach(n) && !IsTest(clause, n))).ToList();
            found.AddRange(counting.Where(n => !(IsBleach(n) && IsTakenBackBefore(clause, n.Start)))
                .Select(n => n.Put with { IsAsked = act == Act.Asked }));

            if (Holds(clause, words.Unknown) || ((done || acted) && named.Count == 0 && !trial && Holds(clause, words.UnknownPut)))
            {
                found.Add(new PutIn("something unknown", null));
            }
            else if (alarmed && done && named.Count == 0 && !trial && Stranger(clause) is { } stranger)
            {
                found.Add(new PutIn(stranger, null));
            }

            var masked = counting.Where(n => n.Masked).SelectMany(n => Enumerable.Range(n.Start, n.Length)).ToHashSet();
            left.AddRange(clause.Select((token, i) => masked.Contains(i) ? "" : token));
            left.Add("");
            acted = done && named.Count == 0;
        }

        return ([.. found.Distinct()], left);
    }

    /// <summary>True for a word that an act or a reagent is told with, so that it is not taken for a slip of the pen.</summary>
    public static bool Knows(string token) => Data.Value.Verbs.Contains(token) || Data.Value.Singles.Contains(token);

    /// <summary>What of the catalogue stands for an everyday name such as "pool shock"; null where nobody knows it.</summary>
    public static Substance? Stands(string name) => Data.Value.Reagents.GetValueOrDefault(name.ToLowerInvariant())?.Substance;

    private enum Act
    {
        None,
        Asked,
        Done,
    }

    /// <summary>An act that nothing before it takes back, done or asked about; "don't know who poured" takes nothing back.</summary>
    private static Act ActOf(string[] clause)
    {
        var asked = false;
        for (var i = 0; i < clause.Length && !IsTakenBack(clause, i); i++)
        {
            if (Data.Value.Verbs.Contains(clause[i]) || GoesIn(clause, i))
            {
                return asked ? Act.Asked : Act.Done;
            }

            asked |= Data.Value.Hypothetical.Contains(clause[i]);
        }

        return Act.None;
    }

    private static bool IsBleach(Named named) => named.Put.Substance is { } what && HazardRoles.Of(what).Contains(HazardRole.Hypochlorite);

    /// <summary>"Dissolves in bleach", "bleach turns it white": a test on the deposit.</summary>
    private static bool IsTest(string[] clause, Named named)
    {
        var (before, after) = (named.Start - 1, named.Start + named.Length);
        return (before > 0 && Data.Value.TestedBy.Contains(clause[before]) && clause.Take(before).Any(Data.Value.Outcomes.Contains))
            || (after < clause.Length && Data.Value.Outcomes.Contains(clause[after]));
    }

    private static bool IsTakenBackBefore(string[] clause, int at) =>
        Enumerable.Range(Math.Max(0, at - FarFromNot), Math.Min(at, FarFromNot)).Any(i => IsTakenBack(clause, i));

    /// <summary>"We bleached the tank", "after shocking the lines"; "the leaves bleached" is no act.</summary>
    private static IEnumerable<Named> Bleached(string[] clause)
    {
        var words = Data.Value;
        for (var i = 0; i < clause.Length; i++)
        {
            if (words.Bleaches.Contains(clause[i]) && clause[i] != "bleach"
                && (clause.Take(i).Skip(Math.Max(0, i - 3)).Any(words.Bleachers.Contains)
                    || clause.Skip(i + 1).Take(3).Any(words.BleachedThings.Contains)
                    || clause.Take(i).Skip(Math.Max(0, i - 3)).Any(t => t != "it" && words.BleachedThings.Contains(t))))
            {
                yield return new Named(i, 1, true, new PutIn("bleach", words.Reagents["bleach"].Substance));
            }
        }
    }

    /// <summary>"Silicate goes in last"; "the EC goes up" puts nothing in.</summary>
    private static bool GoesIn(string[] clause, int at) =>
        clause[at] is "goes" or "go" or "going" && at + 1 < clause.Length && clause[at + 1] is "in" or "into";

    /// <summary>Beside an act of putting in, a word that nobody knows: a thing that went in, as far as anyone can tell.</summary>
    private static string? Stranger(string[] clause) => Array.Exists(clause, Data.Value.Puts.Contains)
        ? Array.Find(clause, t => t.Length > 2 && !char.IsDigit(t[0]) && !Vocabulary.IsKnown(t, Stem.Of(t)) && !Knows(t)
            && !Data.Value.Alarms.Contains(t))
        : null;

    private static bool IsTakenBack(string[] clause, int at) =>
        Vocabulary.Negations.Contains(clause[at]) && clause[at] is not ("free" or "of")
        && (at + 1 == clause.Length || clause[at + 1] is not ("know" or "idea" or "sure" or "clue"));

    private static IEnumerable<string[]> Clauses(IReadOnlyList<string> tokens)
    {
        var start = 0;
        for (var i = 0; i <= tokens.Count; i++)
        {
            if (i < tokens.Count && tokens[i].Length > 0)
            {
                continue;
            }

            if (i > start)
            {
                yield return [.. tokens.Skip(start).Take(i - start)];
            }

            start = i + 1;
        }
    }

    /// <summary>Longest names first, none inside another; one that is only smelt of is none.</summary>
    private static IEnumerable<Named> Reagents(string[] clause)
    {
        for (var i = 0; i < clause.Length; i++)
        {
            for (var length = Math.Min(LongestPhrase, clause.Length - i); length > 0; length--)
            {
                if (!Data.Value.Reagents.TryGetValue(string.Join(' ', clause, i, length), out var reagent))
                {
                    continue;
                }

                if (!IsSmelt(clause, i))
                {
                    yield return new Named(
                        i, length, reagent.Masked, new PutIn(string.Join(' ', clause, i, length), reagent.Substance, reagent.HoldsMore));
                }

                i += length - 1;
                break;
            }
        }
    }

    private static bool IsSmelt(string[] clause, int at) =>
        clause.Skip(Math.Max(0, at - 3)).Take(Math.Min(3, at)).Any(Data.Value.Told.Contains)
        || (at + 1 < clause.Length && clause[at + 1] != "like" && Data.Value.Told.Contains(clause[at + 1]));

    private static bool Holds(string[] clause, FrozenSet<string> phrases)
    {
        for (var i = 0; i < clause.Length; i++)
        {
            for (var length = Math.Min(LongestPhrase + 1, clause.Length - i); length > 0; length--)
            {
                if (phrases.Contains(string.Join(' ', clause, i, length)))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static Words Read()
    {
        using var document = EmbeddedJson.Open(typeof(InterventionReader).Assembly, "RecipeLint.Analysis.Observations.interventions.json");
        var root = document.RootElement;
        FrozenSet<string> Set(string name) =>
            root.GetProperty(name).EnumerateArray().Select(e => e.GetString()!).ToFrozenSet(StringComparer.Ordinal);
        var reagents = new Dictionary<string, Reagent>(StringComparer.Ordinal);
        foreach (var row in root.GetProperty("reagents").EnumerateArray())
        {
            var substance = Meant(row);
            var masked = row.TryGetProperty("masked", out var mask) && mask.GetBoolean();
            var holdsMore = row.TryGetProperty("holdsMore", out var more) && more.GetBoolean();
            foreach (var word in row.GetProperty("words").EnumerateArray())
            {
                reagents.Add(word.GetString()!, new Reagent(substance, masked, holdsMore));
            }
        }

        return new Words(
            reagents.Keys.SelectMany(k => k.Split(' ')).ToFrozenSet(StringComparer.Ordinal),
            Set("verbs"), Set("samples"), Set("hypothetical"), Set("told"), Set("unknown"), Set("unknownPut"), Set("puts"), Set("alarms"),
            Set("bleaches"), Set("bleachers"), Set("bleachedThings"), Set("testedBy"), Set("outcomes"),
            reagents.ToFrozenDictionary(StringComparer.Ordinal));
    }

    /// <summary>What of the catalogue a row stands for, a product that is told by its name, or null for what nobody can name.</summary>
    private static Substance? Meant(JsonElement row)
    {
        if (row.TryGetProperty("product", out var product))
        {
            var name = product.GetString()!;
            return new Substance
            {
                Id = Slug.Of(name),
                Name = name,
                Kind = SubstanceKind.Product,
                Content = ElementContent.Empty,
            };
        }

        var id = row.GetProperty("substance").GetString()!;
        return id.Length == 0 ? null : SubstanceCatalogue.BuiltIn.ById(id)
            ?? throw new InvalidOperationException($"interventions.json names '{id}', which is not in the catalogue.");
    }

    private sealed record Reagent(Substance? Substance, bool Masked, bool HoldsMore);

    private readonly record struct Named(int Start, int Length, bool Masked, PutIn Put);

    /// <param name="Singles">Every word that a name of a reagent holds.</param>
    private sealed record Words(
        FrozenSet<string> Singles,
        FrozenSet<string> Verbs,
        FrozenSet<string> Samples,
        FrozenSet<string> Hypothetical,
        FrozenSet<string> Told,
        FrozenSet<string> Unknown,
        FrozenSet<string> UnknownPut,
        FrozenSet<string> Puts,
        FrozenSet<string> Alarms,
        FrozenSet<string> Bleaches,
        FrozenSet<string> Bleachers,
        FrozenSet<string> BleachedThings,
        FrozenSet<string> TestedBy,
        FrozenSet<string> Outcomes,
        FrozenDictionary<string, Reagent> Reagents);
}
