using System.Globalization;
using RecipeLint.Recipes.Json;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Workings;

namespace RecipeLint.Reports.Explain;

/// <summary>
/// A rule's verdict on one file as text: what it says there, and the working step by step, so that it can be followed with a pocket
/// calculator.
/// </summary>
public static class WorkingReport
{
    /// <summary>Workings that are shown when many fire; the rest is counted.</summary>
    private const int MostShown = 3;

    private const int Width = 100, Margin = 7;

    public static void Write(TextWriter writer, RuleOnFile rule, IReadOnlyDictionary<string, SourceFile> sources, bool color)
    {
        var lines = new StyledLines(writer, color);
        Heading(lines, $"With the numbers of {Printable.Show(rule.File)}");
        var shown = Shown(rule);
        WriteFindings(lines, rule, sources);
        foreach (var working in shown)
        {
            lines.Blank();
            WriteWorking(lines, working, rule.IsOff);
        }

        var firing = rule.Workings.Count(w => w.Fires);
        if (firing > shown.Count)
        {
            lines.Blank();
            Text(lines, string.Create(
                CultureInfo.InvariantCulture,
                $"{firing - shown.Count} more {(firing - shown.Count == 1 ? "fires" : "fire")} in the same way."), "");
        }

        if (!rule.HasNumbers)
        {
            lines.Blank();
            Text(lines, "This rule turns on what is written and not on a number: there is nothing to work out.", "");
        }
        else if (rule.Elsewhere is { } elsewhere)
        {
            lines.Blank();
            Text(lines, elsewhere, "");
        }
    }

    /// <summary>Those that fire, at most three; where none does, the one that is nearest to it.</summary>
    public static IReadOnlyList<Working> Shown(RuleOnFile rule) =>
        rule.Workings.Any(w => w.Fires) ? [.. rule.Workings.Where(w => w.Fires).Take(MostShown)] : [.. rule.Workings.Take(1)];

    private static void Heading(StyledLines lines, string title)
    {
        lines.Line((title, Style.Strong));
        lines.Line((new string('-', Math.Min(Width, DisplayWidth.Of(title))), Style.Faint));
    }

    private static void WriteFindings(StyledLines lines, RuleOnFile rule, IReadOnlyDictionary<string, SourceFile> sources)
    {
        if (rule.Findings.Count == 0)
        {
            Text(
                lines,
                rule.IsOff ? "The settings of the shop have switched this rule off. This is what it would go by." : rule.Accepted.Count > 0
                    ? "The settings of the shop accept what the rule finds here."
                    : "The rule does not object to this file.",
                "");
        }

        foreach (var placed in PlacedFinding.InOrder([.. rule.Findings, .. rule.Accepted], sources))
        {
            var start = placed.Spot.Lines.Start;
            lines.Line(
                (string.Create(
                    CultureInfo.InvariantCulture, $"{Printable.Show(placed.Spot.File)}:{start.Line}:{start.Column}:"), Style.Strong),
                (" ", Style.Plain),
                (Words.Of(placed.Finding.Level), StyledLines.StyleOf(placed.Finding.Level)),
                (rule.Accepted.Contains(placed.Finding) ? ", accepted in the settings:" : ":", Style.Plain));
            Text(lines, placed.Finding.Message, "  ");
        }
    }

    private static void WriteWorking(StyledLines lines, Working working, bool isOff)
    {
        var title = Printable.Show(working.Title);
        Text(lines, $"Working: {title}", "", Style.Strong);
        lines.Blank();
        var number = 0;
        foreach (var step in working.Steps)
        {
            WriteStep(lines, step, ref number);
        }

        lines.Blank();
        Text(lines, working.Fires && isOff ? "All that the rule asks for holds: it would fire if it were on." : Verdict(working), "  ");
    }

    private static void WriteStep(StyledLines lines, WorkingStep step, ref int number)
    {
        switch (step)
        {
            case GivenStep given:
                Numbered(lines, ++number, $"{given.What}: {WithUnit(given.Number, given.Unit)} ({given.From})");
                break;
            case ResultStep result:
                Numbered(lines, ++number, $"{result.What} = {result.Formula}");
                Text(lines, $"= {result.Numbers.Text} = {WithUnit(result.Result, result.Unit)}", new string(' ', Margin));
                break;
            case TestStep test:
                Text(
                    lines,
                    $"{Question(test.Check.What)} {Left(test)} {Sign(test.Check)} {WithUnit(test.Right, test.Check.Unit)}: "
                        + $"{(test.Check.Holds ? "yes" : "no")}.",
                    new string(' ', Margin),
                    test.Check.Holds ? Style.Strong : Style.Plain);
                break;
            case ConditionStep condition:
                Text(
                    lines,
                    $"{Question(condition.Check.What)} {(condition.Check.Holds ? "Yes" : "No")}.",
                    new string(' ', Margin),
                    condition.Check.Holds ? Style.Strong : Style.Plain);
                break;
            case RemarkStep remark:
                Text(lines, remark.Text, new string(' ', Margin));
                break;
        }
    }

    private static string Question(string what) => Say.Capital(what) + "?";

    private static void Numbered(StyledLines lines, int number, string text)
    {
        var start = number.ToString(CultureInfo.InvariantCulture).PadLeft(Margin - 3) + "   ";
        foreach (var line in TextWrap.Wrap(Printable.Show(text), Width - Margin))
        {
            lines.Line((start, Style.Faint), (line, Style.Plain));
            start = new string(' ', Margin);
        }
    }

    private static void Text(StyledLines lines, string text, string indent, Style style = Style.Plain)
    {
        foreach (var line in TextWrap.Wrap(Printable.Show(text), Width - indent.Length))
        {
            lines.Line((indent, Style.Plain), (line, style));
        }
    }

    private static string WithUnit(Term number, string unit) => unit.Length == 0 ? number.Text : $"{number.Text} {unit}";

    /// <summary>The value as worked out; where its rounding would hide on which side of the limit it is, as the rule has it.</summary>
    private static string Left(TestStep test) =>
        Math.Sign(test.Left.Value - test.Right.Value) == Math.Sign(test.Check.Value - test.Check.Limit)
            ? test.Left.Text
            : $"{test.Left.Text} (closer: {test.Check.Value.ToString("G9", CultureInfo.InvariantCulture)})";

    /// <summary>The sign that is true of the two numbers.</summary>
    private static string Sign(Check check) => check.Value > check.Limit ? ">" : check.Value < check.Limit ? "<" : "=";

    private static string Verdict(Working working) => working.Prevented switch
    {
        null when working.Fires => "All that the rule asks for holds: it fires.",
        TestStep test => $"The rule stays silent: {Margins(test)}",
        ConditionStep condition => $"The rule stays silent, because this does not hold: {condition.Check.What}.",
        _ => "There is nothing here that the rule judges.",
    };

    /// <summary>How far the first thing that does not hold is from holding.</summary>
    private static string Margins(TestStep test)
    {
        var gap = Say.Number(Math.Abs(test.Left.Value - test.Right.Value));
        var unit = test.Check.Unit.Length == 0 ? "" : " " + test.Check.Unit;
        var part = test.Right.Value > 0 && test.Left.Value > 0
            ? $", a margin of {Say.Percent(Math.Abs((test.Left.Value / test.Right.Value) - 1))}"
            : "";
        return gap == "0"
            ? $"{test.Left.Text} is just at the limit."
            : $"{test.Left.Text} is {gap}{unit} away from {WithUnit(test.Right, test.Check.Unit)}{part}.";
    }
}
