namespace RecipeLint.Editor.Documents;

/// <summary>Between the addresses of the protocol and full paths with forward slashes.</summary>
internal static class FileUri
{
    private const string Scheme = "file://";

    /// <summary>Null for what is no file of this machine.</summary>
    public static string? ToPath(string uri)
    {
        if (!uri.StartsWith(Scheme, StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        var rest = uri[Scheme.Length..];
        rest = rest.StartsWith("localhost/", StringComparison.OrdinalIgnoreCase) ? rest["localhost".Length..] : rest;
        if (!rest.StartsWith('/'))
        {
            return null;
        }

        var end = rest.AsSpan().IndexOfAny('?', '#');
        var path = Uri.UnescapeDataString(end < 0 ? rest : rest[..end]);
        return path.Contains('\0', StringComparison.Ordinal) ? null : IsDrive(path) ? path[1..] : path;
    }

    public static string Of(string path)
    {
        var parts = path.TrimStart('/').Split('/').Select((p, i) => i == 0 && p.EndsWith(':') ? p : Uri.EscapeDataString(p));
        return Scheme + "/" + string.Join('/', parts);
    }

    /// <summary>"/c:/shop".</summary>
    private static bool IsDrive(string path) => path.Length > 2 && path[2] == ':' && char.IsAsciiLetter(path[1]);
}
