using System.Globalization;
using RecipeLint.Recipes.Files;
using RecipeLint.Recipes.Schema;
using RecipeLint.Reports;
using RecipeLint.Reports.Handbook;
using RecipeLint.Rules.Engine;

namespace RecipeLint.Commands;

/// <summary>Walks the exercises with whoever answers: a person at a terminal, or lines from a pipe.</summary>
/// <param name="files">Seen from the folder with the exercises.</param>
/// <param name="named">The folder as it was written.</param>
internal sealed class LearnWalk(
    TextReader answers, TextWriter screen, TextOptions options, IReadOnlyList<LearnExercise> exercises, LearnScore score,
    IFileTree files, string named)
{
    /// <summary>More than an exercise ever needs; larger files are not looked at.</summary>
    private const int MostBytes = 1_000_000;

    /// <summary>Goes on with the first exercise that is not done, until all are or nobody answers any more.</summary>
    public void Go()
    {
        foreach (var exercise in exercises.Where(e => !score[e.Name].Mended))
        {
            Present(exercise);
            if (!Ask(exercise) || !Mend(exercise))
            {
                break;
            }
        }

        Tell();
    }

    /// <summary>What was answered and mended so far.</summary>
    public void Tell()
    {
        var marks = exercises.Select(e => score[e.Name]).ToList();
        var looked = marks.Count(m => m is { Mended: true, Shown: true });
        screen.WriteLine();
        screen.WriteLine(
            $"{Say.Number(marks.Count(m => m.Answered == true))} of {Say.Number(exercises.Count)} questions right at once, "
            + $"{Say.Number(marks.Count(m => m.Mended))} of {Say.Number(exercises.Count)} exercises mended"
            + $"{(looked > 0 ? $" ({Say.Number(looked)} after looking)" : "")}.");
        screen.WriteLine(
            $"The score stands in {Printable.Show(Path.Combine(named, LearnScore.FileName))}; 'recipelint learn {Printable.Show(named)}' "
            + "goes on.");
        screen.Flush();
    }

    private void Present(LearnExercise exercise)
    {
        screen.WriteLine();
        Title($"{Say.Number(exercise.Number)} of {Say.Number(exercises.Count)}: {exercise.Title}");
        Markdown(exercise.Bench);
        Paragraph("Invented, and wrong on purpose; never mix it:");
        Show(exercise.Flawed);
    }

    /// <summary>False when nobody answers.</summary>
    private bool Ask(LearnExercise exercise)
    {
        Markdown(exercise.Question);
        if (score[exercise.Name].Answered is null)
        {
            var choices = exercise.Choices();
            Paragraph("What is wrong here?");
            for (var i = 0; i < choices.Count; i++)
            {
                Paragraph($"{Say.Number(i + 1)}  {choices[i].Text}", "     ");
            }

            if (Choice(choices) is not { } chosen)
            {
                return false;
            }

            score.Set(exercise.Name, score[exercise.Name] with { Answered = chosen.IsRight });
            screen.WriteLine();
            Paragraph(chosen.IsRight ? "Right." : $"No. {exercise.WhyNot(chosen)}");
        }

        Paragraph("RecipeLint says:");
        foreach (var message in exercise.Finding)
        {
            Paragraph(message);
        }

        return true;
    }

    private LearnChoice? Choice(IReadOnlyList<LearnChoice> choices)
    {
        while (Line() is { } answer)
        {
            if (int.TryParse(answer, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
                && number >= 1 && number <= choices.Count)
            {
                return choices[number - 1];
            }

            screen.WriteLine($"A number from 1 to {Say.Number(choices.Count)}.");
        }

        return null;
    }

    /// <summary>False when nobody answers or somebody stops.</summary>
    private bool Mend(LearnExercise exercise)
    {
        screen.WriteLine();
        Paragraph(
            $"Now mend it: change the files in {Path.Combine(named, exercise.Name)}, save, and press Enter to have them judged. "
            + "'show' shows one way, 'next' goes on to the next exercise, 'stop' stops.");
        while (Line() is { } word)
        {
            switch (word.ToLowerInvariant())
            {
                case "":
                    if (IsMended(exercise))
                    {
                        return true;
                    }

                    break;
                case "show":
                    score.Set(exercise.Name, score[exercise.Name] with { Shown = true });
                    Markdown(exercise.HowToMend);
                    Show(exercise.Mended);
                    break;
                case "next":
                    return true;
                case "stop":
                    return false;
                default:
                    screen.WriteLine("Enter, 'show', 'next' or 'stop'.");
                    break;
            }
        }

        return false;
    }

    private bool IsMended(LearnExercise exercise)
    {
        var verdict = exercise.Judge(Read(exercise.Name));
        var mark = score[exercise.Name];
        score.Set(exercise.Name, mark with { Tries = Math.Min(mark.Tries, int.MaxValue - 1) + 1, Mended = verdict.IsMended });
        if (!verdict.IsMended)
        {
            Paragraph("Not yet:");
            foreach (var line in verdict.Says)
            {
                Paragraph(line);
            }

            return false;
        }

        Paragraph("Mended: no rule objects.");
        Markdown(exercise.Remember);
        return true;
    }

    /// <summary>The files of ours that stand in a folder, not those below it; links, pipes and what is too large are passed over.</summary>
    private IReadOnlyList<(string Path, byte[] Bytes)> Read(string folder) =>
    [
        .. files.Names(files.FullPath(folder))
            .Select(n => (Path: n, Full: files.FullPath($"{folder}/{n}")))
            .Where(f => DocumentKinds.FromFileName(f.Path) is not null && !files.IsLink(f.Full))
            .Select(f => (f.Path, files.Read(f.Full, MostBytes).Bytes))
            .Where(f => f.Bytes is not null)
            .Select(f => (f.Path, f.Bytes!)),
    ];

    private void Show(IReadOnlyList<(string Path, string Text)> files)
    {
        foreach (var (path, text) in files)
        {
            screen.WriteLine();
            screen.WriteLine(Printable.Show(path));
            foreach (var line in text.TrimEnd('\n').Split('\n'))
            {
                screen.WriteLine("  " + Printable.Show(line));
            }
        }

        screen.WriteLine();
    }

    private void Title(string text) => Markdown("## " + text);

    private void Markdown(string text)
    {
        screen.Write(MarkdownText.Render(text, options.Width, options.Color));
        screen.WriteLine();
    }

    private void Paragraph(string text, string indent = "")
    {
        var first = true;
        foreach (var line in TextWrap.Wrap(Printable.Show(text), options.Width - indent.Length))
        {
            screen.WriteLine((first ? "" : indent) + line);
            first = false;
        }
    }

    private string? Line()
    {
        screen.Write("> ");
        screen.Flush();
        return answers.ReadLine()?.Trim();
    }
}
