import { loadDocument } from "@/lib/data/evidence/load-document";
import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { type AuditEvent, eventOf } from "@/lib/domain/audit/define-event";
import { dccSays } from "@/lib/domain/calibration/dcc-says";
import { type Difference, decideDifferences } from "@/lib/domain/calibration/differences";
import { calibrationEvents } from "@/lib/domain/calibration/events";
import type { CalibrationInput } from "@/lib/domain/calibration/schema";
import type { Equipment } from "@/lib/domain/equipment/types";
import { demand, Refused } from "@/lib/domain/refusal";
import { readKeptDcc } from "@/lib/files/dcc/read-kept-dcc";

export type Kept = {
  readonly documentId: string | null;
  readonly differences: readonly Difference[];
  readonly events: readonly AuditEvent[];
};

/** What the person confirms is held against the file itself, read again here: the form is not believed. */
export const confirmDigital = async (
  tx: Tx,
  equipment: Equipment,
  input: CalibrationInput,
  { documentId, offer }: { readonly documentId: string; readonly offer: number },
): Promise<Kept> => {
  const document = await loadDocument(tx, documentId);
  const read = document && readKeptDcc(document.bytes, equipment);
  if (!document || !read)
    throw new Refused({
      code: "not-found",
      message: "This digital certificate is not here. Read it in again.",
    });
  const said = dccSays(read.certificate, read.proposals.offers[offer] ?? null);
  const differences = demand(decideDifferences(said, input));
  const event = eventOf(calibrationEvents.confirmed, equipment.id, {
    tag: equipment.tag,
    certificate: input.certificate,
    sha256: hex(document.sha256),
    differing: differences.map(({ field }) => field),
  });
  return { documentId, differences, events: [event] };
};
