using System.Reflection;

namespace Handhold.Serialization;

/// <summary>The version of this library.</summary>
internal static class HandholdVersion
{
    /// <summary>Such as <c>0.1.0</c>, without the build's commit.</summary>
    internal static string Text { get; } =
        typeof(HandholdVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];
}
