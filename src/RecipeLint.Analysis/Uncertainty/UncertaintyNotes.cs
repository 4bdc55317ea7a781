using RecipeLint.Recipes.Text;

namespace RecipeLint.Analysis.Uncertainty;

/// <summary>Collects what had to be assumed about equipment and purity; things of one kind share a sentence.</summary>
internal sealed class UncertaintyNotes
{
    public const string Neglected = "uncertainty-neglected";

    private readonly Dictionary<(string Key, string Text), (SortedSet<string> Subjects, Place? Place)> _notes = [];

    /// <param name="text">A sentence whose "{0}" stands for the subjects.</param>
    /// <param name="place">Where the document is that the sentence speaks of; the first one given stays.</param>
    public void Add(string key, string text, string subject, Place? place)
    {
        if (!_notes.TryGetValue((key, text), out var note))
        {
            _notes[(key, text)] = note = (new SortedSet<string>(StringComparer.Ordinal), place);
        }

        note.Subjects.Add(subject);
    }

    /// <summary>Ordered by key and text; what is neglected everywhere comes last.</summary>
    public IReadOnlyList<Assumption> ToList() =>
        [
            .. _notes.OrderBy(n => n.Key.Key, StringComparer.Ordinal).ThenBy(n => n.Key.Text, StringComparer.Ordinal)
                .Select(n => new Assumption(
                    n.Key.Key, n.Key.Text.Replace("{0}", string.Join(", ", n.Value.Subjects), StringComparison.Ordinal), n.Value.Place)),
            new Assumption(
                Neglected,
                "Neglected in every uncertainty: air buoyancy, the temperature of volumes, atomic weights, densities, what stays in the "
                    + "measure, and what a pH adjustment brings.",
                null),
        ];
}
