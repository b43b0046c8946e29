using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace RebuildApi.Server;

/// <summary>The certificate that the shop gives for TLS.</summary>
public static class Certificate
{
    /// <summary>Checks that it can be read, where one is set.</summary>
    /// <exception cref="InvalidOperationException">It can't be read.</exception>
    public static void Check(ServerOptions options)
    {
        if (options.Certificate is not null)
            Read(options).Dispose();
    }

    /// <summary>Reads it: a .pfx, or a .pem with its key in it or in a file of its own.</summary>
    /// <exception cref="InvalidOperationException">It can't be read.</exception>
    public static X509Certificate2 Read(ServerOptions options)
    {
        var file = options.Certificate!;
        try
        {
            if (!file.EndsWith(".pem", StringComparison.OrdinalIgnoreCase) && !file.EndsWith(".crt", StringComparison.OrdinalIgnoreCase))
                return X509CertificateLoader.LoadPkcs12FromFile(file, options.CertificatePassword);
            using var read = options.CertificatePassword is { } password
                ? X509Certificate2.CreateFromEncryptedPemFile(file, password, options.CertificateKey)
                : X509Certificate2.CreateFromPemFile(file, options.CertificateKey);
            // Windows takes no key that lives in memory alone.
            return X509CertificateLoader.LoadPkcs12(read.Export(X509ContentType.Pkcs12), null);
        }
        catch (Exception e) when (e is CryptographicException or IOException or UnauthorizedAccessException)
        {
            throw new InvalidOperationException($"Rebuild:Certificate is {file}, which can't be read as a certificate with its key: {e.Message}", e);
        }
    }
}
