import { loadAmendment } from "@/lib/data/amendment/amendment-store";
import type { Tx } from "@/lib/data/in-scope";
import type { AmendmentKind } from "@/lib/domain/amendment/amendment";
import { Refused } from "@/lib/domain/refusal";
import { demandCertificate } from "./demand-certificate";

/** What waits for a decision, with its certificate; locked. */
export const demandAsked = async (tx: Tx, amendmentId: string) => {
  const asked = await tx.amendment.findUnique({
    where: { id: amendmentId },
    select: { certificateId: true },
  });
  if (!asked) throw new Refused({ code: "not-found", message: "This is not here." });
  const { certificate, failures, standing } = await demandCertificate(tx, asked.certificateId);
  // Read under the lock: somebody may have decided meanwhile.
  const amendment = await loadAmendment(tx, amendmentId);
  if (!amendment || amendment.decision)
    throw new Refused({
      code: "wrong-state",
      message: `What was asked for ${certificate.number} is decided already. Nothing was changed.`,
    });
  return {
    amendment: { ...amendment, kind: amendment.kind as AmendmentKind },
    certificate,
    failures,
    standing,
  };
};
