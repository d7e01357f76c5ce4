import type { MeasuredPoint } from "../evidence/evaluation";

/** The largest line of the two budgets in words. */
export const dominantLabel = (point: MeasuredPoint): string =>
  [...point.temperatureBudget.contributions, ...point.emfBudget.contributions].find(
    ({ key }) => key === point.dominant,
  )?.label ?? point.dominant;
