using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Dyepath.Storage.Database.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class FirstTables : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "projects",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    archived = table.Column<bool>(type: "INTEGER", nullable: false),
                    created_at = table.Column<long>(type: "INTEGER", nullable: false),
                    etag = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    last_version = table.Column<int>(type: "INTEGER", nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    swatch = table.Column<string>(type: "TEXT", nullable: true),
                    updated_at = table.Column<long>(type: "INTEGER", nullable: false),
                    document = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_projects", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "versions",
                columns: table => new
                {
                    project_id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    number = table.Column<int>(type: "INTEGER", nullable: false),
                    bytes = table.Column<int>(type: "INTEGER", nullable: false),
                    kept = table.Column<bool>(type: "INTEGER", nullable: false),
                    saved_at = table.Column<long>(type: "INTEGER", nullable: false),
                    document = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_versions", x => new { x.project_id, x.number });
                    table.ForeignKey(
                        name: "FK_versions_projects_project_id",
                        column: x => x.project_id,
                        principalTable: "projects",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "projects_by_shelf",
                table: "projects",
                columns: new[] { "archived", "updated_at" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "versions");

            migrationBuilder.DropTable(
                name: "projects");
        }
    }
}
