import type { SigningPolicy } from "./policy";

export type HeldSigningSession = {
  readonly personSessionId: string;
  readonly openedAt: Date;
  readonly lastSignedAt: Date;
  readonly endedAt: Date | null;
};

/** Until when one component is enough. Later, both are asked for again. */
export const signingSessionUntil = (session: HeldSigningSession, policy: SigningPolicy): Date =>
  new Date(
    Math.min(
      session.lastSignedAt.getTime() + policy.windowMinutes * 60_000,
      session.openedAt.getTime() + policy.longestHours * 3_600_000,
    ),
  );

/** Whether a session of signing still runs, in this sign-in and no other. */
export const isSigningSessionOpen = (
  session: HeldSigningSession,
  personSessionId: string,
  policy: SigningPolicy,
  now: Date,
): boolean =>
  session.endedAt === null &&
  session.personSessionId === personSessionId &&
  now < signingSessionUntil(session, policy);
