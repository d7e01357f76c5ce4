import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { refusalCode } from "./refusal-code";
import { type TwoCustomers, twoCustomers } from "./two-customers";

/** The last defence: whatever the product forgets, a run follows a current revision, with its figures, and keeps both. */

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let world: TwoCustomers;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  world = await twoCustomers(admin);
  runtime = await connect(database.runtimeUrl);
});
afterAll(async () => {
  await runtime?.end();
  await admin?.end();
  await database?.drop();
});

const refused = "23001"; // restrict_violation
/** Another run like the shared one, with this revision and these figures. */
const run = (revision: string, figures: string) =>
  `INSERT INTO run (number, configuration_id, voltmeter_id, scanner_id, performer_id, created_at, procedure_revision_id, budget_inputs)
   SELECT 'R-8', configuration_id, voltmeter_id, scanner_id, performer_id, created_at, ${revision}, ${figures}
     FROM run WHERE id = '${world.sharedRun.id}'`;
const withdraw = "UPDATE procedure_revision SET state = 'withdrawn', withdrawn_at = now()";
const draft = `INSERT INTO procedure_revision (id, procedure_id, revision, budget_inputs, recorded_at)
  SELECT '00000000-0000-4000-8000-000000000009', procedure_id, 2, budget_inputs, now() FROM procedure_revision`;

describe("a run", () => {
  it("is made by a revision that is current", async () => {
    expect(await refusalCode(runtime, run("procedure_revision_id", "budget_inputs"))).toBeUndefined();
  });

  it("is refused without one, by one that is withdrawn, and by a draft", async () => {
    expect(await refusalCode(runtime, run("NULL", "budget_inputs"))).toBe(refused);
    expect(await refusalCode(runtime, `${withdraw}; ${run("procedure_revision_id", "budget_inputs")}`)).toBe(
      refused,
    );
    const ofDraft = run("'00000000-0000-4000-8000-000000000009'::uuid", "budget_inputs");
    expect(await refusalCode(runtime, `${draft}; ${ofDraft}`)).toBe(refused);
  });

  it("is refused with other figures than its revision's", async () => {
    expect(await refusalCode(runtime, run("procedure_revision_id", "'{\"a\":1}'"))).toBe(refused);
  });

  it("keeps revision and figures, also when the revision is withdrawn", async () => {
    expect(await refusalCode(runtime, "UPDATE run SET budget_inputs = '{\"a\":1}'")).toBe(refused);
    expect(await refusalCode(runtime, "UPDATE run SET procedure_revision_id = NULL")).toBe(refused);
    expect(await refusalCode(runtime, `${withdraw}; UPDATE run SET note = 'still ours'`)).toBeUndefined();
  });
});

it("withdraws a revision only once a run that was just made by it is in", async () => {
  const other = await connect(database.runtimeUrl);
  try {
    await runtime.query("BEGIN; SET LOCAL app.scope = 'laboratory'");
    await runtime.query(run("procedure_revision_id", "budget_inputs"));
    await other.query("BEGIN; SET LOCAL app.scope = 'laboratory'; SET LOCAL lock_timeout = '200ms'");
    await expect(other.query(withdraw)).rejects.toMatchObject({ code: "55P03" });
  } finally {
    await runtime.query("ROLLBACK");
    await other.query("ROLLBACK");
    await other.end();
  }
});
