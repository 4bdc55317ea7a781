using System.Text.Json;

namespace RecipeLint.Analysis.Profiles;

/// <summary>Reads the embedded profile files. A fault in them is a fault of the build and throws.</summary>
internal static class ProfileReader
{
    /// <summary>Each file after the one it is based on.</summary>
    private static readonly string[] Files =
        ["generic", "fruiting", "leafy-greens", "herbs", "tomato", "cucumber", "pepper", "strawberry", "cut-flowers", "propagation"];

    public static IReadOnlyList<ProfileData> ReadAll()
    {
        var profiles = new List<ProfileData>(Files.Length);
        foreach (var file in Files)
        {
            using var stream = typeof(ProfileReader).Assembly.GetManifestResourceStream($"RecipeLint.Analysis.Profiles.{file}.json")
                ?? throw new InvalidOperationException($"The embedded profile {file}.json is missing from the build.");
            using var document = JsonDocument.Parse(stream);
            profiles.Add(new ProfileFile(file, document.RootElement).Read(name => profiles.First(p => p.Name == name)));
        }

        return profiles;
    }
}
