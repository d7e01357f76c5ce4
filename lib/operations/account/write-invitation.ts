import { randomUUID } from "node:crypto";
import { insertAccessLink, withdrawLinksTo } from "@/lib/data/account/access-link-store";
import type { Tx } from "@/lib/data/in-scope";
import { insertMail } from "@/lib/data/mail/mail-store";
import { accountEvents } from "@/lib/domain/account/events";
import { invitationHours } from "@/lib/domain/account/schema";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { invitationLetter } from "@/lib/domain/mail/letters/invitation";

type Invited = {
  readonly name: string;
  readonly email: string;
  readonly roles: readonly string[];
  readonly customerId: string | null;
  readonly madeById: string | null;
  readonly publicUrl: string;
};

/** The link, the mail that carries it, and the fact. An earlier invitation to the address opens nothing any more. */
export const writeInvitation = async (tx: Tx, invited: Invited, now: Date) => {
  const { name, email, roles, customerId, madeById, publicUrl } = invited;
  await withdrawLinksTo(tx, "invitation", email, now);
  const expiresAt = new Date(now.getTime() + invitationHours * 3_600_000);
  const { token, id } = await insertAccessLink(tx, {
    ...{ purpose: "invitation", email, name, roles, customerId, madeById },
    ...{ madeAt: now, expiresAt },
  });
  const laboratory = await tx.laboratory.findUnique({ where: { id: "laboratory" }, select: { name: true } });
  const letter = invitationLetter({
    name,
    laboratory: laboratory?.name ?? "the laboratory",
    link: new URL(`/invitation/${token}`, publicUrl).href,
    hours: invitationHours,
  });
  const mail = { id: randomUUID(), kind: "invitation", personId: null, digestId: null } as const;
  await insertMail(tx, { ...mail, recipient: email, ...letter }, publicUrl, now);
  const payload = { roles: [...roles], customerId, expiresAt: expiresAt.toISOString() };
  const events: readonly [AuditEvent] = [eventOf(accountEvents.invited, id, payload)];
  return { value: { id }, events };
};
