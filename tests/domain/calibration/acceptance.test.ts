import { describe, expect, it } from "vitest";
import { acceptanceOf, acceptedInForce } from "@/lib/domain/calibration/acceptance";
import { documentType } from "@/lib/domain/calibration/document-type";
import { monthsAfter } from "@/lib/domain/calibration/months-after";
import { defaultParents, Parents } from "@/lib/domain/calibration/parent";
import { printedNumber } from "@/lib/domain/calibration/printed-number";
import { isApprovedFor } from "@/lib/domain/provider/is-approved-for";

const at = (day: string) => new Date(`${day}T10:00:00Z`);
const decided = (performedOn: string, ...decisions: [string, string][]) => ({
  performedOn,
  decisions: decisions.map(([decision, day]) => ({ decision, decidedAt: at(day) })),
});

describe("the calibration in force", () => {
  const old = decided("2026-01-10", ["accepted", "2026-01-12"]);
  const late = decided("2026-03-01", ["accepted", "2026-03-20"]);
  const rejected = decided("2026-04-01", ["accepted", "2026-04-02"], ["rejected", "2026-04-10"]);
  const waiting = decided("2026-05-01");
  const all = [old, late, rejected, waiting];
  const inForce = (day: string, moment = day) => acceptedInForce(all, { day, moment: at(moment) });

  it("is the last one performed by the day and accepted by the moment", () => {
    expect(inForce("2026-01-11")).toBeNull();
    expect(inForce("2026-01-12")).toBe(old);
    expect(inForce("2026-03-10")).toBe(old);
    expect(inForce("2026-03-20")).toBe(late);
    // Performed before the day, accepted after the moment: what is decided later changes nothing.
    expect(inForce("2026-03-25", "2026-03-19")).toBe(old);
    expect(inForce("2026-01-20", "2026-12-31")).toBe(old);
  });

  it("was a rejected one until its rejection, and never one that waits", () => {
    expect(inForce("2026-04-05")).toBe(rejected);
    expect(inForce("2026-04-10")).toBe(late);
    expect(inForce("2026-06-01")).toBe(late);
    expect(acceptanceOf([])).toBe("waiting");
    expect(acceptanceOf(rejected.decisions)).toBe("rejected");
  });
});

describe("an approval of a provider", () => {
  const provider = {
    state: "approved",
    approvedFrom: "2026-01-01",
    approvedUntil: "2026-12-31",
    scope: [{ kind: "reference", range: "" }],
  } as const;
  it.each([
    [provider, "reference", "2026-01-01", true],
    [provider, "reference", "2026-12-31", true],
    [provider, "reference", "2025-12-31", false],
    [provider, "reference", "2027-01-01", false],
    [provider, "voltmeter", "2026-06-01", false],
    [{ ...provider, state: "suspended" } as const, "reference", "2026-06-01", false],
    [
      { ...provider, state: "candidate", approvedFrom: null, approvedUntil: null } as const,
      "reference",
      "2026-06-01",
      false,
    ],
    [null, "reference", "2026-06-01", false],
  ])("counts on its days, for its kinds, while it lasts", (given, kind, day, counts) => {
    expect(isApprovedFor(given, kind, day)).toBe(counts);
  });
});

describe("what comes with a certificate", () => {
  const bytes = (text: string) => new TextEncoder().encode(text);
  it.each([
    [bytes("%PDF-1.7\n"), "application/pdf"],
    [Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0), "image/png"],
    [Uint8Array.of(0xff, 0xd8, 0xff, 0xe0), "image/jpeg"],
    [bytes('\uFEFF\n <?xml version="1.0"?>'), "application/xml"],
    [bytes("<dcc:a/>"), "application/xml"],
    [bytes("<!-- a -->"), "application/xml"],
    [bytes("< no tag"), null],
    [bytes("PDF"), null],
    [bytes(""), null],
    [bytes("MZ\u0090"), null],
  ])("is told by its first bytes", (given, type) => {
    expect(documentType(given)).toBe(type);
  });

  it("names each step behind one named before it, and a U with its unit", () => {
    const step = { kind: "si", title: "Kelvin", route: "realisation" };
    expect(Parents.safeParse([step, { ...step, below: 1 }]).success).toBe(true);
    for (const lines of [[{ ...step, below: 1 }], [step, { ...step, below: 2 }], [{ ...step, expanded: 1 }]])
      expect(Parents.safeParse(lines).success).toBe(false);
  });

  it.each(["nmi", "accredited", "in-house", "other"] as const)(
    "is offered what is usual for the route %s",
    (route) => {
      const offered = defaultParents(route, "Institute");
      expect(Parents.safeParse(offered).success).toBe(true);
      expect(offered.at(-1)?.kind).toBe(route === "nmi" || route === "accredited" ? "si" : undefined);
    },
  );

  it("is due a number of months later, at most on the last day of that month", () => {
    expect(monthsAfter("2026-03-02", 12)).toBe("2027-03-02");
    expect(monthsAfter("2026-08-31", 6)).toBe("2027-02-28");
  });

  it("is read from our own certificate as it is printed", () => {
    expect(printedNumber("\u221213.2")).toBe(-13.2);
    expect(printedNumber("10\u202f500.4")).toBe(10500.4);
    expect(printedNumber("")).toBeNaN();
  });
});
