import { describe, expect, it } from "vitest";
import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import { CertificateContent } from "@/lib/domain/certificate/content";
import type { EvaluatedPoint, EvaluatedScope } from "@/lib/domain/evidence/evaluation";
import { demand } from "@/lib/domain/refusal";
import { inventedParts } from "../../support/certificate-parts";

const outside: EvaluatedScope = { state: "outside", capabilityCelsius: null, isRaised: false, source: null };
const inside: EvaluatedScope = {
  state: "inside",
  capabilityCelsius: 1,
  isRaised: false,
  source: "invented schedule, line 1",
};
const accredited = {
  ...inventedParts().laboratory,
  accreditation: "Accredited by an invented body",
  accreditationNumber: "INV 0000",
  accreditationMark: { sha256: "cd".repeat(32), mediaType: "image/png" as const },
};
/** The first, an invalid one, and the last, as they lie against the scope. */
const compose = (first: EvaluatedScope | null, last: EvaluatedScope | null, provider?: string) => {
  const [one, invalid, other] = inventedParts().points;
  const placed = (point: EvaluatedPoint | undefined, scope: EvaluatedScope | null) =>
    point?.state === "measured" && scope ? { ...point, scope } : point;
  const points = [placed(one, first), invalid, placed(other, last)].flatMap((point) => point ?? []);
  return demand(
    composeCertificate(
      inventedParts({ laboratory: accredited, points, ...(provider ? { provider } : {}) }),
      null,
    ),
  );
};

describe("a certificate against the laboratory's scope", () => {
  it("claims nothing where no scope is stated, whatever the laboratory's record says", () => {
    const content = compose(null, null);
    expect(content.laboratory.accreditation).toBe("");
    expect(content.laboratory).not.toHaveProperty("accreditationNumber");
    expect(content.laboratory).not.toHaveProperty("accreditationMark");
    expect(content).not.toHaveProperty("scopeStatement");
    for (const row of content.rows) expect(row).not.toHaveProperty("scope");
  });

  it("marks points one by one, and keeps the statement for those inside", () => {
    const content = compose(inside, outside);
    expect(content.rows.map(({ scope }) => scope)).toEqual(["inside", undefined, "outside"]);
    expect(content.laboratory).toMatchObject({
      accreditation: accredited.accreditation,
      accreditationNumber: "INV 0000",
      accreditationMark: accredited.accreditationMark,
    });
    expect(content.scopeStatement).toMatch(/^† Outside .* not covered .* without this sign lie within/);
  });

  it("says that all are inside without any sign", () => {
    expect(compose(inside, inside).scopeStatement).toBe(
      "Every result lies within the laboratory's scope of accreditation.",
    );
  });

  it("claims no accreditation where every point is outside, and still marks each", () => {
    const content = compose(outside, outside);
    expect(content.rows.map(({ scope }) => scope)).toEqual(["outside", undefined, "outside"]);
    expect(content.laboratory.accreditation).toBe("");
    expect(content.laboratory).not.toHaveProperty("accreditationMark");
    expect(content.scopeStatement).toMatch(/^† Outside .* no result of this certificate is covered/);
  });

  it("claims nothing over results of an external provider, wherever they lie", () => {
    const content = compose(inside, outside, "Invented Metrology");
    expect(content.laboratory.accreditation).toBe("");
    expect(content.laboratory).not.toHaveProperty("accreditationNumber");
    expect(content.laboratory).not.toHaveProperty("accreditationMark");
    expect(content).not.toHaveProperty("scopeStatement");
    for (const row of content.rows) expect(row).not.toHaveProperty("scope");
  });

  it("is read as before where it says nothing of a scope", () => {
    const content = compose(null, null);
    expect(CertificateContent.parse(JSON.parse(JSON.stringify(content)))).toEqual(content);
  });
});
