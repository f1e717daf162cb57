using Dyepath.Storage.Projects;
using Dyepath.Storage.Versions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace Dyepath.Storage.Database;

/// <summary>The tables, alike in both databases.</summary>
public abstract class AppDb(DbContextOptions options) : DbContext(options)
{
    internal DbSet<ProjectRow> Projects => Set<ProjectRow>();

    internal DbSet<VersionRow> Versions => Set<VersionRow>();

    /// <summary>Brings the tables to this program's form, or makes them. Any number of hosts may do so at once.</summary>
    public abstract Task PrepareAsync(CancellationToken cancel);

    /// <summary>Begins to read a state of the whole store that nobody's writing changes meanwhile.</summary>
    internal abstract Task<IDbContextTransaction> BeginSnapshotAsync(CancellationToken cancel);

    /// <summary>A turn to write in this process, until it is disposed of; null where the database needs none.</summary>
    internal virtual ValueTask<IDisposable?> TakeTurnAsync(CancellationToken cancel) => default;

    /// <summary>The project, kept from every other writer until the transaction ends.</summary>
    internal abstract Task<ProjectRow?> LockAsync(string id, CancellationToken cancel);

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        ArgumentNullException.ThrowIfNull(modelBuilder);
        modelBuilder.Entity<ProjectRow>(project =>
        {
            project.ToTable("projects");
            project.HasKey(p => p.Id);
            project.Property(p => p.Id).HasColumnName("id").HasMaxLength(36);
            project.Property(p => p.Name).HasColumnName("name");
            project.Property(p => p.Archived).HasColumnName("archived");
            project.Property(p => p.CreatedAt).HasColumnName("created_at");
            project.Property(p => p.UpdatedAt).HasColumnName("updated_at");
            project.Property(p => p.Etag).HasColumnName("etag").HasMaxLength(40);
            project.Property(p => p.LastVersion).HasColumnName("last_version");
            project.Property(p => p.Swatch).HasColumnName("swatch");
            project.Property(p => p.Document).HasColumnName("document");
            project.HasIndex(p => new { p.Archived, p.UpdatedAt }).HasDatabaseName("projects_by_shelf");
        });
        modelBuilder.Entity<VersionRow>(version =>
        {
            version.ToTable("versions");
            version.HasKey(v => new { v.ProjectId, v.Number });
            version.Property(v => v.ProjectId).HasColumnName("project_id").HasMaxLength(36);
            version.Property(v => v.Number).HasColumnName("number");
            version.Property(v => v.SavedAt).HasColumnName("saved_at");
            version.Property(v => v.Kept).HasColumnName("kept");
            version.Property(v => v.Bytes).HasColumnName("bytes");
            version.Property(v => v.Document).HasColumnName("document");
            version.HasOne<ProjectRow>().WithMany().HasForeignKey(v => v.ProjectId).OnDelete(DeleteBehavior.Cascade);
        });
        // The text comes last in its table: SQLite reads the columns before it without the pages that hold it.
        foreach (var table in modelBuilder.Model.GetEntityTypes())
        {
            var place = 0;
            foreach (var property in table.GetProperties().OrderBy(p => p.ClrType == typeof(byte[])))
                property.SetColumnOrder(place++);
        }
    }
}
