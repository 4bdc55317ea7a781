namespace RecipeLint.Recipes.Json;

/// <summary>Where one state of a document first says something else than another.</summary>
public static class JsonDifference
{
    /// <summary>
    /// The smallest value of the new state that differs, by the order of the file; its root where only something is gone.
    /// </summary>
    /// <param name="before">Null where there was no document.</param>
    public static JsonItem First(JsonItem? before, JsonItem now)
    {
        if (before is null || before.Kind != now.Kind)
        {
            return now;
        }

        foreach (var member in now.Members)
        {
            if (before[member.Name] is not { } old || !IsSame(old, member.Value))
            {
                return First(before[member.Name], member.Value);
            }
        }

        for (var i = 0; i < now.Items.Count; i++)
        {
            var old = i < before.Items.Count ? before.Items[i] : null;
            if (old is null || !IsSame(old, now.Items[i]))
            {
                return First(old, now.Items[i]);
            }
        }

        return now;
    }

    /// <summary>True when two values say the same, whatever the order of members.</summary>
    public static bool IsSame(JsonItem one, JsonItem other) =>
        one.Kind == other.Kind
        && one.Text == other.Text
        && one.Members.Count == other.Members.Count
        && one.Items.Count == other.Items.Count
        && one.Members.All(m => other[m.Name] is { } value && IsSame(m.Value, value))
        && one.Items.Zip(other.Items).All(p => IsSame(p.First, p.Second));
}
