import type { Readings } from "@/lib/data/evidence/read-scan-channels";
import { checkFile } from "@/lib/documents/authenticity/check-file";
import { renderCertificate } from "@/lib/documents/certificate/render-certificate";
import { attachCertificate } from "@/lib/documents/issue/attach-certificate";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { Evidence } from "@/lib/domain/evidence/schema";
import { restoreEvidence } from "@/lib/domain/run/stored-evidence";

/** The channels as they stood in the evidence: in the order of the load. */
const channelsOf = (stored: string, readings: ReadonlyMap<string, Readings>): Evidence["scans"]["channels"] =>
  restoreEvidence(stored, []).load.flatMap(({ channel }) => {
    const found = readings.get(channel);
    return found
      ? [
          {
            channel,
            seconds: Array.from(found.times),
            microvolts: Array.from(found.values),
            polarity: Array.from(found.polarity, (sign): 1 | -1 => (sign < 0 ? -1 : 1)),
          },
        ]
      : [];
  });

/** Every number of an evidence as stored, with its readings; in the order of their channels. */
const evaluate = async (stored: string, channels: readonly (readonly [string, Readings])[]) => {
  const readings = new Map(channels);
  return evaluateEvidence(restoreEvidence(stored, channelsOf(stored, readings)));
};

/** What computes and makes anew, and checks a document. The same in, the same out: a caller may remember what came out. */
export type Makers = {
  readonly evaluate: typeof evaluate;
  readonly render: typeof renderCertificate;
  readonly attach: typeof attachCertificate;
  readonly check: typeof checkFile;
};

export const makers: Makers = {
  evaluate,
  render: renderCertificate,
  attach: attachCertificate,
  check: checkFile,
};
