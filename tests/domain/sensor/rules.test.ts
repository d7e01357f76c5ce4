import { describe, expect, it } from "vitest";
import { conditionWith, intakeFindings } from "@/lib/domain/sensor/intake-findings";
import { decideCollection, decideReceipt } from "@/lib/domain/sensor/rules";
import { ReceiveSensorsInput } from "@/lib/domain/sensor/schema";
import { readSerials } from "@/lib/domain/sensor/serials";
import { canBecome, sensorStates } from "@/lib/domain/sensor/transitions";
import { intakeInput } from "../../support/orders";

const pasted = (text: string) => {
  const read = readSerials(text);
  if (!read.ok) throw new Error(read.message);
  return read.serials;
};
const line = { position: 1, quantity: 3, received: [{ serial: "A1", tag: "T-000007", position: 1 }] };
const fieldOf = (answer: ReturnType<typeof decideReceipt>) =>
  answer.ok ? "" : answer.refusal.fields?.serials;

describe("pasted serial numbers", () => {
  it("come one per line, from any system, with what copying adds taken off", () => {
    expect(pasted("A1\r\n\r\n  B 2\t\nC\t3\rD4").map(({ serial }) => serial)).toEqual([
      "A1",
      "B 2",
      "C 3",
      "D4",
    ]);
  });

  it.each([
    ["A1\n\u200bB2", "zero-width space (U+200B)"],
    ["A1\nB2\u202e", "right-to-left override (U+202E)"],
    ["A1\n\ufeffB2", "byte-order mark (U+FEFF)"],
  ])("are refused by line where a character cannot be seen, which is named: %j", (text, named) => {
    const read = readSerials(text);
    expect(read).toMatchObject({ ok: false, message: expect.stringContaining(`Line 2 holds`) });
    expect(read.ok ? "" : read.message).toContain(named);
  });

  it("are at most two hundred", () => {
    const many = (count: number) => Array.from({ length: count }, (_, index) => `S${index}`).join("\n");
    expect(readSerials(many(200)).ok).toBe(true);
    expect(readSerials(many(201))).toMatchObject({
      ok: false,
      message: expect.stringContaining("at most 200"),
    });
  });

  it("of ten megabytes are refused for their length, before a line of them is read", () => {
    const issues = ReceiveSensorsInput.safeParse(intakeInput("O-2026-0001", "S-1\n".repeat(2_500_000))).error
      ?.issues;
    expect(issues?.[0]).toMatchObject({ path: ["serials"], message: expect.stringContaining("at most 200") });
  });

  it("are refused by line when one stands twice, without regard to case", () => {
    const read = readSerials("A1\n\nB2\na1");
    expect(read).toMatchObject({
      ok: false,
      message: expect.stringContaining("line 4 repeats “a1” of line 1"),
    });
    expect(readSerials(" \n ")).toMatchObject({ ok: false });
  });
});

describe("what may be received", () => {
  it("fits the line", () => {
    expect(decideReceipt("accepted", line, pasted("B2\nC3")).ok).toBe(true);
  });

  it("names by line what is here already, on whichever line of the order", () => {
    expect(fieldOf(decideReceipt("accepted", line, pasted("B2\na1")))).toContain(
      "line 2, “a1”, is already here as T-000007",
    );
    const elsewhere = { ...line, received: [{ serial: "B2", tag: "T-000009", position: 2 }] };
    expect(fieldOf(decideReceipt("accepted", elsewhere, pasted("B2")))).toContain("T-000009");
  });

  it("says how many may still come", () => {
    expect(fieldOf(decideReceipt("accepted", line, pasted("B\nC\nD")))).toContain(
      "orders 3, 1 are here, so 2 may come; 3",
    );
  });

  it.each(["recorded", "completed", "cancelled"] as const)("nothing for an order that is %s", (state) => {
    expect(decideReceipt(state, line, pasted("B2"))).toMatchObject({ refusal: { code: "wrong-state" } });
  });
});

describe("intake", () => {
  it("takes what stands for all, unless a sensor says otherwise", () => {
    const { sensors } = ReceiveSensorsInput.parse({
      ...intakeInput("O-2026-0001", "A\nB"),
      loopResistanceOhm: "12.5",
      each: [{}, { loopResistanceOhm: "14", polarity: "reversed" }],
    });
    expect(sensors).toMatchObject([
      { serial: "A", loopResistanceOhm: 12.5, polarity: "ok", insulationMegaohm: null },
      { serial: "B", loopResistanceOhm: 14, polarity: "reversed" },
    ]);
  });

  it("wants words where the condition deviates, at the field that said so", () => {
    const issues = (more: object) =>
      ReceiveSensorsInput.safeParse({ ...intakeInput("O-2026-0001", "A\nB"), ...more }).error?.issues.map(
        (issue) => issue.path.join("."),
      );
    expect(issues({ condition: "deviates" })).toContain("conditionNote");
    expect(issues({ each: [{}, { condition: "deviates" }] })).toEqual(["each.1.conditionNote"]);
    expect(issues({ loopResistanceOhm: "12,5" })).toEqual(["loopResistanceOhm"]);
    expect(issues({ insulationMegaohm: "-3" })).toEqual(["insulationMegaohm"]);
  });

  it("records a check outside its limit as a deviation, and says each thing once", () => {
    const described = { condition: "as-described", conditionNote: "" } as const;
    const reversed = [{ check: "polarity", verdict: "outside", words: "polarity is reversed" }] as const;
    const good = [{ check: "polarity", verdict: "within", words: "polarity is correct" }] as const;
    expect(conditionWith(described, good)).toEqual(described);
    const recorded = conditionWith(described, reversed);
    expect(recorded).toEqual({ condition: "deviates", conditionNote: "polarity is reversed" });
    expect(intakeFindings(recorded, reversed)).toEqual(["polarity is reversed"]);
    expect(intakeFindings(described, good)).toEqual([]);
    const bent = { condition: "deviates", conditionNote: "bent tip" } as const;
    expect(conditionWith(bent, reversed)).toEqual(bent);
    expect(intakeFindings(bent, reversed)).toEqual(["condition deviates (bent tip)", "polarity is reversed"]);
  });
});

describe("handing back", () => {
  it("needs a reason without a certificate, and never takes a sensor out of its run", () => {
    expect(decideCollection("issued", "")).toMatchObject({ ok: true, value: { withoutCertificate: false } });
    expect(decideCollection("received", "")).toMatchObject({
      refusal: { fields: { reason: expect.any(String) } },
    });
    expect(decideCollection("received", "broken sheath")).toMatchObject({
      value: { withoutCertificate: true },
    });
    for (const state of ["loaded", "measured", "evaluated", "in-review", "collected"] as const)
      expect(decideCollection(state, "x")).toMatchObject({ refusal: { code: "wrong-state" } });
  });

  it("ends the thread", () => {
    expect(sensorStates.filter((to) => canBecome("collected", to))).toEqual([]);
    for (const [index, state] of sensorStates.slice(0, -1).entries())
      expect(canBecome(state, sensorStates[index + 1]!)).toBe(true);
  });
});
