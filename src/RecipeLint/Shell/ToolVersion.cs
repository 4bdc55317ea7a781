using System.Reflection;

namespace RecipeLint.Shell;

internal static class ToolVersion
{
    /// <summary>Without the source revision that the build appends.</summary>
    public static string Text { get; } =
        (typeof(ToolVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion
            ?? "0").Split('+')[0];
}
