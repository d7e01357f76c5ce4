import { describe, expect, it } from "vitest";
import { decideEnd, decideScopeLine } from "@/lib/domain/scope/decide-line";
import type { StoredScopeLine } from "@/lib/domain/scope/line";
import { ScopeLineInput } from "@/lib/domain/scope/schema";
import { scopeInForce } from "@/lib/domain/scope/scope-in-force";

const recorded: StoredScopeLine = {
  id: "1",
  typeLetter: "K",
  fromCelsius: 300,
  toCelsius: 1000,
  capability: { kind: "constant", expandedCelsius: 1.2 },
  validFrom: "2026-01-01",
  validUntil: "2026-12-31",
  source: "schedule of 2026, line 1 (invented)",
  recordedAt: new Date("2026-01-05T08:00:00Z"),
  version: 1,
};
const typed = {
  typeLetter: "K",
  fromCelsius: 300,
  toCelsius: 1000,
  capability: { kind: "constant", expandedCelsius: 1 },
  validFrom: "2027-01-01",
  source: "schedule of 2027, line 1 (invented)",
} as const;
const decide = (change: object, lines = [recorded]) => {
  const result = decideScopeLine(ScopeLineInput.parse({ ...typed, ...change }), lines);
  return result.ok ? "recorded" : Object.keys(result.refusal.fields ?? {}).join();
};

describe("a line of the scope", () => {
  it.each([
    ["another type on the same days", { typeLetter: "N", validFrom: "2026-03-01" }],
    ["the day after the former's last", { validFrom: "2027-01-01" }],
    [
      "a range that meets it at one temperature",
      { validFrom: "2026-03-01", fromCelsius: 1000, toCelsius: 1200 },
    ],
    ["days before it began", { validFrom: "2025-01-01", validUntil: "2025-12-31" }],
  ])("is recorded beside another: %s", (_, change) => {
    expect(decide(change)).toBe("recorded");
  });

  it.each([
    ["on the former's last day", { validFrom: "2026-12-31" }],
    ["from before it without end", { validFrom: "2025-06-01" }],
    ["until its first day", { validFrom: "2025-06-01", validUntil: "2026-01-01" }],
    ["by a degree", { validFrom: "2026-03-01", fromCelsius: 999, toCelsius: 1200 }],
    ["within it", { validFrom: "2026-03-01", fromCelsius: 500, toCelsius: 600 }],
  ])("is refused where it overlaps: %s", (_, change) => {
    expect(decide(change)).toBe("fromCelsius");
    expect(decide(change, [])).toBe("recorded");
  });

  it("meets a line without a last day on every later one", () => {
    expect(decide({ validFrom: "2031-01-01" }, [{ ...recorded, validUntil: null }])).toBe("fromCelsius");
  });

  it("states something over its whole range", () => {
    const table = (...celsius: number[]) => ({
      kind: "table",
      points: celsius.map((one) => ({ celsius: one, expandedCelsius: 1 })),
    });
    expect(decide({ capability: table(300, 1000) })).toBe("recorded");
    expect(decide({ capability: table(300, 999) })).toBe("capability.points");
    expect(decide({ capability: { kind: "polynomial", coefficientsCelsius: [1, -0.001] } })).toBe(
      "capability.kind",
    );
  });

  it("rises from low to high, and ends no earlier than it begins", () => {
    const paths = (change: object) =>
      ScopeLineInput.safeParse({ ...typed, ...change }).error?.issues.map(({ path }) => path.join("."));
    expect(paths({ toCelsius: 300 })).toEqual(["toCelsius"]);
    expect(paths({ validUntil: "2026-12-31" })).toEqual(["validUntil"]);
    expect(paths({ validUntil: "" })).toBeUndefined();
    expect(paths({ capability: { kind: "constant", expandedCelsius: 0 } })).toEqual([
      "capability.expandedCelsius",
    ]);
  });
});

describe("the end of a line", () => {
  const open = { ...recorded, validUntil: null };
  const code = (line: StoredScopeLine, lastDay: string) => {
    const result = decideEnd(line, lastDay, "2026-06-01");
    return result.ok ? "ended" : `${result.refusal.code} ${Object.keys(result.refusal.fields ?? {})}`;
  };

  it("is today at the earliest, said once, and not before it began", () => {
    expect(code(open, "2026-06-01")).toBe("ended");
    expect(code(open, "2027-06-01")).toBe("ended");
    expect(code(open, "2026-05-31")).toBe("rule lastDay");
    expect(code({ ...open, validFrom: "2026-09-01" }, "2026-08-01")).toBe("rule lastDay");
    expect(code(recorded, "2026-06-01")).toBe("wrong-state ");
  });
});

describe("the scope in force", () => {
  const moment = new Date("2026-06-01T08:00:00Z");
  const on = (day: string, at = moment, lines = [recorded]) => scopeInForce(lines, { day, moment: at });

  it("counts first and last day, and is not stated where no line is in force", () => {
    expect(on("2026-01-01")).toHaveLength(1);
    expect(on("2026-12-31")).toHaveLength(1);
    expect(on("2025-12-31")).toBeUndefined();
    expect(on("2027-01-01")).toBeUndefined();
    expect(on("2026-06-01", moment, [])).toBeUndefined();
  });

  it("leaves out what was recorded later than the moment", () => {
    expect(on("2026-02-01", new Date("2026-01-04T08:00:00Z"))).toBeUndefined();
  });

  it("writes a constant as older readers know it, a formula beside it, by type and temperature", () => {
    const capability = { kind: "proportional", constantCelsius: 0.5, perCelsius: 0.001 } as const;
    const formula = { ...recorded, fromCelsius: 0, toCelsius: 300, capability };
    expect(on("2026-06-01", moment, [{ ...recorded, typeLetter: "N" }, recorded, formula])).toEqual([
      { type: "K", fromCelsius: 0, toCelsius: 300, capability, source: recorded.source },
      { type: "K", fromCelsius: 300, toCelsius: 1000, expandedCelsius: 1.2, source: recorded.source },
      { type: "N", fromCelsius: 300, toCelsius: 1000, expandedCelsius: 1.2, source: recorded.source },
    ]);
  });
});
