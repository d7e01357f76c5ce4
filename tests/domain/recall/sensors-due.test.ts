import { describe, expect, it } from "vitest";
import { RecallInput } from "@/lib/domain/recall/schema";
import { type LastCalibration, sensorsDue, toRemind } from "@/lib/domain/recall/sensors-due";

const today = "2027-03-05";
const last = (serial: string, more: Partial<LastCalibration> = {}): LastCalibration => ({
  serial,
  typeLetter: "K",
  tag: `T-${serial}`,
  certificate: `C-${serial}`,
  performedOn: "2026-03-05",
  orderNumber: "O-1",
  isHere: false,
  stands: true,
  ...more,
});
const row = (serial: string, months: number | null, noticeDays = 30) => ({ serial, months, noticeDays });
const stages = (...args: Parameters<typeof sensorsDue>) =>
  sensorsDue(...args).map(({ serial, stage, dueOn, from }) => `${serial} ${stage} ${dueOn} ${from}`);

describe("when a customer's sensors come due", () => {
  it("is by the last that was said of the serial, else by the last that was said of all", () => {
    const rows = [row("", 24), row("A", 6), row("A", 12), row("", 12), row("B", null)];
    expect(stages(rows, [last("A"), last("B"), last("C")], today)).toEqual([
      "A due 2027-03-05 own",
      "C due 2027-03-05 all",
      "B no-interval null own",
    ]);
  });

  it("is overdue from the day after, due within the days of notice, and later before", () => {
    const at = (performedOn: string) => stages([row("", 12)], [last("A", { performedOn })], today)[0];
    expect(at("2026-03-04")).toBe("A overdue 2027-03-04 all");
    expect(at("2026-03-05")).toBe("A due 2027-03-05 all");
    expect(at("2026-04-04")).toBe("A due 2027-04-04 all");
    expect(at("2026-04-05")).toBe("A later 2027-04-05 all");
  });

  it("says nothing of a sensor that is here again, and nothing where all was ended", () => {
    expect(stages([row("", 6)], [last("A", { isHere: true })], today)).toEqual([
      "A under-way 2026-09-05 all",
    ]);
    expect(stages([row("", 6), row("", null)], [last("A")], today)).toEqual(["A no-interval null none"]);
  });

  it("is not counted from a withdrawn certificate: such a sensor comes first, has no day, and is no reminder's", () => {
    const all = [last("A", { performedOn: "2025-01-01" }), last("B", { stands: false })];
    expect(stages([row("", 12)], all, today)).toEqual(["B withdrawn null all", "A overdue 2026-01-01 all"]);
    expect(toRemind(sensorsDue([row("", 12)], all, today), [])).toEqual([
      { serial: "A", dueOn: "2026-01-01" },
    ]);
    const here = last("B", { stands: false, isHere: true });
    expect(stages([row("", 12)], [here], today)).toEqual(["B under-way null all"]);
  });

  it("puts what is overdue first, then by day, then by serial", () => {
    const all = [
      last("D", { performedOn: "2026-06-01" }),
      last("C"),
      last("A", { performedOn: "2025-01-01" }),
      last("B"),
    ];
    expect(sensorsDue([row("", 12)], all, today).map(({ serial }) => serial)).toEqual(["A", "B", "C", "D"]);
  });

  it("reminds once of each serial and day", () => {
    const due = sensorsDue([row("", 12)], [last("A"), last("A", { typeLetter: "N" }), last("B")], today);
    expect(toRemind(due, [])).toEqual([
      { serial: "A", dueOn: "2027-03-05" },
      { serial: "B", dueOn: "2027-03-05" },
    ]);
    expect(toRemind(due, [{ serial: "A", dueOn: "2027-03-05" }])).toEqual([
      { serial: "B", dueOn: "2027-03-05" },
    ]);
    expect(toRemind(due, [{ serial: "A", dueOn: "2026-03-05" }])).toHaveLength(2);
    expect(toRemind(sensorsDue([row("", 24)], [last("A")], today), [])).toEqual([]);
  });
});

describe("an interval as it is typed", () => {
  it.each(["0", "121", "1.5", "-3", "twelve"])("refuses %s months", (months) => {
    expect(RecallInput.safeParse({ months }).success).toBe(false);
  });
  it("takes 1 to 120 months, or none", () => {
    expect(RecallInput.parse({ months: "12" })).toEqual({ serial: "", months: 12, noticeDays: 30 });
    expect(RecallInput.parse({ serial: " A ", months: "", noticeDays: "0" })).toEqual({
      ...{ serial: "A", months: null, noticeDays: 0 },
    });
  });
});
