
namespace RecipeLint.Rules.Engine;

/// <summary>Writes a working line by line; what a line gives back is the printed number, to go on with.</summary>
internal sealed class WorkingBuilder(string title)
{
    private readonly List<WorkingStep> _steps = [];

    /// <summary>A number from the file, the shop, the engine or a table.</summary>
    public Term Given(string what, double value, string unit, string from)
    {
        var number = Term.Of(value);
        _steps.Add(new GivenStep(what, number, unit, from));
        return number;
    }

    /// <summary>An option of the rule.</summary>
    public Term Option(string what, string option, RuleContext context) =>
        Given(what, context.Number(option), context.Descriptor.Options.First(o => o.Name == option).Unit, $"option '{option}'");

    /// <summary>An option of the rule.</summary>
    public Term Option(string what, NumberOption option) => Given(what, option, option.Unit, $"option '{option.Name}'");

    /// <summary>A number worked out from printed ones.</summary>
    public Term Result(string what, string formula, Term numbers, string unit = "")
    {
        var result = Term.Of(numbers);
        _steps.Add(new ResultStep(what, formula, numbers, result, unit));
        return result;
    }

    /// <summary>A comparison of the verdict, with the value as it was worked out above and the limit as it was given.</summary>
    public WorkingBuilder Check(Check check, Term left, Term right)
    {
        _steps.Add(new TestStep(check, left, right));
        return this;
    }

    /// <summary>A statement of the verdict.</summary>
    public WorkingBuilder Check(Check check)
    {
        _steps.Add(new ConditionStep(check));
        return this;
    }

    /// <summary>The other statements of the verdict, in their order; its comparisons were shown above.</summary>
    public WorkingBuilder Statements(Verdict verdict)
    {
        _steps.AddRange(verdict.Checks.Where(c => c.Relation == Relation.True).Select(c => new ConditionStep(c)));
        return this;
    }

    public WorkingBuilder Remark(string sentence)
    {
        _steps.Add(new RemarkStep(sentence));
        return this;
    }

    /// <param name="value">The number the verdict turns on.</param>
    public Working Done(Term? value = null) => new(title, _steps, value);
}
