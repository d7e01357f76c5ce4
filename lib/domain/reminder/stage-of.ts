import { dueState } from "../calibration/due";
import type { ReminderStage } from "./types";

/** The stage a due day has reached, or null while there is time. */
export const stageOf = (dueOn: string, today: string): ReminderStage | null => {
  const state = dueState(dueOn, today);
  return state === "due" || state === "out-of-date" ? state : null;
};
