using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra.Double;
using RecipeLint.Chemistry.Equilibrium;

namespace RecipeLint.Benchmarks;

/// <summary>One linear solve of the size a stock of 25 components needs, by our elimination and by a general library.</summary>
[MemoryDiagnoser]
public class LinearAlgebraBenchmarks
{
    private const int N = 27;
    private readonly double[] _matrix = new double[N * N], _right = new double[N], _workMatrix = new double[N * N], _workRight = new double[N];

    [GlobalSetup]
    public void Fill()
    {
        var random = new Random(1);
        for (var i = 0; i < _matrix.Length; i++) _matrix[i] = random.NextDouble() - 0.5;
        for (var i = 0; i < N; i++) { _matrix[i * N + i] += 3; _right[i] = random.NextDouble(); }
    }

    [Benchmark(Baseline = true)]
    public double Own()
    {
        _matrix.CopyTo(_workMatrix, 0);
        _right.CopyTo(_workRight, 0);
        DenseLu.Solve(_workMatrix, _workRight, N);
        return _workRight[0];
    }

    // The library reads the array by columns, which for a benchmark is as good a matrix.
    [Benchmark]
    public double MathNet() => new DenseMatrix(N, N, (double[])_matrix.Clone()).LU().Solve(DenseVector.OfArray(_right))[0];
}
