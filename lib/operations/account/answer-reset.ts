import { randomUUID } from "node:crypto";
import { z } from "zod";
import { insertAccessLink, withdrawLinksTo } from "@/lib/data/account/access-link-store";
import { insertMail } from "@/lib/data/mail/mail-store";
import { accountEvents } from "@/lib/domain/account/events";
import { PublicUrl, resetMinutes } from "@/lib/domain/account/schema";
import { eventOf } from "@/lib/domain/audit/define-event";
import { resetLetter } from "@/lib/domain/mail/letters/reset";
import { Refused } from "@/lib/domain/refusal";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

const sendReset = defineOperation({
  name: "account/answer-reset",
  permission: "system",
  input: z.strictObject({ email: z.string().max(200), publicUrl: PublicUrl }),
  perform: async ({ now, tx }, { email, publicUrl }) => {
    const person = await tx.person.findUnique({
      where: { email },
      select: { id: true, name: true, active: true },
    });
    if (!person?.active)
      throw new Refused({ code: "not-found", message: "Nobody signs in with this address." });
    await withdrawLinksTo(tx, "reset", email, now);
    const expiresAt = new Date(now.getTime() + resetMinutes * 60_000);
    const { token } = await insertAccessLink(tx, {
      ...{ purpose: "reset", email, personId: person.id, madeById: null, madeAt: now, expiresAt },
    });
    const laboratory = await tx.laboratory.findUnique({
      where: { id: "laboratory" },
      select: { name: true },
    });
    const letter = resetLetter({
      name: person.name,
      laboratory: laboratory?.name ?? "the laboratory",
      link: new URL(`/reset/${token}`, publicUrl).href,
      minutes: resetMinutes,
    });
    const mail = { id: randomUUID(), kind: "reset", personId: person.id, digestId: null } as const;
    await insertMail(tx, { ...mail, recipient: email, ...letter }, publicUrl, now);
    return { value: null, events: [eventOf(accountEvents.resetSent, person.id, {})] };
  },
});

/** Nothing happens, and nobody is told, where nobody signs in with this address. Earlier links open nothing any more. */
export const answerReset = async (email: string, publicUrl: string, clock: Clock): Promise<void> => {
  try {
    await execute(sendReset, { kind: "system", name: "reset" }, { email, publicUrl }, clock);
  } catch (error) {
    if (!(error instanceof Refused && error.refusal.code === "not-found")) throw error;
  }
};
