import type { Task } from "graphile-worker";
import { deliver } from "@/lib/operations/mail/deliver";
import type { Work } from "./work";

/** Sends one stored message. Given by `enqueueMail`, under a key of that message's own. */
export const sendMail =
  ({ carrier, clock }: Work): Task =>
  async (payload, { job }) => {
    const { mailMessageId } = payload as { readonly mailMessageId: string };
    await deliver(mailMessageId, carrier, job.attempts >= job.max_attempts, clock);
  };
