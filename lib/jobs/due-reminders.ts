import type { Task } from "graphile-worker";
import { remindOfDue } from "@/lib/operations/reminder/remind-of-due";
import { remindOfRecall } from "@/lib/operations/reminder/remind-of-recall";
import type { Work } from "./work";

/** Once a day and at each start. What it finds is told by messages, each with a job of its own. */
export const dueReminders =
  ({ publicUrl, clock }: Work): Task =>
  async () => {
    await remindOfDue(publicUrl, clock);
    await remindOfRecall(clock);
  };
