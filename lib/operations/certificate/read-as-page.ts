import { z } from "zod";
import { loadStanding } from "@/lib/data/certificate/standing";
import { hex } from "@/lib/data/hex";
import { sha256 } from "@/lib/data/sha256";
import { certificateHtml, certificateHtmlPolicy } from "@/lib/documents/certificate-html/certificate-html";
import { eventOf } from "@/lib/domain/audit/define-event";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { certificateEvents } from "@/lib/domain/certificate/events";
import { hasDocument, hasEnded, standingSentence } from "@/lib/domain/certificate/standing";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

const mayRead = (actor: Actor): boolean =>
  actor.kind === "system" || may(actor.roles, actor.kind === "staff" ? "certificate.read" : "portal.read");

/**
 * The content of a certificate as a page, for whoever cannot read the PDF: to the same people, recorded as the same act.
 * Before its document is issued there is none of either.
 */
export const readAsPage = defineOperation({
  name: "certificate/read-as-page",
  permission: "signed-in",
  input: z.strictObject({ token: z.string().regex(/^[A-Za-z0-9_-]{43}$/) }),
  perform: async ({ actor, tx }, { token }) => {
    const row = mayRead(actor)
      ? await tx.certificate.findUnique({
          where: { token },
        })
      : null;
    if (!row) throw new Refused({ code: "not-found", message: "This certificate is not here." });
    const standing = await loadStanding(tx, row.id);
    if (standing.kind === "pending")
      throw new Refused({
        code: "wrong-state",
        message: "The document is still being made. Try again in a minute.",
      });
    if (!hasDocument(standing))
      throw new Refused({
        code: "not-found",
        message: "This certificate ended before its document was made: there is none.",
      });
    const content = CertificateContent.parse(JSON.parse(row.content));
    const notice = hasEnded(standing) ? standingSentence(row.number, standing) : "";
    const html = certificateHtml(content, hex(row.contentHash), notice);
    const digest = hex(sha256(new TextEncoder().encode(html)));
    return {
      value: { html },
      events: [
        eventOf(certificateEvents.downloaded, row.id, {
          number: row.number,
          sha256: digest,
          mediaType: "text/html",
        }),
      ],
    };
  },
});

/** With the policy it is to be read under. */
export const fetchPage = async (
  actor: Actor,
  token: string,
  clock: Clock,
): Promise<{ readonly html: string; readonly policy: string }> => ({
  ...(await execute(readAsPage, actor, { token }, clock)),
  policy: certificateHtmlPolicy,
});
