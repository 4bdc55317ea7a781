namespace RecipeLint.Recipes.Files;

/// <summary>Paths that belong together, by the path that stands for all of them.</summary>
internal sealed class FileGroups
{
    private readonly Dictionary<string, string> _above = new(StringComparer.Ordinal);

    public string Of(string path)
    {
        var top = path;
        while (_above.TryGetValue(top, out var above))
        {
            top = above;
        }

        while (path != top && _above.TryGetValue(path, out var next))
        {
            _above[path] = top;
            path = next;
        }

        return top;
    }

    public void Join(string one, string other)
    {
        var (a, b) = (Of(one), Of(other));
        if (a != b)
        {
            _above[b] = a;
        }
    }

    /// <summary>The groups in the order of their first paths, so that the same files always give the same.</summary>
    public IReadOnlyList<List<string>> Among(IEnumerable<string> paths)
    {
        var members = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        var order = new List<List<string>>();
        foreach (var path in paths)
        {
            var group = Of(path);
            if (!members.TryGetValue(group, out var same))
            {
                members.Add(group, same = []);
                order.Add(same);
            }

            same.Add(path);
        }

        return order;
    }
}
