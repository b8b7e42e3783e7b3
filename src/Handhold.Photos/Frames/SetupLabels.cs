using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text;

namespace Handhold.Photos;

/// <summary>Camera and lens as one label. A serial number is personal: only a salted, stretched hash of it appears.</summary>
internal sealed class SetupLabels(string salt)
{
    private const int Rounds = 10_000;
    private const int BytesShown = 4;

    private readonly byte[] _salt = Encoding.UTF8.GetBytes($"Handhold.Photos {salt}");
    private readonly ConcurrentDictionary<string, string> _known = new(StringComparer.Ordinal);

    public string? Of(HeaderTags tags)
    {
        string?[] parts =
        [
            Named(tags[HeaderTags.Model]?.Text, tags[HeaderTags.BodySerial]?.Text),
            Named(tags[HeaderTags.LensModel]?.Text, tags[HeaderTags.LensSerial]?.Text),
        ];
        return string.Join(" + ", parts.OfType<string>()) is { Length: > 0 } label ? label : null;
    }

    private string? Named(string? model, string? serial) =>
        (model, serial) switch
        {
            (null, null) => null,
            (_, null) => model,
            _ => $"{model}{(model is null ? "" : " ")}#{_known.GetOrAdd(serial, Hashed)}",
        };

    private string Hashed(string serial) =>
        Convert.ToHexStringLower(
            Rfc2898DeriveBytes.Pbkdf2(Encoding.UTF8.GetBytes(serial), _salt, Rounds, HashAlgorithmName.SHA256, BytesShown)
        );
}
