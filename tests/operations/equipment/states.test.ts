import type pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { z } from "zod";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import type { EntryFigures } from "@/lib/domain/equipment/logbook";
import { transitions } from "@/lib/domain/equipment/transitions";
import { type EquipmentState, equipmentStates } from "@/lib/domain/equipment/types";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { changeEquipment } from "@/lib/operations/equipment/change";
import { recordEquipment } from "@/lib/operations/equipment/record";
import { recordEntry } from "@/lib/operations/equipment/record-entry";
import { setEquipmentState } from "@/lib/operations/equipment/set-state";
import { execute } from "@/lib/operations/execute";
import { auditLogView } from "@/lib/views/audit-log";
import { equipmentView } from "@/lib/views/equipment";
import { equipmentServiceView } from "@/lib/views/equipment-service";
import { refusalCode } from "../../data/refusal-code";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { wholeRecord } from "../../support/in-service";

let database: TestDatabase;
let world: World;
let manager: Actor;
let runtime: pg.Client;
const today = "2026-06-01";
const clock = () => new Date(`${today}T08:00:00Z`);

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  runtime = await connect(database.runtimeUrl);
  manager = { ...world.people.technician, roles: ["technician", "quality-manager"] } as Actor;
});
afterAll(async () => {
  await runtime?.end();
  await closeDatabase();
  await database.drop();
});

const refusal = (work: Promise<unknown>) =>
  work.then(
    () => "answered",
    (error) => (error instanceof Refused ? error.refusal : error),
  );

const reference = (tag: string) => ({
  tag,
  maker: "Invented Wire",
  model: "",
  serial: tag,
  particulars: {
    kind: "reference" as const,
    type: "R" as const,
    protection: "alumina-sheath" as const,
    driftHalfWidthCelsius: 0.3,
    inhomogeneityRelativeHalfWidth: 0.0002,
    basis: "invented history",
  },
});

type Figures = z.input<typeof EntryFigures>;
const entry = (
  id: string,
  figures: Figures,
  more: { readonly happenedOn?: string; readonly outcome?: "passed" | "failed" } = {},
) => execute(recordEntry, manager, { id, happenedOn: today, summary: "invented", figures, ...more }, clock);
const verification = { kind: "verification" as const, against: "its order" };
const check = (found: number): Figures => ({
  kind: "intermediate-check",
  quantity: "ice point",
  expected: 0,
  found,
  limit: 0.1,
  unit: "°C",
});

const versionOf = async (id: string) => (await equipmentView(manager, id, today)).equipment.version;
const stateOf = async (id: string) => (await equipmentView(manager, id, today)).equipment.state;
const set = async (id: string, state: EquipmentState, reason = "invented") =>
  refusal(execute(setEquipmentState, manager, { id, version: await versionOf(id), state, reason }, clock));

const recorded = async (tag: string): Promise<string> =>
  (await execute(recordEquipment, manager, { ...reference(tag), ...wholeRecord }, clock)).id;

const serving = async (tag: string): Promise<string> => {
  const id = await recorded(tag);
  await entry(id, verification, { outcome: "passed" });
  await set(id, "in-service");
  return id;
};

describe("states of equipment", () => {
  it("lets it serve once its record is whole and it was verified; retired, it does not come back", async () => {
    const { id } = await execute(recordEquipment, manager, reference("REF-1"), clock);
    for (const state of ["in-service", "suspect", "verified"] as const)
      expect(await set(id, state)).toMatchObject({
        code: "wrong-state",
        fields: { state: expect.any(String) },
      });
    await entry(id, verification, { outcome: "passed" });
    expect(await stateOf(id)).toBe("verified");
    expect(await set(id, "in-service")).toMatchObject({
      code: "rule",
      fields: { state: expect.stringContaining("where it is (6.4.13 d)") },
    });
    const { tag: _, ...fields } = { ...reference("REF-1"), ...wholeRecord };
    await execute(changeEquipment, manager, { id, version: await versionOf(id), ...fields }, clock);
    expect(await set(id, "in-service")).toBe("answered");
    expect(await set(id, "suspect", "")).toMatchObject({ fields: { reason: expect.any(String) } });
    expect(await set(id, "retired")).toBe("answered");
    for (const state of equipmentStates) expect(await set(id, state)).toMatchObject({ code: "wrong-state" });
    expect(await refusal(entry(id, { kind: "note" }))).toMatchObject({ code: "wrong-state" });
  });

  it("takes damage, repair and adjustment to heart: each asks for a verification of after it", async () => {
    const id = await serving("REF-2");
    await entry(id, { kind: "damage" });
    expect(await stateOf(id)).toBe("suspect");
    expect(await set(id, "in-service")).toMatchObject({ code: "wrong-state" });
    expect(await set(id, "verified")).toMatchObject({
      code: "wrong-state",
      fields: { state: expect.stringContaining("after damage") },
    });
    await entry(id, { kind: "repair", by: "the maker" });
    expect(await stateOf(id)).toBe("under-repair");
    // Dated back before the damage it would speak for what is no more.
    expect(
      await refusal(entry(id, verification, { outcome: "passed", happenedOn: "2026-05-30" })),
    ).toMatchObject({ fields: { happenedOn: expect.stringContaining("repair") } });
    await entry(id, verification, { outcome: "failed" });
    expect(await stateOf(id)).toBe("under-repair");
    await entry(id, verification, { outcome: "passed" });
    expect(await set(id, "in-service")).toBe("answered");
  });

  it("is suspect at once when a check fails, and says so in the log", async () => {
    const id = await serving("REF-3");
    await entry(id, check(0.1));
    expect(await stateOf(id)).toBe("in-service");
    expect(await entry(id, check(-0.11))).toMatchObject({ state: "suspect" });
    const view = await equipmentServiceView(manager, id, today);
    expect(view.findings).toMatchObject([{ ground: "suspect", blocks: true }]);
    expect(view.entries[0]).toMatchObject({ kind: "intermediate-check", outcome: "failed" });
    expect(view.nextStates).toEqual(["under-repair", "retired"]);
    const { rows } = await auditLogView(manager, { entityId: id }, null);
    expect(rows.slice(0, 2).map(({ sentence }) => sentence)).toEqual([
      "set REF-3 to suspect: not to be used, because: its logbook has, on 2026-06-01: intermediate check, failed",
      "wrote into the logbook of REF-3: intermediate check of 2026-06-01, failed",
    ]);
  });

  it("refuses an entry of a day to come, of before its receipt, and an anneal of what is no reference", async () => {
    const id = await serving("REF-4");
    for (const happenedOn of ["2026-06-02", "2025-05-31"])
      expect(await refusal(entry(id, { kind: "note" }, { happenedOn }))).toMatchObject({
        fields: { happenedOn: expect.any(String) },
      });
    const anneal: Figures = { kind: "anneal", method: "furnace", celsius: 1100, hours: 1 };
    expect(await refusal(entry(world.voltmeter.id, anneal))).toMatchObject({
      fields: { "figures.kind": expect.any(String) },
    });
    expect(await refusal(entry(id, verification))).toMatchObject({ fields: { outcome: expect.any(String) } });
    expect(
      await refusal(
        execute(
          recordEntry,
          world.people.signatory,
          { id, happenedOn: today, summary: "x", figures: { kind: "note" } },
          clock,
        ),
      ),
    ).toMatchObject({ code: "not-permitted" });
  });

  it("moves, and its record says where to", async () => {
    const id = await serving("REF-5");
    await entry(id, { kind: "move", to: "Furnace room 2" });
    expect((await equipmentView(manager, id, today)).equipment.location).toBe("Furnace room 2");
  });
});

describe("states of equipment, in the database", () => {
  const broken = "23514"; // check_violation
  const state = (to: string, id: string) => `UPDATE equipment SET state = '${to}' WHERE id = '${id}'`;
  const against = (id: string) =>
    `INSERT INTO equipment_entry (equipment_id, kind, happened_on, outcome, summary, recorded_at)
     VALUES ('${id}', 'damage', '${today}', 'none', 'fell', now())`;
  const passed = (id: string, on = today) =>
    `INSERT INTO equipment_entry (equipment_id, kind, happened_on, outcome, summary, recorded_at)
     VALUES ('${id}', 'verification', '${on}', 'passed', 'looked at', now())`;
  /** From received to a state, by steps that are allowed. */
  const way: Readonly<Record<EquipmentState, (id: string) => readonly string[]>> = {
    received: () => [],
    verified: (id) => [passed(id), state("verified", id)],
    "in-service": (id) => [...way.verified(id), state("in-service", id)],
    suspect: (id) => [...way["in-service"](id), against(id), state("suspect", id)],
    "under-repair": (id) => [...way["in-service"](id), against(id), state("under-repair", id)],
    retired: (id) => [state("retired", id)],
  };

  it("has the table of the operations, step by step", async () => {
    const id = await recorded("REF-9");
    for (const from of equipmentStates)
      for (const to of equipmentStates.filter((one) => one !== from)) {
        const isOut = to === "suspect" || to === "under-repair";
        const reason = isOut ? against(id) : passed(id);
        const code = await refusalCode(runtime, [...way[from](id), reason, state(to, id)].join("; "));
        expect([from, to, code]).toEqual([from, to, transitions[from].includes(to) ? undefined : broken]);
      }
  });

  it("lets nothing begin otherwise than received, nor change tag or kind", async () => {
    const id = await recorded("REF-10");
    for (const one of equipmentStates)
      expect(
        await refusalCode(
          runtime,
          `INSERT INTO equipment (tag, kind, maker, model, serial, state, particulars)
           VALUES ('NEW-1', 'scanner', 'M', '', '1', '${one}', '{}')`,
        ),
      ).toBe(one === "received" ? undefined : broken);
    expect(await refusalCode(runtime, `UPDATE equipment SET tag = 'OTHER' WHERE id = '${id}'`)).toBe(broken);
    expect(await refusalCode(runtime, `UPDATE equipment SET kind = 'lead' WHERE id = '${id}'`)).toBe(broken);
  });

  it("asks for a verification that nothing has happened since, and for a reason to leave service", async () => {
    const id = await recorded("REF-11");
    const verified = state("verified", id);
    expect(await refusalCode(runtime, verified)).toBe(broken);
    expect(await refusalCode(runtime, `${passed(id)}; ${against(id)}; ${verified}`)).toBe(broken);
    // Written later, of a day before the damage.
    expect(await refusalCode(runtime, `${against(id)}; ${passed(id, "2026-05-31")}; ${verified}`)).toBe(
      broken,
    );
    expect(await refusalCode(runtime, `${against(id)}; ${passed(id)}; ${verified}`)).toBeUndefined();
    const serves = [...way["in-service"](id)].join("; ");
    expect(await refusalCode(runtime, `${serves}; ${state("suspect", id)}`)).toBe(broken);
  });

  it("gives a furnace its own row, with its tag", async () => {
    const furnace = (equipmentId: string, tag: string) =>
      `INSERT INTO furnace (equipment_id, tag, name, maker, serial, minimum_celsius, maximum_celsius, bore_millimetre, length_millimetre)
       VALUES (${equipmentId}, '${tag}', 'F', 'M', '1', 100, 1200, 40, 900)`;
    const own = `(SELECT id FROM equipment WHERE tag = 'F-7')`;
    const row = `INSERT INTO equipment (tag, kind, maker, model, serial, particulars) VALUES ('F-7', 'furnace', 'M', 'F', '1', '{"kind":"furnace"}')`;
    expect(await refusalCode(runtime, furnace("NULL", "F-7"))).toBe(broken);
    expect(await refusalCode(runtime, furnace(`'${world.scanner.id}'`, "X-1"))).toBe(broken);
    expect(await refusalCode(runtime, `${row}; ${furnace(own, "F-8")}`)).toBe(broken);
    expect(await refusalCode(runtime, `${row}; ${furnace(own, "F-7")}`)).toBeUndefined();
  });
});
