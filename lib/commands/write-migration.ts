import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import {
  bindMigrationAwareSqlAdapterFactory,
  ColumnTypeEnum,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from "@prisma/driver-adapter-utils";
import { checkout, inCheckout } from "@/lib/commands/checkout";
import { Failure } from "@/lib/commands/failure";

const migrations = inCheckout("prisma", "migrations");

// One file, not a folder: Prisma's own tool takes every folder beside the migrations for a migration.
const snapshotFile = path.join(migrations, "schema-snapshot.prisma");

/**
 * Writes the SQL that leads from the schema as of the last migration (the snapshot beside the migrations) to the
 * schema as it stands, into a new numbered migration, and moves the snapshot on. With no change in the schema it
 * makes an empty file, for functions, triggers and policies written by hand. Returns what it did, for the terminal.
 */
export async function writeMigration(name: string): Promise<string> {
  if (!/^[a-z0-9]+(_[a-z0-9]+)*$/.test(name)) {
    throw new Failure(
      "Name the migration in lower case with underscores: npm run migration -- orders_have_a_due_date",
    );
  }
  const wanted = currentSchema();
  const before = existsSync(snapshotFile) ? readFileSync(snapshotFile, "utf8") : undefined;
  const sql = before === wanted ? "" : await diff(before, wanted);
  const folder = path.join(migrations, `${nextNumber()}_${name}`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, "migration.sql"), sql);
  writeFileSync(path.join(migrations, "migration_lock.toml"), 'provider = "postgresql"\n');
  writeFileSync(snapshotFile, wanted);
  const made = path.relative(checkout, path.join(folder, "migration.sql"));
  return sql === ""
    ? `${made}: empty, the schema did not change; write by hand what it should do.`
    : `${made}: written. Lists come out nullable: add NOT NULL and CHECKs in a migration written by hand.`;
}

function currentSchema(): string {
  const folder = inCheckout("prisma", "schema");
  const files = readdirSync(folder).filter((file) => file.endsWith(".prisma"));
  return files
    .sort()
    .map((file) => readFileSync(path.join(folder, file), "utf8").trim())
    .join("\n\n")
    .concat("\n");
}

function nextNumber(): string {
  const numbers = readdirSync(migrations)
    .map((entry) => Number.parseInt(entry, 10))
    .filter(Number.isFinite);
  return String(Math.max(0, ...numbers) + 1).padStart(4, "0");
}

async function diff(before: string | undefined, after: string): Promise<string> {
  const engine = await schemaEngine(after);
  const target = (content: string) => ({
    tag: "schemaDatamodel" as const,
    files: [{ path: "schema.prisma", content }],
  });
  const result = await engine.diff({
    from: before === undefined ? { tag: "empty" } : target(before),
    to: target(after),
    script: true,
    exitCode: null,
    filters: { externalTables: [], externalEnums: [] },
  });
  const sql = result.stdout ?? "";
  if (sql.startsWith("-- This is an empty migration")) return "";
  return sql.replace('-- CreateSchema\nCREATE SCHEMA IF NOT EXISTS "public";\n\n', "");
}

/** The part of Prisma that compares schemas, as WebAssembly: its native form would have to be downloaded. */
async function schemaEngine(schema: string) {
  const bindings = await import("@prisma/schema-engine-wasm/schema_engine_bg");
  const require = createRequire(import.meta.url);
  const folder = path.dirname(require.resolve("@prisma/schema-engine-wasm/schema_engine_bg"));
  const module = await WebAssembly.compile(readFileSync(path.join(folder, "schema_engine_bg.wasm")));
  const imports = bindings as unknown as WebAssembly.ModuleImports;
  const instance = await WebAssembly.instantiate(module, { "./schema_engine_bg.js": imports });
  bindings.__wbg_set_wasm(instance.exports);
  (instance.exports.__wbindgen_start as () => void)();
  const adapter = bindMigrationAwareSqlAdapterFactory(unusedDatabase);
  return bindings.SchemaEngine.new({ datamodels: [["schema.prisma", schema]] }, () => {}, adapter);
}

// Comparing two schemas needs no database, but the engine asks which one it is before it does anything.
const unusedConnection = {
  provider: "postgres",
  adapterName: "none",
  queryRaw: async () => ({
    columnNames: ["exists", "version", "numeric_version"],
    columnTypes: [ColumnTypeEnum.Boolean, ColumnTypeEnum.Text, ColumnTypeEnum.Int32],
    rows: [[true, "PostgreSQL 18.4", 180004]],
  }),
  executeRaw: async () => 0,
  executeScript: async () => {},
  startTransaction: async () => Promise.reject(new Error("There is no database to write to.")),
  dispose: async () => {},
  getConnectionInfo: () => ({ schemaName: "public", supportsRelationJoins: true }),
} satisfies SqlDriverAdapter;

const unusedDatabase = {
  provider: "postgres",
  adapterName: "none",
  connect: async () => unusedConnection,
  connectToShadowDb: async () => unusedConnection,
} satisfies SqlMigrationAwareDriverAdapterFactory;
