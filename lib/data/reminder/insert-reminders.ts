import type { Tx } from "@/lib/data/in-scope";
import type { Reminder } from "@/lib/domain/reminder/types";

/** What is told with this transaction. Told by somebody else meanwhile, the database refuses it all. */
export const insertReminders = async (
  tx: Tx,
  digestId: string,
  reminders: readonly Reminder[],
  now: Date,
): Promise<void> => {
  await tx.reminder.createMany({
    data: reminders.map(({ thing, stage }) => ({
      dueKind: thing.dueKind,
      subjectId: thing.subjectId,
      dueOn: new Date(`${thing.dueOn}T00:00:00Z`),
      stage,
      digestId,
      remindedAt: now,
    })),
  });
};
