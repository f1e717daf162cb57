using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Dyepath.Storage.Database.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Made : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            foreach (var table in (string[])["projects", "makings"])
            {
                migrationBuilder.AddColumn<string>(name: "made", table: table, type: "TEXT", maxLength: 32, nullable: true);
                migrationBuilder.Sql($"UPDATE {table} SET made = lower(hex(randomblob(16)))");
            }
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(name: "made", table: "projects");
            migrationBuilder.DropColumn(name: "made", table: "makings");
        }
    }
}
