import { randomUUID } from "node:crypto";
import { accountEvents } from "@/lib/domain/account/events";
import { decideLock, lockMemoryMilliseconds } from "@/lib/domain/account/lock";
import { eventOf } from "@/lib/domain/audit/define-event";
import { lockedNotice } from "@/lib/domain/mail/letters/account-notice";
import { loadAccountPolicy } from "../account/account-policy-store";
import type { Tx } from "../in-scope";
import { insertMail } from "../mail/mail-store";
import { saveLock } from "./person-store";
import { loadAttemptsForUpdate, loadCredentials } from "./sign-in-store";

/** Too many in a row: the account is shut for a while, and its owner, not whoever tries, is told. Once a lock. */
export const lockIfDue = async (tx: Tx, email: string, publicUrl: string | null, now: Date) => {
  const attempts = await loadAttemptsForUpdate(tx, email, new Date(now.getTime() - lockMemoryMilliseconds));
  // Read under the lock of this address: of two failures at once, one locks and the other finds it locked.
  const person = await loadCredentials(tx, email);
  if (!person?.active) return [];
  const until = decideLock(attempts, person.lockedUntil, await loadAccountPolicy(tx), now);
  if (!until) return [];
  await saveLock(tx, person.id, until);
  const locked = [eventOf(accountEvents.locked, person.id, { until: until.toISOString() })];
  if (publicUrl === null) return locked;
  const mail = { id: randomUUID(), kind: "account-notice", personId: person.id, digestId: null } as const;
  const letter = lockedNotice({ name: person.name, until, publicUrl });
  await insertMail(tx, { ...mail, recipient: person.email, ...letter }, publicUrl, now);
  return locked;
};
