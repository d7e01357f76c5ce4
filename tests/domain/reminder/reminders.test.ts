import { describe, expect, it } from "vitest";
import { composeDigest } from "@/lib/domain/reminder/compose-digest";
import { decideReminders } from "@/lib/domain/reminder/decide-reminders";
import { nextReminderOn } from "@/lib/domain/reminder/next-reminder";
import type { DueThing } from "@/lib/domain/reminder/types";

const thing = (title: string, dueOn: string, told: DueThing["told"] = []): DueThing => ({
  dueKind: "calibration",
  subjectId: "00000000-0000-4000-8000-000000000000",
  title,
  dueOn,
  path: `/standards/${title}`,
  told,
});
const told = (things: readonly DueThing[], today: string) =>
  decideReminders(things, today).map(({ thing: { title }, stage }) => `${title} ${stage}`);

describe("what is told", () => {
  it.each([
    ["31 days before", "2026-03-01", []],
    ["30 days before", "2026-03-02", ["A due"]],
    ["on its day, which is good through its evening", "2026-04-01", ["A due"]],
    ["the day after", "2026-04-02", ["A out-of-date"]],
    ["a year after", "2027-04-02", ["A out-of-date"]],
  ] as const)("%s", (_, today, expected) => {
    expect(told([thing("A", "2026-04-01")], today)).toEqual(expected);
  });

  it("is each stage once", () => {
    expect(told([thing("A", "2026-04-01", ["due"])], "2026-03-20")).toEqual([]);
    expect(told([thing("A", "2026-04-01", ["due"])], "2026-04-02")).toEqual(["A out-of-date"]);
    expect(told([thing("A", "2026-04-01", ["due", "out-of-date"])], "2026-05-02")).toEqual([]);
    // Out of date when first looked at: never told that it is about to be.
    expect(told([thing("A", "2026-04-01", ["out-of-date"])], "2026-05-02")).toEqual([]);
  });

  it("stands in the order of the days", () => {
    const things = [thing("C", "2026-03-10"), thing("B", "2026-03-05"), thing("A", "2026-03-10")];
    expect(told(things, "2026-03-08")).toEqual(["B out-of-date", "A due", "C due"]);
  });
});

describe("the next reminder", () => {
  it.each([
    ["is today while something waits to be told", [thing("A", "2026-03-20")], "2026-03-08"],
    [
      "is 30 days before the next due day",
      [thing("A", "2026-06-20"), thing("B", "2026-05-20")],
      "2026-04-20",
    ],
    ["is the day after one that was told as due", [thing("A", "2026-03-20", ["due"])], "2026-03-21"],
    ["is none when all is told", [thing("A", "2026-01-20", ["out-of-date"])], null],
    ["is none where nothing comes due", [], null],
  ] as const)("%s", (_, things, expected) => {
    expect(nextReminderOn(things, "2026-03-08")).toBe(expected);
  });

  it("is a day on which something is told", () => {
    const things = [thing("A", "2026-06-20"), thing("B", "2026-03-20", ["due"])];
    const next = nextReminderOn(things, "2026-03-08") ?? "";
    expect(told(things, "2026-03-20")).toEqual([]);
    expect(next).toBe("2026-03-21");
    expect(told(things, next)).toEqual(["B out-of-date"]);
  });
});

it("the message names each thing, its day and its page, and nothing else", () => {
  const reminders = decideReminders(
    [
      thing("R-S1", "2026-03-05"),
      { ...thing("F-1, Block of six", "2026-03-20"), dueKind: "characterisation" },
    ],
    "2026-03-08",
  );
  const { subject, body } = composeDigest(reminders, "https://calibration.example");
  expect(subject).toBe("Equipment and furnaces: 1 out of date, 1 due within 30 days");
  expect(body.split("\n").slice(0, 9)).toEqual([
    "Out of date. Not to be used for a run until it is dealt with:",
    "",
    "- R-S1, calibration: was due on 2026-03-05",
    "  https://calibration.example/standards/R-S1",
    "",
    "Due within 30 days:",
    "",
    "- F-1, Block of six, characterisation: due on 2026-03-20",
    "  https://calibration.example/standards/F-1, Block of six",
  ]);
  expect(composeDigest(reminders.slice(1), "https://calibration.example").body).not.toContain("Out of date");
});
