import { stageOf } from "./stage-of";
import type { DueThing, Reminder } from "./types";

const byDay = (a: Reminder, b: Reminder): number =>
  a.thing.dueOn < b.thing.dueOn
    ? -1
    : a.thing.dueOn > b.thing.dueOn
      ? 1
      : a.thing.title.localeCompare(b.thing.title, "en");

/**
 * What is to be told today: each thing whose due day has reached a stage that was not told yet, the oldest first. A
 * thing that is out of date before anybody was told that it is due is told once, as out of date.
 */
export const decideReminders = (things: readonly DueThing[], today: string): readonly Reminder[] =>
  things
    .flatMap((thing) => {
      const stage = stageOf(thing.dueOn, today);
      return stage === null || thing.told.includes(stage) ? [] : [{ thing, stage }];
    })
    .sort(byDay);
