import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { recordCalibration } from "@/lib/operations/calibration/record";
import { changeCustomer } from "@/lib/operations/customer/change";
import { recordCustomer } from "@/lib/operations/customer/record";
import { changeEquipment } from "@/lib/operations/equipment/change";
import { recordEquipment } from "@/lib/operations/equipment/record";
import { execute } from "@/lib/operations/execute";
import { decideCharacterisation } from "@/lib/operations/furnace/decide-characterisation";
import { recordFurnace } from "@/lib/operations/furnace/record";
import { recordCharacterisation } from "@/lib/operations/furnace/record-characterisation";
import { recordConfiguration } from "@/lib/operations/furnace/record-configuration";
import { auditLogView, chainVerdictView } from "@/lib/views/audit-log";
import { customerView } from "@/lib/views/customer";
import { equipmentView } from "@/lib/views/equipment";
import { furnaceView } from "@/lib/views/furnace";
import { standardsView } from "@/lib/views/standards";
import { todayView } from "@/lib/views/today";
import { buildWorld, type World } from "../../support/build-world";
import { acceptCalibration, certificateFile } from "../../support/calibrate";
import { type TestDatabase, testDatabase } from "../../support/database";

let database: TestDatabase;
let world: World;
let manager: Actor;
const clock = () => new Date("2026-06-01T08:00:00Z");
const today = "2026-06-01";

const refusal = (work: Promise<unknown>) =>
  work.then(
    () => "answered",
    (error) => (error instanceof Refused ? error.refusal : error),
  );

const reference = {
  tag: "REF-77",
  maker: "Invented Wire",
  model: "",
  serial: "77",
  particulars: {
    kind: "reference" as const,
    type: "R" as const,
    protection: "alumina-sheath" as const,
    driftHalfWidthCelsius: 0.3,
    inhomogeneityRelativeHalfWidth: 0.0002,
    basis: "invented history",
  },
};
const certificate = (equipmentId: string) => ({
  equipmentId,
  certificate: "C-77",
  itemSerial: "77",
  issuer: "Invented National Institute",
  route: "nmi" as const,
  traceabilityStatement: "Traceable to the SI (invented).",
  document: certificateFile(),
  performedOn: "2026-05-01",
  dueOn: "2027-05-01",
  findings: {
    kind: "reference" as const,
    points: [
      { celsius: 300, deviationMicrovolt: -3.5 },
      { celsius: 1100, deviationMicrovolt: -9 },
    ],
    expanded: 0.3,
    coverageFactor: 2,
    unit: "celsius" as const,
  },
});

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

describe("equipment", () => {
  it("is recorded once per tag, keeps its kind and type, and is saved by version", async () => {
    const { id } = await execute(recordEquipment, manager, reference, clock);
    expect(await refusal(execute(recordEquipment, manager, reference, clock))).toMatchObject({
      fields: { tag: expect.stringContaining("already") },
    });
    const { tag: _, ...fields } = reference;
    const other = { ...fields, particulars: { ...fields.particulars, type: "S" as const } };
    expect(
      await refusal(execute(changeEquipment, manager, { id, version: 1, ...other }, clock)),
    ).toMatchObject({
      fields: { "particulars.type": expect.stringContaining("type R") },
    });
    const drift = { ...fields, particulars: { ...fields.particulars, driftHalfWidthCelsius: 0.4 } };
    await execute(changeEquipment, manager, { id, version: 1, ...drift }, clock);
    expect(
      await refusal(execute(changeEquipment, manager, { id, version: 1, ...fields }, clock)),
    ).toMatchObject({
      code: "changed-meanwhile",
    });
    const { rows } = await auditLogView(manager, { entityId: id }, null);
    expect(rows.map(({ sentence }) => sentence)).toEqual([
      "changed the figures of REF-77",
      "recorded the reference thermocouple REF-77",
    ]);
  });

  it("takes a certificate as it stands, once, by a quality manager, not from the future", async () => {
    const id = (await standardsView(manager, today)).find(({ tag }) => tag === "REF-77")?.id ?? "";
    const record = (input: object, actor: Actor = manager) =>
      refusal(execute(recordCalibration, actor, { ...certificate(id), ...input }, clock));
    expect(await record({}, world.people.technician)).toMatchObject({ code: "not-permitted" });
    expect(await record({ performedOn: "2026-06-02" })).toMatchObject({
      fields: { performedOn: expect.any(String) },
    });
    expect(await record({ dueOn: "2026-05-01" })).toMatchObject({ fields: { dueOn: expect.any(String) } });
    const falling = { ...certificate(id).findings, points: certificate(id).findings.points.toReversed() };
    expect(await record({ findings: falling })).toMatchObject({
      fields: { "findings.points": expect.stringContaining("cold to hot") },
    });
    const equation = {
      kind: "polynomial",
      terms: [{ coefficient: 0 }, { coefficient: -0.0082 }],
      fromCelsius: 0,
      toCelsius: 1100,
    };
    const findings = certificate(id).findings;
    expect(await record({ findings: { ...findings, points: [] } })).toMatchObject({
      fields: { "findings.points": expect.stringContaining("or its equation") },
    });
    expect(await record({ findings: { ...findings, equation } })).toMatchObject({
      fields: { "findings.equation.kind": expect.stringContaining("not both") },
    });
    const upside = { ...findings, points: [], equation: { ...equation, toCelsius: -1 } };
    expect(await record({ findings: upside })).toMatchObject({
      fields: { "findings.equation.toCelsius": expect.stringContaining("above") },
    });
    const scanner = { kind: "scanner", parasiticHalfWidthMicrovolt: 1 };
    expect(await record({ findings: scanner })).toMatchObject({ code: "invalid" });
    expect(await record({})).toBe("answered");
    expect(await record({})).toMatchObject({ fields: { certificate: expect.stringContaining("already") } });
    const view = await equipmentView(manager, id, today);
    expect(view).toMatchObject({
      due: "none",
      mayCalibrate: true,
      calibrations: [{ acceptance: "waiting" }],
    });
    await acceptCalibration(world.people.signatory, view.calibrations[0]?.id ?? "", clock);
    expect((await equipmentView(manager, id, today)).due).toBe("in-date");
    expect(view.calibrations[0]?.findings).toMatchObject({ points: [{ deviationMicrovolt: -3.5 }, {}] });
    expect((await equipmentView(manager, id, "2027-05-02")).due).toBe("out-of-date");
    expect((await equipmentView(manager, id, "2026-04-30")).due).toBe("none");
    const printed = { ...findings, points: [], equation };
    expect(await record({ certificate: "C-78", findings: printed, performedOn: "2026-05-20" })).toBe(
      "answered",
    );
    const stored = (await equipmentView(manager, id, today)).calibrations.find(
      (one) => one.certificate === "C-78",
    );
    expect(stored?.findings).toMatchObject({ points: [], equation });
  });

  it("shows in today's list when its date comes near, to who can act on it", async () => {
    const due = (lists: Awaited<ReturnType<typeof todayView>>) => lists.find(({ key }) => key === "due");
    // The reference of before is not in use yet: nothing of it is due.
    expect(due(await todayView(manager, today))?.count).toBe(0);
    const late = due(await todayView(manager, "2027-01-05"));
    expect(late?.count).toBeGreaterThan(0);
    expect(late?.items[0]?.detail).toContain("calibration due 2027-01-10");
    expect(due(await todayView(world.people.signatory, "2027-01-05"))).toBeUndefined();
  });
});

describe("customers and furnaces", () => {
  const input = { name: "East", addressLines: "2 Lane\r\nTown", contactName: "Lee", email: "LEE@east.test" };

  it("a customer is saved by version, and a stale form is told so", async () => {
    const { id } = await execute(recordCustomer, manager, input, clock);
    const change = (version: number, name: string) =>
      refusal(execute(changeCustomer, manager, { ...input, id, version, name }, clock));
    expect(await change(1, "East Works")).toBe("answered");
    expect(await change(1, "East Mill")).toMatchObject({ code: "changed-meanwhile" });
    expect(await customerView(manager, id)).toMatchObject({
      name: "East Works",
      addressLines: "2 Lane\nTown",
      email: "lee@east.test",
      version: 2,
    });
    expect(
      await refusal(execute(changeCustomer, world.people.signatory, { ...input, id, version: 2 }, clock)),
    ).toMatchObject({
      code: "not-permitted",
    });
  });

  it.each(["not-an-id", "00000000-0000-4000-8000-000000000000"])("%s is simply not there", async (id) => {
    expect(await refusal(customerView(manager, id))).toMatchObject({ code: "not-found" });
    expect(await refusal(equipmentView(manager, id, today))).toMatchObject({ code: "not-found" });
    expect(await refusal(furnaceView(manager, id, today))).toMatchObject({ code: "not-found" });
  });

  it("a furnace, a configuration that fits into it, and its characterisation", async () => {
    const furnace = {
      tag: "FUR-8",
      name: "Tube",
      maker: "M",
      serial: "8",
      minimumCelsius: 200,
      maximumCelsius: 1200,
    };
    const size = { boreMillimetre: 60, lengthMillimetre: 500 };
    expect(
      await refusal(execute(recordFurnace, manager, { ...furnace, ...size, maximumCelsius: 100 }, clock)),
    ).toMatchObject({ fields: { maximumCelsius: expect.any(String) } });
    const { id: furnaceId } = await execute(recordFurnace, manager, { ...furnace, ...size }, clock);
    const configuration = { furnaceId, name: "Block", kind: "equalising-block" as const, places: 8 };
    expect(
      await refusal(
        execute(recordConfiguration, manager, { ...configuration, immersionMillimetre: 600 }, clock),
      ),
    ).toMatchObject({ fields: { immersionMillimetre: expect.stringContaining("500") } });
    const { id: configurationId } = await execute(
      recordConfiguration,
      manager,
      { ...configuration, immersionMillimetre: 300 },
      clock,
    );
    const found = { configurationId, performedOn: "2026-05-20", validUntil: "2027-05-20" };
    const characterise = (statement: string) =>
      refusal(
        execute(
          recordCharacterisation,
          manager,
          { ...found, uniformityHalfWidthCelsius: 0.5, statement },
          clock,
        ),
      );
    expect(await characterise(" ")).toMatchObject({ fields: { statement: expect.any(String) } });
    expect(await characterise("40 mm, half range")).toBe("answered");
    const waiting = await furnaceView(manager, furnaceId, today);
    expect(waiting.configurations[0]).toMatchObject({
      due: "none",
      characterisations: [{ uniformityHalfWidthCelsius: 0.5, validUntil: "2027-05-20", state: "waiting" }],
    });
    const id = waiting.configurations[0]?.characterisations[0]?.id ?? "";
    await execute(decideCharacterisation, world.people.signatory, { id, decision: "accepted" }, clock);
    const view = await furnaceView(manager, furnaceId, today);
    expect(view.configurations[0]).toMatchObject({ due: "in-date", countingId: id });
  });
});

describe("the audit page", () => {
  it("is refused to who may not read it, and says that the chain verifies", async () => {
    const technician: Actor = { ...world.people.technician, roles: ["technician"] } as Actor;
    expect(await refusal(auditLogView(technician, {}, null))).toMatchObject({
      code: "not-permitted",
    });
    expect(await refusal(chainVerdictView(technician))).toMatchObject({ code: "not-permitted" });
    const verdict = await chainVerdictView(manager);
    const { rows } = await auditLogView(manager, {}, null);
    expect(verdict).toMatchObject({ kind: "whole", events: Number(rows[0]?.sequence), head: rows[0]?.hash });
    expect(rows.every(({ understood }) => understood)).toBe(true);
    const { technician: toni, signatory: sam } = world.people;
    expect(new Set(rows.map(({ who }) => who))).toEqual(new Set([toni.name, sam.name]));
  });
});
