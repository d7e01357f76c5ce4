import type { DeviationFunctionChoice } from "../evidence/schema";
import { ok, type Result, refuse } from "../refusal";
import { BudgetInputs } from "../run/budget-inputs";
import { type BudgetLine, budgetLines, correlationPlaces } from "./budget-lines";
import type { Figures, LineFigure } from "./figures-schema";

type Unit = "celsius" | "microvolt" | "relative";

/** The line as typed; what the form does not show of it (degrees of freedom, a k, from where it acts) stays. */
const lineOf = (before: BudgetLine, { kind, value, unit, source }: LineFigure): unknown => {
  if (kind === "keep") return before;
  if (kind === "zero") return { kind, reason: source };
  if (kind === "tolerance-share") return { kind, share: value, toleranceClass: unit.slice(-1), source };
  const {
    reason: _,
    share: __,
    toleranceClass: ___,
    blockSeconds: ____,
    ...rest
  } = { ...before } as Record<string, unknown>;
  const from =
    before.kind === kind ? rest : "fromCelsius" in before ? { fromCelsius: before.fromCelsius } : {};
  const field = { standard: "standard", rectangular: "halfWidth", expanded: "expanded" }[kind];
  return { ...from, kind, [field]: value, unit: unit as Unit, source };
};

const put = (tree: Record<string, unknown>, place: string, value: unknown): void => {
  const path = place.split(".");
  const last = path.pop() ?? "";
  let at = tree;
  for (const step of path) at = at[step] as Record<string, unknown>;
  at[last] = value;
};

const choiceOf = ({ deviationFunction }: Figures): DeviationFunctionChoice | null => {
  const { rule, degree, limit, isThroughZero, method } = deviationFunction;
  const common = { isThroughZero, method, allowBelow: null };
  switch (rule) {
    case "fixed":
      return { ...common, degreeRule: { kind: rule, degree: degree ?? 0 } };
    case "f-test":
      return { ...common, degreeRule: { kind: rule, maximumDegree: degree ?? 0, probability: limit ?? 0 } };
    case "residuals":
      return { ...common, degreeRule: { kind: rule, maximumDegree: degree ?? 0, limit: limit ?? 0 } };
    default:
      return null;
  }
};

const deviationProblem = ({ deviationFunction }: Figures): Record<string, string> => {
  const { rule, degree, limit } = deviationFunction;
  if (rule === "keep" || rule === "none") return {};
  return {
    ...(degree === null ? { "figures.deviationFunction.degree": "Write the degree, 0 to 6." } : {}),
    ...(rule !== "fixed" && limit === null ? { "figures.deviationFunction.limit": "Write the limit." } : {}),
    ...(rule === "f-test" && limit !== null && limit >= 1
      ? { "figures.deviationFunction.limit": "A probability lies below 1." }
      : {}),
  };
};

/** Fields of the form by the place they stand at: "sensors.K.lead.halfWidth" was typed in lines.7.value. */
const fieldOf = (figures: Figures, path: string): string => {
  const index = figures.lines.findIndex(({ place }) => path === place || path.startsWith(`${place}.`));
  return index < 0 ? "figures.coverage" : `figures.lines.${index}.value`;
};

/** The budget's inputs with the form's figures in their places; judged whole, as if they had been typed as one text. */
export const changedFigures = (before: BudgetInputs, figures: Figures): Result<BudgetInputs> => {
  const nothing = "The draft was not changed. What you typed is still here.";
  const known = new Map(budgetLines(before).map(({ place, line }) => [place, line]));
  const problems: Record<string, string> = deviationProblem(figures);
  const tree = structuredClone(before) as unknown as Record<string, unknown>;
  for (const [index, typed] of figures.lines.entries()) {
    const line = known.get(typed.place);
    if (line) put(tree, typed.place, lineOf(line, typed));
    else
      problems[`figures.lines.${index}.value`] = "This line is not in the budget any more. Reload the page.";
  }
  for (const [index, { place, coefficient, reason }] of figures.correlations.entries())
    if (correlationPlaces.some(([name]) => name === place))
      put(tree, `correlation.${place}`, { coefficient, reason });
    else problems[`figures.correlations.${index}.coefficient`] = "This pair is not known. Reload the page.";
  const { coverage, comparison } = figures;
  tree.coverage = coverage;
  tree.comparison = {
    carryOrder: comparison.carryOrder,
    zero:
      comparison.zero === "none"
        ? { kind: "none", reason: comparison.reason }
        : { kind: "shorted-channel", channel: comparison.channel },
  };
  if (figures.deviationFunction.rule !== "keep") {
    const choice = choiceOf(figures);
    for (const inputs of Object.values(tree.sensors as Record<string, Record<string, unknown>>)) {
      delete inputs.deviationFunction;
      if (choice) inputs.deviationFunction = choice;
    }
  }
  if (Object.keys(problems).length > 0) return refuse("invalid", nothing, problems);
  const read = BudgetInputs.safeParse(tree);
  if (read.success) return ok(read.data);
  return refuse(
    "invalid",
    nothing,
    Object.fromEntries(
      read.error.issues.toReversed().map(({ path, message }) => [fieldOf(figures, path.join(".")), message]),
    ),
  );
};
