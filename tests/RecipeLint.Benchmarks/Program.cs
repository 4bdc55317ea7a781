using BenchmarkDotNet.Running;
using RecipeLint.Benchmarks;

// dotnet run -c Release --project tests/RecipeLint.Benchmarks -- --filter '*'
BenchmarkSwitcher.FromTypes([typeof(EquilibriumBenchmarks), typeof(LinearAlgebraBenchmarks), typeof(StartUpBenchmarks)]).Run(args);
