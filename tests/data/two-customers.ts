import { createHash, randomUUID } from "node:crypto";
import type pg from "pg";
import { makeMail } from "./mail-rows";
import { makeCustomersRecords } from "./orders-and-customers";
import { insertSigned, makeKeys, makeSignatory, makeSigning, type Signatory } from "./signing-and-documents";
import { makeProcedure, makeRecords } from "./standards-and-chains";
import { makeBench } from "./two-customers-bench";

type Row = Readonly<Record<string, unknown>>;

/** Inserts past every policy, as the superuser, and gives back the row's id. */
const insert = async (admin: pg.Client, table: string, row: Row): Promise<string> => {
  const names = Object.keys(row).map((name) => `"${name}"`);
  const places = names.map((_, index) => `$${index + 1}`);
  const { rows } = await admin.query(
    `INSERT INTO ${table} (${names}) VALUES (${places}) RETURNING *`,
    Object.values(row),
  );
  return rows[0].id;
};

const digest = (text: string): Buffer => createHash("sha256").update(text).digest();
const now = "2026-03-02T09:00:00Z";

export type Owned = {
  readonly customerId: string;
  readonly personId: string;
  readonly orderId: string;
  readonly lineId: string;
  readonly sensorId: string;
};

export type TwoCustomers = {
  readonly a: Owned;
  readonly b: Owned;
  readonly technicianId: string;
  readonly referenceId: string;
  readonly junctionId: string;
  /** Sensors of both in one load. */
  readonly sharedRun: Run;
  /** A load with a sensor of B only. */
  readonly runOfB: Run;
};

export type Run = { readonly id: string; readonly setpointId: string; readonly evaluationId: string };

const makeCustomer = async (admin: pg.Client, name: string, technicianId: string): Promise<Owned> => {
  const customer = { name, address_lines: "1 Street", contact_name: "C", email: `${name}@example.org` };
  const customerId = await insert(admin, "customer", customer);
  const person = { email: `person@${name}.example`, name, password_hash: "x", customer_id: customerId };
  const personId = await insert(admin, "person", person);
  await insert(admin, "person_role", { person_id: personId, role: "customer" });
  const orderId = await insert(admin, "customer_order", {
    number: `O-${name}`,
    customer_id: customerId,
    decision_rule: "none",
    recorded_by_id: technicianId,
    recorded_at: now,
  });
  const what = { type_letter: "N", construction: "3 mm", protection: "metal-sheath" };
  const line = {
    order_id: orderId,
    customer_id: customerId,
    position: 1,
    quantity: 1,
    temperature_unit: "C",
  };
  const lineId = await insert(admin, "order_line", { ...what, ...line });
  const setpoint = {
    order_line_id: lineId,
    customer_id: customerId,
    position: 1,
    typed: "600",
    celsius: 600,
  };
  await insert(admin, "order_setpoint", setpoint);
  const sensor = { tag: `T-${name}`, customer_id: customerId, order_line_id: lineId, serial: `S-${name}` };
  const sensorId = await insert(admin, "sensor", { ...what, ...sensor });
  await insert(admin, "intake", {
    sensor_id: sensorId,
    customer_id: customerId,
    received_on: "2026-03-01",
    condition: "as-described",
    polarity: "ok",
    type_check: "ok",
    taken_in_by_id: technicianId,
    taken_in_at: now,
  });
  return { customerId, personId, orderId, lineId, sensorId };
};

type Bench = Awaited<ReturnType<typeof makeBench>> & {
  readonly procedureRevisionId: string;
  readonly signatory: Signatory;
};

const makeRepeats = async (
  admin: pg.Client,
  earlierRunId: string,
  runId: string,
  technicianId: string,
  owners: readonly Owned[],
): Promise<void> => {
  for (const owner of owners)
    await insert(admin, "repeat_measurement", {
      sensor_id: owner.sensorId,
      customer_id: owner.customerId,
      earlier_run_id: earlierRunId,
      run_id: runId,
      counting_rule: "later-counts",
      reason: "a slip",
      authorised_by_id: technicianId,
      authorised_at: now,
    });
};

const makeRun = async (
  admin: pg.Client,
  number: string,
  bench: Bench,
  technicianId: string,
  owners: readonly Owned[],
  earlierRunId: string | null = null,
): Promise<Run> => {
  const id = await insert(admin, "run", {
    number,
    configuration_id: bench.configurationId,
    voltmeter_id: bench.voltmeterId,
    scanner_id: bench.scannerId,
    performer_id: technicianId,
    created_at: now,
    procedure_revision_id: bench.procedureRevisionId,
    budget_inputs: "{}",
  });
  const setpointId = await insert(admin, "run_setpoint", { run_id: id, position: 1, celsius: 600 });
  const junction = { junction_id: bench.junctionId, junction_celsius: 0 };
  const reference = {
    run_id: id,
    place: "0",
    kind: "reference",
    equipment_id: bench.referenceId,
    channel: "0",
  };
  const placeId = await insert(admin, "load_place", { ...reference, ...junction });
  const check = { run_id: id, load_place_id: placeId, rise_microvolt: 80, only_this_channel: true };
  await insert(admin, "tip_check", { ...check, checked_by_id: technicianId, checked_at: now });
  for (const [index, owner] of owners.entries()) {
    const whose = { sensor_id: owner.sensorId, customer_id: owner.customerId };
    const place = { run_id: id, place: `${index + 1}`, kind: "sensor", channel: `${index + 1}` };
    await insert(admin, "load_place", { ...place, ...whose, ...junction });
    const state = { run_id: id, setpoint_id: setpointId, state: "invalid", reason: "open" };
    await insert(admin, "sensor_setpoint_state", {
      ...whose,
      ...state,
      said_by_id: technicianId,
      said_at: now,
    });
  }
  const gate = { run_id: id, verdict: "may-start", rows: "[]", policy: "{}", plan_digest: digest("plan") };
  await insert(admin, "gate_outcome", { ...gate, assessed_by_id: technicianId, assessed_at: now });
  if (earlierRunId) await makeRepeats(admin, earlierRunId, id, technicianId, owners);
  await makeBlock(admin, id, technicianId, [null, ...owners.map((owner) => owner.customerId)]);
  await insert(admin, "stability_window", {
    run_id: id,
    setpoint_id: setpointId,
    from_seconds: 0,
    to_seconds: 600,
    origin: "proposed",
    assessment: "{}",
    blocks_digest: digest("blocks"),
    accepted_by_id: technicianId,
    accepted_at: now,
  });
  const on = { id, setpointId, technicianId, signatory: bench.signatory };
  return { id, setpointId, evaluationId: await makeEvaluation(admin, on, owners) };
};

const makeBlock = async (
  admin: pg.Client,
  runId: string,
  technicianId: string,
  owners: readonly (string | null)[],
): Promise<void> => {
  const blockId = await insert(admin, "scan_block", {
    run_id: runId,
    sequence: 1,
    source: "file",
    source_sha256: digest("source"),
    reading_count: owners.length,
    leaves: Buffer.alloc(32 * owners.length),
    root: digest("root"),
    received_by_id: technicianId,
    received_at: now,
  });
  const reading = { count: 1, times: Buffer.alloc(8), values: Buffer.alloc(8), polarity: Buffer.of(1) };
  const sealed = { salt: Buffer.alloc(16), leaf: digest("leaf") };
  for (const [ordinal, owner] of owners.entries()) {
    const channel = { block_id: blockId, run_id: runId, ordinal, channel: `${ordinal}`, customer_id: owner };
    await insert(admin, "scan_block_channel", { ...channel, ...reading, ...sealed });
  }
};

const makeEvaluation = async (
  admin: pg.Client,
  run: Omit<Run, "evaluationId"> & { readonly technicianId: string; readonly signatory: Signatory },
  owners: readonly Owned[],
): Promise<string> => {
  const { id: runId, setpointId, technicianId } = run;
  const evaluationId = await insert(admin, "evaluation", {
    run_id: runId,
    sequence: 1,
    engine_version: "1",
    evidence: "{}",
    blocks_digest: digest("blocks"),
    inputs_digest: digest("inputs"),
    findings: "[]",
    evaluated_by_id: technicianId,
    evaluated_at: now,
  });
  const decision = { run_id: runId, evaluation_id: evaluationId, decision: "submitted" };
  await insert(admin, "review_decision", { ...decision, decided_by_id: technicianId, decided_at: now });
  for (const owner of owners) {
    const whose = { sensor_id: owner.sensorId, customer_id: owner.customerId };
    const evaluated = { evaluation_id: evaluationId, run_id: runId };
    const result = { setpoint_id: setpointId, state: "measured", point: "{}" };
    await insert(admin, "result", { ...evaluated, ...whose, ...result });
    const certificateId = await insertSigned(admin, insert, run.signatory, {
      ...evaluated,
      ...whose,
      number: `C-${randomUUID()}`,
      order_id: owner.orderId,
      content: "{}",
      content_hash: digest("content"),
      token: digest(randomUUID()).toString("base64url"),
      signed_by_id: technicianId,
      signed_at: now,
    });
    await insert(admin, "certificate_file", {
      certificate_id: certificateId,
      customer_id: owner.customerId,
      media_type: "application/pdf",
      bytes: Buffer.from("%PDF"),
      sha256: digest("%PDF"),
      renderer_version: "1",
      rendered_at: now,
    });
    // As if the file were still to come: a row of this table stands no longer than that.
    await admin.query("INSERT INTO certificate_pending VALUES ($1)", [certificateId]);
  }
  return evaluationId;
};

/** At least one row in every table, and of all that a customer can own one row for each of two customers. */
export const twoCustomers = async (admin: pg.Client): Promise<TwoCustomers> => {
  await insert(admin, "laboratory", { name: "L", address_lines: "1 Street", contact: "C" });
  await insert(admin, "first_access", { token_hash: "x", expires_at: now });
  await insert(admin, "sign_in_attempt", { email: "x", succeeded: false });
  await insert(admin, "counter", { name: "seen", value: 1 });
  const person = { email: "technician@example.org", name: "T", password_hash: "x" };
  const technicianId = await insert(admin, "person", person);
  await insert(admin, "person_role", { person_id: technicianId, role: "technician" });
  const second = { email: "second@example.org", name: "S", password_hash: "x" };
  const secondPersonId = await insert(admin, "person", second);
  const a = await makeCustomer(admin, "alpha", technicianId);
  const b = await makeCustomer(admin, "beta", technicianId);
  const bench = {
    ...(await makeBench(admin, insert, technicianId, secondPersonId)),
    procedureRevisionId: await makeProcedure(admin, insert, technicianId, secondPersonId),
    signatory: await makeSignatory(admin, insert, technicianId, secondPersonId),
  };
  await admin.query("BEGIN; SET LOCAL app.scope = 'laboratory'");
  await admin.query("SELECT audit_append('system:test', 'thing.made', 'thing', '1', '{}'); COMMIT");
  const sharedRun = await makeRun(admin, "R-1", bench, technicianId, [a, b]);
  await makeRecords(admin, insert, {
    ...bench,
    technicianId,
    secondPersonId,
    runId: sharedRun.id,
    sensor: a,
  });
  await makeMail(admin, insert, bench.referenceId);
  const runOfB = await makeRun(admin, "R-2", bench, technicianId, [b], sharedRun.id);
  for (const [name, owned] of Object.entries({ alpha: a, beta: b })) {
    const { id: runId, evaluationId, setpointId } = sharedRun;
    const on = { name, ...owned, technicianId, runId, evaluationId };
    await makeCustomersRecords(admin, insert, on);
    await makeSigning(admin, insert, { ...on, secondPersonId, setpointId });
  }
  await makeKeys(admin, insert, sharedRun);
  return {
    a,
    b,
    technicianId,
    referenceId: bench.referenceId,
    junctionId: bench.junctionId,
    sharedRun,
    runOfB,
  };
};
