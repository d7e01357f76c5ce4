import { z } from "zod";
import { insertAmendmentDecision, loadOpenAmendment } from "@/lib/data/amendment/amendment-store";
import { decideStands } from "@/lib/domain/amendment/decide-amendment";
import type { AuditEvent } from "@/lib/domain/audit/define-event";
import { demand } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";
import { endingReason } from "./ask-amendment";
import { demandCertificate } from "./demand-certificate";
import { endCertificate } from "./end-certificate";

/** The results of a certificate are not to be used any more, and none takes its place; or its document cannot be made. The number stays. What is asked for it is dropped. */
export const withdrawCertificate = defineOperation({
  name: "certificate/withdraw",
  permission: "certificate.withdraw",
  input: z.strictObject({
    certificateId: z.uuid(),
    reason: endingReason("the customer reads it in the portal"),
    /** Nothing takes it back: whoever withdraws says so apart from the reason. */
    forGood: z.literal(true, "Tick that you withdraw it for good: nothing takes a withdrawal back."),
  }),
  perform: async ({ actor, now, tx }, { certificateId, reason }) => {
    const { certificate, failures, standing } = await demandCertificate(tx, certificateId);
    const { customerId, number } = certificate;
    demand(decideStands(number, standing, failures));
    const by = { decidedById: personIdOf(actor), decidedAt: now };
    const open = await loadOpenAmendment(tx, certificateId);
    if (open)
      await insertAmendmentDecision(tx, {
        ...{ amendmentId: open.id, customerId, outcome: "dropped", reason: `Withdrawn: ${reason}`, ...by },
      });
    const events = await endCertificate(tx, certificate, {
      ...{ kind: "withdrawn", reason, successor: null, ...by },
    });
    return { value: { number }, events: events as unknown as readonly [AuditEvent, ...AuditEvent[]] };
  },
});
