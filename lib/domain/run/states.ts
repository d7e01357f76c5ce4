import { ok, type Result, refuse } from "../refusal";

export const runStates = [
  "planned",
  "measuring",
  "submitted",
  "returned",
  "signed-off",
  "abandoned",
] as const;
export type RunState = (typeof runStates)[number];

export const runStateLabels: Readonly<Record<RunState, string>> = {
  planned: "Planned",
  measuring: "Measuring",
  submitted: "Submitted for review",
  returned: "Returned",
  "signed-off": "Signed off",
  abandoned: "Abandoned",
};

/** A returned run goes back to the technician, who may measure again, move windows and submit anew. */
const next = {
  planned: ["measuring", "abandoned"],
  measuring: ["submitted", "abandoned"],
  submitted: ["returned", "signed-off"],
  returned: ["submitted"],
  "signed-off": [],
  abandoned: [],
} as const satisfies Readonly<Record<RunState, readonly RunState[]>>;

export const canRunBecome = (from: RunState, to: RunState): boolean =>
  (next[from] as readonly RunState[]).includes(to);

export const asRunState = (state: string): RunState => {
  const known = runStates.find((one) => one === state);
  if (!known) throw new Error(`a run is stored in the state ${state}, which no run can have`);
  return known;
};

/** While it lies with the technician; before submission, and again after a return. */
export const isOpenForWork = (state: RunState): boolean =>
  state === "planned" || state === "measuring" || state === "returned";

export const demandOpen = (run: { readonly number: string; readonly state: string }): Result<RunState> => {
  const state = asRunState(run.state);
  return isOpenForWork(state)
    ? ok(state)
    : refuse(
        "wrong-state",
        `Run ${run.number} is ${runStateLabels[state].toLowerCase()}: nothing can be added to it now. Nothing was stored.`,
      );
};
