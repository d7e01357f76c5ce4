import type { TaskList } from "graphile-worker";
import { answerResetTask } from "./answer-reset";
import { dueReminders } from "./due-reminders";
import { issueCertificateTask } from "./issue-certificate";
import { sendMail } from "./send-mail";
import { sendWebhook } from "./send-webhook";
import { takeUpPendingTask } from "./take-up-pending";
import type { Work } from "./work";

/** Every kind of job there is, by the name it is put into the queue with. */
export const taskList = (work: Work): TaskList => ({
  "answer-reset": answerResetTask(work),
  "issue-certificate": issueCertificateTask(work),
  "send-mail": sendMail(work),
  "send-webhook": sendWebhook(work),
  "due-reminders": dueReminders(work),
  "take-up-pending": takeUpPendingTask(),
});
