import path from "node:path";
import { defineConfig } from "prisma/config";

// Paths in this file are relative to it.
export default defineConfig({
  schema: path.join(import.meta.dirname, "schema"),
  migrations: { path: path.join(import.meta.dirname, "migrations") },
  datasource: { url: process.env.DATABASE_URL ?? "" },
});
