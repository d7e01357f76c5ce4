import { type ControlLimits, LEAST_RUNS } from "@/lib/metrology/quality/control-limits";
import { individualsChart } from "@/lib/metrology/quality/individuals-chart";
import { type RuleBroken, type RunRule, runRules } from "@/lib/metrology/quality/run-rules";
import { type CheckFigures, isCheck, type LogEntry } from "./logbook";

type Check = LogEntry & { readonly figures: CheckFigures };

export type ChartPoint = {
  readonly on: string;
  /** found − expected. */
  readonly value: number;
  readonly limit: number;
  readonly outcome: LogEntry["outcome"];
  readonly rules: readonly RunRule[];
  /** Beyond the limit of the moving range, which tells a jump. */
  readonly isJump: boolean;
};

/** The checks of one quantity in order of time. */
export type CheckChart = {
  readonly quantity: string;
  readonly unit: string;
  readonly points: readonly ChartPoint[];
  /** From all checks before the last; null, with the reason, where there are too few or they are all alike. */
  readonly limits: (ControlLimits & { readonly movingRangeLimit: number }) | null;
  readonly noLimits: string;
  /** What the last check breaks, in words; null = nothing. */
  readonly breach: string | null;
};

export const ruleWords: Readonly<Record<RunRule, string>> = {
  "beyond-3-sigma": "beyond 3 s",
  "2-of-3-beyond-2-sigma": "two of three beyond 2 s",
  "4-of-5-beyond-1-sigma": "four of five beyond 1 s",
  "8-on-one-side": "eight on one side",
};

const chartOf = (entries: readonly Check[]): CheckChart => {
  const [first] = entries;
  if (!first) throw new Error("a chart of no checks");
  const values = entries.map(({ figures }) => figures.found - figures.expected);
  // What is judged stays out of the limits it is judged by.
  const found = individualsChart(values.slice(0, -1));
  const limits = found.ok
    ? { ...found.value.individuals, movingRangeLimit: found.value.movingRangeLimit }
    : null;
  const rules = limits ? runRules(values, limits.centre, limits.standardDeviation) : null;
  const broken: readonly RuleBroken[] = rules?.ok ? rules.value : [];
  const points = entries.map(
    ({ happenedOn, outcome, figures }, index): ChartPoint => ({
      on: happenedOn,
      value: values[index] as number,
      limit: figures.limit,
      outcome,
      rules: broken.filter(({ run }) => run === index).map(({ rule }) => rule),
      isJump:
        limits !== null &&
        index > 0 &&
        Math.abs((values[index] as number) - (values[index - 1] as number)) > limits.movingRangeLimit,
    }),
  );
  const last = points.at(-1) as ChartPoint;
  const words = [
    ...last.rules.map((rule) => ruleWords[rule]),
    ...(last.isJump ? ["a jump from the check before"] : []),
  ];
  return {
    quantity: first.figures.quantity,
    unit: first.figures.unit,
    points,
    limits,
    noLimits: found.ok
      ? ""
      : found.problem.kind === "too-few"
        ? `Limits are drawn from ${LEAST_RUNS} checks before the last one; there are ${values.length - 1}.`
        : `No limits: ${found.problem.message}.`,
    breach: words.length === 0 ? null : `${first.figures.quantity}, ${last.on}: ${words.join(", ")}`,
  };
};

/**
 * A chart for each quantity that was checked; entries in the order of writing. After a repair or an adjustment a chart
 * begins anew: what was before is of another thing.
 */
export const checkCharts = (entries: readonly LogEntry[]): readonly CheckChart[] => {
  const begun = entries.findLastIndex(({ kind }) => kind === "repair" || kind === "adjustment") + 1;
  const checks = entries
    .slice(begun)
    .filter(isCheck)
    .toSorted((one, other) => one.happenedOn.localeCompare(other.happenedOn) || one.id - other.id);
  const byQuantity = new Map<string, Check[]>();
  for (const check of checks) {
    const key = `${check.figures.quantity}\n${check.figures.unit}`;
    byQuantity.set(key, [...(byQuantity.get(key) ?? []), check]);
  }
  return [...byQuantity.values()].map(chartOf);
};
