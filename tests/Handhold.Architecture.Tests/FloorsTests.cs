using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Handhold.Architecture.Tests;

public class FloorsTests
{
    private static readonly CSharpCompilation s_core = House.Compile("Handhold");

    [Fact]
    public void The_core_compiles_here_so_no_name_is_overlooked() =>
        Assert.DoesNotContain(s_core.GetDiagnostics(TestContext.Current.CancellationToken), d => d.Severity == DiagnosticSeverity.Error);

    [Fact]
    public void Every_file_of_the_core_lies_in_a_room_with_a_floor() =>
        Assert.DoesNotContain(House.SourceFiles("src/Handhold"), f => Floors.Of(Floors.RoomOf(f)) < 0);

    [Fact]
    public void A_room_uses_only_rooms_on_lower_floors() => Assert.Empty(Floors.Breaches(s_core));

    [Fact]
    public void MathNet_stays_behind_the_kernels() => Assert.Empty(Floors.MathNetOutsideKernels(s_core));

    [Theory]
    [InlineData("Models", "Curves", "public class B { internal A? F; }")]
    [InlineData("Answers", "Observations", "public class B { public static int F() => A.N; }")]
    [InlineData("Answers", "Models", "public class B { public static object F() { A a = new(); return a.ToString()!; } }")]
    [InlineData("Curves", "Prediction", "public class B { public static int F(string s) => s.Twice(); }")]
    [InlineData("Solvers", "Fitting", "public class B { public static void F(Action<object> use) { var a = A.Make(); use(a); } }")]
    public void An_upward_or_sideways_use_is_seen_wherever_the_name_stands(string home, string other, string use)
    {
        const string Declared =
            "public class A { public const int N = 1; public static A Make() => new(); } public static class E { public static int Twice(this string s) => s.Length * 2; }";
        var bad = Floors
            .Breaches(House.Compile("Bad", [($"src/Handhold/{other}/A.cs", Declared), ($"src/Handhold/{home}/B.cs", use)]))
            .ToList();
        Assert.NotEmpty(bad);
        Assert.All(bad, b => Assert.StartsWith($"src/Handhold/{home}/B.cs:1: ", b, StringComparison.Ordinal));
        Assert.All(bad, b => Assert.Contains($"may not use {other}", b, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("src/Handhold/Loose.cs")]
    [InlineData("src/Handhold/Attic/Old.cs")]
    public void A_file_outside_the_rooms_is_seen(string file) => Assert.Equal(-1, Floors.Of(Floors.RoomOf(file)));

    [Fact]
    public void A_downward_use_is_allowed() =>
        Assert.Empty(
            Floors.Breaches(
                House.Compile(
                    "Good",
                    [("src/Handhold/Exposure/A.cs", "public class A;"), ("src/Handhold/Answers/B.cs", "public class B { internal A? F; }")]
                )
            )
        );

    [Fact]
    public void MathNet_outside_the_kernels_is_seen() =>
        Assert.Single(
            Floors
                .MathNetOutsideKernels(
                    House.Compile(
                        "Bad",
                        [("src/Handhold/Models/A.cs", "public class A { public double F => MathNet.Numerics.Constants.Pi; }")]
                    )
                )
                .Select(b => b.Split(": ")[0])
                .Distinct()
        );
}
