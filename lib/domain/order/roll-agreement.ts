import { z } from "zod";
import { ok, type Result, refuse } from "../refusal";
import { optionalText } from "./field";
import { isSameRoll, rollName } from "./roll-ends";
import type { OrderState } from "./transitions";

/** The customer agrees that of a roll one end is reported alone (ISO/IEC 17025:2017, 7.1.4). */
export const AgreeRollInput = z.object({
  number: z.string(),
  lot: z.string().min(1).max(60),
  roll: z.string().min(1).max(60),
  agreedWith: optionalText(120).refine((text) => text.length >= 2, "Write with whom of the customer."),
  text: optionalText(200).refine(
    (text) => text.length >= 3,
    "Write by what: a letter, a mail, a call and its day. The certificate says it.",
  ),
});

type Roll = { readonly lot: string; readonly roll: string };

/** `onOneEnd`: rolls of the order of which one end alone is here. */
export const decideAgreeRoll = (
  state: OrderState,
  onOneEnd: readonly Roll[],
  agreed: readonly Roll[],
  asked: Roll,
): Result<"agreed"> => {
  const is = (roll: Roll) => isSameRoll(roll, asked);
  if (state !== "accepted")
    return refuse(
      "wrong-state",
      `This order is ${state}: nothing is agreed on its rolls. Nothing was stored.`,
    );
  if (agreed.some(is))
    return refuse("changed-meanwhile", `It is recorded already for ${rollName(asked)}. Nothing was stored.`);
  return onOneEnd.some(is)
    ? ok("agreed")
    : refuse(
        "rule",
        `Of ${rollName(asked)} both ends are here, or none: there is nothing to agree on. Nothing was stored.`,
      );
};
