using RecipeLint.Recipes.Quantities;

namespace RecipeLint.Analysis.Observations;

/// <summary>When it showed: a duration ("2 weeks") or words ("next morning", "after a cold night").</summary>
public static class TimeWords
{
    private const double HourInDays = 1.0 / 24;

    /// <summary>Words in front of a duration that say nothing.</summary>
    private static readonly string[] Leads = ["after ", "about ", "within ", "around ", "some ", "ca. ", "roughly ", "~"];

    /// <summary>Never throws; what is not understood stands among the unknown words.</summary>
    public static Observation Read(string text)
    {
        var plain = text.Trim();
        foreach (var lead in Leads)
        {
            plain = plain.StartsWith(lead, StringComparison.OrdinalIgnoreCase) ? plain[lead.Length..].Trim() : plain;
        }

        return QuantityReader.TryRead(plain, Due.Duration, out var quantity, out _)
            ? Observation.Nothing.With([new Seen(Vocabulary.Sign(Of(quantity.Duration.Days)), true)])
            : ObservationReader.ReadTime(text);
    }

    private static string Of(double days) => days switch
    {
        < 0.9 * HourInDays => "at-mixing",
        < 0.9 => "hours",
        < 6.5 => "days",
        < 50 => "weeks",
        _ => "months",
    };
}
