import { typeset } from "@/lib/metrology/reporting/typeset";
import { budgetLines, type LineKey } from "../evidence/budget-lines";
import type { MeasuredPoint } from "../evidence/evaluation";
import { pointEffects } from "../evidence/point-effects";
import { type Draft, type Said, say } from "./catalogue/message";
import { setpointText } from "./compose-rows";
import type { CertificateContent } from "./content";
import type { DerivedMember } from "./derived-member";

type Budget = Draft<NonNullable<CertificateContent["budgets"]>[number]>;

const isLineKey = (key: string): key is LineKey => Object.hasOwn(budgetLines, key);

/** By its key; a line that carries words of its own keeps them. */
const labelOf = (key: string, label: string): Said =>
  isLineKey(key) && budgetLines[key].label === label ? say(`budget.${key}`) : label;

/** Two significant digits of a standard uncertainty; no smaller digit says anything. */
const small = (value: number): string => typeset(String(Number(value.toPrecision(2))));

/** Lines with no effect say nothing to a reader, and are left to the evidence file. */
const linesOf = (point: MeasuredPoint): Budget["lines"] => {
  const shares = new Map(
    [...point.temperatureBudget.contributions, ...point.emfBudget.contributions].map((line) => [
      line.key,
      line.share,
    ]),
  );
  return pointEffects(point)
    .filter(({ effect }) => effect !== 0)
    .toSorted((left, right) => Math.abs(right.effect) - Math.abs(left.effect))
    .map(({ key, label, distribution, effect }) => ({
      label: labelOf(key, label),
      distribution: say(`distribution.${distribution}`),
      effectCelsius: small(Math.abs(effect) / Math.abs(point.seebeckMicrovoltPerCelsius)),
      share: `${Math.round(100 * (shares.get(key) ?? 0))} %`,
    }));
};

/** The budget of each measured point, on the error in °C; k and U stand with the result. */
export const composeBudgets = (
  { order, sensor }: DerivedMember["parts"],
  points: readonly MeasuredPoint[],
): Budget[] =>
  points.flatMap((point) => {
    const lines = linesOf(point);
    return lines.length === 0
      ? []
      : [
          {
            tag: sensor.tag,
            setpoint: setpointText(order, point.nominalCelsius),
            lines,
            combinedCelsius: small(point.combinedMicrovolt / Math.abs(point.seebeckMicrovoltPerCelsius)),
            coverageFactor: point.printed.coverageFactor,
            degreesOfFreedom: point.printed.degreesOfFreedom,
          },
        ];
  });
