import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { asRuntime } from "@/lib/commands/rederive/open-database";
import { type Rederived, rederiveAll } from "@/lib/commands/rederive/rederive-all";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { configureSeal, sealKeyOf } from "@/lib/data/seal";
import { makeSealer } from "@/lib/operations/seal/sealer";
import { seedDemo } from "@/prisma/seed/demo";
import { writtenColumns } from "@/tests/data/written-columns";
import { demonstrationTests } from "@/tests/seed/demonstration";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { temporaryFolder } from "@/tests/support/temporary-folder";
import { testKeys } from "@/tests/support/test-keys";
import { endCertificates } from "./end-certificates";
import { endingTamperings } from "./ending-tamperings";
import { rememberingMakers } from "./remembering-makers";
import { tamperings } from "./tamperings";

/** The demo laboratory, with runs, evaluations and rendered certificates; then a superuser's hand in each of them. */

const keys = testKeys(temporaryFolder());
let database: TestDatabase;
let admin: pg.Client;
const tools = rememberingMakers();

const evidence = [
  "audit_event",
  "audit_head",
  "scan_block",
  "scan_block_channel",
  "stability_window",
  "characterisation",
  "characterisation_survey",
  "evaluation",
  "result",
  "certificate",
  "certificate_file",
  "certificate_ending",
  "seal_key",
  "seal_key_ending",
  "trace_node",
  "trace_edge",
  "quotation",
  "agreement",
  "order_document",
] as const;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  configureSeal(sealKeyOf("only for tests, of no installation at all"));
  const seal = makeSealer(keys, () => new Date());
  await seedDemo({ databaseUrl: database.runtimeUrl, seal, log: () => {} });
});

afterAll(async () => {
  await closeDatabase();
  await admin?.end();
  await database?.drop();
});

const rederive = async (): Promise<{ whole: boolean; told: readonly Rederived[] }> => {
  const told: Rederived[] = [];
  const whole = await rederiveAll((step) => told.push(step), tools);
  return { whole, told };
};

const tamper = async (sql: string): Promise<Rederived> => {
  try {
    await admin.query(sql);
    const { whole, told } = await rederive();
    expect(whole).toBe(false);
    expect(told.slice(0, -1).map(({ outcome }) => outcome.kind)).not.toContain("broken");
    return told.at(-1)!;
  } finally {
    // What is changed is named in the statement; that nothing else was is what the last test asks.
    const touched = evidence.filter((table) => new RegExp(`\\b${table}\\b`).test(sql));
    for (const table of touched.toReversed()) await admin.query(`DELETE FROM ${table}`);
    for (const table of touched) {
      const columns = await writtenColumns(admin, table);
      await admin.query(`INSERT INTO ${table} (${columns}) SELECT ${columns} FROM kept_${table}`);
    }
  }
};

describe("the demonstration", () => demonstrationTests());

describe("its rederivation", () => {
  beforeAll(async () => {
    await endCertificates();
    await closeDatabase();
    for (const table of evidence) await admin.query(`ALTER TABLE ${table} DISABLE TRIGGER ALL`);
    for (const table of evidence) await admin.query(`CREATE TABLE kept_${table} AS TABLE ${table}`);
    // As the command does it with an administrator's address.
    configureDatabase(asRuntime(database.adminUrl));
  });

  it("finds the demo laboratory as it was, two certificates of it ended, with something of every kind", async () => {
    const { whole, told } = await rederive();
    expect(told.map(({ step, outcome }) => [step, outcome.kind])).toEqual(
      [
        "audit log",
        "scan blocks",
        "characterisations",
        "results",
        "certificates",
        "checkpoints",
        "seals",
        "chains",
        "offers and papers",
        "log and records",
      ].map((step) => [step, "whole"]),
    );
    expect(whole).toBe(true);
    for (const { outcome } of told)
      expect(outcome).toMatchObject({
        said: expect.not.stringMatching(
          /(^|\s)0 (event|block|result|certificate|sealed|key|chain|doc|offer|paper)/,
        ),
      });
  });

  describe("names the first record that is not as it was", () => {
    it.each([...tamperings, ...endingTamperings])("%s", async (_name, step, record, reason, sql) => {
      expect(await tamper(sql)).toEqual({
        step,
        outcome: {
          kind: "broken",
          record: expect.stringMatching(record),
          reason: expect.stringMatching(reason),
        },
      });
    });

    it("and nothing once all is put back", async () => {
      expect((await rederive()).whole).toBe(true);
    });
  });
});
