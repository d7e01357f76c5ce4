import { enqueueIssue } from "@/lib/data/certificate/enqueue-issue";
import { inScope } from "@/lib/data/in-scope";

/** Puts the making of every pending document into the queue anew. One that waits there already is brought forward. */
export const takeUpPending = (): Promise<void> =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const pending = await tx.certificate.findMany({
      where: { pending: { isNot: null } },
      select: { id: true },
      orderBy: { number: "asc" },
    });
    for (const { id } of pending) await enqueueIssue(tx, id);
  });
