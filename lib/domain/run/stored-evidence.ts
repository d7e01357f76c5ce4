import { canonical } from "../audit/canonical";
import type { Evidence } from "../evidence/schema";
import type { EvidenceV1 } from "../evidence/schema-v1";
import { upgradeEvidence } from "../evidence/upgrade-evidence";

/**
 * What an evaluation stores of its evidence: canonical text without the readings, which stand in the scan blocks
 * already. With the digest of those blocks it says all that went in.
 */
export const storedEvidence = (evidence: Evidence): string =>
  canonical({ ...evidence, scans: { ...evidence.scans, channels: [] } });

/** The evidence again, from what was stored and the readings of the same blocks; of any version, as the newest. */
export const restoreEvidence = (stored: string, channels: Evidence["scans"]["channels"]): Evidence => {
  const head = JSON.parse(stored) as Evidence | EvidenceV1;
  const current = head.version === 1 ? upgradeEvidence(head) : head;
  return { ...current, scans: { ...current.scans, channels } };
};
