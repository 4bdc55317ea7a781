/// <summary>
/// Run by the runtime before the program's own entry when DOTNET_STARTUP_HOOKS names this assembly; the name and the empty namespace are the
/// runtime's. Writes down which assemblies the program had loaded when it ended.
/// </summary>
internal static class StartupHook
{
    public const string ListVariable = "RECIPELINT_ASSEMBLY_LIST";

    public static void Initialize()
    {
        if (Environment.GetEnvironmentVariable(ListVariable) is { Length: > 0 } path)
        {
            AppDomain.CurrentDomain.ProcessExit += (_, _) =>
                File.WriteAllLines(path, AppDomain.CurrentDomain.GetAssemblies().Select(a => a.GetName().Name ?? "").Order(StringComparer.Ordinal));
        }
    }
}
