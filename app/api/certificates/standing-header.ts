import type { Standing } from "@/lib/domain/certificate/standing";

/** Beside the bytes, for programs: what became of the certificate. */
export const standingHeader = (standing: Standing): Readonly<Record<string, string>> => ({
  "certificate-standing":
    "successor" in standing ? `${standing.kind}; successor=${standing.successor}` : standing.kind,
});
