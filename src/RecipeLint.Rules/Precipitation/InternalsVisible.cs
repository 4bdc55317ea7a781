using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("RecipeLint.Rules.Tests")]
