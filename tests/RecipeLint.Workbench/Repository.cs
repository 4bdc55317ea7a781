using System.Text;

namespace RecipeLint.Workbench;

/// <summary>The working copy the tool writes to.</summary>
/// <param name="Root">Where RecipeLint.sln stands.</param>
public sealed record Repository(string Root)
{
    /// <summary>Upwards from the program's own folder.</summary>
    /// <exception cref="BenchException">There is no RecipeLint.sln above it.</exception>
    public static Repository Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "RecipeLint.sln")))
            {
                return new Repository(folder.FullName);
            }
        }

        throw new BenchException("There is no RecipeLint.sln above the workbench's own folder.");
    }

    public string PathOf(string relative) => Path.Combine([Root, .. relative.Split('/')]);

    /// <summary>The text with line feeds only; empty where there is no such file.</summary>
    public string Read(string relative) => File.Exists(PathOf(relative)) ? File.ReadAllText(PathOf(relative)).ReplaceLineEndings("\n") : "";

    public void Write(string relative, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(PathOf(relative))!);
        File.WriteAllText(PathOf(relative), text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
    }
}
