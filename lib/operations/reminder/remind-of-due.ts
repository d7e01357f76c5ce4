import { randomUUID } from "node:crypto";
import { z } from "zod";
import { insertMail } from "@/lib/data/mail/mail-store";
import { loadDueThings } from "@/lib/data/reminder/due-things";
import { insertReminders } from "@/lib/data/reminder/insert-reminders";
import { loadQualityManagers } from "@/lib/data/staff/load-quality-managers";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { Refused } from "@/lib/domain/refusal";
import { composeDigest } from "@/lib/domain/reminder/compose-digest";
import { decideReminders } from "@/lib/domain/reminder/decide-reminders";
import { reminderEvents } from "@/lib/domain/reminder/events";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

/** Writes that it was told, the messages, and the jobs that send them: all with one commit. */
export const tellDue = defineOperation({
  name: "reminder/remind-of-due",
  permission: "system",
  input: z.strictObject({ publicUrl: z.url({ protocol: /^https?$/ }) }),
  perform: async ({ now, tx }, { publicUrl }) => {
    const reminders = decideReminders(await loadDueThings(tx, isoDay(now)), isoDay(now));
    const people = await loadQualityManagers(tx);
    // Nothing is written while nobody would read it: whoever comes first is told.
    if (reminders.length === 0 || people.length === 0)
      throw new Refused({
        code: "wrong-state",
        message: "There is nothing to tell, or nobody to tell it to.",
      });
    const digestId = randomUUID();
    await insertReminders(tx, digestId, reminders, now);
    const { subject, body } = composeDigest(reminders, publicUrl);
    for (const { id: personId, email: recipient } of people)
      await insertMail(
        tx,
        { id: randomUUID(), kind: "due-digest", personId, recipient, subject, body, digestId },
        publicUrl,
        now,
      );
    const things = reminders.map(({ thing: { title, dueKind, dueOn }, stage }) => ({
      ...{ title, dueKind, dueOn, stage },
    }));
    return {
      value: { things: things.length, messages: people.length },
      events: [eventOf(reminderEvents.told, digestId, { things, messages: people.length })],
    };
  },
});

/** Tells the quality managers what has come due since last time; undefined = nothing to tell, or nobody to tell it to. */
export const remindOfDue = async (
  publicUrl: string,
  clock: Clock,
): Promise<{ readonly things: number; readonly messages: number } | undefined> => {
  try {
    return await execute(tellDue, { kind: "system", name: "reminder" }, { publicUrl }, clock);
  } catch (error) {
    if (error instanceof Refused && error.refusal.code === "wrong-state") return undefined;
    throw error;
  }
};
