import { randomUUID } from "node:crypto";
import { confirmFactor, endFactors, insertFactor } from "@/lib/data/account/second-factor-store";
import { insertSession } from "@/lib/data/account/session-store";
import { inScope } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { grantAuthorisation } from "@/lib/operations/authorisation/grant";
import { codeAt, stepOf } from "@/lib/operations/one-time-code";
import type { Teller } from "./teller";

type Signatory = Extract<Actor, { kind: "staff" }>;

/** What the signatory of the demonstration may answer for. Invented. */
export const tellAuthorisations = async (
  { tell, at, day }: Teller,
  manager: Actor,
  signatory: Signatory,
): Promise<void> => {
  for (const activity of ["sign-off", "opinion"] as const)
    await tell(grantAuthorisation, manager, at(399), {
      personId: signatory.personId,
      activity,
      typeLetters: [],
      fromCelsius: -50,
      toCelsius: 1750,
      scope: "any",
      procedureId: null,
      validFrom: day(399),
      validUntil: null,
      basis:
        "Twelve runs reviewed beside the quality manager, two of them with planted faults, all found (invented).",
    });
};

const hour = 3_600_000;

/**
 * A sign-in of that moment, and what is typed to sign. A code is good only after the last one used, and the story is not
 * told in the order of its days: the one-time codes are set up anew, by the same secret, before each signature.
 */
export const signatoryAt = (signatory: Signatory, demoPassword: string, secret: Uint8Array, when: Date) =>
  inScope({ kind: "laboratory" }, async (tx) => {
    const { personId } = signatory;
    await endFactors(tx, personId, when);
    const id = randomUUID();
    await insertFactor(tx, { id, personId, secret }, when);
    await confirmFactor(tx, id, 0, when);
    const sessionId = await insertSession(tx, {
      ...{ personId, kind: "full", cameBy: "password", hadCode: true, device: "the demonstration" },
      ...{ startedAt: when, endsAt: new Date(when.getTime() + hour) },
    });
    const actor: Actor = { ...signatory, session: "full", sessionId };
    const act = { actId: randomUUID(), password: demoPassword, code: codeAt(secret, stepOf(when)) };
    return { actor, act };
  });
