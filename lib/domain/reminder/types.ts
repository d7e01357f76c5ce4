/** What comes due: a calibration, an intermediate check, maintenance, the characterisation of a configuration. */
export const dueKinds = ["calibration", "intermediate-check", "maintenance", "characterisation"] as const;
export type DueKind = (typeof dueKinds)[number];

/** Each is told once: when it comes due, and when it is out of date. */
export const reminderStages = ["due", "out-of-date"] as const;
export type ReminderStage = (typeof reminderStages)[number];

/** One thing with a due day, and what was told of that day already. */
export type DueThing = {
  readonly dueKind: DueKind;
  /** The piece of equipment, or the furnace configuration. */
  readonly subjectId: string;
  /** As people call it: a tag, or a furnace and its configuration. */
  readonly title: string;
  readonly dueOn: string;
  /** The record where it is dealt with, below the platform's address. */
  readonly path: string;
  readonly told: readonly ReminderStage[];
};

export type Reminder = { readonly thing: DueThing; readonly stage: ReminderStage };
