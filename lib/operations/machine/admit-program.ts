import { inScope } from "@/lib/data/in-scope";
import { loadProgram } from "@/lib/data/machine/token-store";
import { type Rate, withinRate } from "@/lib/data/rate/within-rate";
import { type Program, tokenIn } from "@/lib/domain/machine/program";
import { requestsPerMinute, type TokenScope, unknownTokensPerMinute } from "@/lib/domain/machine/scopes";
import type { Clock } from "../execute";
import { hashOfToken } from "./make-token";

export type Admission =
  | { readonly kind: "admitted"; readonly program: Program; readonly rate: Rate }
  | { readonly kind: "unknown" }
  | { readonly kind: "closed"; readonly rate: Rate }
  | { readonly kind: "too-many"; readonly rate: Rate };

/**
 * Whether a request with this Authorization header may go on. Unknown tokens are counted together: where they come
 * from is not known behind a proxy, and a token in force is not held up by them.
 */
export const admitProgram = async (
  authorization: string | null,
  needed: TokenScope,
  clock: Clock,
): Promise<Admission> => {
  const token = tokenIn(authorization);
  const now = clock();
  const program = token
    ? await inScope({ kind: "laboratory" }, (tx) => loadProgram(tx, hashOfToken(token), now))
    : null;
  if (!program) {
    const rate = await withinRate("unknown tokens", unknownTokensPerMinute, 60, now);
    return rate.isWithin ? { kind: "unknown" } : { kind: "too-many", rate };
  }
  const rate = await withinRate(`token ${program.tokenId}`, requestsPerMinute, 60, now);
  if (!rate.isWithin) return { kind: "too-many", rate };
  return program.scopes.includes(needed) ? { kind: "admitted", program, rate } : { kind: "closed", rate };
};
