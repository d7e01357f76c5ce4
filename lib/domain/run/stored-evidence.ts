import { canonical } from "../audit/canonical";
import type { Evidence } from "../evidence/schema";

/**
 * What an evaluation stores of its evidence: canonical text without the readings, which stand in the scan blocks
 * already. With the digest of those blocks it says all that went in.
 */
export const storedEvidence = (evidence: Evidence): string =>
  canonical({ ...evidence, scans: { ...evidence.scans, channels: [] } });

/** The evidence again, from what was stored and the readings of the same blocks. */
export const restoreEvidence = (stored: string, channels: Evidence["scans"]["channels"]): Evidence => {
  const head = JSON.parse(stored) as Evidence;
  return { ...head, scans: { ...head.scans, channels } };
};
