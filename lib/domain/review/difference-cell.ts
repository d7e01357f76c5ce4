import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { seebeck } from "@/lib/metrology/thermocouple/seebeck";
import type { MeasuredPoint } from "../evidence/evaluation";
import { ownLines } from "../evidence/fit-sensor";
import { differenceToEarlier, type EarlierResult } from "./earlier-result";
import type { ResultName } from "./result-name";

/** A result beside the sensor's last one, with what its error may have in common with its neighbours'. */
export type DifferenceCell = ResultName & {
  readonly type: string;
  readonly nominalCelsius: number;
  /** Which reference junction, or block of them, the sensor hangs on. */
  readonly junction: string;
  readonly errorCelsius: number;
  readonly earlierCelsius: number;
  /** Now minus then, and its standard uncertainty. */
  readonly celsius: number;
  readonly standardCelsius: number;
  readonly parts: VarianceParts;
  /** What the result shifts by, °C, where the reference junction is wrong by 1 °C. */
  readonly perJunctionCelsius: number;
  /** Standard uncertainty of the reference junction as budgeted, °C. */
  readonly junctionStandardCelsius: number;
};

export type ReviewedResult = {
  readonly point: MeasuredPoint;
  readonly earlier: EarlierResult | null;
  readonly junction: string;
};

/** Lines that one error moves for every sensor beside the same references. */
const isCommon = (key: string): boolean =>
  key.startsWith("reference.") ||
  key.endsWith("@reference") ||
  key === "voltmeter.calibration@sensor" ||
  key === "voltmeter.drift@sensor";

/** The stage as a whole stands for its own lines, and the covariance for pairs that are counted each. */
const isLine = (key: string): boolean => key !== "furnace.temperature" && key !== "shared";

/** Parts of a point's variance, by what its lines have in common with other results of the run. */
export type VarianceParts = {
  /** With every sensor, one error at all setpoints. */
  readonly common: number;
  /** With every sensor, anew at each setpoint. */
  readonly commonAtSetpoint: number;
  /** The sensor's, one error at all setpoints. */
  readonly own: number;
  readonly ownAtSetpoint: number;
};

export const varianceParts = ({ temperatureBudget, emfBudget }: MeasuredPoint): VarianceParts => {
  const lines = [...temperatureBudget.contributions, ...emfBudget.contributions].filter(({ key }) =>
    isLine(key),
  );
  const total = lines.reduce((sum, { share }) => sum + share, 0);
  const part = (isOurs: boolean, isNew: boolean): number =>
    lines
      .filter(({ key }) => isCommon(key) === isOurs && ownLines.has(key) === isNew)
      .reduce((sum, { share }) => sum + share / total, 0);
  return {
    common: part(true, false),
    commonAtSetpoint: part(true, true),
    own: part(false, false),
    ownAtSetpoint: part(false, true),
  };
};

/** Seen from the reference function: the slope where the junction is, over the slope where the sensor is. */
const perJunction = (point: MeasuredPoint): number => {
  const atZero = seebeck(referenceFunctions[point.type], 0);
  return atZero.ok ? atZero.value / point.seebeckMicrovoltPerCelsius : 0;
};

const junctionStandard = (point: MeasuredPoint): number => {
  const line = point.emfBudget.contributions.find(({ key }) => key === "junction@sensor");
  return line?.unit === "°C" ? line.standardUncertainty : 0;
};

/** Null where nothing earlier stands beside it. */
export const differenceCell = ({ point, earlier, junction }: ReviewedResult): DifferenceCell | null => {
  if (!earlier) return null;
  return {
    sensor: point.sensor,
    setpoint: point.setpoint,
    type: point.type,
    nominalCelsius: point.nominalCelsius,
    junction,
    errorCelsius: point.errorCelsius,
    earlierCelsius: earlier.errorCelsius,
    celsius: differenceToEarlier(point, earlier).celsius,
    standardCelsius: Math.hypot(
      point.expandedCelsius / point.coverageFactor,
      earlier.expandedCelsius / earlier.coverageFactor,
    ),
    parts: varianceParts(point),
    perJunctionCelsius: perJunction(point),
    junctionStandardCelsius: junctionStandard(point),
  };
};
