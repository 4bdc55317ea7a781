namespace RecipeLint.Workbench;

/// <summary>Something the contributor can put right; the message is the one line to show.</summary>
public sealed class BenchException(string message) : Exception(message);
