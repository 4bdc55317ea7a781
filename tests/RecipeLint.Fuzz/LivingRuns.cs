using System.Text;
using RecipeLint.Living;
using RecipeLint.Reports.Handbook;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Fuzz;

/// <summary>What stands in a shop beside its recipes and is written by commands: accepted findings, baselines, the score of the first week.</summary>
internal static class LivingRuns
{
    private static readonly Lazy<IReadOnlyList<LearnExercise>> _exercises = new(LearnExercise.All);

    /// <summary>Accepts a finding that a check reports, or one that nobody reports.</summary>
    public static Execution Accept(Random random, FuzzShop shop)
    {
        var files = ShopMutator.Mutate(random, shop);
        var (pick, invented) = (random.Next(), Words.Text(random, Words.Pieces, Words.Numbers) + " a.stock.json:" + Words.Pick(random, Words.Numbers) + " RL0101");
        var reason = Words.Text(random, Words.Signs, Words.Pieces);
        string[] until = random.Next(3) == 0 ? ["--until=" + Words.Pick(random, "2027-01-01", "2026-02-30", "0001-01-01", "9999-12-31", "٢٠٢٧-01-01", "")] : [];
        return new Execution(
            () => ProgramRun.Shown(files, ["accept", .. until, reason]),
            () =>
            {
                var (_, output) = ProgramRun.Run(files, "", ["check", ".", "--quiet"]);
                var lines = output.Split('\n').Where(l => l.Contains(" RL", StringComparison.Ordinal)).ToList();
                var finding = lines.Count == 0 || pick % 5 == 0 ? invented : lines[pick % lines.Count];
                DiskRun.Run(files, "", [.. files.Keys.Where(IsSettings), "*"], ["accept", .. finding.Split(' ').Take(3), "--because=" + reason, .. until]);
            });
    }

    /// <summary>A baseline of some of today's findings, mutated, then brought up to date, pruned, compared or checked against.</summary>
    public static Execution Baseline(Random random, FuzzShop shop)
    {
        var files = ShopMutator.Mutate(random, shop);
        var entries = Enumerable.Range(0, random.Next(0, 30)).Select(_ => new BaselineEntry(
            Words.Pick(random, "RL0101", "RL0403", "RL0001", "RL9999", ""),
            Words.Pick(random, [.. files.Keys, "gone.stock.json"]),
            Words.Pick(random, "", "potassium-nitrate", "steps", "\u202e"),
            random.Next(3) == 0 ? null : random.NextDouble() * 100));
        var bytes = BaselineFile.Write(entries);
        for (var left = random.Next(0, 4); left > 0; left--)
        {
            bytes = random.Next(4) == 0 ? ShopMutator.Bytes(random, bytes) : ShopMutator.Values(random, bytes, [.. files.Keys]);
        }

        files[BaselineFile.UsualName] = bytes;
        string[] arguments = random.Next(4) switch
        {
            0 => ["baseline", "update", "."],
            1 => ["baseline", "prune", "."],
            2 => ["baseline", "compare", "."],
            _ => ["check", ".", "--baseline", BaselineFile.UsualName, "--with-suppressed"],
        };
        return DiskRun.Of(files, "", arguments[0] == "check" ? [] : [BaselineFile.UsualName], arguments);
    }

    /// <summary>Exercises somebody worked on, a score somebody may have changed, and answers.</summary>
    public static Execution Learn(Random random)
    {
        var exercise = Words.Pick(random, _exercises.Value);
        var shop = new FuzzShop(exercise.Name, [.. (random.Next(2) == 0 ? exercise.Flawed : exercise.Mended).Select(f => (f.Path, Encoding.UTF8.GetBytes(f.Text)))]);
        var files = ShopMutator.Mutate(random, shop).ToDictionary(f => $"first-week/{exercise.Name}/{f.Key}", f => f.Value, StringComparer.Ordinal);
        if (random.Next(2) == 0)
        {
            var marks = string.Join(",", _exercises.Value.Take(random.Next(0, 12)).Where(e => e != exercise).Select(e =>
                $$"""  "{{e.Name}}": {"answered": {{Words.Pick(random, "true", "null", "false")}}, "tries": {{Words.Pick(random, "1", "2147483647")}}, "mended": {{Words.Pick(random, "true", "true", "false")}}, "shown": false}"""));
            var score = Encoding.UTF8.GetBytes($$"""{"format": 1, "exercises": { {{marks}} } }""");
            files["first-week/score.json"] = random.Next(3) == 0 ? ShopMutator.Values(random, score, []) : score;
        }

        return DiskRun.Of(files, Targets.Answers(random), ["first-week/score.json"], ["learn", .. random.Next(4) == 0 ? ["--score"] : Array.Empty<string>(), "--width", Words.Pick(random, "40", "100")]);
    }

    private static bool IsSettings(string path) => path.EndsWith("recipelint.json", StringComparison.Ordinal);
}
