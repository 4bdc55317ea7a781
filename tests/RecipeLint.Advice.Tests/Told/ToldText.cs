using System.Globalization;
using System.Text;
using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Tests.Agreement;
using RecipeLint.Analysis.Hazards;

namespace RecipeLint.Advice.Tests.Told;

/// <summary>
/// What advice comes to, in words and to few digits, held line by line against a file: a change of a weight, an order or a word shows. With
/// RECIPELINT_UPDATE=1 the files are written anew; read them before keeping them.
/// </summary>
internal sealed class ToldText
{
    private static readonly bool _update = Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1";

    private readonly StringBuilder _text = new();

    public ToldText Line(FormattableString text)
    {
        _text.Append(text.ToString(CultureInfo.InvariantCulture).ReplaceLineEndings(" ")).Append('\n');
        return this;
    }

    public void Evidence(RankedCause ranked)
    {
        foreach (var reason in ranked.For.Concat(ranked.Against))
        {
            Line($"    {reason.Weight:+0.00;-0.00} {reason.Text}{(reason.FromStock ? "" : " (seen)")}{(reason.IsOfEveryFeed ? " (any feed)" : "")}");
        }
    }

    public void Hazards(HazardReport report)
    {
        foreach (var hazard in report.Hazards)
        {
            Line($"  danger {hazard.Kind} {hazard.Grade}: {hazard.From?.Name} with {hazard.With?.Name}, {hazard.Value:G4} of {hazard.Limit:G4} {hazard.Unit}");
        }
    }

    public void Hold(string name)
    {
        var path = Path.Combine(Bottle.Repository, "tests", "RecipeLint.Advice.Tests", "Told", name + ".txt");
        if (_update)
        {
            File.WriteAllText(path, _text.ToString());
        }

        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), _text.ToString());
    }
}
