import type { Scope } from "../staff/actor";
import type { TokenScope } from "./scopes";

/** A program that showed a token in force. It is no person: what it does, the platform does for it, and says so. */
export type Program = {
  readonly tokenId: string;
  /** Whose things it opens; null = the laboratory's. */
  readonly customerId: string | null;
  readonly scopes: readonly TokenScope[];
};

export const programScope = (program: Program): Scope =>
  program.customerId === null ? { kind: "laboratory" } : { kind: "customer", customerId: program.customerId };

/** How the audit log names it: the token, whose maker stands in the event that made it. */
export const programActor = (program: Program) =>
  ({ kind: "system", name: `program ${program.tokenId}` }) as const;

/** Tokens begin so, that a person who finds one in a log knows what it opens. */
export const tokenPrefix = "emf_";

const form = /^Bearer (emf_[A-Za-z0-9_-]{43})$/;

/** The token of an Authorization header, or null where there is none of ours. */
export const tokenIn = (header: string | null): string | null => form.exec(header ?? "")?.[1] ?? null;
