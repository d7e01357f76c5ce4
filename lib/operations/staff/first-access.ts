import { randomBytes } from "node:crypto";
import { z } from "zod";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { insertFirstAccess } from "@/lib/data/staff/first-access-store";
import { countPeople } from "@/lib/data/staff/person-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

const validMilliseconds = 24 * 60 * 60_000;

const offerFirstAccess = defineOperation({
  name: "staff/offer-first-access",
  permission: "system",
  input: z.strictObject({ token: z.string() }),
  perform: async ({ now, tx }, { token }) => {
    if ((await countPeople(tx)) > 0)
      throw new Refused({
        code: "wrong-state",
        message: "Somebody can sign in already; there is no first access.",
      });
    const expiresAt = new Date(now.getTime() + validMilliseconds);
    await insertFirstAccess(tx, token, expiresAt);
    const payload = { expiresAt: expiresAt.toISOString() };
    return { value: null, events: [eventOf(staffEvents.firstAccessOffered, "laboratory", payload)] };
  },
});

type Installation = {
  /** The runtime role's address. */
  readonly databaseUrl: string;
  readonly publicUrl: string;
  readonly clock?: Clock;
};

/**
 * A one-time link, good for a day, that records the laboratory and its first quality manager; undefined once anybody
 * can sign in. Printed by whoever starts an empty installation.
 */
export const createFirstAccessLink = async ({
  databaseUrl,
  publicUrl,
  clock = () => new Date(),
}: Installation): Promise<string | undefined> => {
  configureDatabase(databaseUrl);
  const token = randomBytes(32).toString("base64url");
  try {
    await execute(offerFirstAccess, { kind: "system", name: "start" }, { token }, clock);
    return new URL(`/first-access/${token}`, publicUrl).href;
  } catch (error) {
    if (error instanceof Refused && error.refusal.code === "wrong-state") return undefined;
    throw error;
  } finally {
    await closeDatabase();
  }
};
