namespace RecipeLint.Advice.Splitting;

/// <summary>Which units a part holds, and how much of one that is divided over two parts.</summary>
/// <param name="Whole">Bit i is set when all of unit i is in it.</param>
/// <param name="Divided">Index of the divided unit; -1 for none.</param>
/// <param name="Tenths">Tenths of the divided unit in this part.</param>
internal readonly record struct PartContent(int Whole, int Divided = -1, int Tenths = 0)
{
    public const int AllTenths = 10;

    public double ShareOf(int unit) => (Whole >> unit & 1) != 0 ? 1 : unit == Divided ? (double)Tenths / AllTenths : 0;
}
