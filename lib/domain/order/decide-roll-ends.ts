import { ok, type Result, refuse } from "../refusal";
import type { ReportForm } from "./options";
import { isSameRoll, type OfRoll, type OneEnd, rollName, rollsOnOneEnd } from "./roll-ends";
import { type RuleSet, ruleSetLabels } from "./rule-set";

/** A sensor of the order as a piece of its roll. */
export type RollPiece = OfRoll & {
  readonly sensorId: string;
  readonly tag: string;
  /** Reported: a certificate speaks of it. Gone: it went back, or goes back, without one. */
  readonly standing: "here" | "reported" | "gone";
  /** An external provider measures it, or did: no certificate of ours is to come. */
  readonly isExternal?: boolean;
};

/** By what the customer agreed that of this roll one end is reported alone. */
export type RollAgreement = {
  readonly lot: string;
  readonly roll: string;
  readonly agreedWith: string;
  readonly text: string;
};

export type RollsOfOrder = {
  readonly orderNumber: string;
  readonly ruleSet: RuleSet;
  readonly pieces: readonly RollPiece[];
  readonly agreements: readonly RollAgreement[];
};

/**
 * Rolls of a certificate that would stand on one end. On a lot's certificate both ends stand, or the other is reported
 * already; of one sensor alone it is enough that the other end is here and gets its own.
 */
export const onOneEnd = (
  { ruleSet, pieces }: RollsOfOrder,
  sensorIds: readonly string[],
  report: ReportForm,
): readonly OneEnd[] => {
  if (ruleSet === "none") return [];
  const own = pieces.filter(({ sensorId }) => sensorIds.includes(sensorId));
  const beside = pieces.filter(
    ({ sensorId, standing }) =>
      !sensorIds.includes(sensorId) &&
      (standing === "reported" || (standing === "here" && report === "per-sensor")),
  );
  return rollsOnOneEnd([...own, ...beside], own);
};

export const agreementOf = (
  { agreements }: Pick<RollsOfOrder, "agreements">,
  roll: Pick<OneEnd, "lot" | "roll">,
): RollAgreement | undefined => agreements.find((one) => isSameRoll(one, roll));

/**
 * Rolls of which one end alone is here and for which a certificate of ours is still to come; and those the customer agreed
 * to. What a provider measures stands as an end of its roll, and waits for nothing.
 */
export const rollsToAsk = ({ pieces, agreements }: RollsOfOrder): readonly OneEnd[] =>
  rollsOnOneEnd(
    pieces.filter(({ standing }) => standing !== "gone"),
    pieces.filter(
      (piece) =>
        !piece.isExternal &&
        (piece.standing === "here" ||
          (piece.standing === "reported" && agreements.some((one) => isSameRoll(one, piece)))),
    ),
  );

/** No certificate of one end alone, unless the customer agreed to it. */
export const decideRollEnds = (
  rolls: RollsOfOrder,
  sensorIds: readonly string[],
  report: ReportForm,
): Result<"both ends"> => {
  const open = onOneEnd(rolls, sensorIds, report).filter((roll) => !agreementOf(rolls, roll));
  if (open.length === 0) return ok("both ends");
  const named = open.map((roll) => `${rollName(roll)} (${roll.tags.join(", ")})`).join("; ");
  const other =
    report === "per-lot"
      ? "Let these sensors go, to be measured again in one run with the other end"
      : "Take the other end in";
  return refuse(
    "rule",
    `The customer is audited under “${ruleSetLabels[rolls.ruleSet]}”, where both ends of a roll are reported, and of ${named} one end alone is, or nobody said which end it is. ${other}; or record on order ${rolls.orderNumber} that the customer agrees to one end. Nothing was signed off.`,
  );
};
