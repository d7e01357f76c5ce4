import { createHash, randomUUID } from "node:crypto";
import type pg from "pg";

type Row = Readonly<Record<string, unknown>>;
export type Insert = (admin: pg.Client, table: string, row: Row) => Promise<string>;

const now = "2026-03-02T09:00:00Z";
const day = "2026-01-01";

export type Stands = {
  readonly technicianId: string;
  readonly secondPersonId: string;
  readonly referenceId: string;
  readonly calibrationId: string;
  readonly configurationId: string;
  readonly characterisationId: string;
  readonly runId: string;
  readonly sensor: { readonly sensorId: string; readonly customerId: string };
};

/** A procedure of which one revision is current, as every run needs one; drafted by one person, approved by another. */
export const makeProcedure = async (
  admin: pg.Client,
  insert: Insert,
  technicianId: string,
  secondPersonId: string,
): Promise<string> => {
  const procedureId = await insert(admin, "procedure", { key: "comparison", title: "Comparison" });
  return insert(admin, "procedure_revision", {
    procedure_id: procedureId,
    revision: 1,
    state: "current",
    budget_inputs: "{}",
    verification: "V-1",
    current_from: now,
    current_by_id: secondPersonId,
    recorded_by_id: technicianId,
    recorded_at: now,
  });
};

/** What equipment, calibrations, furnaces and procedures keep beside themselves: one row in every table. */
export const makeRecords = async (admin: pg.Client, insert: Insert, on: Stands): Promise<void> => {
  const by = { recorded_by_id: on.technicianId, recorded_at: now };
  const decided = { decision: "accepted", decided_by_id: on.secondPersonId, decided_at: now };
  const bytes = Buffer.from("evidence");
  await insert(admin, "evidence_document", {
    sha256: createHash("sha256").update(bytes).digest(),
    bytes,
    media_type: "text/plain",
    file_name: "evidence.txt",
    received_at: now,
  });
  const entry = { equipment_id: on.referenceId, kind: "anneal", happened_on: day, summary: "1100 °C, 1 h" };
  await insert(admin, "equipment_entry", { ...entry, ...by });
  await insert(admin, "reference_use", {
    equipment_id: on.referenceId,
    run_id: on.runId,
    hours_in_furnace: 6,
    hours_above_1000: 1.5,
    highest_celsius: 1100,
    counted_at: now,
  });
  const parent = { calibration_id: on.calibrationId, position: 1, kind: "si", title: "ITS-90" };
  await insert(admin, "calibration_parent", { ...parent, route: "realisation" });
  const capability = '{"kind":"constant","expandedCelsius":1.2}';
  const range = { type_letter: "N", from_celsius: 300, to_celsius: 1200, capability };
  await insert(admin, "scope_line", { ...range, valid_from: day, source: "schedule 1", ...by });
  await insert(admin, "characterisation_decision", {
    characterisation_id: on.characterisationId,
    ...decided,
  });
  const surveyed = { number: "CH-1", configuration_id: on.configurationId, plan: "{}", created_at: now };
  const characterisationRunId = await insert(admin, "characterisation_run", surveyed);
  const evaluated = { readings: "[]", evaluation: "{}", engine_version: "1", celsius: 1000 };
  await insert(admin, "characterisation_survey", {
    characterisation_run_id: characterisationRunId,
    kind: "axial",
    measured_on: day,
    ...evaluated,
    ...by,
  });
  const whose = { sensor_id: on.sensor.sensorId, customer_id: on.sensor.customerId };
  const testId = await insert(admin, "inhomogeneity_test", {
    ...whose,
    performed_on: day,
    ...evaluated,
    ...by,
  });
  await insert(admin, "inhomogeneity_decision", { test_id: testId, ...decided });
  const checked = { run_id: on.runId, kind: "warm-up", figures: "{}" };
  await insert(admin, "bench_check", { ...checked, checked_by_id: on.technicianId, checked_at: now });
  await insert(admin, "gate_outcome", {
    run_id: on.runId,
    verdict: "may-start",
    rows: "[]",
    policy: "{}",
    plan_digest: createHash("sha256").update("plan").digest(),
    assessed_by_id: on.technicianId,
    assessed_at: now,
  });
  const reason = { code: "range", reason: "agreed", reaches_certificate: true };
  await insert(admin, "gate_override", {
    run_id: on.runId,
    ...reason,
    said_by_id: on.technicianId,
    said_at: now,
  });
  const node = (kind: string, height: number) =>
    insert(admin, "trace_node", { kind, record_id: randomUUID(), title: kind, height, frozen_at: now });
  // What a node stands on is written with it, or never.
  await admin.query("BEGIN");
  const [fromId, toId] = [await node("result", 1), await node("run", 0)];
  await insert(admin, "trace_edge", { from_id: fromId, to_id: toId, role: "run", frozen_at: now });
  await admin.query("COMMIT");
};
