import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { eventDefinition } from "@/lib/domain/audit/events";
import { type Refusal, Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerRoles, type Role } from "@/lib/domain/staff/roles";
import { type TestDatabase, testDatabase } from "./database";

/** A fixed clock: what tests say about "today" does not change overnight. */
export const clock = () => new Date("2026-03-04T09:12:00Z");

export type FrontDesk = {
  readonly database: TestDatabase;
  readonly frontDesk: Actor;
  readonly technician: Actor;
  readonly signatory: Actor;
  readonly northern: { readonly customerId: string; readonly actor: Actor };
  readonly southern: { readonly customerId: string; readonly actor: Actor };
  readonly close: () => Promise<void>;
};

/** Invented people and two invented customers, in a database of their own; the product signs in as its runtime role. */
export const openFrontDesk = async (): Promise<FrontDesk> => {
  const database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  const admin = await connect(database.adminUrl);
  const person = async (name: string, roles: readonly Role[], customerId: string | null): Promise<string> => {
    const email = `${name.toLowerCase().replaceAll(" ", ".")}@example.org`;
    const { rows } = await admin.query<{ id: string }>(
      "INSERT INTO person (email, name, password_hash, customer_id) VALUES ($1, $2, 'x', $3) RETURNING id",
      [email, name, customerId],
    );
    for (const role of roles)
      await admin.query("INSERT INTO person_role VALUES ($1, $2)", [rows[0]!.id, role]);
    return rows[0]!.id;
  };
  const staff = async (name: string, role: Role): Promise<Actor> => ({
    kind: "staff",
    personId: await person(name, [role], null),
    name,
    roles: [role],
  });
  const customer = async (name: string, who: string) => {
    const { rows } = await admin.query<{ id: string }>(
      "INSERT INTO customer (name, address_lines, contact_name, email) VALUES ($1, 'Works Road 1', $2, 'desk@example.org') RETURNING id",
      [name, who],
    );
    const customerId = rows[0]!.id;
    const personId = await person(who, customerRoles, customerId);
    const actor: Actor = { kind: "customer", personId, name: who, roles: customerRoles, customerId };
    return { customerId, actor };
  };
  try {
    await admin.query(
      `WITH own AS (INSERT INTO equipment (tag, kind, maker, model, serial, particulars)
         VALUES ('F-1', 'furnace', 'Invented', 'Tube furnace 1', '1', '{"kind":"furnace"}') RETURNING id)
       INSERT INTO furnace (equipment_id, tag, name, maker, serial, minimum_celsius, maximum_celsius, bore_millimetre, length_millimetre)
       SELECT id, 'F-1', 'Tube furnace 1', 'Invented', '1', 300, 1200, 40, 900 FROM own`,
    );
    return {
      database,
      frontDesk: await staff("Ada Desk", "front-desk"),
      technician: await staff("Tom Bench", "technician"),
      signatory: await staff("Sif Sign", "signatory"),
      northern: await customer("Northern Heat Treatment", "Nora North"),
      southern: await customer("Southern Glass", "Saul South"),
      close: async () => {
        await closeDatabase();
        await database.drop();
      },
    };
  } finally {
    await admin.end();
  }
};

export const refusalOf = async (work: Promise<unknown>): Promise<Refusal> => {
  const answer = await work.then(
    () => null,
    (error: unknown) => error,
  );
  if (answer instanceof Refused) return answer.refusal;
  throw answer ?? new Error("This was expected to be refused, and was not.");
};

/** The audit log as its page reads it, oldest first: the action and its sentence. */
export const auditSentences = (): Promise<readonly string[]> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const events = await tx.auditEvent.findMany({ orderBy: { sequence: "asc" } });
    return events.map((event) => {
      const definition = eventDefinition(event.action);
      if (!definition) throw new Error(`${event.action} is not in the catalogue`);
      return `${event.action}: ${definition.sentence(JSON.parse(event.payload) as never)}`;
    });
  });

/** The laboratory's own row, for tests of what is set in it. Invented. */
export const recordLaboratory = ({ database }: FrontDesk): Promise<void> =>
  connect(database.adminUrl).then(async (admin) => {
    await admin.query(
      "INSERT INTO laboratory (id, name, address_lines, contact) VALUES ('laboratory', 'Invented', 'Works Road', 'desk')",
    );
    await admin.end();
  });
