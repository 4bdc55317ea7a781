namespace RecipeLint.Advice.Order;

/// <summary>
/// What an order costs, or one addition within it; smaller is better, compared part by part in this order and added part by part. Whole
/// numbers, so that sums do not depend on the way they are added and ties are ties.
/// </summary>
/// <param name="Unsolved">Steps whose equilibrium was not found: nothing can be promised there.</param>
/// <param name="PermanentMilligrams">Solid that forms and does not dissolve again in time, mg per litre of finished stock.</param>
/// <param name="PassingMilligrams">Solid that lies there and dissolves again, summed over the steps, mg per litre of finished
/// stock.</param>
/// <param name="PermanentTensOfMicrograms">The first again, finer: what nobody sees decides only where all else is equal.</param>
/// <param name="Practice">Habits of the bench passed over: metals ahead of their acid or chelate, calcium onto phosphate or sulfate, slow
/// dissolvers behind others.</param>
/// <param name="Inversions">Pairs in another order than the file's.</param>
public readonly record struct OrderCost(
    int Unsolved, long PermanentMilligrams, long PassingMilligrams, long PermanentTensOfMicrograms, int Practice,
    int Inversions) : IComparable<OrderCost>
{
    public static OrderCost operator +(OrderCost left, OrderCost right) => new(
        left.Unsolved + right.Unsolved,
        left.PermanentMilligrams + right.PermanentMilligrams,
        left.PassingMilligrams + right.PassingMilligrams,
        left.PermanentTensOfMicrograms + right.PermanentTensOfMicrograms,
        left.Practice + right.Practice,
        left.Inversions + right.Inversions);

    public static bool operator <(OrderCost left, OrderCost right) => left.CompareTo(right) < 0;

    public static bool operator >(OrderCost left, OrderCost right) => left.CompareTo(right) > 0;

    public static bool operator <=(OrderCost left, OrderCost right) => left.CompareTo(right) <= 0;

    public static bool operator >=(OrderCost left, OrderCost right) => left.CompareTo(right) >= 0;

    /// <summary>The part that chemistry decides: solids alone, without habit and without the file's order.</summary>
    public OrderCost SolidsOnly() => this with { Practice = 0, Inversions = 0 };

    public int CompareTo(OrderCost other)
    {
        var order = Unsolved.CompareTo(other.Unsolved);
        order = order != 0 ? order : PermanentMilligrams.CompareTo(other.PermanentMilligrams);
        order = order != 0 ? order : PassingMilligrams.CompareTo(other.PassingMilligrams);
        order = order != 0 ? order : PermanentTensOfMicrograms.CompareTo(other.PermanentTensOfMicrograms);
        order = order != 0 ? order : Practice.CompareTo(other.Practice);
        return order != 0 ? order : Inversions.CompareTo(other.Inversions);
    }
}
