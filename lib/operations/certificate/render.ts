import { z } from "zod";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { loadMarkBytes } from "@/lib/data/laboratory/load-mark";
import { sha256 } from "@/lib/data/sha256";
import { lockRun } from "@/lib/data/sql/lock-run";
import {
  certificateRendererVersion,
  renderCertificate,
} from "@/lib/documents/certificate/render-certificate";
import { eventOf } from "@/lib/domain/audit/define-event";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { Refused } from "@/lib/domain/refusal";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

export const pdf = "application/pdf";

/** Stores the rendered bytes beside the certificate, once. */
export const storeDocument = defineOperation({
  name: "certificate/render",
  permission: "system",
  input: z.strictObject({ certificateId: z.uuid(), bytes: z.instanceof(Uint8Array) }),
  perform: async ({ now, tx }, input) => {
    const certificate = await tx.certificate.findUnique({ where: { id: input.certificateId } });
    if (!certificate) throw new Refused({ code: "not-found", message: "This certificate is not here." });
    // Two renderings of one certificate take turns; the second finds the first's bytes.
    await lockRun(tx, certificate.runId);
    if ((await tx.certificateFile.count({ where: { certificateId: certificate.id, mediaType: pdf } })) > 0)
      throw new Refused({ code: "wrong-state", message: "The document is stored already." });
    const digest = sha256(input.bytes);
    await tx.certificateFile.create({
      data: {
        certificateId: certificate.id,
        customerId: certificate.customerId,
        mediaType: pdf,
        bytes: Uint8Array.from(input.bytes),
        sha256: Uint8Array.from(digest),
        rendererVersion: certificateRendererVersion,
        renderedAt: now,
      },
    });
    return {
      value: { number: certificate.number },
      events: [
        eventOf(certificateEvents.issued, certificate.id, {
          number: certificate.number,
          mediaType: pdf,
          sha256: hex(digest),
          bytes: input.bytes.length,
          renderer: certificateRendererVersion,
        }),
      ],
    };
  },
});

const loadPending = (certificateId: string) =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const row = await tx.certificate.findFirst({
      where: { id: certificateId, files: { none: { mediaType: pdf } } },
      select: { content: true },
    });
    if (!row) return null;
    const content = CertificateContent.parse(JSON.parse(row.content));
    return { content, mark: await loadMarkBytes(tx, content) };
  });

/** Renders one signed certificate, outside any transaction, and stores it. Safe to call again and from two places. */
export const renderDocument = async (certificateId: string, clock: Clock): Promise<void> => {
  const pending = await loadPending(certificateId);
  if (!pending) return;
  const { content, mark } = pending;
  const bytes = Uint8Array.from(await renderCertificate(content, { draft: false, mark }));
  try {
    await execute(storeDocument, { kind: "system", name: "renderer" }, { certificateId, bytes }, clock);
  } catch (error) {
    // Somebody else stored it first: the same bytes, from the same content.
    if (!(error instanceof Refused) || error.refusal.code !== "wrong-state") throw error;
  }
};
