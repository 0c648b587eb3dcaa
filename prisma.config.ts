import { defineConfig } from "prisma/config";

// Prisma would fetch a program for its migration commands, which `generate` never runs and we replace by our own
// runner (lib/store/migrate.ts). Any program that exists keeps it from trying.
process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= process.execPath;

export default defineConfig({
  schema: "prisma/schema.prisma",
  migrations: { path: "prisma/migrations" },
  datasource: { url: process.env.DATABASE_URL ?? "" },
});
