namespace Handhold.Plots;

/// <summary>What a picture is looked at on.</summary>
public enum PictureTheme
{
    /// <summary>Dark on light, for pages and prints.</summary>
    Light = 0,

    /// <summary>Light on dark, for dark screens.</summary>
    Dark = 1,
}
