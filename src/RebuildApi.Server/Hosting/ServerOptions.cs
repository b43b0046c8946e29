using System.ComponentModel.DataAnnotations;

namespace RebuildApi.Server;

/// <summary>The settings of the service: section <c>Rebuild</c> of the configuration, or environment variables <c>Rebuild__DataFolder</c> and so on.</summary>
public sealed record ServerOptions
{
    /// <summary>Name of the section.</summary>
    public const string Section = "Rebuild";

    /// <summary>Where the shop's records lie; made when it does not exist.</summary>
    public string DataFolder { get; init; } = "data";

    /// <summary>
    /// Connection to a PostgreSQL database that keeps the records, such as <c>Host=db;Database=rebuild;Username=rebuild;Password=…</c>; a file in
    /// <see cref="DataFolder"/> when not said.
    /// </summary>
    public string? Database { get; init; }

    /// <summary>The shop whose records are read and written; shops that share a database see nothing of each other.</summary>
    public string Shop { get; init; } = "main";

    /// <summary>Where photos and documents lie; <c>attachments</c> in the data folder when not said. Copies of the service over one database share it.</summary>
    public string? AttachmentFolder { get; init; }

    /// <summary>Where the keys lie that open the secrets of receivers; <c>keys</c> in the data folder when not said. Copies of the service over one database share it.</summary>
    public string? KeyFolder { get; init; }

    /// <summary>Where the shipped plug-ins lie, one folder each; beside the program when not said.</summary>
    public string? PluginFolder { get; init; }

    /// <summary>List of approved plug-in hashes that belongs to <see cref="PluginFolder"/>; beside the program when not said.</summary>
    public string? ApprovedPlugins { get; init; }

    /// <summary>Where families lie that were written as files; <c>families</c> in the data folder when not said.</summary>
    public string? FamilyFolder { get; init; }

    /// <summary>Value of <see cref="Access"/>: every request but the open ones shows a token.</summary>
    public const string Tokens = "tokens";

    /// <summary>Value of <see cref="Access"/>: nobody has to say who they are; taken only while it listens on loopback addresses.</summary>
    public const string ThisMachine = "this-machine";

    /// <summary>Most requests in a minute of a client that is not on this machine, where nothing else is set.</summary>
    public const int RequestsPerMinuteOfOthers = 6000;

    /// <summary>The names of this machine for itself.</summary>
    public static readonly string[] OwnHosts = ["localhost", "127.0.0.1", "[::1]"];

    /// <summary>Whether tokens are asked for: <see cref="Tokens"/> or <see cref="ThisMachine"/>.</summary>
    public string Access { get; init; } = Tokens;

    /// <summary>Where it listens. Addresses that other machines could reach are taken only with <see cref="Lan"/>.</summary>
    public string Listen { get; init; } = "http://127.0.0.1:5280";

    /// <summary>Whether other machines may come in.</summary>
    public bool Lan { get; init; }

    /// <summary>Host names that it answers to, without ports.</summary>
    public string[] Hosts { get; init; } = OwnHosts;

    /// <summary>File of the certificate for https addresses: .pfx, or .pem.</summary>
    public string? Certificate { get; init; }

    /// <summary>File of the key of a .pem certificate, when it does not stand in the same file.</summary>
    public string? CertificateKey { get; init; }

    /// <summary>Password of the certificate's file.</summary>
    public string? CertificatePassword { get; init; }

    /// <summary>Language of the pages (<c>en</c>, or that of a file in <c>words</c> in the data folder); as each browser asks when not said.</summary>
    public string? Language { get; init; }

    /// <summary>Most requests of one client in a minute; 0 for no limit. When not said: none for this machine, <see cref="RequestsPerMinuteOfOthers"/> for others.</summary>
    [Range(0, 1_000_000)]
    public int? RequestsPerMinute { get; init; }

    /// <summary>Where backups lie, best on another disk; <c>backups</c> in the data folder when not said.</summary>
    public string? BackupFolder { get; init; }

    /// <summary>When a backup is made each day, by the clock of this machine: <c>HH:mm</c>, or <c>off</c>. One that was missed is made after the next start.</summary>
    public string BackupAt { get; init; } = "02:00";

    /// <summary>How many of the backups that were made by themselves are kept.</summary>
    [Range(1, 1000)]
    public int BackupsKept { get; init; } = 14;

    /// <summary>After how many years without a new record a customer's records are listed for a person to look at. Nothing is removed by itself.</summary>
    [Range(1, 100)]
    public int KeepYears { get; init; } = 10;

    /// <summary>Where traces and metrics go by the OpenTelemetry protocol, such as <c>http://127.0.0.1:4317</c>; nowhere, and at no cost, when not said.</summary>
    public string? TelemetryTo { get; init; }

    /// <summary>How long stopping may wait for what was begun, seconds.</summary>
    [Range(1, 300)]
    public int StopSeconds { get; init; } = 15;

    /// <summary>Largest photo or document that is taken, bytes; 16 MiB.</summary>
    [Range(1, 1 << 30)]
    public int AttachmentBytes { get; init; } = 16 << 20;

    /// <summary>What the photos and documents of one unit may come to, bytes; 512 MiB.</summary>
    [Range(1.0, 1e15)]
    public long AttachmentBytesPerUnit { get; init; } = 512L << 20;

    /// <summary>Longest time that a plan is looked for, seconds; what was found by then is answered with how far it may be from the best.</summary>
    [Range(1, 600)]
    public int PlanSeconds { get; init; } = 10;

    /// <summary>Longest time for one request, seconds.</summary>
    [Range(1, 3600)]
    public int RequestSeconds { get; init; } = 60;

    /// <summary>
    /// Where webhooks may be sent to: networks such as <c>192.168.1.0/24</c>, addresses, and host names. What is said here comes to this machine,
    /// which is always allowed.
    /// </summary>
    public string[] WebhookReceivers { get; init; } = ["127.0.0.0/8", "::1/128"];

    /// <summary>Where the keys lie.</summary>
    public string Keys => KeyFolder ?? Path.Combine(DataFolder, Webhooks.SecretKeeper.Folder);

    /// <summary>Where photos and documents lie.</summary>
    public string Attachments => AttachmentFolder ?? Path.Combine(DataFolder, Storage.AttachmentFolder.Name);

    /// <summary>Whether tokens are asked for.</summary>
    public bool AsksForTokens => Access == Tokens;
}
