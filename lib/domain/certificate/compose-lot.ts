import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { typeset } from "@/lib/metrology/reporting/typeset";
import type { MeasuredPoint } from "../evidence/evaluation";
import { isSameSetpoint } from "../parts/same-setpoint";
import type { Draft } from "./catalogue/message";
import { setpointText } from "./compose-rows";
import type { CertificateContent } from "./content";
import type { DerivedMember } from "./derived-member";
import { lastSets } from "./last-sets";
import { lotStatement } from "./texts-of-parts";

type Lot = NonNullable<CertificateContent["lot"]>;

/** Decimals of the coarsest error printed: an average of the items claims no digit that one of them lacks. */
const decimalsOf = (points: readonly MeasuredPoint[]): number =>
  Math.min(...points.map(({ printed }) => printed.errorCelsius.split(".")[1]?.length ?? 0));

const rowOf = (setpoint: string, points: readonly MeasuredPoint[]): Lot["rows"][number] => {
  const errors = points.map(({ errorCelsius }) => errorCelsius);
  const [smallest, largest] = [Math.min(...errors), Math.max(...errors)];
  const decimals = decimalsOf(points);
  const print = (value: number) => typeset(roundHalfEven(value, decimals));
  return {
    setpoint,
    items: points.length,
    averageErrorCelsius: print(errors.reduce((sum, error) => sum + error, 0) / errors.length),
    smallestErrorCelsius: print(smallest),
    largestErrorCelsius: print(largest),
    halfRangeCelsius: print((largest - smallest) / 2),
  };
};

/** Average and spread of a lot at each setpoint that two of its items were measured at; nothing beyond them. */
export const composeLot = (members: readonly DerivedMember[]): Draft<Lot> | null => {
  const first = members[0];
  if (!first || new Set(members.map(({ sensorId }) => sensorId)).size < 2) return null;
  const points = lastSets(members).flatMap(({ parts }) =>
    parts.points.flatMap((point) => (point.state === "measured" ? [point] : [])),
  );
  const setpoints = points
    .map(({ nominalCelsius }) => nominalCelsius)
    .toSorted((left, right) => left - right)
    .filter((celsius, at, all) => at === 0 || !isSameSetpoint(celsius, all[at - 1] as number));
  const rows = setpoints.flatMap((celsius) => {
    const here = points.filter(({ nominalCelsius }) => isSameSetpoint(nominalCelsius, celsius));
    return here.length < 2 ? [] : [rowOf(setpointText(first.parts.order, celsius), here)];
  });
  return rows.length === 0 ? null : { rows, statement: lotStatement };
};
