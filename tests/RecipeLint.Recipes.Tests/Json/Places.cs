using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Text;

namespace RecipeLint.Recipes.Tests.Json;

/// <summary>What holds for the place of every problem, whatever the bytes.</summary>
internal static class Places
{
    public static void AssertAllInside(JsonReadResult result) => AssertAllInside(result.Source, result.Problems);

    public static void AssertAllInside(SourceFile source, IEnumerable<Problem> problems)
    {
        foreach (var problem in problems)
        {
            Assert.NotEmpty(problem.Message);
            foreach (var place in problem.Related.Select(r => r.Place).Prepend(problem.Place))
            {
                Assert.Equal(source.Path, place.File);
                var span = source.Resolve(place);
                Assert.InRange(span.Start, 0, source.Bytes.Length);
                Assert.InRange(span.Length, 0, source.Bytes.Length - span.Start);
                var lines = source.ToLines(span);
                Assert.InRange(lines.Start.Line, 1, source.LineCount);
                Assert.InRange(lines.End.Line, lines.Start.Line, source.LineCount);
                Assert.True(lines.Start.Column >= 1 && lines.End.Column >= 1);
                Assert.True(lines.End.Line > lines.Start.Line || lines.End.Column >= lines.Start.Column);
            }
        }
    }

    /// <summary>"line:column-line:column" of a problem, the end one past the last character.</summary>
    public static string Where(SourceFile source, Problem problem) => Where(source, problem.Place);

    public static string Where(SourceFile source, Place place)
    {
        var lines = source.ToLines(source.Resolve(place));
        return $"{lines.Start.Line}:{lines.Start.Column}-{lines.End.Line}:{lines.End.Column}";
    }
}
