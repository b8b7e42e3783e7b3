namespace Handhold.Photos;

/// <summary>Whose rating or label counts where a photograph and its sidecar differ. The difference is reported either way.</summary>
public enum MetadataPrecedence
{
    /// <summary>The sidecar's.</summary>
    Sidecar,

    /// <summary>The photograph's own.</summary>
    Photograph,
}
