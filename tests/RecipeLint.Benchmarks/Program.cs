using System.Globalization;
using BenchmarkDotNet.Running;
using RecipeLint.Benchmarks;
using RecipeLint.Benchmarks.Repositories;

// dotnet run -c Release --project tests/RecipeLint.Benchmarks -- generate FOLDER SHOPS one|many FLAWED SEED
if (args is ["generate", var folder, var shops, var layout, var flawed, var seed])
{
    var wish = new RepositoryWish(
        int.Parse(shops, CultureInfo.InvariantCulture),
        layout == "one" ? RepositoryLayout.OneFolder : RepositoryLayout.FolderForEachShop,
        double.Parse(flawed, CultureInfo.InvariantCulture),
        int.Parse(seed, CultureInfo.InvariantCulture));
    foreach (var (path, text) in RepositoryGenerator.Files(wish))
    {
        var full = Path.Combine(folder, path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        File.WriteAllText(full, text);
    }

    return;
}

// dotnet run -c Release --project tests/RecipeLint.Benchmarks -- times SOLUTIONS SEED
if (args is ["times", var solutions, var timesSeed])
{
    SolveTimes.Print(int.Parse(solutions, CultureInfo.InvariantCulture), int.Parse(timesSeed, CultureInfo.InvariantCulture), Console.Out);
    return;
}

// dotnet run -c Release --project tests/RecipeLint.Benchmarks -- states SOLUTIONS SEED
if (args is ["states", var states, var statesSeed])
{
    SolveTimes.PrintStates(int.Parse(states, CultureInfo.InvariantCulture), int.Parse(statesSeed, CultureInfo.InvariantCulture), Console.Out);
    return;
}

// dotnet run -c Release --project tests/RecipeLint.Benchmarks -- --filter '*'
BenchmarkSwitcher.FromTypes(
[
    typeof(EquilibriumBenchmarks), typeof(LayerBenchmarks), typeof(LinearAlgebraBenchmarks), typeof(RuleBenchmarks), typeof(StartUpBenchmarks),
]).Run(args);
