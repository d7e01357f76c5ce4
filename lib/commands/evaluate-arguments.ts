import type { MonteCarloChoice } from "@/lib/domain/evidence/point-monte-carlo";

export type EvaluateArguments =
  | { readonly kind: "help" | "schema" }
  | { readonly kind: "refused"; readonly message: string }
  | {
      readonly kind: "evaluate";
      readonly files: readonly string[];
      /** Null: by the budgets alone. */
      readonly monteCarlo: MonteCarloChoice | null;
    };

const DEFAULT_TRIALS = 1_000_000;
const LEAST_TRIALS = 10_000;
export const MOST_TRIALS = 50_000_000;
const DEFAULT_SEED = 1;

/** What stands on the command line; whatever is not understood is refused, never passed over. */
export const evaluateArguments = (parameters: readonly string[]): EvaluateArguments => {
  if (parameters.includes("--help") || parameters.includes("-h")) return { kind: "help" };
  if (parameters.includes("--schema")) return { kind: "schema" };
  const files: string[] = [];
  let trials: MonteCarloChoice["trials"] | null = null;
  let seed: number | null = null;
  for (let i = 0; i < parameters.length; i += 1) {
    const parameter = parameters[i] as string;
    const next = parameters[i + 1];
    if (parameter === "--monte-carlo") {
      trials = { kind: "fixed", count: DEFAULT_TRIALS };
      if (next === "adaptive") trials = { kind: "adaptive", digits: 2, divisor: 1 };
      else if (next !== undefined && /^\d+$/.test(next)) trials = { kind: "fixed", count: Number(next) };
      else continue;
      i += 1;
    } else if (parameter === "--seed") {
      if (next === undefined || !/^\d+$/.test(next) || !Number.isSafeInteger(Number(next)))
        return refused("--seed takes a whole number from 0 up.");
      seed = Number(next);
      i += 1;
    } else if (parameter.startsWith("-")) return refused(`There is no option ${parameter}: see --help.`);
    else files.push(parameter);
  }
  if (files.length === 0) return refused("Name at least one evidence file: see --help.");
  if (trials?.kind === "fixed" && !(trials.count >= LEAST_TRIALS && trials.count <= MOST_TRIALS))
    return refused(`--monte-carlo takes ${LEAST_TRIALS} to ${MOST_TRIALS} trials, or “adaptive”.`);
  if (seed !== null && trials === null) return refused("--seed stands with --monte-carlo only.");
  return {
    kind: "evaluate",
    files,
    monteCarlo: trials ? { trials, seed: seed ?? DEFAULT_SEED } : null,
  };
};

const refused = (message: string): EvaluateArguments => ({ kind: "refused", message });
