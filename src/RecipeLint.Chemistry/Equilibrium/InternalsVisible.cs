using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("RecipeLint.Chemistry.Tests")]
[assembly: InternalsVisibleTo("RecipeLint.Benchmarks")]
[assembly: InternalsVisibleTo("RecipeLint.Workbench")]
