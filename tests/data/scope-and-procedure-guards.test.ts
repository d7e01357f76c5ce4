import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { insufficientPrivilege, refusalCode } from "./refusal-code";
import { type TwoCustomers, twoCustomers } from "./two-customers";

/** The last defence of the scope and of procedures: whatever the product forgets. */

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let world: TwoCustomers;
let secondPersonId: string;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  world = await twoCustomers(admin);
  runtime = await connect(database.runtimeUrl);
  const { rows } = await admin.query<{ id: string }>("SELECT id FROM person WHERE name = 'S'");
  secondPersonId = rows[0]!.id;
});
afterAll(async () => {
  await runtime?.end();
  await admin?.end();
  await database?.drop();
});

const overlapping = "23P01"; // exclusion_violation
const broken = "23514"; // check_violation

/** The fixture's line: type N, 300 to 1200 °C, from 2026-01-01 on. */
const line = (type: string, from: number, to: number, validFrom: string, validUntil: string | null) =>
  `INSERT INTO scope_line (type_letter, from_celsius, to_celsius, capability, valid_from, valid_until, source, recorded_at)
   VALUES ('${type}', ${from}, ${to}, '{}', '${validFrom}', ${validUntil ? `'${validUntil}'` : "NULL"}, 'invented', now())`;

describe("a line of the scope", () => {
  it.each([
    ["on one of its days", "N", 300, 1200, "2027-01-01", null],
    ["until its first day", "N", 300, 1200, "2025-01-01", "2026-01-01"],
    ["by a degree", "N", 0, 301, "2026-03-01", null],
  ] as const)("is refused over another: %s", async (_, type, from, to, validFrom, validUntil) => {
    expect(await refusalCode(runtime, line(type, from, to, validFrom, validUntil))).toBe(overlapping);
  });

  it.each([
    ["another type", "K", 300, 1200, "2026-03-01", null],
    ["a range that meets it", "N", 0, 300, "2026-03-01", null],
    ["the day before", "N", 300, 1200, "2025-01-01", "2025-12-31"],
  ] as const)("stands beside another: %s", async (_, type, from, to, validFrom, validUntil) => {
    expect(await refusalCode(runtime, line(type, from, to, validFrom, validUntil))).toBeUndefined();
  });

  it("is ended once, and nothing else of it changes", async () => {
    const end = "UPDATE scope_line SET valid_until = '2026-12-31'";
    expect(await refusalCode(runtime, end)).toBeUndefined();
    for (const change of ["valid_until = '2027-12-31'", "valid_until = NULL"])
      expect(await refusalCode(runtime, `${end}; UPDATE scope_line SET ${change}`)).toBe(
        insufficientPrivilege,
      );
    for (const change of [
      "capability = '{\"a\":1}'",
      "from_celsius = 0",
      "type_letter = 'K'",
      "source = 'x'",
    ])
      expect(await refusalCode(runtime, `UPDATE scope_line SET ${change}`)).toBe(insufficientPrivilege);
    expect(await refusalCode(runtime, "DELETE FROM scope_line")).toBe(insufficientPrivilege);
  });
});

const draft = (by: string | null) =>
  `INSERT INTO procedure_revision (procedure_id, revision, budget_inputs, verification, recorded_by_id, recorded_at)
   SELECT id, 9, '{}', 'V-9', ${by ? `'${by}'` : "NULL"}, now() FROM procedure WHERE key = 'comparison'`;
const withdraw =
  "UPDATE procedure_revision SET state = 'withdrawn', withdrawn_at = now() WHERE state = 'current'";
const approve = (by: string | null, more = "") =>
  `UPDATE procedure_revision SET state = 'current', current_from = now(),
     current_by_id = ${by ? `'${by}'` : "NULL"}${more} WHERE revision = 9`;

describe("a procedure's revision", () => {
  const made = (by: string | null, approvedBy: string | null, more = "") =>
    refusalCode(runtime, `${withdraw}; ${draft(by)}; ${approve(approvedBy, more)}`);

  it("is made current by another person than drafted it", async () => {
    expect(await made(world.technicianId, secondPersonId)).toBeUndefined();
    expect(await made(world.technicianId, world.technicianId)).toBe(broken);
    expect(await made(world.technicianId, null)).toBe(broken);
  });

  it("is made current as it was drafted, by whom it was drafted", async () => {
    expect(await made(world.technicianId, secondPersonId, ", budget_inputs = '{\"a\":1}'")).toBe(
      insufficientPrivilege,
    );
    expect(await made(world.technicianId, world.technicianId, `, recorded_by_id = '${secondPersonId}'`)).toBe(
      insufficientPrivilege,
    );
  });

  it("is never current beside another, nor without its verification", async () => {
    expect(await refusalCode(runtime, `${draft(world.technicianId)}; ${approve(secondPersonId)}`)).toBe(
      "23505",
    );
    expect(await made(world.technicianId, secondPersonId, ", verification = ''")).toMatch(/^(23514|42501)$/);
  });

  it("cannot come in as current past the second person", async () => {
    const insert = `${withdraw}; INSERT INTO procedure_revision (procedure_id, revision, state, budget_inputs, verification, recorded_by_id, recorded_at, current_from, current_by_id)
      SELECT id, 9, 'current', '{}', 'V-9', '${world.technicianId}', now(), now(), '${world.technicianId}' FROM procedure WHERE key = 'comparison'`;
    expect(await refusalCode(runtime, insert)).toBe(broken);
  });

  it("is withdrawn and stays so", async () => {
    const back = `${withdraw}; UPDATE procedure_revision SET state = 'current', withdrawn_at = NULL`;
    expect(await refusalCode(runtime, back)).toBe(broken);
    expect(await refusalCode(runtime, "UPDATE procedure_revision SET current_by_id = NULL")).toBe(
      insufficientPrivilege,
    );
  });
});
