using System.Globalization;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Reports.Handbook;

/// <summary>One exercise of the first week: a flawed folder, the question, and the mended folder.</summary>
/// <param name="Number">From 1 through the week.</param>
/// <param name="Day">1 for Monday.</param>
/// <param name="Rule">Name of the rule it is about; the flawed folder raises it.</param>
/// <param name="Text">The lesson's Markdown: "The bench", "Question", "How to mend it", "Remember".</param>
internal sealed record Lesson(int Number, int Day, string Rule, string Text, JudgedFolder Flawed, JudgedFolder Mended)
{
    /// <summary>Where the exercises are embedded.</summary>
    public const string Root = "handbook/week/";

    public string Anchor => string.Create(CultureInfo.InvariantCulture, $"exercise-{Number}");

    public string Title => Text.Split('\n')[0].TrimStart('#').Trim();

    public string Section(string heading) => RuleDescriptor.SectionOf(Text, heading);

    /// <summary>All exercises in the order of the week. A folder is called "1a-RULE" after its day and its turn.</summary>
    public static IReadOnlyList<Lesson> All()
    {
        var names = EmbeddedText.Names(Root)
            .Select(n => n[Root.Length..].Split('/')[0])
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)
            .ToList();
        return
        [
            .. names.AsParallel().AsOrdered().Select((name, index) =>
            {
                var sides = ShelfFolder.Below($"{Root}{name}/");
                return new Lesson(
                    index + 1,
                    name[0] - '0',
                    name[(name.IndexOf('-', StringComparison.Ordinal) + 1)..],
                    EmbeddedText.Read($"{Root}{name}/lesson.md"),
                    sides.Single(s => s.Name == "flawed").Judge(),
                    sides.Single(s => s.Name == "mended").Judge());
            }),
        ];
    }
}
