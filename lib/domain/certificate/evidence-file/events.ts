import { z } from "zod";
import { defineEvent } from "@/lib/domain/audit/define-event";

export const evidenceFileEvents = {
  downloaded: defineEvent({
    action: "certificate.evidence-downloaded",
    entityKind: "certificate",
    payload: z.strictObject({
      number: z.string(),
      sha256: z.string().regex(/^[0-9a-f]{64}$/),
      readings: z.int().nonnegative(),
    }),
    sentence: (p) => `downloaded the evidence of certificate ${p.number} (${p.readings} readings)`,
  }),
} as const;
