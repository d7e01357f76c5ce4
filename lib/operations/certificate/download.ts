import { z } from "zod";
import { hex } from "@/lib/data/hex";
import { sha256 } from "@/lib/data/sha256";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";
import { pdf } from "./render";
import { renderPending } from "./render-pending";

export type CertificateDocument = {
  readonly number: string;
  readonly bytes: Uint8Array;
};

const mayRead = (actor: Actor): boolean =>
  actor.kind === "system" || may(actor.roles, actor.kind === "staff" ? "certificate.read" : "portal.read");

const pendingMessage = "The document is still being made. Try again in a minute.";

/** The stored bytes, with who took them. Unknown and somebody else's look the same: row-level security hides both. */
export const downloadCertificates = defineOperation({
  name: "certificate/download",
  permission: "signed-in",
  input: z.strictObject({
    tokens: z
      .array(z.string().regex(/^[A-Za-z0-9_-]{43}$/))
      .min(1)
      .max(500),
  }),
  perform: async ({ actor, tx }, input) => {
    const tokens = [...new Set(input.tokens)];
    const certificates = mayRead(actor)
      ? await tx.certificate.findMany({
          where: { token: { in: tokens } },
          include: { files: { where: { mediaType: pdf } } },
          orderBy: { number: "asc" },
        })
      : [];
    if (certificates.length !== tokens.length)
      throw new Refused({ code: "not-found", message: "This certificate is not here." });
    const documents: CertificateDocument[] = [];
    const events: AuditEvent[] = [];
    for (const { id, number, files } of certificates) {
      const file = files[0];
      if (!file) throw new Refused({ code: "wrong-state", message: pendingMessage });
      const digest = hex(sha256(file.bytes));
      if (digest !== hex(file.sha256))
        throw new Error(`the stored document of ${number} does not match its hash`);
      documents.push({ number, bytes: file.bytes });
      events.push(eventOf(certificateEvents.downloaded, id, { number, sha256: digest }));
    }
    return { value: documents, events: events as unknown as readonly [AuditEvent, ...AuditEvent[]] };
  },
});

/** Downloads, making documents first that a failed or interrupted rendering left pending. */
export const fetchDocuments = async (
  actor: Actor,
  tokens: readonly string[],
  clock: Clock,
): Promise<readonly CertificateDocument[]> => {
  const download = () => execute(downloadCertificates, actor, { tokens: [...tokens] }, clock);
  try {
    return await download();
  } catch (error) {
    // Refused as pending only after each of them was found in this actor's scope.
    if (!(error instanceof Refused) || error.refusal.code !== "wrong-state") throw error;
  }
  const failed = await renderPending(clock, tokens);
  for (const { number, error } of failed) console.error(`rendering ${number} failed`, error);
  return download();
};
