namespace RecipeLint.Rules.Engine;

/// <summary>
/// Whether a rule that judges one stock or recipe has looked at more than what that was read with and what its own settings say.
/// </summary>
internal sealed class RuleReach
{
    private string? _file;

    /// <summary>True once it has.</summary>
    public bool IsFurther { get; private set; }

    /// <summary>A rule begins to judge the stock or recipe of a file.</summary>
    public void Begin(string file) => (_file, IsFurther) = (file, false);

    /// <summary>It looks at everything that was read.</summary>
    public void All() => IsFurther = true;

    /// <summary>It asks what the settings say of a file, or what is wrong in it.</summary>
    public void At(string file) => IsFurther |= file != _file;
}
