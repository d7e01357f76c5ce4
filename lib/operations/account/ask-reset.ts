import { createHash } from "node:crypto";
import { z } from "zod";
import { withinRate } from "@/lib/data/rate/within-rate";
import { enqueueRow } from "@/lib/data/sql/enqueue";
import { accountEvents } from "@/lib/domain/account/events";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { emailAddress } from "@/lib/domain/typed-text";
import { type Clock, execute } from "../execute";
import { defineOperation } from "../operation";

const hour = 3600;
const perAddress = 3;
const perClient = 20;

const keyOf = (kind: string, value: string): string =>
  `reset ${kind} ${createHash("sha256").update(value).digest("hex").slice(0, 32)}`;

/**
 * Puts the question into the queue and looks at nothing: the same work, and so the same time, for an address that
 * somebody signs in with and for one that nobody does. The worker finds out which (`answerReset`).
 */
export const queueReset = defineOperation({
  name: "account/ask-reset",
  permission: "system",
  input: z.strictObject({ email: emailAddress, key: z.string() }),
  perform: async ({ tx }, { email, key }) => {
    await enqueueRow(tx, "answer-reset", key, JSON.stringify({ email }));
    return { value: null, events: [eventOf(accountEvents.resetAsked, "", {})] };
  },
});

type Asked = { readonly email: string; readonly client: string };

/** Too often from one client is refused; too often for one address is passed over in silence, or it would tell who asked. */
export const askReset = async ({ email: typed, client }: Asked, clock: Clock): Promise<void> => {
  const now = clock();
  const fromHere = await withinRate(keyOf("client", client), perClient, hour, now);
  if (!fromHere.isWithin)
    throw new Refused({
      code: "too-many",
      message: `That was asked very often from here. Try again in ${Math.ceil(fromHere.resetsInSeconds / 60)} minutes.`,
    });
  const email = typed.trim().toLowerCase();
  const forAddress = await withinRate(keyOf("address", email), perAddress, hour, now);
  if (!forAddress.isWithin) return;
  const key = keyOf("job", `${email} ${now.toISOString()}`);
  await execute(queueReset, { kind: "system", name: "reset" }, { email, key }, clock);
};
