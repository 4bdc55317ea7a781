using RecipeLint.Analysis.Observations;

namespace RecipeLint.Advice.Diagnosis;

/// <summary>
/// Chooses the question whose answer parts the leading causes best: the one with the largest expected gain of information.
/// </summary>
public static class QuestionChooser
{
    /// <summary>Bits below which no question is worth asking.</summary>
    private const double LeastGain = 0.08;

    /// <summary>A test settles nothing for a cause that does not surely give the answer.</summary>
    private const double SureAnswer = 0.65;

    /// <summary>The best question that was not asked yet and whose signs were not told; null when none helps.</summary>
    public static Question? Next(BottleDiagnosis diagnosis, IReadOnlySet<string> asked)
    {
        // Where a bottle is to be left alone nobody is sent back to it for an answer.
        if (diagnosis.Hazards.ForLeaving is not null)
        {
            return null;
        }

        Question? best = null;
        var most = LeastGain;
        foreach (var question in DiagnosisData.Questions)
        {
            if (asked.Contains(question.Id) || IsAnswered(question, diagnosis.Observation) || BottleHazards.Refuses(question,
                diagnosis.Hazards) is not null)
            {
                continue;
            }

            var gain = Gain(question, diagnosis.Causes) * question.Ease;
            if (gain > most + 1e-9)
            {
                (best, most) = (question, gain);
            }
        }

        return best;
    }

    /// <summary>The bench test that parts this cause from the others best, with the answer it would give; null when none does.</summary>
    public static (Question Test, Answer Expected)? Settling(RankedCause cause, BottleDiagnosis diagnosis)
    {
        (Question, Answer)? best = null;
        var most = LeastGain;
        foreach (var question in DiagnosisData.Questions.Where(q => q.IsTest && !IsAnswered(q, diagnosis.Observation)
            && (cause.Cause.IsDeposit || q.Answers.Any(a => a.Signs.Any(s => cause.Cause.Tests.ContainsKey(s.Sign.Id))))
            && BottleHazards.Refuses(q, diagnosis.Hazards) is null))
        {
            // What the answer says of this cause: weighed against the other causes as they stand now.
            var rest = 1 - cause.Share;
            var expected = question.Answers.OrderByDescending(a => Chance(question, a, cause.Cause)).First();
            var mine = Chance(question, expected, cause.Cause);
            var theirs = rest <= 0
                ? mine
                : diagnosis.Causes.Where(c => c != cause).Sum(c => c.Share * Chance(question, expected, c.Cause)) / rest;
            var power = mine * Math.Log2(mine / theirs) * Math.Sqrt(question.Ease);
            if (mine >= SureAnswer && power > most + 1e-9)
            {
                (best, most) = ((question, expected), power);
            }
        }

        return best;
    }

    private static bool IsAnswered(Question question, Observation observation) =>
        question.IsTest
            ? question.Answers.Any(a => a.Signs.Any(s => observation.Of(s.Sign.Id) is not null))
            : observation.Signs.Any(s => s.Sign.Kind == KindOf(question) && s.Sign.Id != "deposit")
                || (question.Id == "form" && observation.Of("deposit") == false);

    private static SignKind KindOf(Question question) => question.Answers[0].Signs[0].Sign.Kind;

    /// <summary>Chance of an answer with a cause, among the answers of the question.</summary>
    private static double Chance(Question question, Answer answer, Cause cause)
    {
        double Weight(Answer a) => Math.Exp(a.Signs.Average(s => Math.Log(Likelihood.Of(cause, s))));
        return Weight(answer) / question.Answers.Sum(Weight);
    }

    private static double Gain(Question question, IReadOnlyList<RankedCause> causes)
    {
        var now = Entropy(causes.Select(c => c.Share));
        double after = 0;
        foreach (var answer in question.Answers)
        {
            var joint = causes.Select(c => c.Share * Chance(question, answer, c.Cause)).ToList();
            var chance = joint.Sum();
            after += chance <= 0 ? 0 : chance * Entropy(joint.Select(j => j / chance));
        }

        return now - after;
    }

    private static double Entropy(IEnumerable<double> shares) => -shares.Where(s => s > 0).Sum(s => s * Math.Log2(s));
}
