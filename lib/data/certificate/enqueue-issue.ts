import type { Tx } from "@/lib/data/in-scope";
import { enqueueRow } from "@/lib/data/sql/enqueue";

/** The job that makes a signed certificate's files, after this transaction's commit. Its key is the certificate's id. */
export const enqueueIssue = (tx: Tx, certificateId: string): Promise<void> =>
  enqueueRow(tx, "issue-certificate", `certificate:${certificateId}`, JSON.stringify({ certificateId }));
