import { z } from "zod";
import { defaultGatePolicy } from "./default-policy";
import { GatePolicy } from "./policy";

/** What a procedure asks differently from the gate as it comes; the whole that results must hold. */
export const GateDifferences = z.record(z.string(), z.unknown()).superRefine((differences, context) => {
  const whole = GatePolicy.safeParse({ ...defaultGatePolicy, ...differences });
  if (whole.success) return;
  for (const { path, message } of whole.error.issues) context.addIssue({ code: "custom", path, message });
});
