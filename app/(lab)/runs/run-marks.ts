import { type RunState, runStateLabels } from "@/lib/domain/run/states";

const shapes = {
  planned: { state: "open", tone: "plain" },
  measuring: { state: "active", tone: "heat" },
  submitted: { state: "waiting", tone: "plain" },
  returned: { state: "returned", tone: "watch" },
  "signed-off": { state: "done", tone: "good" },
  abandoned: { state: "cancelled", tone: "rest" },
} as const;

/** How a run's state is shown: shape, word, colour. */
export const runMarks = (state: RunState) => ({ ...shapes[state], label: runStateLabels[state] });

/** Temperatures are typed to a hundredth at most; 315.5556 is shown as 315.56. */
export const celsiusText = (celsius: number): string => String(Number(celsius.toFixed(2)));
