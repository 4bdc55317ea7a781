namespace RecipeLint.Recipes.Text;

/// <summary>Arithmetic on full paths with forward slashes; never touches the disk.</summary>
internal static class FilePaths
{
    /// <summary>The folder of a path; itself for a root.</summary>
    public static string FolderOf(string path)
    {
        var slash = path.LastIndexOf('/');
        return slash < 0 ? "" : slash == 0 || path[slash - 1] == ':' ? path[..(slash + 1)] : path[..slash];
    }

    public static string NameOf(string path) => path[(path.LastIndexOf('/') + 1)..];

    public static string Join(string folder, string relative) =>
        relative.Length == 0 ? folder : folder.Length == 0 || folder.EndsWith('/') ? folder + relative : $"{folder}/{relative}";

    /// <summary>True for the folder itself and everything below.</summary>
    public static bool IsWithin(string path, string folder)
    {
        if (string.Equals(path, folder, StringComparison.Ordinal))
        {
            return true;
        }

        var prefix = folder.EndsWith('/') || folder.Length == 0 ? folder : folder + "/";
        return path.StartsWith(prefix, StringComparison.Ordinal);
    }

    /// <summary>The part of a path below a folder; empty for the folder itself.</summary>
    public static string Below(string path, string folder) =>
        path.Length == folder.Length
            ? ""
            : folder.EndsWith('/') || folder.Length == 0 ? path[folder.Length..] : path[(folder.Length + 1)..];

    /// <summary>The folder and those above it up to and including the top.</summary>
    public static IEnumerable<string> Upwards(string folder, string top)
    {
        for (var at = folder; IsWithin(at, top); at = FolderOf(at))
        {
            yield return at;
            if (at == FolderOf(at))
            {
                yield break;
            }
        }
    }

    /// <summary>The deepest folder that holds both; null where they stand on different drives.</summary>
    public static string? CommonFolder(string one, string other)
    {
        for (var at = one; ; at = FolderOf(at))
        {
            if (IsWithin(other, at))
            {
                return at;
            }

            if (at == FolderOf(at))
            {
                return null;
            }
        }
    }

    /// <summary>Joins and resolves "." and ".."; null where it climbs above the root of the file system.</summary>
    public static string? Resolve(string folder, string relative)
    {
        var at = folder;
        foreach (var part in relative.Split('/'))
        {
            if (part is "" or ".")
            {
                continue;
            }

            if (part == "..")
            {
                if (FolderOf(at) == at)
                {
                    return null;
                }

                at = FolderOf(at);
            }
            else
            {
                at = Join(at, part);
            }
        }

        return at;
    }
}
