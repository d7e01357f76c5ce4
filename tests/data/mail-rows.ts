import { randomUUID } from "node:crypto";
import type pg from "pg";
import type { Insert } from "./standards-and-chains";

const now = "2026-03-02T09:00:00Z";

/** A message, an attempt to send it, and the reminder it tells. */
export const makeMail = async (admin: pg.Client, insert: Insert, equipmentId: string): Promise<void> => {
  const digestId = randomUUID();
  const messageId = await insert(admin, "mail_message", {
    kind: "due-digest",
    message_id: "<1@example.org>",
    recipient: "q@example.org",
    subject: "1 due",
    body: "R-S1 is due.",
    digest_id: digestId,
    enqueued_at: now,
  });
  const attempt = { outcome: "failed", transport: "smtp", detail: "451 later", happened_at: now };
  await insert(admin, "mail_attempt", { mail_message_id: messageId, ...attempt });
  const told = { due_kind: "calibration", due_on: "2026-03-20", stage: "due", reminded_at: now };
  await insert(admin, "reminder", { subject_id: equipmentId, digest_id: digestId, ...told });
};
