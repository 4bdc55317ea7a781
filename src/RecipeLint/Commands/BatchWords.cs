using RecipeLint.Recipes.Batches;

namespace RecipeLint.Commands;

/// <summary>What commands say of a record that they cannot use.</summary>
internal static class BatchWords
{
    /// <summary>The file is not the one that was mixed from any more.</summary>
    public static string Earlier(string record, BatchDocument batch) =>
        $"'{record}' was mixed from an earlier edition of '{batch.MixedFrom}' ({batch.Edition!.Value}): what it came to cannot be computed "
            + "from the file as it is now. Name the file of that day in the record, or take \"edition\" out if the change does not matter.";
}
