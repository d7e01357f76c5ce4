import { z } from "zod";
import { loadOutsidePerson, type OutsideKey } from "@/lib/data/account/outside-store";
import { hasSecondFactor } from "@/lib/data/account/second-factor-store";
import { inScope } from "@/lib/data/in-scope";
import { accountEvents } from "@/lib/domain/account/events";
import { isLocked } from "@/lib/domain/account/lock";
import { eventOf } from "@/lib/domain/audit/define-event";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

export type OutsideAnswer =
  | { readonly kind: "person" | "code"; readonly personId: string; readonly sessionEpoch: number }
  | { readonly kind: "refused" };

const recordOutsideRefusal = defineOperation({
  name: "staff/refuse-outside",
  permission: "system",
  input: z.strictObject({ personId: z.string() }),
  perform: async (_context, { personId }) => ({
    value: null,
    events: [eventOf(accountEvents.outsideRefused, personId, {})],
  }),
});

/**
 * Who comes in by the outside provider: only somebody who linked their account before. An address that matches opens
 * nothing, whatever the provider says of it; a one-time code of ours is asked for as after a password.
 */
export const outsidePerson = async (key: OutsideKey, clock: Clock): Promise<OutsideAnswer> => {
  const found = await inScope({ kind: "laboratory" }, async (tx) => {
    const person = await loadOutsidePerson(tx, key);
    return { person, hasFactor: person ? await hasSecondFactor(tx, person.id) : false };
  });
  const { person, hasFactor } = found;
  if (person?.active && !isLocked(person.lockedUntil, clock()))
    return { kind: hasFactor ? "code" : "person", personId: person.id, sessionEpoch: person.sessionEpoch };
  await execute(
    recordOutsideRefusal,
    { kind: "system", name: "sign-in" },
    { personId: person?.id ?? "" },
    clock,
  );
  return { kind: "refused" };
};
