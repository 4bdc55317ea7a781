/// <summary>Called by the runtime in a process that a test has started (DOTNET_STARTUP_HOOKS): prints what the process has loaded when it ends.</summary>
internal static class StartupHook
{
    public const string Mark = "loaded: ";

    public static void Initialize() => AppDomain.CurrentDomain.ProcessExit += (_, _) =>
    {
        foreach (var assembly in AppDomain.CurrentDomain.GetAssemblies())
        {
            Console.Error.WriteLine(Mark + assembly.GetName().Name);
        }
    };
}
