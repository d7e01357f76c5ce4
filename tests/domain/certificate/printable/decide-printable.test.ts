import { describe, expect, it } from "vitest";
import { composeAmendment } from "@/lib/domain/amendment/compose-amendment";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import { decidePrintable } from "@/lib/domain/certificate/printable/decide-printable";
import { placeInWords } from "@/lib/domain/certificate/printable/place-in-words";
import { unprintableMessage } from "@/lib/domain/certificate/printable/unprintable";
import { CustomerInput } from "@/lib/domain/customer/schema";
import { OrderLineInput } from "@/lib/domain/order/schema";
import { demand } from "@/lib/domain/refusal";
import { SensorChecks } from "@/lib/domain/sensor/schema";
import { readSerials } from "@/lib/domain/sensor/serials";
import { inventedParts } from "../../../support/certificate-parts";

/* What no document could print is refused before it is signed. All of it is invented. */

const parts = inventedParts();
const withConstruction = (construction: string) => ({
  ...parts,
  sensor: { ...parts.sensor, construction },
});
const bundleOf = (construction: string) => {
  const own = { kind: "as-received" as const, parts: withConstruction(construction) };
  const member = { ...own, sensorId: "s", customerId: "c", runId: "r", evaluationId: "e" };
  return {
    members: [member],
    filedUnder: member,
    ...{ repeats: [], earlierCounts: [], findings: [], performerIds: [] },
    asks: { budget: false, evidence: false, language: "en-de" as const },
  };
};
const refusalOf = (construction: string) => {
  const composed = composeBundle(bundleOf(construction), null);
  return composed.ok ? null : composed.refusal;
};

describe("a certificate that could not be printed", () => {
  it.each([
    ["sheath ⌀ 3 mm", /no “⌀” \(U\+2300\), which stands in the construction of the item\. Write “Ø” instead/],
    ["up to 1200 ℃", /“℃” \(U\+2103\).* Write “°C” instead/],
    ["sheath\t3 mm", /a tab \(U\+0009\).*Write a space instead/],
    ["熱電対", /“熱” \(U\+71B1\).*Latin, Greek or Cyrillic.* 2 more characters like it/],
  ])("is refused where it is composed, with place, character and remedy: %s", (construction, words) => {
    expect(refusalOf(construction)).toMatchObject({ code: "rule", message: expect.stringMatching(words) });
    expect(refusalOf(construction)?.message).toContain("Change it on the order's line.");
  });

  it("is none where everything can be printed", () => {
    expect(refusalOf("sheath Ø 3 mm, up to 1200 °C, Ω, Жя")).toBeNull();
  });

  it("is refused as an amendment too", () => {
    const issue = {
      number: "C-1",
      issuedOn: "2026-03-09",
      exception: "",
      signatory: { name: "S", role: "S" },
    };
    const amends = {
      kind: "amendment" as const,
      number: "C-1",
      contentHash: "cd".repeat(32),
      reason: "Ø was ⌀.",
    };
    expect(composeAmendment(demand(composeCertificate(parts, issue)), amends, {}, null)).toMatchObject({
      ok: false,
      refusal: { code: "rule", message: expect.stringContaining("the reason of the change") },
    });
  });

  it("names the place of each text of a content in words", () => {
    const content = demand(composeCertificate(parts, null));
    const set = {
      ...content,
      deviations: ["⌀"],
      customer: { ...content.customer, addressLines: ["ok", "⌀"] },
    };
    expect(decidePrintable(set)).toMatchObject({
      refusal: { message: expect.stringContaining("the customer's address") },
    });
    expect(placeInWords("sets.1.item.serial").words).toBe("the serial number");
    expect(placeInWords("lot.statement").words).toBe("“lot statement”");
  });
});

it("is said at a field, where it is typed", () => {
  expect(unprintableMessage("Ø 3 mm")).toBeNull();
  expect(unprintableMessage("⌀ 3 mm")).toBe(
    "A certificate cannot print “⌀” (U+2300): its font does not have it. Write “Ø” instead.",
  );
});

describe("is refused where it is typed", () => {
  const customer = {
    ...{ name: "Nordofen", addressLines: "Am Ofen 1\nBremen", contactName: "Nora" },
    email: "nora@example.test",
  };

  it.each(["name", "addressLines", "contactName"])("the customer's %s", (field) => {
    expect(CustomerInput.safeParse(customer).success).toBe(true);
    expect(CustomerInput.safeParse({ ...customer, [field]: "東京" }).error?.issues).toMatchObject([
      { path: [field], message: expect.stringContaining("A certificate cannot print “東” (U+6771)") },
    ]);
  });

  it("a line's construction, beside what else is wrong there", () => {
    const { issues } = OrderLineInput.safeParse({ construction: "sheath ⌀ 3 mm" }).error ?? { issues: [] };
    expect(issues.find(({ path }) => path[0] === "construction")?.message).toContain("Write “Ø” instead");
  });

  it("a serial, by its line, and the condition it came in", () => {
    expect(readSerials("A-1\nB-℃")).toMatchObject({
      ok: false,
      message: expect.stringMatching(/^Line 2: .*“°C”/),
    });
    expect(SensorChecks.safeParse({ conditionNote: "bent ↯" }).success).toBe(false);
  });
});
