import { randomUUID } from "node:crypto";
import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { type TestDatabase, testDatabase } from "@/tests/support/database";
import { insufficientPrivilege } from "./refusal-code";

/** The last defence: what a frozen chain stands on cannot be added to, and no circle can be written. */

const checkViolation = "23514";
let database: TestDatabase;
let runtime: pg.Client;
let admin: pg.Client;

beforeAll(async () => {
  database = await testDatabase();
  [runtime, admin] = await Promise.all([connect(database.runtimeUrl), connect(database.adminUrl)]);
});
afterAll(async () => {
  await Promise.all([runtime?.end(), admin?.end()]);
  await database?.drop();
});

type Client = pg.Client;
const node = async (client: Client, kind: string, height: number): Promise<string> => {
  const { rows } = await client.query(
    `INSERT INTO trace_node (kind, record_id, title, height, frozen_at)
     VALUES ($1, $2, 't', $3, now()) RETURNING id`,
    [kind, randomUUID(), height],
  );
  return rows[0].id;
};
const edge = (client: Client, from: string, to: string) =>
  client.query(
    "INSERT INTO trace_edge (from_id, to_id, role, frozen_at) VALUES ($1, $2, 'calibration', now())",
    [from, to],
  );
/** In one transaction of the laboratory's, as sign-off does it. */
const inOne = async <T>(client: Client, work: () => Promise<T>): Promise<T> => {
  await client.query("BEGIN; SET LOCAL app.scope = 'laboratory'");
  try {
    const value = await work();
    await client.query("COMMIT");
    return value;
  } catch (error) {
    await client.query("ROLLBACK");
    throw error;
  }
};

describe.each([
  ["the product", () => runtime],
  ["a superuser", () => admin],
])("%s", (_name, clientOf) => {
  it("writes a node with what it stands on, together", async () => {
    const client = clientOf();
    await inOne(client, async () =>
      edge(client, await node(client, "standard", 1), await node(client, "calibration", 0)),
    );
  });

  it("cannot hang a later step on a frozen node", async () => {
    const client = clientOf();
    const old = await inOne(client, () => node(client, "standard", 5));
    await expect(
      inOne(client, async () => edge(client, old, await node(client, "calibration", 0))),
    ).rejects.toMatchObject({ code: insufficientPrivilege });
    const replica = async () => {
      await client.query("SET LOCAL session_replication_role = replica");
      return edge(client, old, await node(client, "calibration", 0));
    };
    await expect(inOne(client, replica)).rejects.toMatchObject({ code: insufficientPrivilege });
  });

  it("may lead to a node that was frozen earlier", async () => {
    const client = clientOf();
    const old = await inOne(client, () => node(client, "si", 0));
    await inOne(client, async () => edge(client, await node(client, "calibration", 1), old));
  });

  it.each([
    ["upwards", 1, 2],
    ["to the same height", 1, 1],
  ])("cannot write a step %s, so no circle", async (_way, from, to) => {
    const client = clientOf();
    await expect(
      inOne(client, async () =>
        edge(client, await node(client, "standard", from), await node(client, "standard", to)),
      ),
    ).rejects.toMatchObject({ code: checkViolation });
  });

  it("cannot close a circle through others", async () => {
    const client = clientOf();
    const circle = async () => {
      const [a, b, c] = [
        await node(client, "standard", 2),
        await node(client, "calibration", 1),
        await node(client, "result", 0),
      ];
      await edge(client, a, b);
      await edge(client, b, c);
      await edge(client, c, a);
    };
    await expect(inOne(client, circle)).rejects.toMatchObject({ code: checkViolation });
  });
});
