import { limitByDiameter } from "../by-diameter";
import type { Found } from "../finding";
import type { GateSensor } from "../plan";
import type { ByDiameter } from "../policy";
import { celsius, millimetre } from "../words";

export const spoilt = "Leave the higher setpoints out, or agree with the customer that it may be spoilt.";

/** A diameter held against its table. `what` reads like "type K wire of". */
export const diameterFound = (
  code: "wire-limit" | "sheath-limit",
  { tag, type }: GateSensor,
  what: string,
  diameterMillimetre: number,
  highest: number,
  table: ByDiameter,
): readonly Found[] => {
  const limit = limitByDiameter(table, type, diameterMillimetre);
  const named = `${what} ${millimetre(diameterMillimetre)}`;
  if (limit.kind !== "none" && highest > limit.maximumCelsius)
    return [
      {
        code,
        outcome: "breach",
        subject: tag,
        reason: `${named} is suggested up to ${celsius(limit.maximumCelsius)}${limit.kind === "at-most" ? " at the very most" : ""}, not ${celsius(highest)}.`,
        remedy: spoilt,
        source: table.source,
      },
    ];
  if (limit.kind === "known") return [];
  return [
    {
      code: "limit-not-known",
      outcome: "warning",
      subject: tag,
      reason: `no limit is known for ${named}.`,
      remedy: "Ask its maker, or look at it again after the run.",
      source: table.source,
    },
  ];
};
