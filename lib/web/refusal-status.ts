import type { RefusalCode } from "@/lib/domain/refusal";

/** The HTTP status that says the same as a refusal, for addresses that answer programs rather than forms. */
export const refusalStatus = {
  "not-permitted": 403,
  "not-found": 404,
  invalid: 422,
  rule: 422,
  "changed-meanwhile": 409,
  "wrong-state": 409,
  "too-many": 429,
} as const satisfies Readonly<Record<RefusalCode, number>>;
