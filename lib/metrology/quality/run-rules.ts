import { found, type Outcome, refused } from "../outcome";

export type RunRule = "beyond-3-sigma" | "2-of-3-beyond-2-sigma" | "4-of-5-beyond-1-sigma" | "8-on-one-side";

/** A rule that a stretch of runs breaks; `run` is the last run of it, counted from 0. */
export type RuleBroken = { readonly rule: RunRule; readonly run: number; readonly side: "above" | "below" };

type Rule = {
  readonly rule: RunRule;
  readonly sigmas: number;
  readonly least: number;
  readonly among: number;
};

/** Western Electric, Statistical Quality Control Handbook (1956); taken up by ISO 7870-2:2013. Values from memory. */
const rules: readonly Rule[] = [
  { rule: "beyond-3-sigma", sigmas: 3, least: 1, among: 1 },
  { rule: "2-of-3-beyond-2-sigma", sigmas: 2, least: 2, among: 3 },
  { rule: "4-of-5-beyond-1-sigma", sigmas: 1, least: 4, among: 5 },
  { rule: "8-on-one-side", sigmas: 0, least: 8, among: 8 },
];

/**
 * Which run rules a series breaks, in order of time: one run beyond 3σ; two of three beyond 2σ; four of five beyond 1σ;
 * eight on one side of the centre, each on one and the same side.
 *
 * Source: as `rules` says. A rule is told at the run that completes it, so only if that run itself lies beyond: a
 * later quiet run does not raise the alarm again. A value exactly on a limit is not beyond it. `values` in order of time,
 * `centre` and `sigma` of a chart of past runs, in one unit. Problems: `not-finite` for a number that is none,
 * `outside-range` for σ not above 0.
 */
export function runRules(
  values: readonly number[],
  centre: number,
  sigma: number,
): Outcome<readonly RuleBroken[]> {
  if (!(sigma > 0)) return refused("outside-range", "run rules need a standard deviation above 0");
  if (!(Number.isFinite(sigma) && Number.isFinite(centre) && values.every(Number.isFinite))) {
    return refused("not-finite", "a run has no number");
  }
  const broken: RuleBroken[] = [];
  const offsets = values.map((value) => (value - centre) / sigma);
  offsets.forEach((offset, run) => {
    const sign = Math.sign(offset);
    for (const { rule, sigmas, least, among } of rules) {
      const isBeyond = (one: number): boolean => one * sign > sigmas;
      const stretch = offsets.slice(Math.max(0, run - among + 1), run + 1);
      if (isBeyond(offset) && stretch.filter(isBeyond).length >= least) {
        broken.push({ rule, run, side: sign > 0 ? "above" : "below" });
      }
    }
  });
  return found(broken);
}
