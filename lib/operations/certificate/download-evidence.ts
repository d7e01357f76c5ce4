import { z } from "zod";
import { evidenceMembers } from "@/lib/data/certificate/evidence-members";
import { loadEvidenceFile } from "@/lib/data/certificate/load-evidence-file";
import { hex } from "@/lib/data/hex";
import { sha256 } from "@/lib/data/sha256";
import { eventOf } from "@/lib/domain/audit/define-event";
import { evidenceFileEvents } from "@/lib/domain/certificate/evidence-file/events";
import { evidenceBytes } from "@/lib/domain/certificate/evidence-file/evidence-bytes";
import { Refused } from "@/lib/domain/refusal";
import { demandOwn } from "@/lib/domain/staff/demand-own";
import { may } from "@/lib/domain/staff/permissions";
import { defineOperation } from "../operation";

const notHere = () => new Refused({ code: "not-found", message: "This certificate is not here." });

/**
 * The evidence of one certificate, readings and all, to its customer and to staff. Evaluations are the laboratory's own
 * rows, so it is read in its scope; of other customers' sensors nothing is in it.
 */
export const downloadEvidence = defineOperation({
  name: "certificate/download-evidence",
  permission: "signed-in",
  scope: "laboratory",
  input: z.strictObject({ token: z.string().regex(/^[A-Za-z0-9_-]{43}$/) }),
  perform: async ({ actor, tx }, { token }) => {
    if (
      actor.kind !== "system" &&
      !may(actor.roles, actor.kind === "staff" ? "certificate.read" : "portal.read")
    )
      throw notHere();
    const certificate = await tx.certificate.findUnique({ where: { token } });
    if (!certificate) throw notHere();
    if (actor.kind === "customer") demandOwn(actor, certificate.customerId);
    const { number } = certificate;
    const file = await loadEvidenceFile(tx, number, await evidenceMembers(tx, certificate));
    const bytes = evidenceBytes(file);
    const readings = file.parts
      .flatMap(({ evidence }) => evidence.scans.channels)
      .reduce((sum, { seconds }) => sum + seconds.length, 0);
    return {
      value: { fileName: `${number}-evidence.json`, bytes },
      events: [
        eventOf(evidenceFileEvents.downloaded, certificate.id, {
          number,
          sha256: hex(sha256(bytes)),
          readings,
        }),
      ],
    };
  },
});
