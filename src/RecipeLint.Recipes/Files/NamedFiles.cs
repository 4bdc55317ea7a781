using System.Text;
using RecipeLint.Recipes.Json;
using RecipeLint.Recipes.Schema;

namespace RecipeLint.Recipes.Files;

/// <summary>The files that a file names, found without reading it as what it is. Pure.</summary>
internal static class NamedFiles
{
    /// <summary>Every text that may name a file of ours: more than it refers to does no harm, less would.</summary>
    public static IEnumerable<string> In(byte[] bytes, Func<DocumentKind, bool> wanted)
    {
        // An escape can spell a name in many ways; only then the file is parsed for it.
        if (bytes.AsSpan().Contains((byte)'\\'))
        {
            return JsonReading.Read("", bytes, JsonReading.DefaultSizeLimit).Source.Tree is { } tree
                ? Texts(tree.Root).Where(IsWanted)
                : [];
        }

        var found = new List<string>();
        for (var at = 0; bytes.AsSpan(at).IndexOf((byte)'"') is var quote && quote >= 0;)
        {
            var start = at + quote + 1;
            var length = bytes.AsSpan(start).IndexOf((byte)'"');
            if (length < 0)
            {
                break;
            }

            if (length > 0 && bytes[start + length - 1] is (byte)'n' or (byte)'N')
            {
                var text = Encoding.UTF8.GetString(bytes, start, length);
                if (IsWanted(text))
                {
                    found.Add(text);
                }
            }

            // A closing quote may be an opening one where a quote stands in a comment.
            at = start;
        }

        return found;

        bool IsWanted(string text) => DocumentKinds.FromFileName(text) is { } kind && wanted(kind);
    }

    private static IEnumerable<string> Texts(JsonItem root)
    {
        var open = new Stack<JsonItem>([root]);
        while (open.TryPop(out var item))
        {
            if (item.Kind == JsonKind.Text)
            {
                yield return item.Text;
            }

            foreach (var below in item.Items.Concat(item.Members.Select(m => m.Value)))
            {
                open.Push(below);
            }
        }
    }
}
