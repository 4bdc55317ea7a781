namespace RecipeLint.Analysis;

/// <summary>Who says how cold and warm a stock gets.</summary>
public enum StorageSource
{
    /// <summary>Its file.</summary>
    Stated,

    /// <summary>The sites of the shop: its file says nothing.</summary>
    Sites,

    /// <summary>Nobody: an unheated shed is taken.</summary>
    Assumed,
}
