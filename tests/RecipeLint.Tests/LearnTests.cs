using System.Text.Json;
using RecipeLint.Reports;
using RecipeLint.Reports.Handbook;
using RecipeLint.Tests.Support;

namespace RecipeLint.Tests;

public sealed class LearnTests
{
    private static readonly Lazy<IReadOnlyList<LearnExercise>> Week = new(LearnExercise.All);

    private static JsonElement Mark(Scratch folder, string name) =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(folder.Path, "week", "score.json"))).RootElement.GetProperty("exercises").GetProperty(name);

    private static int Right(LearnExercise exercise) => exercise.Choices().ToList().FindIndex(c => c.IsRight) + 1;

    /// <summary>Of the choices exactly one is what the engine finds in the files; the others it was asked and denies.</summary>
    [Fact]
    public void EveryQuestionHasOneRightAnswerAndThreeThatTheEngineDenies()
    {
        Assert.Equal(10, Week.Value.Count);
        Assert.Equal(RuleHandbook.Exercises().Select(f => f.Path.Split('/')[0]).Distinct().Order(), Week.Value.Select(e => e.Name).Order());
        foreach (var exercise in Week.Value)
        {
            var choices = exercise.Choices();
            Assert.Equal(4, choices.Count);
            Assert.Single(choices, c => c.IsRight);
            Assert.NotEmpty(exercise.Finding);
            Assert.All(choices.Where(c => !c.IsRight), c => Assert.EndsWith(".", exercise.WhyNot(c), StringComparison.Ordinal));
        }

        // The right one stands in different places.
        Assert.True(Week.Value.Select(Right).Distinct().Count() > 2);
    }

    [Fact]
    public void TheFlawedFilesAreNotMendedAndTheMendedOnesAre()
    {
        foreach (var exercise in Week.Value)
        {
            Assert.False(exercise.Judge(Bytes(exercise.Flawed)).IsMended, exercise.Name);
            Assert.Empty(exercise.Judge(Bytes(exercise.Mended)).Says);
        }
    }

    [Fact]
    public void LeavingOutWhatThePlantsNeedIsNoMending()
    {
        var iron = Week.Value[0];
        var alone = iron.Mended.Where(f => f.Path.StartsWith("part-a", StringComparison.Ordinal)).ToList();
        var verdict = iron.Judge(Bytes(alone));
        Assert.False(verdict.IsMended);
        Assert.Contains("Mg", Assert.Single(verdict.Says), StringComparison.Ordinal);
        Assert.False(iron.Judge([]).IsMended);
    }

    [Fact]
    public void ThePipedWalkAsksJudgesAndKeepsTheScoreInItsFolder()
    {
        using var folder = new Scratch();
        var (first, second) = (Week.Value[0], Week.Value[1]);

        // Right, judged too early, on to the next; wrong there, looked at, stopped.
        var wrong = (Right(second) % 4) + 1;
        var answer = Cli.RunIn(folder.Path, Typed($"seven\n{Right(first)}\n\nnext\n{wrong}\nshow\nwhat\nstop\n"), "learn", "week", "--width", "72");
        Assert.Equal((0, ""), (answer.Code, answer.Error));
        Assert.Contains("A number from 1 to 4.", answer.Out, StringComparison.Ordinal);
        Assert.Contains("Right.", answer.Out, StringComparison.Ordinal);
        Assert.Contains("Not yet:", answer.Out, StringComparison.Ordinal);
        Assert.Contains("No. It was looked at", answer.Out, StringComparison.Ordinal);
        Assert.Contains("1 of 10 questions right at once, 0 of 10 exercises mended", answer.Out, StringComparison.Ordinal);
        Assert.True(Mark(folder, first.Name).GetProperty("answered").GetBoolean());
        Assert.Equal(1, Mark(folder, first.Name).GetProperty("tries").GetInt32());
        Assert.False(Mark(folder, second.Name).GetProperty("answered").GetBoolean());
        Assert.True(Mark(folder, second.Name).GetProperty("shown").GetBoolean());
        Assert.Equal(["week"], Directory.EnumerateFileSystemEntries(folder.Path).Select(Path.GetFileName));

        // Mended on the disk, it goes on where it was, and asks nothing twice.
        File.Delete(Path.Combine(folder.Path, "week", first.Name, first.Flawed[0].Path));
        first.Mended.ToList().ForEach(f => folder.Write(Path.Combine("week", first.Name, f.Path), f.Text));
        var again = Cli.RunIn(folder.Path, Typed("\n"), "learn", "week");
        Assert.Contains("Mended: no rule objects.", again.Out, StringComparison.Ordinal);
        Assert.Contains("1 of 10 exercises mended", again.Out, StringComparison.Ordinal);
        Assert.True(Mark(folder, first.Name).GetProperty("mended").GetBoolean());
        Assert.Contains("1 of 10 exercises mended", Cli.RunIn(folder.Path, null, "learn", "week", "--score").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void NobodyAnsweringIsNoFault()
    {
        using var folder = new Scratch();
        var answer = Cli.RunIn(folder.Path, Typed(""), "learn", "--width", "60");
        Assert.Equal((0, ""), (answer.Code, answer.Error));
        Assert.True(File.Exists(Path.Combine(folder.Path, "first-week", "1a-calcium-with-sulfate", "part-a.stock.json")));
        Assert.All(
            answer.Out.Split('\n').Where(l => !l.StartsWith("wrote ", StringComparison.Ordinal) && !l.TrimStart().StartsWith('{')),
            l => Assert.True(DisplayWidth.Of(l) <= 160, l));
    }

    [Theory]
    [InlineData("[]")]
    [InlineData("{\"format\": 2, \"exercises\": {}}")]
    [InlineData("{\"format\": 1, \"exercises\": {\"x\": 1}}")]
    [InlineData("")]
    public void AScoreThatIsNoneIsOneLineAndStays(string text)
    {
        using var folder = new Scratch();
        var path = folder.Write("week/score.json", text);
        var answer = Cli.RunIn(folder.Path, Typed("1\n"), "learn", "week");
        Assert.Equal(2, answer.Code);
        Assert.Contains("score.json", Assert.Single(answer.Error.TrimEnd('\n').Split('\n')), StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(path));
    }

    private static byte[] Typed(string lines) => System.Text.Encoding.UTF8.GetBytes(lines);

    private static IReadOnlyList<(string Path, byte[] Bytes)> Bytes(IReadOnlyList<(string Path, string Text)> files) =>
        [.. files.Select(f => (f.Path, System.Text.Encoding.UTF8.GetBytes(f.Text)))];
}
