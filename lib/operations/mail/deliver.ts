import { inScope } from "@/lib/data/in-scope";
import { loadMail } from "@/lib/data/mail/mail-store";
import { mailState } from "@/lib/domain/mail/mail-state";
import type { Letter, MailTransportKind } from "@/lib/domain/mail/types";
import { type Clock, execute } from "../execute";
import { recordAttempt } from "./record-attempt";

/** What carries a letter away, and what it says when it has: the mail server's answer, or the file's name. */
export type Carrier = {
  readonly kind: MailTransportKind;
  readonly carry: (letter: Letter) => Promise<string>;
};

const system = { kind: "system", name: "mail" } as const;

/** As a person can read it, in one line, without what the mail library adds for programs. */
const said = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).replaceAll(/\s+/g, " ").trim().slice(0, 500) ||
  "no reason given";

/**
 * Sends one stored message, unless it was sent. The sending stands in no transaction; how it went is stored after it.
 * A process that dies in between sends it once more, with the same Message-ID: at least once, and shown once.
 * Throws when it could not be sent, so that the queue brings it back.
 */
export const deliver = async (
  mailMessageId: string,
  carrier: Carrier,
  isLastAttempt: boolean,
  clock: Clock,
): Promise<"sent" | "already sent"> => {
  const mail = await inScope({ kind: "laboratory" }, (tx) => loadMail(tx, mailMessageId));
  if (!mail) throw new Error(`There is no message ${mailMessageId}`);
  if (mailState(mail.outcomes) === "sent") return "already sent";
  const record = (outcome: "sent" | "failed" | "given-up", detail: string) =>
    execute(recordAttempt, system, { mailMessageId, outcome, transport: carrier.kind, detail }, clock);
  let answer: string;
  try {
    answer = await carrier.carry(mail.letter);
  } catch (error) {
    await record(isLastAttempt ? "given-up" : "failed", said(error));
    throw error;
  }
  await record("sent", said(answer));
  return "sent";
};
