import { z } from "zod";
import { insertAmendment, loadOpenAmendment } from "@/lib/data/amendment/amendment-store";
import { amendmentKinds, correctedFields, TypedCorrections } from "@/lib/domain/amendment/amendment";
import { decideAsk } from "@/lib/domain/amendment/decide-amendment";
import { eventOf } from "@/lib/domain/audit/define-event";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { printedText } from "@/lib/domain/certificate/printable/printed-text";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { seenWhole } from "@/lib/domain/typed-text";
import { defineOperation } from "../operation";
import { demandCertificate } from "./demand-certificate";

/** `read`: by whom and where, as the field's refusal says it. */
export const endingReason = (read: string) =>
  z
    .string()
    .trim()
    .min(10, `Say in a sentence what is wrong: ${read}.`)
    .max(1000, "At most 1000 characters.")
    .superRefine(seenWhole);

/**
 * ISO/IEC 17025 7.8.8: an issued certificate is to be followed by another one. Nothing changes yet: a signatory who did
 * not ask for it decides.
 */
export const askAmendment = defineOperation({
  name: "certificate/ask-amendment",
  permission: "certificate.amend",
  input: z.strictObject({
    certificateId: z.uuid(),
    kind: z.enum(amendmentKinds),
    /** Printed on the certificate that follows. */
    reason: endingReason("it is printed, and the customer reads it").superRefine(printedText),
    corrections: TypedCorrections,
    /** Number of the finding it comes from; empty: none. */
    nonconformity: z.string().trim().max(40).default(""),
  }),
  perform: async ({ actor, now, tx }, input) => {
    const { certificate, failures, standing } = await demandCertificate(tx, input.certificateId);
    const { id: certificateId, customerId, number } = certificate;
    const { corrections, kind, reason } = input;
    const content = CertificateContent.parse(JSON.parse(certificate.content));
    const isAskedAlready = (await loadOpenAmendment(tx, certificateId)) !== null;
    demand(decideAsk({ content, standing, failures, isAskedAlready, kind, corrections }));
    const finding = input.nonconformity
      ? await tx.nonconformity.findUnique({
          where: { number: input.nonconformity },
          select: { id: true },
        })
      : null;
    if (input.nonconformity && !finding)
      throw new Refused({
        code: "invalid",
        message: "Nothing was asked for.",
        fields: { nonconformity: "There is no finding of this number." },
      });
    const id = await insertAmendment(tx, {
      ...{ certificateId, customerId, kind, reason, corrections },
      ...{ nonconformityId: finding?.id ?? null, askedById: personIdOf(actor), askedAt: now },
    });
    return {
      value: { id, number },
      events: [
        eventOf(certificateEvents.amendmentAsked, certificateId, {
          ...{ number, kind, fields: [...correctedFields(corrections)] },
        }),
      ],
    };
  },
});
