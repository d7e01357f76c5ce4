import { loadAccountPolicy } from "@/lib/data/account/account-policy-store";
import {
  countRecoveryCodes,
  hasSecondFactor,
  loadBegunFactor,
  loadSecondFactor,
} from "@/lib/data/account/second-factor-store";
import { loadOpenSessions } from "@/lib/data/account/session-store";
import { inSnapshot } from "@/lib/data/in-scope";
import { base32, keyUri } from "@/lib/domain/account/key-uri";
import { factorSetUpMilliseconds } from "@/lib/domain/account/second-factor";
import { isSessionOpen } from "@/lib/domain/account/session";
import { Refused } from "@/lib/domain/refusal";
import type { Actor } from "@/lib/domain/staff/actor";

/** Roles whose word goes on certificates or into other people's accounts: one-time codes are advised. */
const advisedFor = ["signatory", "quality-manager"];

/** A person's own account, whatever their roles: where they are signed in, and what with. */
export const accountView = (actor: Actor, now: Date) => {
  if (actor.kind === "system")
    throw new Refused({ code: "not-permitted", message: "The platform has no account." });
  return inSnapshot({ kind: "laboratory" }, async (tx) => {
    const policy = await loadAccountPolicy(tx);
    const sessions = await loadOpenSessions(tx, actor.personId, now);
    const factor = (await hasSecondFactor(tx, actor.personId))
      ? await loadSecondFactor(tx, actor.personId)
      : null;
    const identities = await tx.outsideIdentity.findMany({
      where: { personId: actor.personId },
      select: { id: true, issuer: true },
    });
    return {
      sessions: sessions
        .filter((session) => isSessionOpen(session, policy, now))
        .map(({ id, kind, device, startedAt, lastSeenAt }) => ({
          ...{ id, device, atBench: kind === "bench", isThis: id === actor.sessionId },
          startedAt: startedAt.toISOString(),
          lastSeenAt: lastSeenAt.toISOString(),
        })),
      hasSecondFactor: factor !== null,
      recoveryCodesLeft: factor ? await countRecoveryCodes(tx, factor.id) : 0,
      isAdvised: actor.roles.some((role) => advisedFor.includes(role)),
      mustSetUp: actor.mustSetUp === "second-factor",
      outside: identities,
    };
  });
};

/** The secret that was begun and waits for its first code: shown to its owner only, and only that long. */
export const begunFactorView = (actor: Actor, now: Date) => {
  if (actor.kind === "system")
    throw new Refused({ code: "not-permitted", message: "The platform has no account." });
  const since = new Date(now.getTime() - factorSetUpMilliseconds);
  return inSnapshot({ kind: "laboratory" }, async (tx) => {
    const begun = await loadBegunFactor(tx, actor.personId, since);
    if (!begun) return null;
    const person = await tx.person.findUniqueOrThrow({
      where: { id: actor.personId },
      select: { email: true },
    });
    const laboratory = await tx.laboratory.findUnique({
      where: { id: "laboratory" },
      select: { name: true },
    });
    return {
      secret: base32(begun.secret).replace(/(.{4})(?=.)/g, "$1 "),
      uri: keyUri(begun.secret, person.email, laboratory?.name ?? "Emfolio"),
    };
  });
};
