using System.Globalization;
using RecipeLint.Fuzz;

// dotnet run --project tests/RecipeLint.Fuzz -- TARGET|all SECONDS SEED [LIMIT]     LIMIT: seconds of processor time an execution may take, 2
// dotnet run --project tests/RecipeLint.Fuzz -- TARGET --replay SEED NUMBER
if (args is [var one, "--replay", var again, var number])
{
    var found = Targets.Named(one).Single();
    return Campaign.Replay(found, Number(again), Number(number), Console.Out);
}

if (args is not [var name, var seconds, var seed, .. var limit] || Targets.Named(name) is not { Count: > 0 } targets)
{
    Console.Error.WriteLine("TARGET,TARGET|all SECONDS SEED [LIMIT], or TARGET --replay SEED NUMBER; targets: " + string.Join(", ", Targets.All.Select(t => t.Name)));
    return 2;
}

var share = TimeSpan.FromSeconds((double)Number(seconds) / targets.Count);
var faults = 0;
foreach (var target in targets)
{
    faults += new Campaign(target, Number(seed), TimeSpan.FromSeconds(limit is [var most] ? Number(most) : 2), Console.Out).Run(share);
}

return faults == 0 ? 0 : 1;

static int Number(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
