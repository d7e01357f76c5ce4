import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { z } from "zod";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { loadStandards } from "@/lib/data/run/load-standards";
import type { EntryFigures } from "@/lib/domain/equipment/logbook";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { changeServicePolicy } from "@/lib/operations/equipment/change-service-policy";
import { printEquipmentLabels } from "@/lib/operations/equipment/print-labels";
import { recordEntry } from "@/lib/operations/equipment/record-entry";
import { execute } from "@/lib/operations/execute";
import { auditLogView } from "@/lib/views/audit-log";
import { equipmentServiceView } from "@/lib/views/equipment-service";
import { equipmentStatusView } from "@/lib/views/equipment-status";
import { referenceHealthView } from "@/lib/views/reference-health";
import { reviewRunView } from "@/lib/views/review-run";
import { servicePolicyView } from "@/lib/views/service-policy";
import { standardsView } from "@/lib/views/standards";
import { buildRun } from "../support/build-run";
import { buildWorld, type World } from "../support/build-world";
import { type TestDatabase, testDatabase } from "../support/database";
import { inService } from "../support/in-service";
import { pdfPages } from "../support/pdf-text";

let database: TestDatabase;
let world: World;
let manager: Actor;
const today = "2026-06-01";
const clock = () => new Date(`${today}T08:00:00Z`);

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  manager = { ...world.people.technician, roles: ["technician", "quality-manager"] } as Actor;
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const refusal = (work: Promise<unknown>) =>
  work.then(
    () => "answered",
    (error) => (error instanceof Refused ? error.refusal : error),
  );
const write = (id: string, figures: z.input<typeof EntryFigures>, happenedOn = today) =>
  execute(recordEntry, manager, { id, happenedOn, summary: "invented", figures }, clock);
const interval = (id: string, days: number | null) =>
  inScope({ kind: "laboratory" }, (tx) =>
    tx.equipment.update({ where: { id }, data: { checkIntervalDays: days } }),
  );
/** What createRun and the gate are told of it. */
const serviceOf = (id: string) =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const standards = await loadStandards(tx, { ids: [id] }, { day: today, moment: clock() });
    return standards.byId("reference", id)?.use.service ?? [];
  });

describe("overdue work", () => {
  it("keeps equipment from being chosen, or warns, as the laboratory's policy says", async () => {
    const [{ id }] = world.references;
    expect(await serviceOf(id)).toEqual([]);
    await interval(id, 30);
    // The calibration of 2026-01-10 was the last look at it.
    expect(await serviceOf(id)).toMatchObject([
      { ground: "check-overdue", blocks: true, message: expect.stringContaining("2026-02-09") },
    ]);
    expect((await standardsView(manager, today)).find((row) => row.id === id)).toMatchObject({
      against: { ground: "check-overdue", blocks: true },
    });
    const { policy, version } = await servicePolicyView(manager);
    const change = { version, policy: { ...policy, overdueCheck: "warn" as const }, reason: "invented" };
    expect(await refusal(execute(changeServicePolicy, world.people.technician, change, clock))).toMatchObject(
      {
        code: "not-permitted",
      },
    );
    await execute(changeServicePolicy, manager, change, clock);
    expect(await serviceOf(id)).toMatchObject([{ ground: "check-overdue", blocks: false }]);
    expect(await refusal(execute(changeServicePolicy, manager, change, clock))).toMatchObject({
      code: "rule",
    });
    await execute(changeServicePolicy, manager, { ...change, version: version + 1, policy }, clock);
    await write(id, {
      kind: "intermediate-check",
      quantity: "against R-S2",
      expected: 0,
      found: 0.1,
      limit: 0.5,
      unit: "°C",
    });
    expect(await serviceOf(id)).toEqual([]);
    await interval(id, null);
  });

  it("so does an anneal until a check has passed", async () => {
    const [, { id }] = world.references;
    await write(id, { kind: "anneal", method: "furnace", celsius: 1100, hours: 1 });
    expect(await serviceOf(id)).toMatchObject([{ ground: "anneal-unchecked", blocks: true }]);
    await write(id, {
      kind: "check-after-anneal",
      quantity: "against R-S1",
      expected: 0,
      found: 0.1,
      limit: 0.5,
      unit: "°C",
    });
    expect(await serviceOf(id)).toEqual([]);
  });
});

describe("equipment in doubt", () => {
  it("flags the runs that stand on it, and lists those since the last thing that spoke for it", async () => {
    const built = await buildRun(world, { owners: ["north"] });
    const number = built.run.number;
    const flagged = async () =>
      (await reviewRunView(world.people.signatory, number)).inDoubt.map(
        ({ tag, state }) => `${tag} ${state}`,
      );
    expect(await flagged()).toEqual([]);
    await write(world.voltmeter.id, { kind: "damage" });
    expect(await flagged()).toEqual(["V-1 suspect"]);
    const view = await equipmentServiceView(manager, world.voltmeter.id, today);
    // Verified on 2026-01-14, after its calibration of 2026-01-10.
    expect(view.doubt).toMatchObject({ since: "2026-01-14", runs: [{ number }] });
    expect((await equipmentStatusView(manager, "V-1", clock())).against).toContain("V-1 is suspect");
    await inService(manager, world.voltmeter.id, clock);
    // Sound again; what it did before is settled by whoever examines that.
    expect(await flagged()).toEqual(["V-1 in-service"]);
    expect((await equipmentServiceView(manager, world.voltmeter.id, today)).doubt).toBeNull();
    expect((await equipmentStatusView(manager, "V-1", clock())).against).toBeNull();
  });
});

describe("the status page", () => {
  it("answers by tag as a label's code does, of a furnace too, and not to customers", async () => {
    expect(await equipmentStatusView(manager, "R-S1", clock())).toMatchObject({
      tag: "R-S1",
      state: "in-service",
      certificate: "CAL-R-S1",
      dueOn: "2027-01-10",
      against: null,
    });
    expect(await equipmentStatusView(manager, "F-1", clock())).toMatchObject({
      kind: "furnace",
      against: null,
    });
    expect((await equipmentStatusView(manager, "R-S1", new Date("2027-02-01T00:00:00Z"))).against).toContain(
      "was due on 2027-01-10",
    );
    expect(await refusal(equipmentStatusView(manager, "NOBODY", clock()))).toMatchObject({
      code: "not-found",
    });
    expect(await refusal(equipmentStatusView(world.people.north, "R-S1", clock()))).toMatchObject({
      code: "not-permitted",
    });
  });
});

describe("labels", () => {
  it("are printed for many at once; each printing is an event and a line of the logbook", async () => {
    const input = { ids: [world.scanner.id, world.junction.id], publicOrigin: "https://lab.example" };
    const { bytes } = await execute(printEquipmentLabels, manager, input, clock);
    const pages = await pdfPages(bytes);
    expect(pages.map((text) => text.includes("2027-01-10"))).toEqual([true, true]);
    await execute(printEquipmentLabels, manager, input, clock);
    const { rows } = await auditLogView(manager, { entityId: world.scanner.id }, null);
    expect(rows.map(({ sentence }) => sentence)).toEqual(
      Array(2).fill("printed the label of X-1, due 2027-01-10"),
    );
    const { entries } = await equipmentServiceView(manager, world.scanner.id, today);
    expect(entries.slice(0, 2).map(({ kind }) => kind)).toEqual(["label", "label"]);
    const strangers = { ...input, ids: ["00000000-0000-4000-8000-000000000000"] };
    expect(await refusal(execute(printEquipmentLabels, manager, strangers, clock))).toMatchObject({
      code: "not-found",
    });
    expect(await refusal(execute(printEquipmentLabels, world.people.signatory, input, clock))).toMatchObject({
      code: "not-permitted",
    });
  });
});

describe("the health of a reference", () => {
  it("is there for references only", async () => {
    const view = await referenceHealthView(manager, world.references[0].id, today);
    expect(view).toMatchObject({ health: { anneals: 0 }, drift: [], advice: null, allowedCelsius: 0.25 });
    expect(await refusal(referenceHealthView(manager, world.scanner.id, today))).toMatchObject({
      code: "not-found",
    });
  });
});
