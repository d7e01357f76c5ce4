import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { typeset } from "@/lib/metrology/reporting/typeset";
import type { MeasuredPoint } from "../evidence/evaluation";
import { isSameSetpoint } from "../parts/same-setpoint";
import type { Draft } from "./catalogue/message";
import { setpointText } from "./compose-rows";
import type { CertificateContent } from "./content";
import type { DerivedMember } from "./derived-member";
import { fahrenheitDifference, fahrenheitRow } from "./fahrenheit-row";
import { lastSets } from "./last-sets";
import type { RollEnds } from "./rolls-of";
import { rollsStatement } from "./texts-of-parts";

type Rolls = NonNullable<CertificateContent["rolls"]>;
type Row = Rolls["of"][number]["rows"][number];

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Of the coarsest of these. */
const decimalsOf = (printed: readonly string[]): number =>
  Math.min(...printed.map((one) => one.split(".")[1]?.length ?? 0));

/** Of the unrounded errors; printed with the decimals of the coarsest of them, in each unit of its own. */
const rowOf = (
  setpoint: string,
  [first, second]: readonly [readonly MeasuredPoint[], readonly MeasuredPoint[]],
  unit: "C" | "F",
): Row => {
  const all = [...first, ...second];
  const errors = all.map(({ errorCelsius }) => errorCelsius);
  const firstEnd = mean(first.map(({ errorCelsius }) => errorCelsius));
  const secondEnd = mean(second.map(({ errorCelsius }) => errorCelsius));
  const figures = {
    firstEnd,
    secondEnd,
    average: (firstEnd + secondEnd) / 2,
    halfRange: (Math.max(...errors) - Math.min(...errors)) / 2,
  };
  const printed = (print: (celsius: number) => string) => ({
    firstEnd: print(figures.firstEnd),
    secondEnd: print(figures.secondEnd),
    average: print(figures.average),
    halfRange: print(figures.halfRange),
  });
  const decimals = decimalsOf(all.map(({ printed: { errorCelsius } }) => errorCelsius));
  const fahrenheitDecimals =
    unit === "F" ? decimalsOf(all.map((one) => fahrenheitRow(one, false).error)) : null;
  return {
    setpoint,
    celsius: printed((value) => typeset(roundHalfEven(value, decimals))),
    ...(fahrenheitDecimals === null
      ? {}
      : { fahrenheit: printed((value) => fahrenheitDifference(value, fahrenheitDecimals)) }),
  };
};

/** Of each roll, at each setpoint that both its ends were measured at: both ends, their average and the spread. */
export const composeRolls = (
  members: readonly DerivedMember[],
  rolls: readonly RollEnds[],
  unit: "C" | "F",
): Draft<Rolls> | null => {
  const pieces = lastSets(members);
  const pointsOf = (tags: readonly string[]) =>
    pieces.flatMap(({ parts }) =>
      tags.includes(parts.sensor.tag)
        ? parts.points.flatMap((point) => (point.state === "measured" ? [point] : []))
        : [],
    );
  const order = members[0]?.parts.order;
  const of = rolls.flatMap(({ roll, firstEnd, secondEnd }) => {
    const [first, second] = [pointsOf(firstEnd), pointsOf(secondEnd)];
    const setpoints = first
      .map(({ nominalCelsius }) => nominalCelsius)
      .toSorted((left, right) => left - right)
      .filter((celsius, at, all) => at === 0 || !isSameSetpoint(celsius, all[at - 1] as number));
    const rows = setpoints.flatMap((celsius) => {
      const here = ({ nominalCelsius }: MeasuredPoint) => isSameSetpoint(nominalCelsius, celsius);
      const ends = [first.filter(here), second.filter(here)] as const;
      return ends[1].length === 0 || !order ? [] : [rowOf(setpointText(order, celsius), ends, unit)];
    });
    return rows.length === 0 ? [] : [{ roll, firstEnd: [...firstEnd], secondEnd: [...secondEnd], rows }];
  });
  return of.length === 0 ? null : { of, statement: rollsStatement };
};
