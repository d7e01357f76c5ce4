/** A moment for people, in UTC so that everybody reads the same: 2026-11-26 14:05 UTC. */
export const inWords = (at: Date): string => `${at.toISOString().slice(0, 16).replace("T", " ")} UTC`;
