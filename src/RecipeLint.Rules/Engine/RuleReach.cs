namespace RecipeLint.Rules.Engine;

/// <summary>Whether a rule that judges one stock has looked at more than the stock and what its own settings say.</summary>
internal sealed class RuleReach
{
    private string? _file;

    /// <summary>True once it has.</summary>
    public bool IsFurther { get; private set; }

    /// <summary>A rule begins to judge the stock of a file.</summary>
    public void Begin(string file) => (_file, IsFurther) = (file, false);

    /// <summary>It looks at everything that was read.</summary>
    public void All() => IsFurther = true;

    /// <summary>It asks what the settings say of a file.</summary>
    public void SettingsOf(string file) => IsFurther |= file != _file;
}
