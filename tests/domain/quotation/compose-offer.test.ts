import { describe, expect, it } from "vitest";
import { noFurnaceReaches } from "@/lib/domain/order/not-done";
import { RecordOrderInput } from "@/lib/domain/order/schema";
import { composeOffer, type OfferedPoint } from "@/lib/domain/quotation/compose-offer";
import type { OfferedLine, OfferedOrder } from "@/lib/domain/quotation/offered-order";
import { lineInput, orderInput } from "../../support/orders";

const customerId = "00000000-0000-4000-8000-000000000001";

const order = (line: object = {}, terms: object = {}, away: Partial<OfferedLine> = {}): OfferedOrder => {
  const { lines, ...said } = RecordOrderInput.parse({
    ...orderInput(customerId, { lines: [{ ...lineInput, setpoints: "600 1160", ...line }] as never }),
    ...terms,
  });
  return {
    ...said,
    ...{ id: "o", number: "O-1", state: "recorded", origin: "desk", version: 1, promisedOn: null },
    ...{ recordedById: "p", recordedAt: new Date(0), acceptedById: null, acceptedAt: null },
    lines: lines.map((one) => ({
      ...one,
      ...{ id: "l", position: 1, sensors: [], groupName: "", siteAddress: "", performedAt: "laboratory" },
      ...{ providerId: null, providerName: "", ...away },
    })),
  };
};

const point = (more: Partial<OfferedPoint> = {}): OfferedPoint => ({
  ...{
    position: 1,
    setpoint: "600 °C",
    state: "decidable",
    expected: "about 1.2 °C",
    sentence: "",
    help: [],
  },
  ...{ scope: { state: "inside", capability: "0.80 °C" }, can: "yes", why: "" },
  ...more,
});

const offer = (said: OfferedOrder, points: readonly OfferedPoint[]) =>
  composeOffer({
    ...{ kind: "quotation", number: "Q-1", on: "2026-03-04", order: said, procedure: null, points },
    laboratory: { name: "Invented", addressLines: "", contact: "", accreditationText: "", isDemo: false },
    customer: { name: "Northern", addressLines: "", contactName: "Nora North" },
    ...{ price: null, currency: "GBP", validUntil: null, delivery: "", sha256Hex: () => "0".repeat(64) },
  });

describe("what an offer remarks", () => {
  it("is why a point cannot be done, with the reason the review gives", () => {
    const lapsed = "No reference in service is certified at this temperature.";
    const none = { state: "unknown", expected: "", can: "no" } as const;
    const made = offer(order(), [
      point(),
      point({ ...none, setpoint: "1160 °C", why: lapsed }),
      point({ ...none, setpoint: "1300 °C", why: noFurnaceReaches }),
    ]);
    expect(made.remarks).toEqual([
      `Cannot be done as things stand: line 1: 1160 °C. ${lapsed} Please agree another way with us.`,
      `Cannot be done as things stand: line 1: 1300 °C. ${noFurnaceReaches} Please agree another way with us.`,
    ]);
    expect(made.lines[0]?.points.map(({ expected }) => expected)).toEqual([
      "about 1.2 °C",
      "not as it stands",
      "not as it stands",
    ]);
  });

  it("still says of a point done elsewhere that its U is not known, and leaves a provider’s to the provider", () => {
    const unknown = point({ state: "unknown", expected: "", can: "elsewhere" });
    expect(offer(order(), [unknown]).remarks).toEqual([
      "What uncertainty to expect is not known yet: line 1: 600 °C.",
    ]);
    const away = offer(order({}, {}, { providerId: "p", providerName: "Invented Cal" }), [unknown]);
    expect(away.remarks).toEqual([]);
    expect(away.lines[0]?.points[0]?.expected).toBe("the provider’s");
  });

  it("is the rule set the work is done under, and what its review finds", () => {
    const audited = {
      ...{ quantity: "3", intervalChoice: "ams2750", setpoints: "600 700", tolerance: "none" },
    };
    const nobody = { decisionRuleAgreedBy: "", decisionRuleAgreedOn: "" };
    const noRule = { decisionRule: "none", guardBandRatio: "", ...nobody };
    const said = order(audited, { ruleSet: "audited-heat-treatment", ...noRule });
    const [rules = "", ...found] = offer(said, [point()]).remarks;
    expect(rules).toMatch(/^Done under “Audited heat treatment”. Each line states .*; of a roll both ends/);
    expect(rules).toContain("Nothing is stated beyond the lowest and the highest calibrated setpoint");
    expect(found).toEqual([
      expect.stringContaining("3 sensors are ordered: of one roll"),
      expect.stringContaining("on one certificate for the lot"),
    ]);
    const made = offer(order({ ...audited, useFrom: "600", useTo: "800" }, noRule), [point()]);
    expect(made.remarks).toEqual([expect.stringContaining("the setpoints do not cover the range of use")]);
    expect(made.remarks[0]).toContain("(AMS2750, edition as agreed)");
    expect(JSON.stringify(made)).not.toContain("from memory");
  });
});
