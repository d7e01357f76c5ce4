import { isoDay, noticeDays } from "../calibration/due";
import { decideReminders } from "./decide-reminders";
import { stageOf } from "./stage-of";
import type { DueThing } from "./types";

const addDays = (day: string, days: number): string => {
  const moment = new Date(`${day}T00:00:00Z`);
  moment.setUTCDate(moment.getUTCDate() + days);
  return isoDay(moment);
};

/** The day on which a thing reaches its next stage, or null if it has reached the last. */
const nextStageOn = ({ dueOn }: DueThing, today: string): string | null => {
  const stage = stageOf(dueOn, today);
  if (stage === "out-of-date") return null;
  return addDays(dueOn, stage === "due" ? 1 : -noticeDays);
};

/** The day of the next reminder if nothing changes until then; null = nothing that is known will come due. */
export const nextReminderOn = (things: readonly DueThing[], today: string): string | null => {
  if (decideReminders(things, today).length > 0) return today;
  const days = things.flatMap((thing) => nextStageOn(thing, today) ?? []);
  return days.reduce<string | null>((first, day) => (first === null || day < first ? day : first), null);
};
