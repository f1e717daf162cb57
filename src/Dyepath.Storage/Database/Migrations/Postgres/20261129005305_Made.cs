using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Dyepath.Storage.Database.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Made : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            foreach (var table in (string[])["projects", "makings"])
            {
                migrationBuilder.AddColumn<string>(name: "made", table: table, type: "character varying(32)", maxLength: 32, nullable: true);
                migrationBuilder.Sql($"UPDATE {table} SET made = replace(gen_random_uuid()::text, '-', '')");
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
