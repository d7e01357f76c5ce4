import { randomUUID } from "node:crypto";
import pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { insufficientPrivilege } from "./refusal-code";
import { shownToA } from "./shown-to-a";
import { type TwoCustomers, twoCustomers } from "./two-customers";
import { writtenColumns } from "./written-columns";

/** No privilege at all, in whatever scope. */
const outOfReach = ["_prisma_migrations", "counter"];

let database: TestDatabase;
let admin: pg.Client;
let runtime: pg.Client;
let world: TwoCustomers;

beforeAll(async () => {
  database = await testDatabase();
  admin = await connect(database.adminUrl);
  runtime = await connect(database.runtimeUrl);
  world = await twoCustomers(admin);
  configureDatabase(database.runtimeUrl);
});

afterAll(async () => {
  await closeDatabase();
  await Promise.all([admin?.end(), runtime?.end()]);
  await database?.drop();
});

const relations = async (): Promise<readonly { name: string; enabled: boolean; forced: boolean }[]> => {
  const { rows } = await admin.query(
    `SELECT relname AS name, relrowsecurity AS enabled, relforcerowsecurity AS forced FROM pg_class
       WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p', 'v', 'm', 'f') ORDER BY relname`,
  );
  return rows;
};

type Setting = { readonly scope?: string; readonly customerId?: string };

const within = async <T>({ scope, customerId }: Setting, work: () => Promise<T>): Promise<T> => {
  await runtime.query("BEGIN");
  try {
    if (scope !== undefined) await runtime.query("SELECT set_config('app.scope', $1, true)", [scope]);
    if (customerId !== undefined)
      await runtime.query("SELECT set_config('app.customer_id', $1, true)", [customerId]);
    return await work();
  } finally {
    await runtime.query("ROLLBACK");
  }
};

const rowsOf = async (table: string) => (await runtime.query(`SELECT * FROM ${table}`)).rows;

const counts = (setting: Setting): Promise<Record<string, number>> =>
  within(setting, async () => {
    const found: Record<string, number> = {};
    for (const table of Object.keys(shownToA)) found[table] = (await rowsOf(table)).length;
    return found;
  });

const none = Object.fromEntries(Object.keys(shownToA).map((table) => [table, 0]));
const ofA = () => ({ scope: "customer", customerId: world.a.customerId });

describe("the catalogue", () => {
  it("has no table or view that these tests forget", async () => {
    const names = (await relations()).map((relation) => relation.name);
    expect(names).toEqual([...Object.keys(shownToA), ...outOfReach].sort());
  });

  it("forces row-level security on every table of the product", async () => {
    const open = (await relations()).filter(({ enabled, forced }) => !enabled || !forced);
    expect(open.map((relation) => relation.name)).toEqual(["_prisma_migrations"]);
  });

  it("lets the product near no other", async () => {
    for (const table of outOfReach)
      await within({ scope: "laboratory" }, () =>
        expect(rowsOf(table)).rejects.toMatchObject({ code: insufficientPrivilege }),
      );
  });
});

describe("what is shown", () => {
  it("is something of every table to the laboratory", async () => {
    for (const [table, count] of Object.entries(await counts({ scope: "laboratory" })))
      expect([table, count]).toEqual([table, expect.toSatisfy((rows: number) => rows > 0)]);
  });

  it.each([
    {},
    { scope: "" },
    { scope: "LABORATORY" },
    { scope: "customer" },
    { scope: "customer", customerId: "" },
    { scope: "customer", customerId: randomUUID() },
  ])("is nothing for %o", async (setting) => {
    expect(await counts(setting)).toEqual(none);
  });

  it("is nothing for a customer's id without its scope", async () => {
    expect(await counts({ customerId: world.a.customerId })).toEqual(none);
    expect(await counts({ scope: "", customerId: world.a.customerId })).toEqual(none);
  });

  it("is A's own to A", async () => {
    expect(await counts(ofA())).toEqual(shownToA);
  });

  it("never is B's to A, in any column of any table", async () => {
    const { b, runOfB } = world;
    const foreign = [...Object.values(b), runOfB.id, runOfB.setpointId, runOfB.evaluationId];
    await within(ofA(), async () => {
      for (const table of Object.keys(shownToA)) {
        const text = JSON.stringify(await rowsOf(table));
        expect([table, foreign.filter((id) => text.includes(id))]).toEqual([table, []]);
      }
    });
    // The same search does find them where they are shown.
    await within({ scope: "customer", customerId: b.customerId }, async () => {
      expect(JSON.stringify(await rowsOf("load_place"))).toContain(runOfB.id);
    });
  });

  it("is, of a shared run's channels, A's and the laboratory's", async () => {
    const channels = await within(ofA(), () => rowsOf("scan_block_channel"));
    expect(channels.map((row) => row.customer_id).sort()).toEqual([world.a.customerId, null].sort());
    expect(new Set(channels.map((row) => row.run_id))).toEqual(new Set([world.sharedRun.id]));
  });

  it("does not depend on a view that asks right: by id B's things are not there", async () => {
    const scope = { kind: "customer", customerId: world.a.customerId } as const;
    const found = await inScope(scope, async (tx) => [
      await tx.customer.findUnique({ where: { id: world.b.customerId } }),
      await tx.order.findUnique({ where: { id: world.b.orderId } }),
      await tx.sensor.findUnique({ where: { id: world.b.sensorId } }),
      await tx.run.findUnique({ where: { id: world.runOfB.id } }),
      await tx.person.findUnique({ where: { id: world.b.personId } }),
    ]);
    expect(found).toEqual([null, null, null, null, null]);
  });
});

describe("what a customer may write", () => {
  const attempt = (sql: string) =>
    within(ofA(), async () => {
      try {
        return (await runtime.query(sql)).rowCount;
      } catch (error) {
        if (error instanceof pg.DatabaseError) return error.code;
        throw error;
      }
    });

  it("is no change and no removal in any table", async () => {
    const { rows } = await admin.query(
      `SELECT DISTINCT ON (table_name) table_name, column_name FROM information_schema.columns
         WHERE table_schema = 'public' AND is_generated = 'NEVER' AND has_column_privilege('emfolio_runtime', table_name::regclass, column_name, 'UPDATE')`,
    );
    expect(rows.length).toBeGreaterThan(10);
    for (const { table_name: table, column_name: column } of rows)
      expect([table, await attempt(`UPDATE ${table} SET "${column}" = "${column}"`)]).toEqual([table, 0]);
    for (const table of ["order_line", "order_setpoint", "run_setpoint", "load_place", "person_role"])
      expect([table, await attempt(`DELETE FROM ${table}`)]).toEqual([table, 0]);
  });

  it("is no new row in any table, not even one that the laboratory could write", async () => {
    for (const table of Object.keys(shownToA)) {
      const { rows } = await admin.query(`SELECT to_jsonb(t)::text AS row FROM ${table} t LIMIT 1`);
      const names = await writtenColumns(admin, table);
      const copy = `INSERT INTO ${table} (${names}) SELECT ${names} FROM jsonb_populate_record(NULL::${table}, '${rows[0].row}')`;
      // Two guards come before the policy: they cannot see whose role this would be, nor any procedure to follow.
      const code = { person_role: "23514", run: "23001" }[table] ?? insufficientPrivilege;
      expect([table, await attempt(copy)]).toEqual([table, code]);
    }
    const own = `INSERT INTO person_role VALUES ('${world.a.personId}', 'customer')`;
    expect(await attempt(own)).toBe(insufficientPrivilege);
  });

  it("is an audit event in the name of its own people, in its scope only", async () => {
    const append = (actorId: string) => attempt(`SELECT audit_append('${actorId}', 'a', 'a', 'a', '{}')`);
    expect(await append(world.a.personId)).toBe(1);
    expect(await append(world.b.personId)).toBe(insufficientPrivilege);
    expect(await append(world.technicianId)).toBe(insufficientPrivilege);
    expect(await append("system:seed")).toBe(insufficientPrivilege);
  });

  it("is no number of the laboratory's", async () => {
    expect(await attempt("SELECT next_number('certificate')")).toBe(insufficientPrivilege);
  });
});

describe("without a scope", () => {
  it.each(["SELECT audit_append('a', 'a', 'a', 'a', '{}')", "SELECT next_number('order')"])(
    "refuses %s",
    async (statement) => {
      await within({}, () =>
        expect(runtime.query(statement)).rejects.toMatchObject({ code: insufficientPrivilege }),
      );
    },
  );

  it("refuses a new row", async () => {
    await within({}, () =>
      expect(
        runtime.query(
          "INSERT INTO customer (name, address_lines, contact_name, email) VALUES ('x', 'x', 'x', 'x')",
        ),
      ).rejects.toMatchObject({ code: insufficientPrivilege }),
    );
  });
});
