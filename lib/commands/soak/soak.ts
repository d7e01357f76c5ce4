import { type CoverageStudy, studyCoverage } from "@/lib/station/simulation/coverage-study";

/** What is asked of a stated 95.45 %: ± 3 standard deviations of a count of 1000, and room for rectangles in the sum. */
const FURNACES = 1000;
const BOUNDS = [0.935, 0.975] as const;
const WITHOUT_TERM_BELOW = 0.9;
const LEAST_SHARE = 0.4;

const percent = (part: number, decimals = 1): string => `${(part * 100).toFixed(decimals)} %`;

function told(study: CoverageStudy): string[] {
  const { furnaces, within, withinWithoutTerm, smallestShare, meanSquareError } = study;
  return [
    `${furnaces} simulated furnaces, one point each, errors drawn from the budget's own distributions (seeds 1 to ${furnaces})`,
    `  truth within U: ${within}, ${percent(within / furnaces)} (asked: ${percent(BOUNDS[0])} to ${percent(BOUNDS[1])})`,
    `  the references' certificates hold at least ${percent(smallestShare)} of u_c² (asked: ${percent(LEAST_SHARE, 0)})`,
    `  truth within U when they are left out of the budget: ${withinWithoutTerm}, ${percent(withinWithoutTerm / furnaces)} (asked: below ${percent(WITHOUT_TERM_BELOW, 0)})`,
    `  mean square of error/u_c: ${meanSquareError.toFixed(3)}`,
  ];
}

/** `npm run soak`: what takes too long for every run of the tests. Its end status says whether all of it held. */
const study = studyCoverage(FURNACES);
for (const line of told(study)) console.log(line);
const share = study.within / study.furnaces;
const holds =
  share >= BOUNDS[0] &&
  share <= BOUNDS[1] &&
  study.smallestShare >= LEAST_SHARE &&
  study.withinWithoutTerm / study.furnaces < WITHOUT_TERM_BELOW;
console.log(holds ? "All of it holds." : "NOT ALL OF IT HOLDS.");
process.exitCode = holds ? 0 : 1;
