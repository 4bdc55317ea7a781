using System.CommandLine;
using System.Text;
using RecipeLint.Reports;
using RecipeLint.Reports.Handbook;
using RecipeLint.Shell;

namespace RecipeLint.Commands;

/// <summary>Walks the first week of the handbook on the terminal.</summary>
internal static class LearnCommand
{
    public static Command Build(Surroundings world)
    {
        var folder = new Argument<string>("folder")
        {
            Description = "Where the exercises and the score stand; they are written there the first time.",
            DefaultValueFactory = _ => "first-week",
        };
        var tell = new Option<bool>("--score") { Description = "Print the score and ask nothing." };
        var width = SharedOptions.Width();
        var color = SharedOptions.Color();
        var command = new Command(
            "learn", "Walk the first week: a flawed file, a question, and your mended file judged; the score stays in the folder.")
        {
            folder, tell, width, color,
        };
        command.SetAction(parsed =>
        {
            var named = parsed.GetValue(folder)!;
            var target = Path.GetFullPath(named, world.CurrentDirectory);
            var exercises = LearnExercise.All();
            var score = LearnScore.In(world, target, named);
            if (!parsed.GetValue(tell) && !exercises.Any(e => Directory.Exists(Path.Combine(target, e.Name))))
            {
                NewFiles.Write(
                    world, target, named, [.. exercises.SelectMany(e => e.Flawed.Select(f => (Path.Combine(e.Name, f.Path), f.Text)))]);
            }

            using var answers = new StreamReader(world.StandardInput(), Encoding.UTF8);
            var options = new TextOptions(world.UseColor(parsed.GetValue(color)!), world.Width(parsed.GetValue(width)));
            var walk = new LearnWalk(answers, world.Out, options, exercises, score, world.Files(target), named);
            if (parsed.GetValue(tell))
            {
                walk.Tell();
            }
            else
            {
                walk.Go();
            }

            return ExitCodes.Clean;
        });
        return command;
    }
}
