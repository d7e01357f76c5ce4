import { hasSecondFactor } from "@/lib/data/account/second-factor-store";
import { inScope } from "@/lib/data/in-scope";
import { loadCredentials } from "@/lib/data/staff/sign-in-store";
import { isLocked } from "@/lib/domain/account/lock";
import { longestPassword } from "@/lib/domain/staff/password";
import { type Clock, execute } from "../execute";
import { nobodysHash, verifyPassword } from "../password-hash";
import { recordRefusal, takeAttempt } from "./sign-in-attempt";
import { beginSession, type OpenedSession } from "./sign-in-session";

export type SignInAnswer =
  | ({ readonly kind: "welcome" } & OpenedSession)
  /** The password was right; a one-time code is asked for before anything is open. */
  | { readonly kind: "code"; readonly personId: string; readonly sessionEpoch: number }
  | { readonly kind: "refused" }
  | { readonly kind: "wait"; readonly seconds: number };

type Typed = {
  readonly email: string;
  readonly password: string;
  readonly atBench?: boolean;
  /** In words, for the list of sessions. */
  readonly device?: string;
};

const accountOf = (email: string) =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const person = await loadCredentials(tx, email);
    return { person, hasFactor: person ? await hasSecondFactor(tx, person.id) : false };
  });

/** One answer, and one cost in time, for a wrong password, an unknown address, a deactivated person and a locked one. */
export const signIn = async (typed: Typed, clock: Clock, publicUrl: string): Promise<SignInAnswer> => {
  const email = typed.email.trim().toLowerCase();
  if (email.length === 0 || email.length > 200 || typed.password.length > longestPassword)
    return { kind: "refused" };
  const seconds = await takeAttempt(email, clock());
  if (seconds > 0) return { kind: "wait", seconds };
  const { person, hasFactor } = await accountOf(email);
  // Outside any transaction: hashing takes a while, and connections are few.
  const matches = await verifyPassword(person?.passwordHash ?? nobodysHash, typed.password);
  if (person?.active && matches && !isLocked(person.lockedUntil, clock())) {
    const who = { personId: person.id, sessionEpoch: person.sessionEpoch };
    if (hasFactor) return { kind: "code", ...who };
    const how = { atBench: typed.atBench ?? false, cameBy: "password", hadCode: false } as const;
    const opened = await beginSession({ ...who, ...how, device: typed.device ?? "" }, clock);
    return opened ? { kind: "welcome", ...opened } : { kind: "refused" };
  }
  const refusal = { email, reason: "wrong-password", publicUrl } as const;
  await execute(recordRefusal, { kind: "system", name: "sign-in" }, refusal, clock);
  return { kind: "refused" };
};
