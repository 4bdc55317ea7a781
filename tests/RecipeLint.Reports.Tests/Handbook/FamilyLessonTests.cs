using RecipeLint.Analysis.Uncertainty;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Reports.Handbook;
using RecipeLint.Reports.Pictures;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Tests.Handbook;

/// <summary>One page for each family, with a picture that is computed from a file people can change.</summary>
public sealed class FamilyLessonTests
{
    private static readonly Lazy<IReadOnlyList<FamilyLesson>> Lessons = new(FamilyLesson.All);

    private static FamilyLesson Of(string family) => Lessons.Value.Single(l => l.Family.Name == family);

    [Fact]
    public void EachFamilyHasOneWithAPictureAndAllParts()
    {
        Assert.Equal(RuleBook.Descriptors.Select(r => r.Family).Distinct().Order(), Lessons.Value.Select(l => l.Family.Name).Order());
        foreach (var lesson in Lessons.Value)
        {
            Assert.True(lesson.Pictures.Count == 1, lesson.Family.Name);
            Assert.All(["What it is about", "Look at the picture", "Try it", "Remember"], h => Assert.NotEmpty(RuleDescriptor.SectionOf(lesson.Text, h)));
            Assert.Contains(RuleHandbook.Lessons(), f => f.Path.StartsWith($"lessons/{lesson.Family.Name}/", StringComparison.Ordinal));
            Assert.All(lesson.Folder.Folder.Files, f => Assert.True(f.Path == "recipelint.json" || System.Text.Encoding.UTF8.GetString(f.Bytes).Contains("Invented for a lesson", StringComparison.Ordinal), f.Path));
        }
    }

    /// <summary>What the text says of the file is what the engine says of it.</summary>
    [Theory]
    [InlineData("documents", "ambiguous-substance")]
    [InlineData("weighing", "below-scale-resolution")]
    [InlineData("procedure", "too-little-water-to-dissolve")]
    [InlineData("precipitation", "salt-past-its-solubility")]
    public void TheFileRaisesWhatTheLessonSpeaksOf(string family, string rule) =>
        Assert.Contains(Of(family).Folder.Findings, f => f.Finding.Rule.Name == rule);

    /// <summary>50 g in a litre: Mg is 24.305 of 246.47 g/mol in the heptahydrate and of 120.37 g/mol in the dry salt (CIAAW weights).</summary>
    [Fact]
    public void TheBarsOfANameAreItsBags()
    {
        var table = Of("documents").Pictures[0].Table;
        Assert.Contains("Mg", table.Columns[1].Head, StringComparison.Ordinal);
        Assert.Equal(Say.Number(50 * 24.305 / 246.47), table.Rows.Single(r => r[0].Contains("hepta", StringComparison.Ordinal))[1]);
        Assert.Equal(Say.Number(50 * 24.305 / 120.37), table.Rows.Single(r => r[0].Contains("anhydrous", StringComparison.Ordinal))[1]);
    }

    [Fact]
    public void ThePointsOfAWeighingAreThoseOfTheEngine()
    {
        var lesson = Of("weighing");
        var stock = Analyzer.Analyse(lesson.Folder.Workspace).Stocks.Single();
        var scale = stock.Settings.Scales.Single();
        foreach (var dot in lesson.Pictures[0].Curves.SelectMany(c => c.Dots))
        {
            var weighing = new Weighing(scale, new Mass(dot.X));
            Assert.Equal(2 * weighing.Standard.Grams / dot.X, dot.Y / 100, 1e-12);
        }

        Assert.Equal([0.03, 0.8], lesson.Pictures[0].Curves[1].Dots.Select(d => Math.Round(d.X, 6)));
    }

    /// <summary>At the pH where half of a weak acid is whole its curve is at half of its top.</summary>
    [Fact]
    public void ThePreservativesCurveFollowsItsConstant()
    {
        var dots = Of("preservation").Pictures[0].Curves[0].Dots;
        Assert.True(dots.Zip(dots.Skip(1)).All(p => p.First.Y > p.Second.Y));

        // Sorbic acid: pKa 4.76 at no ionic strength (CRC Handbook, recalled), a little lower in a stock.
        var half = dots.MinBy(d => Math.Abs(d.Y - (dots[0].Y / 2)));
        Assert.InRange(half.X, 4.25, 5);
    }

    [Fact]
    public void AFileThatIsChangedChangesThePicture()
    {
        var lesson = Of("precipitation");
        var weaker = lesson.Folder.Folder with
        {
            Files = [.. lesson.Folder.Folder.Files.Select(f =>
                (f.Path, System.Text.Encoding.UTF8.GetBytes(System.Text.Encoding.UTF8.GetString(f.Bytes).Replace("210 g", "100 g", StringComparison.Ordinal))))],
        };
        var picture = FamilyPictures.Of("precipitation", Analyzer.Analyse(weaker.Judge().Workspace)).Single();
        Assert.True(Highest(picture) < Highest(lesson.Pictures[0]) - 0.3);

        static double Highest(Picture picture) => picture.Curves[0].Dots.Max(d => d.Y);
    }
}
