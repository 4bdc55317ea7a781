namespace RecipeLint.Analysis.Observations;

/// <summary>
/// Finds what is told of plants, which nothing here judges by looks, and takes it out before "leaves" reads as flakes. Everyday words:
/// common practice, no source.
/// </summary>
internal static class PlantWords
{
    /// <summary>Words that only a plant is told with.</summary>
    private static readonly HashSet<string> Plant = new(StringComparer.Ordinal)
    {
        "vein", "veins", "foliage", "root", "roots", "stem", "stems", "shoot", "shoots", "seedling", "seedlings", "chlorosis", "chlorotic",
        "necrosis", "necrotic", "wilt", "wilts", "wilting", "wilted", "blossom", "flowers", "fruit", "fruits", "buds", "petiole",
        "leafs", "tomatoes", "cucumbers", "peppers", "strawberries", "lettuces", "berries", "canopy", "bud", "stunted", "growing",
    };

    private static readonly HashSet<string> Leaf = new(StringComparer.Ordinal) { "leaf", "leaves" };

    /// <summary>What makes a leaf one of a plant and not a thin crystal, nor "leaves" a verb.</summary>
    private static readonly HashSet<string> OfLeaf = new(StringComparer.Ordinal)
    {
        "edge", "edges", "margin", "margins", "tip", "tips", "burnt", "burned", "burn", "scorched", "curl", "curls", "curled", "curling",
        "droop", "drooping", "new", "newest", "old", "older", "oldest", "young", "younger", "youngest", "crop", "plant", "plants", "tomato",
        "lettuce", "cucumber", "basil", "turning", "bleached", "bleaching", "yellowing", "dying", "spotted", "lower", "upper",
    };

    /// <summary>What a bottle or a tank has and no plant: told behind "and", it is no part of the plant.</summary>
    private static readonly HashSet<string> Things = new(StringComparer.Ordinal)
    {
        "dripper", "drippers", "line", "lines", "pipe", "pipes", "hose", "tank", "bottle", "water", "filter", "bottom", "solution", "stock",
        "emitter", "emitters", "canister", "liquid", "crystals", "crust", "deposit",
    };

    /// <summary>What was told of plants, as written, and the tokens without it.</summary>
    /// <param name="tokens">In lower case; an empty one stands for punctuation.</param>
    public static (IReadOnlyList<string> Told, IReadOnlyList<string> Left) Read(IReadOnlyList<string> tokens)
    {
        var told = new List<string>();
        var left = new List<string>();
        var clause = new List<string>();
        foreach (var token in tokens.Append(""))
        {
            if (token.Length > 0 && token is not ("but" or "while"))
            {
                clause.Add(token);
                continue;
            }

            Close(clause, told, left);
            left.Add(token);
            clause.Clear();
        }

        return (told, left);
    }

    private static void Close(List<string> clause, List<string> told, List<string> left)
    {
        if (!IsOfPlant(clause))
        {
            left.AddRange(clause);
            return;
        }

        // "Roots brown and slimy" is one plant, "roots brown and crust on the drippers" is not.
        var rest = clause.Count;
        for (var i = clause.Count - 1; i > 0; i--)
        {
            if (clause[i] == "and" && clause.Skip(i).Any(Things.Contains) && !IsOfPlant([.. clause.Skip(i)]))
            {
                rest = i;
            }
        }

        told.Add(string.Join(' ', clause.Take(rest)));
        left.AddRange(clause.Skip(rest + 1));
    }

    private static bool IsOfPlant(IReadOnlyList<string> clause) =>
        clause.Any(Plant.Contains) || GrowsSlowly(clause)
            || TurnsColour(clause)
            || (clause.Any(Leaf.Contains) && (clause.Any(OfLeaf.Contains) || IsOnALeaf(clause)));

    /// <summary>"Growth is slow", "poor growth": of a plant; "a growth at the bottom" is a deposit.</summary>
    private static bool GrowsSlowly(IReadOnlyList<string> clause) =>
        clause.Contains("growth") && clause.Any(t => t is "slow" or "poor" or "weak" or "stopped" or "stops" or "slower");

    /// <summary>"Spots on the leaves".</summary>
    private static bool IsOnALeaf(IReadOnlyList<string> clause)
    {
        for (var i = 1; i < clause.Count; i++)
        {
            if (Leaf.Contains(clause[i]) && (clause[i - 1] == "on" || (i > 1 && clause[i - 2] == "on" && clause[i - 1] is "the" or "my")))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>"The leaves are yellow", "plants go pale": what leaves are, not what leaves something behind.</summary>
    private static bool TurnsColour(IReadOnlyList<string> clause)
    {
        for (var i = 0; i + 2 < clause.Count; i++)
        {
            if ((Leaf.Contains(clause[i]) || clause[i] is "plants" or "crop")
                && clause[i + 1] is "are" or "is" or "looks" or "turns" or "goes" or "got" or "not" or "arent" or "have"
                    or "turn" or "turned" or "go" or "going" or "gone" or "went" or "get" or "look"
                && clause[i + 2] is "yellow" or "pale" or "brown" or "purple" or "red" or "white" or "spots" or "brownish" or "yellowish")
            {
                return true;
            }
        }

        return false;
    }
}
