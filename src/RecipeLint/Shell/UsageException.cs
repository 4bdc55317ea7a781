namespace RecipeLint.Shell;

/// <summary>The request cannot be carried out as asked: one clear line on stderr and exit code 2.</summary>
internal sealed class UsageException(string message) : Exception(message);
