import { createHash } from "node:crypto";
import type pg from "pg";
import type { Customers } from "./orders-and-customers";
import type { Insert } from "./standards-and-chains";

const now = "2026-03-02T09:00:00Z";
const later = "2026-04-02T09:00:00Z";
const digest = (text: string): Buffer => createHash("sha256").update(text).digest();

export type Signing = Customers & { readonly secondPersonId: string; readonly setpointId: string };

/** The certificate that a run gave this customer. */
const certificateOf = async (admin: pg.Client, on: Signing): Promise<string> => {
  const sought = "SELECT id FROM certificate WHERE run_id = $1 AND customer_id = $2";
  const { rows } = await admin.query(sought, [on.runId, on.customerId]);
  return rows[0].id;
};

const makeReview = async (admin: pg.Client, insert: Insert, on: Signing): Promise<void> => {
  const of = { run_id: on.runId, evaluation_id: on.evaluationId };
  const at = { ...of, sensor_id: on.sensorId, setpoint_id: on.setpointId };
  await insert(admin, "review_opening", { ...at, opened_by_id: on.technicianId, opened_at: now });
  const said = { place: "error", text: "look again", written_by_id: on.technicianId, written_at: now };
  const remark = await insert(admin, "review_comment", { ...at, ...said });
  await insert(admin, "review_comment", { ...at, ...said, answers_id: remark, settles: true });
};

export type Signatory = { readonly authorisationId: string; readonly signingSessionId: string };

const authorise = (
  admin: pg.Client,
  insert: Insert,
  activity: string,
  { technicianId, secondPersonId }: { readonly technicianId: string; readonly secondPersonId: string },
): Promise<string> =>
  insert(admin, "authorisation", {
    ...{ person_id: technicianId, activity, type_letters: "", from_celsius: 0, to_celsius: 1300 },
    ...{ scope: "any", basis: "trained", valid_from: "2026-01-01" },
    ...{ granted_by_id: secondPersonId, granted_at: now },
  });

/** What the technician of this world signs by. */
export const makeSignatory = async (
  admin: pg.Client,
  insert: Insert,
  technicianId: string,
  secondPersonId: string,
): Promise<Signatory> => {
  const session = { kind: "full", came_by: "password", had_code: true };
  const times = { started_at: now, last_seen_at: now, ends_at: later };
  const personSessionId = await insert(admin, "person_session", {
    ...{ person_id: technicianId, ...session, ...times },
  });
  const signingSessionId = await insert(admin, "signing_session", {
    ...{ person_id: technicianId, person_session_id: personSessionId },
    ...{ opened_at: now, last_signed_at: now },
  });
  const who = { technicianId, secondPersonId };
  return { signingSessionId, authorisationId: await authorise(admin, insert, "sign-off", who) };
};

type CertificateRow = Readonly<Record<string, unknown>> & {
  readonly customer_id: string;
  readonly content_hash: Buffer;
  readonly signed_by_id: string;
  readonly signed_at: string;
};

/** A certificate and its signature, at once: the database takes none without the other. */
export const insertSigned = async (
  admin: pg.Client,
  insert: Insert,
  { authorisationId, signingSessionId }: Signatory,
  row: CertificateRow,
): Promise<string> => {
  await admin.query("BEGIN");
  const certificateId = await insert(admin, "certificate", row);
  await insert(admin, "signature", {
    ...{ certificate_id: certificateId, customer_id: row.customer_id, person_id: row.signed_by_id },
    ...{ printed_name: "T", meaning: "reviewed-and-authorised", reviewed_hash: digest("reviewed") },
    ...{ content_hash: row.content_hash, means: "password+code", act_id: `act ${certificateId}` },
    ...{ signing_session_id: signingSessionId, authorisation_id: authorisationId, signed_at: row.signed_at },
  });
  await admin.query("COMMIT");
  return certificateId;
};

const makeOpinion = async (admin: pg.Client, insert: Insert, on: Signing): Promise<void> => {
  const ended = await authorise(admin, insert, "sign-off", on);
  await insert(admin, "opinion", {
    ...{ run_id: on.runId, sensor_id: on.sensorId, customer_id: on.customerId, text: "fit for use" },
    ...{ basis: "experience", authorisation_id: await authorise(admin, insert, "opinion", on) },
    ...{ author_id: on.technicianId, written_at: now },
  });
  await insert(admin, "authorisation_withdrawal", {
    ...{ authorisation_id: ended, reason: "left", withdrawn_by_id: on.secondPersonId },
    withdrawn_at: later,
  });
};

const makeEnding = async (
  admin: pg.Client,
  insert: Insert,
  on: Signing,
  certificateId: string,
): Promise<void> => {
  const whose = { certificate_id: certificateId, customer_id: on.customerId };
  const failed = { step: "seal", detail: "no timestamp", happened_at: now };
  await insert(admin, "certificate_attempt", { ...whose, ...failed });
  const asked = { kind: "amendment", reason: "wrong name", corrections: "{}" };
  const amendmentId = await insert(admin, "amendment", {
    ...{ ...whose, ...asked, asked_by_id: on.technicianId, asked_at: now },
  });
  await insert(admin, "amendment_decision", {
    ...{ amendment_id: amendmentId, customer_id: on.customerId, outcome: "dropped", reason: "it was right" },
    ...{ decided_by_id: on.technicianId, decided_at: now },
  });
  const decided = { decided_by_id: on.technicianId, decided_at: now };
  await insert(admin, "certificate_ending", {
    ...whose,
    kind: "withdrawn",
    reason: "a wrong sensor",
    ...decided,
  });
};

/** One row at least in every table of signing, review and documents that speaks of this customer's certificate. */
export const makeSigning = async (admin: pg.Client, insert: Insert, on: Signing): Promise<void> => {
  const certificateId = await certificateOf(admin, on);
  await makeReview(admin, insert, on);
  await makeOpinion(admin, insert, on);
  await makeEnding(admin, insert, on, certificateId);
};

/** What is of the laboratory alone: the lot of a review, a key and its end. */
export const makeKeys = async (
  admin: pg.Client,
  insert: Insert,
  run: { readonly id: string; readonly evaluationId: string },
): Promise<void> => {
  const of = { evaluation_id: run.evaluationId, run_id: run.id };
  await insert(admin, "review_sample", { ...of, seed: digest("seed"), drawn_at: now });
  const certificate = Buffer.from("a certificate");
  const sealKeyId = await insert(admin, "seal_key", {
    ...{
      fingerprint: digest("a certificate").toString("hex"),
      certificate_der: certificate,
      chain_der: Buffer.of(),
    },
    ...{ algorithm: "ECDSA P-256", subject: "CN=L", not_before: now, not_after: later },
    ...{ origin: "self-issued", purpose: "seal", taken_up_at: now },
  });
  await insert(admin, "seal_key_ending", {
    ...{
      seal_key_id: sealKeyId,
      kind: "retired",
      reason: "renewed",
      effective_at: later,
      recorded_at: later,
    },
  });
};
