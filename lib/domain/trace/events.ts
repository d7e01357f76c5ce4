import { z } from "zod";
import { defineEvent } from "../audit/define-event";

/** Facts about the chain that the audit log can hold. What is frozen at sign-off is told by the sign-off itself. */
export const traceEvents = {
  frozenLater: defineEvent({
    action: "trace.frozen-later",
    entityKind: "trace",
    payload: z.strictObject({ certificates: z.array(z.string()).min(1) }),
    sentence: ({ certificates }) =>
      `froze the chains of ${certificates.length} certificates that were signed off before chains were kept: ${certificates.slice(0, 5).join(", ")}${certificates.length > 5 ? " …" : ""}`,
  }),
} as const;
