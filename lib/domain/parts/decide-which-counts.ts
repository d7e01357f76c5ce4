import { type Message, say, sayAll } from "../certificate/catalogue/message";
import { english } from "../certificate/catalogue/settle";
import type { EvaluatedPoint, MeasuredPoint } from "../evidence/evaluation";
import type { CountingRule } from "../order/options";
import { type Difference, differenceOf } from "./difference";
import { isSameSetpoint } from "./same-setpoint";

type Measurement = { readonly run: string; readonly points: readonly EvaluatedPoint[] };

export type WhichCounts = {
  readonly counts: "earlier" | "later";
  /** As the certificate says it, and the same in English. */
  readonly said: Message;
  readonly note: string;
  /** What a person has to look at; null = nothing. */
  readonly finding: string | null;
  readonly compared: readonly (Difference & { readonly nominalCelsius: number })[];
};

const measured = ({ points }: Measurement): readonly MeasuredPoint[] =>
  points.flatMap((point) => (point.state === "measured" ? [point] : []));

const compare = (earlier: Measurement, later: Measurement): WhichCounts["compared"] =>
  measured(later).flatMap((point) => {
    const before = measured(earlier).find((one) => isSameSetpoint(one.nominalCelsius, point.nominalCelsius));
    return before ? [{ nominalCelsius: point.nominalCelsius, ...differenceOf(before, point) }] : [];
  });

const degrees = (celsius: number): string => `${Number(celsius.toFixed(2))} °C`;
const listed = (celsius: readonly number[]): string => celsius.map(degrees).join(", ");

/** Why the earlier one cannot stand for the later, though the rule would let it; null = it can. */
const whyNot = (
  earlier: Measurement,
  later: Measurement,
  compared: WhichCounts["compared"],
): Message | null => {
  const apart = compared.filter(({ agrees }) => !agrees);
  if (apart.length > 0)
    return say("repeat.why-apart", {
      points: apart
        .map(
          ({ nominalCelsius, printed }) =>
            `${degrees(nominalCelsius)} (${printed.celsius} °C, U ${printed.expandedCelsius} °C)`,
        )
        .join(", "),
    });
  if (compared.length === 0) return say("repeat.why-none-common");
  const lacking = measured(later)
    .map(({ nominalCelsius }) => nominalCelsius)
    .filter((celsius) => !compared.some((one) => one.nominalCelsius === celsius));
  return lacking.length > 0 ? say("repeat.why-lacking", { run: earlier.run, points: listed(lacking) }) : null;
};

const counted = (
  earlier: Measurement,
  later: Measurement,
  decided: Pick<WhichCounts, "counts" | "compared"> & { readonly by: Message; readonly finding?: string },
): WhichCounts => {
  const { by, counts, compared, finding = null } = decided;
  const said = sayAll([say("repeat.twice", { earlier: earlier.run, later: later.run }), by]);
  return { counts, said, note: english(said), finding, compared };
};

/**
 * Which of two measurements of one sensor is reported, by the rule that was fixed before the second one. Both stay on
 * record, and the certificate says that there were two.
 */
export const decideWhichCounts = (
  rule: CountingRule,
  earlier: Measurement,
  later: Measurement,
): WhichCounts => {
  const compared = compare(earlier, later);
  if (rule === "later-counts")
    return counted(earlier, later, { counts: "later", by: say("repeat.later"), compared });
  const why = whyNot(earlier, later, compared);
  if (why === null)
    return counted(earlier, later, { counts: "earlier", by: say("repeat.earlier"), compared });
  return counted(earlier, later, {
    counts: "later",
    by: say("repeat.disagree", { why }),
    finding: `The repeat does not confirm run ${earlier.run}: ${english(why)}.`,
    compared,
  });
};
