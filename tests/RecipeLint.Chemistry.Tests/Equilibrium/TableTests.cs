using RecipeLint.Chemistry.Tests.Equilibrium.Generation;

namespace RecipeLint.Chemistry.Tests.Equilibrium;

public sealed class TableTests
{
    [Fact]
    public void ConstantTableIsFresh() => Repository.Golden(TableWriter.Path, TableWriter.Write(ThermoData.Load()));

    [Fact]
    public void CalibrationIsFresh() => Repository.Golden(Calibration.Path, Calibration.Write(ThermoData.Load()));
}
