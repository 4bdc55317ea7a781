using RecipeLint.Rules.Engine;

namespace RecipeLint.Rules.Workings;

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

    /// <summary>A number worked out from printed ones.</summary>
    public Term Result(string what, string formula, Term numbers, string unit = "")
    {
        var result = Term.Of(numbers.Value);
        _steps.Add(new ResultStep(what, formula, numbers, result, unit));
        return result;
    }

    /// <summary>Has to hold for a finding.</summary>
    public WorkingBuilder Test(string what, Term left, Relation relation, Term right, string unit = "")
    {
        _steps.Add(new TestStep(what, left, relation, right, unit));
        return this;
    }

    /// <summary>Has to hold for a finding.</summary>
    public WorkingBuilder Condition(string what, bool holds)
    {
        _steps.Add(new ConditionStep(what, holds));
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
