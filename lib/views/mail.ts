import { listMail } from "@/lib/data/mail/list-mail";
import { loadDueThings } from "@/lib/data/reminder/due-things";
import { mailPage } from "@/lib/data/sql/mail-page";
import { loadQualityManagers } from "@/lib/data/staff/load-quality-managers";
import { cutPage, turnOf } from "@/lib/domain/list/page";
import type { MailQuery } from "@/lib/domain/mail/list-query";
import { mailState } from "@/lib/domain/mail/mail-state";
import { maskAccess } from "@/lib/domain/mail/mask-access";
import { nextReminderOn } from "@/lib/domain/reminder/next-reminder";
import { stageOf } from "@/lib/domain/reminder/stage-of";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

/** What is due and when it is told next; and the messages that were kept, with how their sending goes. */
export const mailView = (actor: Actor, today: string, query: MailQuery = {}) =>
  answer(actor, "mail.manage", async (tx) => {
    const things = await loadDueThings(tx, today);
    const turn = turnOf(query);
    const page = cutPage(await mailPage(tx, turn), turn, ({ id }) => id);
    const messages = await listMail(
      tx,
      page.rows.map(({ id }) => id),
    );
    return {
      nextReminderOn: nextReminderOn(things, today),
      recipients: (await loadQualityManagers(tx)).map(({ email }) => email),
      due: things.flatMap(({ dueKind, subjectId, title, dueOn, path, told }) => {
        const stage = stageOf(dueOn, today);
        return stage === null
          ? []
          : [{ dueKind, subjectId, title, dueOn, path, stage, isTold: told.includes(stage) }];
      }),
      messages: messages.map(({ attempts, enqueuedAt, ...message }) => {
        const last = attempts.at(-1);
        return {
          ...message,
          body: maskAccess(message.body),
          writtenAt: enqueuedAt.toISOString(),
          state: mailState(attempts.map(({ outcome }) => outcome)),
          attempts: attempts.length,
          last: last
            ? { at: last.happenedAt.toISOString(), detail: last.detail, transport: last.transport }
            : null,
        };
      }),
      next: page.next,
      previous: page.previous,
    };
  });

export type MailPage = Awaited<ReturnType<typeof mailView>>;
