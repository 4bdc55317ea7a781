using RecipeLint.Chemistry.Data;

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
            using var document = EmbeddedJson.Open(typeof(ProfileReader).Assembly, $"RecipeLint.Analysis.Profiles.{file}.json");
            profiles.Add(new ProfileFile(file, document.RootElement).Read(name => profiles.First(p => p.Name == name)));
        }

        return profiles;
    }
}
