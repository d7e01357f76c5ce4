import { roundHalfEven } from "@/lib/metrology/number/decimal";
import type { MeasuredPoint } from "../evidence/evaluation";
import { differenceToEarlier, type EarlierResult } from "./earlier-result";

export type PrintedDifference = {
  /** As many decimals as the error is printed with: "+0.3". */
  readonly celsius: string;
  readonly expandedCelsius: string;
  /** |difference| over its U, two digits after the point. */
  readonly ratio: string;
  readonly isBeyondU: boolean;
  readonly earlierCelsius: string;
  readonly earlierExpandedCelsius: string;
  readonly certificate: string;
  readonly performedTo: string;
};

const decimalsOf = (printed: string): number => printed.split(".")[1]?.length ?? 0;

export const printedDifference = (point: MeasuredPoint, earlier: EarlierResult): PrintedDifference => {
  const { celsius, expandedCelsius, ratio } = differenceToEarlier(point, earlier);
  const decimals = decimalsOf(point.printed.errorCelsius);
  const rounded = roundHalfEven(celsius, decimals);
  return {
    celsius: rounded.startsWith("-") || Number(rounded) === 0 ? rounded : `+${rounded}`,
    expandedCelsius: roundHalfEven(expandedCelsius, decimals),
    ratio: roundHalfEven(ratio, 2),
    isBeyondU: ratio > 1,
    earlierCelsius: String(earlier.errorCelsius),
    earlierExpandedCelsius: String(earlier.expandedCelsius),
    certificate: earlier.certificate,
    performedTo: earlier.performedTo,
  };
};
