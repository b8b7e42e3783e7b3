namespace Handhold.Architecture.Tests;

public class SurfacesTests
{
    private static IEnumerable<Type> Public => House.Shipped.SelectMany(a => a.GetExportedTypes());

    [Fact]
    public void No_published_object_can_be_changed() => Assert.Empty(Public.SelectMany(Surfaces.WaysToChange));

    [Fact]
    public void Results_are_made_inside_the_library_and_sealed() => Assert.Empty(Public.SelectMany(Surfaces.WaysToForge));

    [Fact]
    public void Options_are_sealed_records() => Assert.DoesNotContain(Public, IsOpenRecord);

    [Fact]
    public void Kernels_are_not_for_sale() => Assert.DoesNotContain(Public, IsKernel);

    [Fact]
    public void Satellites_see_only_the_public_surface_of_the_core() => Assert.Empty(Surfaces.FriendsOf(House.Shipped[0]));

    [Fact]
    public void Satellites_do_not_use_each_other() =>
        Assert.Empty(House.Shipped.Where(a => a.GetName().Name != "Handhold.Cli").SelectMany(Surfaces.NeighboursOf));

    [Theory]
    [InlineData("public sealed class A { public double Rate; }", "A.Rate is a public field that can be written")]
    [InlineData("public sealed class A { public double Rate { get; set; } }", "A.Rate can be set")]
    [InlineData("public sealed class A { public double[] Rates { get; } = []; }", "A.Rates hands out a collection that can be written")]
    [InlineData("public sealed class A { public IList<int> Rates { get; } = []; }", "A.Rates hands out a collection that can be written")]
    [InlineData("public struct A { public double Rate => 1; }", "A is a struct that is not readonly")]
    public void A_result_that_can_be_changed_is_seen(string bad, string said) =>
        Assert.Equal([said], House.Load(bad).GetExportedTypes().SelectMany(Surfaces.WaysToChange));

    [Theory]
    [InlineData("public sealed class A { }", "A has a public constructor")]
    [InlineData("public abstract class A { protected A() { } }", "A is neither sealed nor closed to heirs from outside")]
    [InlineData("public class A { internal A() { } }", "A is neither sealed nor closed to heirs from outside")]
    public void A_result_that_can_be_forged_is_seen(string bad, string said) =>
        Assert.Equal([said], House.Load(bad).GetExportedTypes().SelectMany(Surfaces.WaysToForge));

    [Theory]
    [InlineData(
        "public sealed class A { internal A() { } public IReadOnlyList<int> Rates { get; } = []; public int Level { get; init; } }"
    )]
    [InlineData("public abstract class A { private protected A() { } }")]
    [InlineData("public sealed record A { public int Level { get; init; } }")]
    [InlineData("public readonly record struct A(double Value); public static class B { } public enum C { D }")]
    public void A_good_type_passes(string good) =>
        Assert.Empty(House.Load(good).GetExportedTypes().SelectMany(t => Surfaces.WaysToChange(t).Concat(Surfaces.WaysToForge(t))));

    [Fact]
    public void An_open_record_and_a_public_kernel_are_seen()
    {
        Assert.Contains(House.Load("public record A;").GetExportedTypes(), IsOpenRecord);
        Assert.Contains(House.Load("namespace Handhold.Kernels; public static class A;").GetExportedTypes(), IsKernel);
    }

    [Fact]
    public void A_friend_and_a_neighbour_are_seen()
    {
        const string Friendly = "[assembly: System.Runtime.CompilerServices.InternalsVisibleTo(\"Handhold.Plots\")]";
        Assert.Equal(["Handhold.Plots"], Surfaces.FriendsOf(House.Load(Friendly)));
        const string Neighbourly = "public class A { public Handhold.Tables.TableOptions? B; public Handhold.Priors? C; }";
        Assert.Equal(["Handhold.Tables"], Surfaces.NeighboursOf(House.Load(Neighbourly)));
    }

    private static bool IsOpenRecord(Type type) => Surfaces.IsRecord(type) && !type.IsSealed;

    private static bool IsKernel(Type type) => type.Namespace == "Handhold.Kernels";
}
