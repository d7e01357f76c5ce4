import type { TaskList } from "graphile-worker";
import { answerResetTask } from "./answer-reset";
import { dueReminders } from "./due-reminders";
import { issueCertificate } from "./issue-certificate";
import { sendMail } from "./send-mail";
import { sendWebhook } from "./send-webhook";
import type { Work } from "./work";

/** Every kind of job there is, by the name it is put into the queue with. */
export const taskList = (work: Work): TaskList => ({
  "answer-reset": answerResetTask(work),
  "issue-certificate": issueCertificate(work),
  "send-mail": sendMail(work),
  "send-webhook": sendWebhook(work),
  "due-reminders": dueReminders(work),
});
