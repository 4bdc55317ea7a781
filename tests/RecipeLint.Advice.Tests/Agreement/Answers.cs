using System.Globalization;
using RecipeLint.Advice.Diagnosis;
using RecipeLint.Advice.Splitting;
using RecipeLint.Advice.Stretching;
using RecipeLint.Analysis;
using RecipeLint.Analysis.Equilibria;
using RecipeLint.Analysis.Judgement;
using RecipeLint.Analysis.Workspaces;
using RecipeLint.Recipes.Text;
using RecipeLint.Rules;
using RecipeLint.Rules.Engine;
using RecipeLint.Rules.Repairs;

namespace RecipeLint.Advice.Tests.Agreement;

/// <summary>What every command says of the deposits of one bottle, and where two of them differ.</summary>
internal static class Answers
{
    private static readonly EngineOptions Engine = new() { Today = new(2026, 11, 25), Rules = RuleList.All };

    /// <summary>Each difference in one line; empty where all give one answer.</summary>
    /// <param name="split">False for a bottle that splitting would make anew from other water or products.</param>
    public static IEnumerable<string> Differences(Bottle bottle, bool split = true)
    {
        var stock = bottle.Stock;
        var judgement = DepositJudgement.Of(stock, DepositOptions.Of(stock.Settings));
        var wanted = judgement.Deposits.Select(d => (Owner: d.Owner.Name, d.GramsPerLitre, d.Index)).Order().ToList();
        var (found, untold) = Findings(bottle);
        if (!wanted.SequenceEqual(found))
        {
            yield return $"{bottle.Name}: check finds {Show(found)}, judged {Show(wanted)}";
        }

        var isClear = found.Count == 0 && !untold;
        if (isClear != judgement.IsClear)
        {
            yield return $"{bottle.Name}: check calls it {(isClear ? "clear" : "not clear")}, the judgement {(judgement.IsClear ? "clear" : "not clear")}";
        }

        var stretched = StockStretch.Judged(stock);
        var clearNow = stretched.All(r => r.Highest.Factor >= 1);
        if (clearNow != judgement.IsClear)
        {
            yield return $"{bottle.Name}: stretch allows {string.Join(", ", stretched.Select(r => Text(r.Highest.Factor)))} of its strength, judged {(judgement.IsClear ? "clear" : Show(wanted))}";
        }

        foreach (var difference in Diagnosed(bottle, judgement).Concat(Repaired(bottle, judgement)).Concat(split ? Split(bottle, judgement) : []))
        {
            yield return difference;
        }
    }

    /// <summary>Deposits the check names, with their figures, and whether it says that something cannot be told.</summary>
    private static (List<(string Owner, double Grams, double Index)> Found, bool Untold) Findings(Bottle bottle)
    {
        var facts = new Facts { Workspace = bottle.Workspace, Stocks = [bottle.Stock], Recipes = [] };
        var result = LintEngine.Judge(facts, Engine);
        Assert.Empty(result.Faults.Select(f => $"{bottle.Name}: {f.Cause.Message}"));
        var all = result.Findings.Concat(result.Suppressed.Select(s => s.Finding)).Where(f => f.Place.File == bottle.Stock.Stock.File).ToList();
        var found = all
            .Where(f => f.Rule.Family == "precipitation" && f.Values.Any(IsAmount))
            .Select(f => (f.Rule.Name, f.Values.First(IsAmount).Value, f.Values.First(v => v.Name == "saturation index").Value))
            .Order()
            .ToList();
        var untold = bottle.Stock.Chemistry.States.Where(s => s.Moment != StateMoment.Aged).Any(s => !s.IsSolved || DepositJudgement.UntoldIn(s).Count > 0);
        Assert.True(!untold || all.Exists(f => f.Rule.Name == "solution-not-judged"), $"{bottle.Name}: solution-not-judged is silent");
        return (found, untold);

        static bool IsAmount(NamedValue value) => value.Name is "falls out" or "crystallises";
    }

    private static IEnumerable<string> Diagnosed(Bottle bottle, DepositJudgement judgement)
    {
        var chemistry = BottleChemistry.Of(bottle.Stock, null);
        foreach (var cause in DiagnosisData.Causes)
        {
            var named = chemistry.Of(cause);
            var judged = judgement.Deposits.Where(d => d.Deposits.Select(s => s.Solid).Append(d.Solid).Any(s => cause.Solids.Contains(s.Name))).ToList();
            if (judged.Count > 0 && !named.Counts)
            {
                yield return $"{bottle.Name}: diagnose says {named.Standing} of '{cause.Id}', judged {judged[0].GramsPerLitre} g/L";
            }

            // At another moment another solid of the same owner may be the larger one.
            if (named is { Counts: true, State.Moment: not StateMoment.Aged, Solid: { } solid } && judgement.Deposits.All(d => d.Owner.Name != solid.Owner))
            {
                yield return $"{bottle.Name}: diagnose names {named.GramsPerLitre} g/L of '{cause.Id}', judged none";
            }

            var same = judged.Find(d => d.State.Moment == named.State?.Moment && d.Deposits.Count > 0
                && d.Deposits.All(s => cause.Solids.Contains(s.Solid.Name)) && named.Deposits.Any(n => d.Deposits.Any(s => s.Solid == n.Solid)));
            if (same is not null && same.GramsPerLitre != named.GramsPerLitre)
            {
                yield return $"{bottle.Name}: diagnose says {named.GramsPerLitre} g/L of '{cause.Id}', judged {same.GramsPerLitre} g/L";
            }
        }

        // What was seen at the coldest is told in its first line.
        var seen = chemistry.DepositsSeen.Where(d => d.GramsPerLitre > 0 && judgement.Deposits.All(j => j.Owner != d.Owner)).ToList();
        if (seen.Count > 0)
        {
            yield return $"{bottle.Name}: diagnose opens with {seen[0].GramsPerLitre} g/L of {seen[0].Solid.Name}, judged none";
        }
    }

    /// <summary>A repair that takes everything away shows every deposit as it was.</summary>
    private static IEnumerable<string> Repaired(Bottle bottle, DepositJudgement judgement)
    {
        var thin = bottle.Workspace.With(StretchedStock.Of(bottle.Stock.Stock, 1e-4));
        if (judgement.Failure is not null || Analyzer.AnalyseStock(thin, bottle.Stock.Stock.File) is not { } after)
        {
            yield break;
        }

        var lines = SolutionChange.Between(Only(bottle.Workspace, bottle.Stock), Only(thin, after)).SelectMany(c => c.Figures)
            .Where(f => f.Name.EndsWith("that falls out", StringComparison.Ordinal) && f.Before > 0)
            .Select(f => (f.Name, f.Before!.Value))
            .Order()
            .ToList();
        var wanted = judgement.Deposits.Where(d => d.GramsPerLitre > 0).Select(d => ($"{d.Solid.Called} that falls out", d.GramsPerLitre)).Order().ToList();
        if (!wanted.SequenceEqual(lines))
        {
            yield return $"{bottle.Name}: repairs show {string.Join("; ", lines)}, judged {string.Join("; ", wanted)}";
        }
    }

    private static Facts Only(Recipes.Workspace workspace, StockFacts stock) => new() { Workspace = workspace, Stocks = [stock], Recipes = [] };

    /// <summary>All of it in one part at its own dose.</summary>
    private static IEnumerable<string> Split(Bottle bottle, DepositJudgement judgement)
    {
        var stock = bottle.Stock;
        if (stock.Stock.Dose?.Value is not { Dilution: >= 2 and <= 5000 } dose || stock.Aliquots.Count > 0 || stock.Waters.Any(w => !w.ComponentMoles.IsEmpty))
        {
            yield break;
        }

        var limits = new SplitLimits { Deposits = DepositOptions.Of(stock.Settings) };
        var request = new SplitRequest { Parts = 1, Strength = dose, At = stock.StorageTemperature, Limits = limits };
        var source = SplitUnit.Of(SplitIngredient.In(stock, dose));
        if (source.Count is 0 or > 14)
        {
            yield break;
        }

        var proposal = Splitter.Of(stock, bottle.Workspace, request);
        if (proposal.Failure is not null)
        {
            yield break;
        }

        var taken = proposal.Plan is { } plan && plan.Parts[0].Dilution >= dose.Dilution * (1 - 1e-9);
        var against = proposal.Plan is null
            ? proposal.Fewer.SelectMany(f => f.Obstacles).ToList()
            : [];
        // Flocs of an extract and people at risk are no matter of the judgement on deposits.
        if (judgement.IsClear && !taken && CheckedStock.ReasonsToDivide(bottle.Workspace, stock.Stock, null).Count == 0
            && against.Exists(o => o is Obstacle.Deposit or Obstacle.TooClose or Obstacle.NotComputed))
        {
            yield return $"{bottle.Name}: split refuses it at 1:{Text(dose.Dilution)}: {string.Join("; ", against)}; judged clear";
        }

        if (!judgement.IsClear && taken)
        {
            yield return $"{bottle.Name}: split takes it at 1:{Text(dose.Dilution)}, judged {string.Join("; ", judgement.Deposits.Select(d => d.Solid.Name))}";
        }
    }

    private static string Show(IEnumerable<(string Owner, double Grams, double Index)> deposits) =>
        string.Join("; ", deposits.Select(d => string.Create(CultureInfo.InvariantCulture, $"{d.Owner} {d.Grams} g/L at {d.Index}"))) is { Length: > 0 } text ? text : "nothing";

    private static string Text(double? value) => value?.ToString("0.####", CultureInfo.InvariantCulture) ?? "none";
}
