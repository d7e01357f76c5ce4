import type { RunState } from "./states";

export type RunBead = {
  readonly label: string;
  readonly state: "done" | "now" | "next" | "stopped";
  readonly page: string;
};

export type RunProgress = {
  readonly state: RunState;
  readonly tipsPassed: boolean;
  readonly gatePassed: boolean;
  readonly hasReadings: boolean;
  readonly openSetpoints: number;
  readonly evaluation: "none" | "outdated" | "current";
  /** Signed off, and a certificate of it is to be replaced by new results. */
  readonly isReplacing?: boolean;
};

const tips = "Tips warmed";

const steps = (progress: RunProgress) => {
  const decided = progress.hasReadings && progress.openSetpoints === 0;
  const gone = progress.state === "submitted" || progress.state === "signed-off";
  return [
    { label: "Load planned", page: "load", done: true },
    { label: tips, page: "load", done: progress.tipsPassed || gone },
    { label: "Gate passed", page: "gate", done: progress.gatePassed || progress.hasReadings },
    { label: "Readings", page: "readings", done: progress.hasReadings },
    { label: "Windows", page: "windows", done: decided },
    { label: "Evaluated", page: "results", done: progress.evaluation === "current" && decided },
    { label: "Submitted", page: "results", done: gone },
    { label: "Signed off", page: "", done: progress.state === "signed-off" },
  ];
};

/** The run's thread: what is done, and the one thing that is next. A returned run has stopped at its submission. */
export const runThread = (progress: RunProgress): readonly RunBead[] => {
  const all = steps(progress);
  // Once there are readings the furnace does not wait for a tip; it is asked for again at submission.
  const now = all.findIndex(({ done, label }) => !done && !(label === tips && progress.hasReadings));
  return all.map(({ label, page, done }, index) => ({
    label: progress.state === "returned" && label === "Submitted" ? "Returned" : label,
    page,
    state:
      (progress.state === "returned" && label === "Submitted") ||
      (progress.state === "abandoned" && index === now)
        ? "stopped"
        : done
          ? "done"
          : index === now
            ? "now"
            : "next",
  }));
};

/** What a person does next, in one sentence. */
export const nextStep = (progress: RunProgress): string => {
  if (progress.isReplacing)
    return "A certificate is to be replaced: say what was wrong with a window or a state, then evaluate again.";
  if (progress.state === "signed-off") return "Nothing is left to do here.";
  if (progress.state === "abandoned")
    return progress.hasReadings ? "The run was abandoned; its readings are kept." : "The run was abandoned.";
  if (progress.state === "submitted") return "The run waits for its signatory.";
  if (!progress.tipsPassed && !progress.hasReadings)
    return "Warm each tip and record what its channel shows.";
  if (!progress.gatePassed && !progress.hasReadings)
    return "Record the same-day checks, look at the gate, and start the run.";
  if (!progress.hasReadings) return "Take the readings in: upload the scanner's file, or type them.";
  if (progress.openSetpoints > 0) return "Accept a stability window at each setpoint.";
  if (progress.evaluation === "none") return "Evaluate the run.";
  if (progress.evaluation === "outdated") return "Something changed since the evaluation: evaluate again.";
  return progress.tipsPassed
    ? "Look at the results, then submit them for review."
    : "Warm the tips that are left, then submit.";
};
