import { z } from "zod";
import { loadStandings } from "@/lib/data/certificate/standing";
import { hex } from "@/lib/data/hex";
import { sha256 } from "@/lib/data/sha256";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { mediaTypes } from "@/lib/domain/certificate/media-types";
import type { Standing } from "@/lib/domain/certificate/standing";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

export type CertificateDocument = {
  readonly number: string;
  /** The PDF, or the DCC where that alone was asked for. */
  readonly bytes: Uint8Array;
  /** Beside the PDF, where both were asked for; certificates issued before there was one have none. */
  readonly dcc: Uint8Array | null;
  /** What became of it: the file itself stays as it was. */
  readonly standing: Standing;
};

const mayRead = (actor: Actor): boolean =>
  actor.kind === "system" || may(actor.roles, actor.kind === "staff" ? "certificate.read" : "portal.read");

const pending = new Refused({
  code: "wrong-state",
  message:
    "The document is still being made: it is rendered and sealed after the sign-off. Try again in a minute.",
});
const unmade = new Refused({
  code: "not-found",
  message: "This certificate ended before its document was made: there is none.",
});
const noDcc = new Refused({
  code: "not-found",
  message: "This certificate was issued without a DCC beside it.",
});

type File = { readonly mediaType: string; readonly bytes: Uint8Array; readonly sha256: Uint8Array };

const demandWhole = (number: string, { bytes, sha256: stored }: File): string => {
  const digest = hex(sha256(bytes));
  if (digest !== hex(stored)) throw new Error(`the stored document of ${number} does not match its hash`);
  return digest;
};

const documentOf = (
  { id, number, files }: { readonly id: string; readonly number: string; readonly files: readonly File[] },
  what: "pdf" | "dcc" | "both",
  standing: Standing,
): { readonly document: CertificateDocument; readonly event: AuditEvent } => {
  if (files.length === 0) throw standing.kind === "pending" ? pending : unmade;
  const mediaType = what === "dcc" ? mediaTypes.dcc : mediaTypes.pdf;
  const file = files.find((one) => one.mediaType === mediaType);
  if (!file) throw noDcc;
  const digest = demandWhole(number, file);
  const beside = what === "both" ? files.find((one) => one.mediaType === mediaTypes.dcc) : undefined;
  return {
    document: { number, bytes: file.bytes, dcc: beside?.bytes ?? null, standing },
    event: eventOf(certificateEvents.downloaded, id, {
      ...{ number, sha256: digest },
      ...(what === "dcc" ? { mediaType } : {}),
      ...(beside ? { dccSha256: demandWhole(number, beside) } : {}),
    }),
  };
};

/** The stored bytes, with who took them. Unknown and somebody else's look the same: row-level security hides both. */
export const downloadCertificates = defineOperation({
  name: "certificate/download",
  permission: "signed-in",
  input: z.strictObject({
    tokens: z
      .array(z.string().regex(/^[A-Za-z0-9_-]{43}$/))
      .min(1)
      .max(500),
    what: z.enum(["pdf", "dcc", "both"]).default("pdf"),
  }),
  perform: async ({ actor, tx }, input) => {
    const tokens = [...new Set(input.tokens)];
    const certificates = mayRead(actor)
      ? await tx.certificate.findMany({
          where: { token: { in: tokens } },
          include: { files: true },
          orderBy: { number: "asc" },
        })
      : [];
    if (certificates.length !== tokens.length)
      throw new Refused({ code: "not-found", message: "This certificate is not here." });
    const standings = await loadStandings(
      tx,
      certificates.map(({ id }) => id),
    );
    const taken = certificates.map((certificate) =>
      documentOf(certificate, input.what, standings.get(certificate.id) ?? { kind: "valid" }),
    );
    const events = taken.map(({ event }) => event);
    return {
      value: taken.map(({ document }) => document),
      events: events as unknown as readonly [AuditEvent, ...AuditEvent[]],
    };
  },
});

/**
 * Each recorded as a download. What is still being made is refused and not made here: the web server holds no key to
 * seal with, and the job that makes it runs already.
 */
export const fetchDocuments = (
  actor: Actor,
  tokens: readonly string[],
  clock: Clock,
  what: "pdf" | "dcc" | "both" = "pdf",
): Promise<readonly CertificateDocument[]> =>
  execute(downloadCertificates, actor, { tokens: [...tokens], what }, clock);
