using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Dyepath.Storage.Database.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Makings : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "handovers",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    created_at = table.Column<long>(type: "INTEGER", nullable: false),
                    key_hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    project_id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    size = table.Column<string>(type: "TEXT", nullable: false),
                    document = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_handovers", x => x.id);
                    table.ForeignKey(
                        name: "FK_handovers_projects_project_id",
                        column: x => x.project_id,
                        principalTable: "projects",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "makings",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    entries = table.Column<int>(type: "INTEGER", nullable: false),
                    etag = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    project_id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: true),
                    size = table.Column<string>(type: "TEXT", nullable: false),
                    title = table.Column<string>(type: "TEXT", nullable: false),
                    updated_at = table.Column<long>(type: "INTEGER", nullable: false),
                    document = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_makings", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "maker_logs",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    bytes = table.Column<int>(type: "INTEGER", nullable: false),
                    entries = table.Column<int>(type: "INTEGER", nullable: false),
                    handover_id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: true),
                    making_id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    project_id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    received_at = table.Column<long>(type: "INTEGER", nullable: false),
                    size = table.Column<string>(type: "TEXT", nullable: false),
                    document = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_maker_logs", x => x.id);
                    table.ForeignKey(
                        name: "FK_maker_logs_handovers_handover_id",
                        column: x => x.handover_id,
                        principalTable: "handovers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.SetNull);
                    table.ForeignKey(
                        name: "FK_maker_logs_projects_project_id",
                        column: x => x.project_id,
                        principalTable: "projects",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "handovers_by_key",
                table: "handovers",
                column: "key_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "handovers_by_project",
                table: "handovers",
                columns: new[] { "project_id", "created_at" });

            migrationBuilder.CreateIndex(
                name: "maker_logs_by_handover",
                table: "maker_logs",
                columns: new[] { "handover_id", "making_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "maker_logs_by_project",
                table: "maker_logs",
                columns: new[] { "project_id", "received_at" });

            migrationBuilder.CreateIndex(
                name: "makings_by_change",
                table: "makings",
                column: "updated_at");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "maker_logs");

            migrationBuilder.DropTable(
                name: "makings");

            migrationBuilder.DropTable(
                name: "handovers");
        }
    }
}
