import { expect, it } from "vitest";
import { gateCounts } from "@/lib/domain/review/gate-counts";
import { speaksOfInterval } from "@/lib/domain/review/speaks-of-interval";
import { wholeFreedom } from "@/lib/domain/review/whole-freedom";

it("counts what the gate warned of and what was set aside, and nothing where there was no gate", () => {
  const row = (severity: "ok" | "warning" | "overridable", given: string | null = null) => ({
    severity,
    given,
  });
  const rows = [row("ok"), row("warning"), row("warning"), row("overridable", "agreed")];
  expect(gateCounts(rows)).toEqual({ warnings: 2, setAside: 1 });
  expect(gateCounts([])).toBeNull();
});

it("cuts degrees of freedom as the result does, and does not round them up", () => {
  expect(wholeFreedom(37_022.9)).toBe("37\u202f022");
  expect(wholeFreedom(8.999_999_999_999)).toBe("9");
  expect(wholeFreedom(null)).toBe("∞");
});

it("hears a recalibration interval in what a person wrote", () => {
  for (const text of [
    "The customer should recalibrate this sensor every 12 months.",
    "Interval: one year.",
    "Due every 2 years",
  ])
    expect(speaksOfInterval(text)).toBe(true);
  expect(speaksOfInterval("The serial was misread at intake.")).toBe(false);
});
