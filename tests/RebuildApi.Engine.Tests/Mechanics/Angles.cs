namespace RebuildApi.Engine.Tests.Mechanics;

internal static class Angles
{
    public static double Degrees(double degrees) => degrees * Math.PI / 180;

    public static double InDegrees(double radians) => radians * 180 / Math.PI;

    public static double PerSecond(double revolutionsPerMinute) => revolutionsPerMinute * 2 * Math.PI / 60;
}
