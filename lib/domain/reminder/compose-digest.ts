import { noticeDays } from "../calibration/due";
import { dueKindLabels } from "./labels";
import type { Reminder, ReminderStage } from "./types";

export type Digest = { readonly subject: string; readonly body: string };

const headings: Readonly<Record<ReminderStage, string>> = {
  "out-of-date": "Out of date. Not to be used for a run until it is dealt with:",
  due: `Due within ${noticeDays} days:`,
};

const section = (reminders: readonly Reminder[], stage: ReminderStage, publicUrl: string): string[] => {
  const own = reminders.filter((reminder) => reminder.stage === stage);
  if (own.length === 0) return [];
  const lines = own.flatMap(({ thing }) => [
    `- ${thing.title}, ${dueKindLabels[thing.dueKind].toLowerCase()}: ${stage === "due" ? "due on" : "was due on"} ${thing.dueOn}`,
    `  ${publicUrl}${thing.path}`,
  ]);
  return [headings[stage], "", ...lines, ""];
};

/** One message for all that is to be told: tags and days only; figures and customers stay behind the sign-in. */
export const composeDigest = (reminders: readonly Reminder[], publicUrl: string): Digest => {
  const count = (stage: ReminderStage) => reminders.filter((reminder) => reminder.stage === stage).length;
  const counted = [
    ...(count("out-of-date") > 0 ? [`${count("out-of-date")} out of date`] : []),
    ...(count("due") > 0 ? [`${count("due")} due within ${noticeDays} days`] : []),
  ];
  return {
    subject: `Equipment and furnaces: ${counted.join(", ")}`,
    body: [
      ...section(reminders, "out-of-date", publicUrl),
      ...section(reminders, "due", publicUrl),
      // Lines stay below 76 characters: mail programs break longer ones where they like.
      "You receive this as quality manager. Each thing is told once when it",
      "comes due, and once more when it is out of date.",
      "",
      `All that is due: ${publicUrl}/mail`,
      "",
    ].join("\n"),
  };
};
