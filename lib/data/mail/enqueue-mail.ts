import type { Tx } from "@/lib/data/in-scope";
import { enqueueRow } from "@/lib/data/sql/enqueue";

/** The job that sends a stored message, after this transaction's commit. Once per message: its key is the message's id. */
export const enqueueMail = (tx: Tx, mailMessageId: string): Promise<void> =>
  enqueueRow(tx, "send-mail", `mail:${mailMessageId}`, JSON.stringify({ mailMessageId }));
