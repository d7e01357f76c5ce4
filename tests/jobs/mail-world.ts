import { randomUUID } from "node:crypto";
import type pg from "pg";
import { inScope } from "@/lib/data/in-scope";
import { insertMail } from "@/lib/data/mail/mail-store";

export const publicUrl = "https://calibration.example";

export const letter = (changes: Partial<{ subject: string; body: string; recipient: string }> = {}) => ({
  id: randomUUID(),
  kind: "due-digest" as const,
  personId: null,
  recipient: "quinn@example.test",
  subject: "2 things are due",
  body: "R-S1 is due.\n",
  digestId: null,
  ...changes,
});

/** Stores a message and its job, as an operation does. */
export const write = async (mail: ReturnType<typeof letter>, now = new Date()): Promise<string> => {
  await inScope({ kind: "laboratory" }, (tx) => insertMail(tx, mail, publicUrl, now));
  return mail.id;
};

export type Attempt = { readonly outcome: string; readonly transport: string; readonly detail: string };

export const attemptsOf = async (admin: pg.Client, id: string): Promise<readonly Attempt[]> =>
  (
    await admin.query<Attempt>(
      "SELECT outcome, transport, detail FROM mail_attempt WHERE mail_message_id = $1 ORDER BY id",
      [id],
    )
  ).rows;

export type Job = { readonly attempts: number; readonly last_error: string | null; readonly waits: boolean };

export const jobOf = async (admin: pg.Client, id: string): Promise<Job | undefined> =>
  (
    await admin.query<Job>(
      "SELECT attempts, last_error, run_at > updated_at AS waits FROM graphile_worker._private_jobs WHERE key = $1",
      [`mail:${id}`],
    )
  ).rows[0];

/** As if the time of the next attempt had come. */
export const letTimePass = async (admin: pg.Client): Promise<void> => {
  await admin.query("UPDATE graphile_worker._private_jobs SET run_at = now()");
};
