import { ok, type Result, refuse } from "../refusal";

/** A sensor of a run in review, as far as a lot's certificate asks. */
export type LotSensor = {
  readonly id: string;
  readonly tag: string;
  readonly lineId: string;
  /** Its line is reported on one certificate for the lot. */
  readonly isPerLot: boolean;
  /** It has its certificate, or left this review. */
  readonly isDone: boolean;
  /** Why it can stand on no certificate now; empty where it can. */
  readonly obstacle: string;
};

export type OpenLot = {
  readonly lineId: string;
  /** On the one certificate that is to be signed here. */
  readonly sensors: readonly LotSensor[];
  /** In this run, and not on it. */
  readonly leftOut: readonly LotSensor[];
};

/** What one certificate for the lot would cover in this run, by order line: all sensors of the line that are still open. */
export const openLots = (sensors: readonly LotSensor[]): readonly OpenLot[] => {
  const open = sensors.filter(({ isPerLot, isDone }) => isPerLot && !isDone);
  return [...new Set(open.map(({ lineId }) => lineId))].map((lineId) => {
    const own = open.filter((one) => one.lineId === lineId);
    return {
      lineId,
      sensors: own.filter(({ obstacle }) => obstacle === ""),
      leftOut: own.filter(({ obstacle }) => obstacle !== ""),
    };
  });
};

/** A lot is signed for whole: whoever is not to be on its certificate is let go first, with a reason. */
export const decideWholeLot = (
  lot: readonly { readonly id: string; readonly tag: string }[],
  sensorIds: readonly string[],
): Result<"whole"> => {
  const lacking = lot.filter(({ id }) => !sensorIds.includes(id));
  return lacking.length === 0
    ? ok("whole")
    : refuse(
        "rule",
        `The order asks for one certificate for the lot, and ${lacking.map(({ tag }) => tag).join(", ")} of this run would not be on it. Sign for all of them together, or let a sensor go first. Nothing was signed off.`,
      );
};
