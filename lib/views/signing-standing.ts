import { hasSecondFactor } from "@/lib/data/account/second-factor-store";
import { loadAuthorisations } from "@/lib/data/authorisation/authorisation-store";
import { loadSigningPolicy } from "@/lib/data/signing/signing-policy-store";
import { loadSigningSession } from "@/lib/data/signing/signing-session-store";
import { authorisationState } from "@/lib/domain/authorisation/authorisation";
import { authorisedFor } from "@/lib/domain/authorisation/words";
import { meanings } from "@/lib/domain/signing/meaning";
import { isSigningSessionOpen, signingSessionUntil } from "@/lib/domain/signing/session";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "./view";

/** What this person has to give to sign now, and for what they may: shown before, so that nothing comes as a surprise. */
export const signingStandingView = (actor: Actor, now: Date) =>
  answer(actor, "review.read", async (tx) => {
    const personId = actor.kind === "staff" ? actor.personId : "";
    const sessionId = actor.kind === "staff" ? (actor.sessionId ?? "") : "";
    const policy = await loadSigningPolicy(tx);
    const session = sessionId ? await loadSigningSession(tx, personId, sessionId) : null;
    const isContinued = session !== null && isSigningSessionOpen(session, sessionId, policy, now);
    const held = personId ? await loadAuthorisations(tx, personId) : [];
    return {
      name: actor.kind === "staff" ? actor.name : "",
      isAtBench: actor.kind === "staff" && actor.session === "bench",
      hasSecondFactor: personId !== "" && (await hasSecondFactor(tx, personId)),
      meaning: meanings["reviewed-and-authorised"],
      windowMinutes: policy.windowMinutes,
      /** Until when one of the two is enough; null: both are asked for. */
      continuedUntil: isContinued ? signingSessionUntil(session, policy).toISOString() : null,
      authorisations: held
        .filter((one) => one.activity === "sign-off" && authorisationState(one, now) === "in-force")
        .map(authorisedFor),
      mayWriteOpinions: held.some(
        (one) => one.activity === "opinion" && authorisationState(one, now) === "in-force",
      ),
    };
  });

export type SigningStanding = Awaited<ReturnType<typeof signingStandingView>>;
