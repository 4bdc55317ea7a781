namespace RecipeLint.Reports.Tests.Support;

/// <summary>Where the sources stand, found from the test's own folder upwards.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string Golden(string name) => Path.Combine(Root, "tests", "RecipeLint.Reports.Tests", "Golden", name);

    /// <summary>Compares with a stored output; RECIPELINT_UPDATE=1 stores the new one instead.</summary>
    public static void AssertGolden(string name, string actual)
    {
        var path = Golden(name);
        if (Environment.GetEnvironmentVariable("RECIPELINT_UPDATE") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, actual);
            return;
        }

        Assert.True(File.Exists(path), $"{name} is missing; run once with RECIPELINT_UPDATE=1 and review it.");
        Assert.Equal(File.ReadAllText(path), actual);
    }

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "RecipeLint.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("No RecipeLint.sln above the test folder.");
    }
}
