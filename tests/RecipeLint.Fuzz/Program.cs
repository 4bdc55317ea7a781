using System.Globalization;
using RecipeLint;
using RecipeLint.Fuzz;
using RecipeLint.Fuzz.Guided;

// dotnet run --project tests/RecipeLint.Fuzz -- TARGET|all SECONDS SEED [LIMIT]     LIMIT: seconds of processor time an execution may take, 2
// dotnet run --project tests/RecipeLint.Fuzz -- TARGET --replay SEED NUMBER
// Instrumented (.ci/fuzz), what meets something new is kept and changed further:
//   TARGET|all SECONDS SEED LIMIT FOLDER     the inputs kept are read from there first and written there at the end
//   TARGET|all SECONDS SEED LIMIT blind      counts what is met without being guided by it
//   TARGET --replay-drawn NUMBERS            an input by the numbers it drew
var edges = Edges.Instance;
if (args is [var one, "--replay", var again, var number])
{
    return Campaign.Replay(Targets.Named(one).Single(), Campaign.RandomOf(Number(again), Number(number)), Console.Out);
}

if (args is [var drawing, "--replay-drawn", var drawn])
{
    return Campaign.Replay(Targets.Named(drawing).Single(), new DrawnRandom(DrawCorpus.Read(drawn), new Random(0)), Console.Out);
}

if (args is not [var name, var seconds, var seed, .. var rest] || Targets.Named(name) is not { Count: > 0 } targets)
{
    Console.Error.WriteLine("TARGET,TARGET|all SECONDS SEED [LIMIT [FOLDER|blind]], or TARGET --replay SEED NUMBER, or TARGET --replay-drawn NUMBERS; targets: "
        + string.Join(", ", Targets.All.Select(t => t.Name)));
    return 2;
}

var limit = TimeSpan.FromSeconds(rest is [var most, ..] ? Number(most) : 2);
var blind = rest is [_, "blind"];
var folder = rest is [_, not "blind" and var named] ? Directory.CreateDirectory(named).FullName : null;
var isInstrumented = typeof(CommandLine).Assembly.GetReferencedAssemblies().Any(a => a.Name == typeof(SharpFuzz.Common.Trace).Assembly.GetName().Name);
if (rest.Length > 1 && !isInstrumented)
{
    Console.Error.WriteLine("nothing is instrumented here, so nothing can be kept or counted; '.ci/fuzz' makes a build that is.");
    return 2;
}

var share = TimeSpan.FromSeconds((double)Number(seconds) / targets.Count);
var faults = 0;
foreach (var target in targets)
{
    var guide = isInstrumented ? new Guide(edges, blind) : null;
    var file = folder is null ? null : Path.Combine(folder, target.Name + ".draws");
    faults += new Campaign(target, Number(seed), limit, Console.Out, guide).Run(share, File.Exists(file) ? File.ReadAllLines(file) : []);
    if (file is not null)
    {
        File.WriteAllLines(file, guide!.Lines());
    }
}

return faults == 0 ? 0 : 1;

static int Number(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
