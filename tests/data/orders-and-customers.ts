import { createHash } from "node:crypto";
import type pg from "pg";
import type { Insert } from "./standards-and-chains";

const now = "2026-03-02T09:00:00Z";
const later = "2026-04-02T09:00:00Z";
const day = "2026-01-01";
const bytes = Buffer.from("bytes");
const digest = createHash("sha256").update(bytes).digest();
const hashOf = (text: string): string => createHash("sha256").update(text).digest("hex");

export type Customers = {
  readonly name: string;
  readonly customerId: string;
  readonly personId: string;
  readonly orderId: string;
  readonly sensorId: string;
  readonly technicianId: string;
  readonly runId: string;
  readonly evaluationId: string;
};

/** What was said and agreed about an order. */
const makeContract = async (admin: pg.Client, insert: Insert, on: Customers): Promise<void> => {
  const whose = { order_id: on.orderId, customer_id: on.customerId };
  const mine = { customer_id: on.customerId };
  const review = { sequence: 1, occasion: "acceptance", answers: "{}", capability: "[]", order_version: 1 };
  await insert(admin, "order_review", {
    ...whose,
    ...review,
    reviewed_by_id: on.technicianId,
    reviewed_at: now,
  });
  const said = { said_by_id: on.technicianId, said_at: now };
  await insert(admin, "order_note", {
    ...whose,
    kind: "note",
    text: "ours",
    is_for_customer: false,
    ...said,
  });
  await insert(admin, "order_note", {
    ...whose,
    kind: "told-customer",
    text: "x",
    is_for_customer: true,
    ...said,
  });
  const raised = { text: "1200 °C asked", raised_by_id: on.technicianId, raised_at: now };
  const differenceId = await insert(admin, "order_difference", { ...whose, ...raised });
  const settled = { text: "1100 °C", agreed_with: "C", settled_by_id: on.technicianId, settled_at: now };
  await insert(admin, "order_difference_settlement", { difference_id: differenceId, ...mine, ...settled });
  await insert(admin, "roll_agreement", {
    ...{ ...whose, lot: "L7", roll: "3", agreed_with: "C", text: "mail of 2 March" },
    ...{ recorded_by_id: on.technicianId, recorded_at: now },
  });
  const change = { sequence: 1, reason: "r", agreed_with: "C", before: "{}", after: "{}" };
  const changeId = await insert(admin, "order_change", {
    ...whose,
    ...change,
    changed_by_id: on.technicianId,
    changed_at: now,
  });
  await insert(admin, "order_change_acknowledgment", {
    change_id: changeId,
    run_id: on.runId,
    acknowledged_by_id: on.technicianId,
    acknowledged_at: now,
  });
};

const makeCommerce = async (admin: pg.Client, insert: Insert, on: Customers): Promise<string> => {
  const whose = { order_id: on.orderId, customer_id: on.customerId };
  const made = { made_by_id: on.technicianId, made_at: now };
  const price = { key: `point-${on.name}`, title: "Point", per: "point", amount: 4200, valid_from: day };
  await insert(admin, "price_item", { ...price, recorded_by_id: on.technicianId, recorded_at: now });
  const offer = { number: `Q-${on.name}`, order_version: 1, content: "{}", content_hash: digest };
  const quotationId = await insert(admin, "quotation", {
    ...whose,
    ...offer,
    total_amount: 4200,
    currency: "GBP",
    valid_until: day,
    ...made,
  });
  const paper = { kind: "quotation", number: `Q-${on.name}`, content: "{}", media_type: "application/pdf" };
  await insert(admin, "order_document", { ...whose, ...paper, bytes, sha256: digest, ...made });
  await insert(admin, "customer_link", {
    ...whose,
    token_hash: hashOf(`agree ${on.name}`),
    purpose: "agree",
    subject_id: quotationId,
    recipient: "c@example.org",
    expires_at: later,
    made_at: now,
  });
  const agreed = { answer: "agreed", content_hash: digest, came_by: "link", said_by_name: "C", said_at: now };
  await insert(admin, "agreement", { ...whose, quotation_id: quotationId, ...agreed });
  const parcel = { number: `S-${on.name}`, handed_over: "in-person", address: "1 Street" };
  const packed = { packed_by_id: on.technicianId, packed_at: now };
  const shipmentId = await insert(admin, "shipment", { ...whose, ...parcel, ...packed });
  await insert(admin, "shipment_sensor", {
    shipment_id: shipmentId,
    sensor_id: on.sensorId,
    customer_id: on.customerId,
  });
  const file = { number: `I-${on.name}`, rows: 1, bytes, sha256: digest };
  const invoicingFileId = await insert(admin, "invoicing_file", { ...file, ...made });
  await insert(admin, "invoicing_row", {
    invoicing_file_id: invoicingFileId,
    order_id: on.orderId,
    sensor_id: on.sensorId,
    key: "point",
    amount: 4200,
  });
  return shipmentId;
};

const makeCustody = async (
  admin: pg.Client,
  insert: Insert,
  on: Customers,
  shipmentId: string,
): Promise<void> => {
  const mine = { customer_id: on.customerId };
  const whose = { ...mine, order_id: on.orderId };
  const sensor = { ...mine, sensor_id: on.sensorId };
  const image = { media_type: "image/png", bytes, sha256: digest, width: 1, height: 1 };
  await insert(admin, "sensor_photo", { ...sensor, ...image, taken_by_id: on.technicianId, taken_at: now });
  const file = { file_name: "sensors.csv", bytes, sha256: digest, rows: 1 };
  await insert(admin, "intake_file", {
    ...whose,
    ...file,
    received_by_id: on.technicianId,
    received_at: now,
  });
  const placeId = await insert(admin, "storage_place", { code: `A-${on.name}`, name: "Shelf" });
  const custody = { kind: "stored", place_id: placeId, shipment_id: shipmentId, happened_at: now };
  await insert(admin, "custody_event", { ...sensor, ...custody, recorded_by_id: on.technicianId });
  const complaint = { kind: "complaint", title: "t", description: "d", subject_kind: "order" };
  const nonconformityId = await insert(admin, "nonconformity", {
    ...complaint,
    number: `N-${on.name}`,
    subject_name: `O-${on.name}`,
    subject_id: on.orderId,
    customer_id: on.customerId,
    opened_by_id: on.personId,
    opened_at: now,
  });
  for (const kind of ["note", "customer-told"])
    await insert(admin, "nonconformity_entry", {
      nonconformity_id: nonconformityId,
      kind,
      text: "t",
      said_by_id: on.technicianId,
      said_at: now,
    });
  const held = { kind: "condition", reason: "bent", placed_by_id: on.technicianId, placed_at: now };
  const holdId = await insert(admin, "hold", { ...whose, sensor_id: on.sensorId, ...held });
  const question = { text: "Go on?", asked_by_id: on.technicianId, asked_at: now };
  const questionId = await insert(admin, "question", {
    ...whose,
    sensor_id: on.sensorId,
    hold_id: holdId,
    ...question,
  });
  const answer = { choice: "yes", came_by: "link", said_by_name: "C", said_at: now };
  await insert(admin, "answer", { ...mine, question_id: questionId, ...answer });
  const released = { outcome: "go-on", reason: "they said so", released_by_id: on.technicianId };
  await insert(admin, "hold_release", { ...mine, hold_id: holdId, ...released, released_at: now });
};

const makeParts = async (admin: pg.Client, insert: Insert, on: Customers): Promise<void> => {
  const sensor = { customer_id: on.customerId, sensor_id: on.sensorId };
  const anneal = { celsius: 1100, hours: 1, manner: "in air", performed_on: day };
  await insert(admin, "sensor_anneal", {
    ...sensor,
    ...anneal,
    performed_by_id: on.technicianId,
    recorded_at: now,
  });
  const { rows } = await admin.query("SELECT id FROM certificate WHERE sensor_id = $1 AND run_id = $2", [
    on.sensorId,
    on.runId,
  ]);
  await insert(admin, "certificate_part", {
    ...sensor,
    certificate_id: rows[0].id,
    position: 1,
    run_id: on.runId,
    evaluation_id: on.evaluationId,
    set_kind: "as-received",
  });
};

/** What an external provider found; its sensor's line goes there for a moment only, other rows are of runs here. */
const makeExternal = async (admin: pg.Client, insert: Insert, on: Customers): Promise<void> => {
  const providerId = await insert(admin, "provider", { name: `P-${on.name}`, route: "nmi" });
  const goesTo =
    "UPDATE order_line SET provider_id = $1 WHERE id = (SELECT order_line_id FROM sensor WHERE id = $2)";
  await admin.query(goesTo, [providerId, on.sensorId]);
  const said = { provider_name: "P", certificate: "X-1", issued_on: day, results: "{}", sequence: 1 };
  const file = { file_name: "x.pdf", media_type: "application/pdf", bytes, sha256: digest };
  const reportId = await insert(admin, "provider_report", {
    ...{ sensor_id: on.sensorId, customer_id: on.customerId, provider_id: providerId },
    ...{ ...said, ...file, recorded_by_id: on.technicianId, recorded_at: now },
  });
  await insert(admin, "provider_report_decision", {
    ...{ report_id: reportId, customer_id: on.customerId, decision: "accepted" },
    ...{ decided_by_id: on.personId, decided_at: now },
  });
  await admin.query(goesTo, [null, on.sensorId]);
};

/** What a customer keeps, its people's ways in, and its programs'. */
const makeAccess = async (admin: pg.Client, insert: Insert, on: Customers): Promise<void> => {
  const mine = { customer_id: on.customerId };
  await insert(admin, "customer_address", {
    ...mine,
    kind: "delivery",
    title: "Dock",
    address_lines: "1 Dock",
  });
  await insert(admin, "recall_interval", {
    ...mine,
    serial: "S",
    months: 12,
    set_by_id: on.personId,
    set_at: now,
  });
  await insert(admin, "recall_reminder", { ...mine, serial: "S", due_on: day, reminded_at: now });
  const session = { kind: "full", came_by: "password", had_code: true };
  const times = { started_at: now, last_seen_at: now, ends_at: later };
  await insert(admin, "person_session", { person_id: on.personId, ...session, ...times });
  const secret = { person_id: on.personId, sealed_secret: bytes, began_at: now };
  const secondFactorId = await insert(admin, "second_factor", secret);
  await insert(admin, "recovery_code", { second_factor_id: secondFactorId, code_hash: "x" });
  const link = { token_hash: hashOf(`invitation ${on.name}`), purpose: "invitation", email: "n@example.org" };
  await insert(admin, "access_link", { ...link, ...mine, made_at: now, expires_at: later });
  const identity = { issuer: "https://id.example.org", subject: on.name, linked_at: now };
  await insert(admin, "outside_identity", { person_id: on.personId, ...identity });
  const made = { made_by_id: on.personId, made_at: now };
  const token = {
    token_hash: hashOf(`token ${on.name}`),
    beginning: "x",
    name: "Plant system",
    scopes: "[]",
  };
  await insert(admin, "access_token", { ...mine, ...token, ...made, expires_at: later });
  const hook = { url: "https://example.org/hook", topics: "[]", sealed_secret: bytes };
  const webhookId = await insert(admin, "webhook", { ...mine, ...hook, ...made });
  const message = { webhook_id: webhookId, topic: "certificate.issued", body: "{}", enqueued_at: now };
  const webhookMessageId = await insert(admin, "webhook_message", { ...mine, ...message });
  const attempt = {
    webhook_message_id: webhookMessageId,
    outcome: "failed",
    detail: "500",
    happened_at: now,
  };
  await insert(admin, "webhook_attempt", attempt);
  await insert(admin, "rate_count", { key: on.name, window_start: now, count: 1 });
};

/** One row at least in every table of orders, custody, parts, portal and accounts, for this customer. */
export const makeCustomersRecords = async (
  admin: pg.Client,
  insert: Insert,
  on: Customers,
): Promise<void> => {
  await makeContract(admin, insert, on);
  await makeCustody(admin, insert, on, await makeCommerce(admin, insert, on));
  await makeParts(admin, insert, on);
  await makeExternal(admin, insert, on);
  await makeAccess(admin, insert, on);
};

/** A furnace taken for some hours. */
export const makeSlot = async (
  admin: pg.Client,
  insert: Insert,
  furnaceId: string,
  technicianId: string,
): Promise<void> => {
  const hours = { starts_at: "2026-03-02T09:00:00Z", ends_at: "2026-03-02T17:00:00Z" };
  await insert(admin, "furnace_slot", {
    furnace_id: furnaceId,
    ...hours,
    taken_by_id: technicianId,
    taken_at: now,
  });
};
