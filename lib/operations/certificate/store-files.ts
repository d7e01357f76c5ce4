import { z } from "zod";
import { loadStanding } from "@/lib/data/certificate/standing";
import { hex } from "@/lib/data/hex";
import { sha256 } from "@/lib/data/sha256";
import { lockRun } from "@/lib/data/sql/lock-run";
import { eventOf } from "@/lib/domain/audit/define-event";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { mediaTypes } from "@/lib/domain/certificate/media-types";
import { Refused } from "@/lib/domain/refusal";
import { defineOperation } from "../operation";

const hash = z.string().regex(/^[0-9a-f]{64}$/);

const fileRow = (bytes: Uint8Array) => ({
  bytes: Uint8Array.from(bytes),
  sha256: Uint8Array.from(sha256(bytes)),
});

/** The files of a signed certificate, all of them in one transaction and once: there is no half-issued certificate. */
export const storeFiles = defineOperation({
  name: "certificate/issue",
  permission: "system",
  input: z.strictObject({
    certificateId: z.uuid(),
    rendererVersion: z.string().min(1),
    pdf: z.instanceof(Uint8Array),
    /** Of the PDF before its seal. */
    unsealedSha256: hash,
    sealFingerprint: hash,
    dcc: z.instanceof(Uint8Array),
  }),
  perform: async ({ now, tx }, input) => {
    const certificate = await tx.certificate.findUnique({ where: { id: input.certificateId } });
    if (!certificate) throw new Refused({ code: "not-found", message: "This certificate is not here." });
    // Two that make one certificate's files take turns; the second finds the first's.
    await lockRun(tx, certificate.runId);
    if ((await loadStanding(tx, certificate.id)).kind !== "pending")
      throw new Refused({
        code: "wrong-state",
        message: "The documents of this certificate are stored already, or it ended without them.",
      });
    const { id: certificateId, customerId, number } = certificate;
    const { rendererVersion, sealFingerprint, unsealedSha256 } = input;
    const beside = { certificateId, customerId, rendererVersion, renderedAt: now };
    const pdf = fileRow(input.pdf);
    await tx.certificateFile.create({
      data: {
        ...{ ...beside, ...pdf, mediaType: mediaTypes.pdf, sealFingerprint },
        unsealedSha256: Uint8Array.from(Buffer.from(unsealedSha256, "hex")),
      },
    });
    const dcc = fileRow(input.dcc);
    await tx.certificateFile.create({ data: { ...beside, ...dcc, mediaType: mediaTypes.dcc } });
    return {
      value: { number },
      events: [
        eventOf(certificateEvents.issued, certificateId, {
          ...{ number, mediaType: mediaTypes.pdf, sha256: hex(pdf.sha256), bytes: pdf.bytes.length },
          ...{ renderer: rendererVersion, unsealedSha256, sealFingerprint, dccSha256: hex(dcc.sha256) },
        }),
      ],
    };
  },
});
