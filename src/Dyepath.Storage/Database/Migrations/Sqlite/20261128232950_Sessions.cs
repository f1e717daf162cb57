using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Dyepath.Storage.Database.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Sessions : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "sessions",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    device = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    key_hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    seen_at = table.Column<long>(type: "INTEGER", nullable: false),
                    signed_in_at = table.Column<long>(type: "INTEGER", nullable: false),
                    token_mark = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sessions", x => x.id);
                });

            migrationBuilder.CreateIndex(
                name: "sessions_by_key",
                table: "sessions",
                column: "key_hash",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "sessions");
        }
    }
}
