namespace RecipeLint.Fuzz;

/// <summary>One door of the program that outsiders' bytes come through.</summary>
/// <param name="Make">Builds one execution from nothing but the numbers it draws.</param>
internal sealed record FuzzTarget(string Name, Func<Random, Execution> Make);

/// <summary>One input, and what runs it and throws where the program did not keep its word.</summary>
/// <param name="Shown">The input as text, for whoever has to look at a fault.</param>
internal sealed record Execution(Func<string> Shown, Action Run);

/// <summary>The program answered, but not as it promises to.</summary>
internal sealed class BrokenPromiseException(string message) : Exception(message);
