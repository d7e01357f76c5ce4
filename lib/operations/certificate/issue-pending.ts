import { inScope } from "@/lib/data/in-scope";
import type { Clock } from "../execute";
import { issueCertificate } from "./issue";
import { issueSteps } from "./issue-steps";
import type { Sealer } from "./sealer";

/** Makes the files of every signed certificate that has none, one after another; stops at the first that cannot be made. */
export const issuePending = async (seal: Sealer, clock: Clock): Promise<void> => {
  const pending = await inScope({ kind: "laboratory" }, (tx) =>
    tx.certificate.findMany({
      where: { pending: { isNot: null } },
      select: { id: true },
      orderBy: { number: "asc" },
    }),
  );
  for (const { id } of pending) await issueCertificate(id, issueSteps(seal), clock);
};
