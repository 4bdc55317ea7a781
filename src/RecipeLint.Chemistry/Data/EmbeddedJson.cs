using System.Reflection;
using System.Text.Json;

namespace RecipeLint.Chemistry.Data;

/// <summary>Opens the tables that are built into an assembly as JSON.</summary>
public static class EmbeddedJson
{
    /// <param name="assembly">The one it is built into.</param>
    /// <param name="resource">Its logical name, such as "RecipeLint.Chemistry.atomic-weights.json".</param>
    /// <returns>The document; whoever opens it closes it, or keeps it where rows are read later.</returns>
    /// <exception cref="InvalidOperationException">The build has left it out.</exception>
    public static JsonDocument Open(Assembly assembly, string resource)
    {
        using var stream = assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"The embedded file {resource} is missing from the build.");
        return JsonDocument.Parse(stream);
    }
}
