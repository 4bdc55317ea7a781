using RecipeLint.Advice.Diagnosis;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Hazards;
using RecipeLint.Analysis.Observations;
using RecipeLint.Chemistry.Quantities;
using RecipeLint.Reports;

namespace RecipeLint.Commands;

/// <summary>Asks a few questions, each time the one whose answer parts the leading causes best.</summary>
internal sealed class GuidedQuestions(TextReader answers, TextWriter screen)
{
    private const int MostQuestions = 6;

    /// <summary>Sure enough to stop asking.</summary>
    private const double Enough = 0.85;

    /// <summary>The observation with what was answered. An empty answer skips a question; the end of the input ends the asking.</summary>
    public Observation Ask(StockFacts stock, Observation observation, Temperature? seenAt)
    {
        if (BottleHazards.Of(stock, observation).ForLeaving is not null || UnknownContents.Of(stock) is { IsAll: true })
        {
            return observation;
        }

        if (observation.IsVague)
        {
            screen.WriteLine("What do you see in the bottle? In your own words; Enter to skip.");
            if (Line() is not { } words)
            {
                return observation;
            }

            observation = observation.With(ObservationReader.Read(words));
        }

        var asked = new HashSet<string>(StringComparer.Ordinal);
        while (asked.Count < MostQuestions)
        {
            var diagnosis = Diagnoser.Of(stock, observation, seenAt);
            if (diagnosis.Hazards.ForLeaving is not null)
            {
                break;
            }

            if (diagnosis.Causes[0].Share >= Enough || QuestionChooser.Next(diagnosis, asked) is not { } question)
            {
                break;
            }

            asked.Add(question.Id);
            Put(question);
            if (Line() is not { } answer)
            {
                break;
            }

            observation = Understand(question, answer, observation);
        }

        screen.WriteLine();
        return observation;
    }

    private void Put(Question question)
    {
        screen.WriteLine();
        foreach (var line in TextWrap.Wrap(question.Ask, 100))
        {
            screen.WriteLine(line);
        }

        if (question.Caution is { } caution)
        {
            foreach (var line in TextWrap.Wrap("Caution: " + caution, 100))
            {
                screen.WriteLine(line);
            }
        }

        for (var i = 0; i < question.Answers.Count; i++)
        {
            screen.WriteLine($"  {i + 1}  {question.Answers[i].Say}");
        }

        screen.WriteLine("A number, your own words, or Enter if you do not know.");
    }

    private string? Line()
    {
        screen.Write("> ");
        screen.Flush();
        return answers.ReadLine()?.Trim();
    }

    private Observation Understand(Question question, string answer, Observation observation)
    {
        if (answer.Length == 0)
        {
            return observation;
        }

        if (int.TryParse(answer, out var number) && number >= 1 && number <= question.Answers.Count)
        {
            return observation.With(question.Answers[number - 1].Signs);
        }

        if (question.Answers.FirstOrDefault(a => a.Say.Equals(answer, StringComparison.OrdinalIgnoreCase)) is { } worded)
        {
            return observation.With(worded.Signs);
        }

        var told = ObservationReader.Read(answer);
        if (told.IsVague)
        {
            screen.WriteLine($"'{Printable.Show(answer)}' tells me nothing here; left out.");
        }

        return observation.With(told);
    }
}
