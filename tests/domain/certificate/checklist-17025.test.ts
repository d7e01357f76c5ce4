import { describe, expect, it } from "vitest";
import type { BundleMember, CertificateBundle } from "@/lib/domain/certificate/bundle";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { unissued } from "@/lib/domain/certificate/reviewed-form";
import { demand } from "@/lib/domain/refusal";
import { inventedParts } from "../../support/certificate-parts";

/*
 * ISO/IEC 17025:2017, 7.8, line by line, asked of one composed content that has all of it. Each question is also asked
 * of a content from which the thing was taken: a question that is answered without it is none. All data are invented.
 */

const anneal = { celsius: 1100, hours: 2, manner: "in a tube furnace in air", performedOn: "2026-03-03" };
const parts = inventedParts();
const change: Parameters<typeof inventedParts>[0] = {
  laboratory: { ...parts.laboratory, accreditation: "Accredited, invented", accreditationNumber: "INV 1" },
  intake: { ...parts.intake, condition: "deviates", conditionNote: "bent at the tip" },
  disclaimers: ["The customer stated the depth of use; the results may not hold for another."],
  run: { ...parts.run, gateDeviations: ["The tips were not warmed. Accepted: single channel."] },
  provider: "Invented Metrology, INV 9",
  site: "7 Works Road, Nowhere",
  anneals: [anneal],
  hasOtherSet: true,
  build: { isUsed: true, highestUsedCelsius: 1150, usedHours: 300 },
  setAside: [{ run: "R-2026-0001", reason: "open circuit after the tip was bent" }],
  opinions: [
    { text: "It can serve another year.", basis: "Drift of 3 years", by: "Ida Invented", on: "2026-03-05" },
  ],
};
const member = (kind: BundleMember["kind"]): BundleMember => ({
  ...{ kind, parts: { ...inventedParts(change), set: kind }, sensorId: "s", customerId: "c" },
  ...{ runId: `run ${kind}`, evaluationId: `evaluation ${kind}` },
});
const members = [member("as-received"), member("after-anneal")];
const bundle: CertificateBundle = {
  ...{ members, filedUnder: members[1] as BundleMember, repeats: [], earlierCounts: [], findings: [] },
  asks: { budget: true, evidence: true, form: "full" },
  performerIds: [],
  amends: {
    kind: "replacement",
    number: "C-2026-0001",
    contentHash: "cd".repeat(32),
    reason: "The serial number was wrong.",
  },
};
const issue = {
  ...{ number: "C-2026-0002", issuedOn: "2026-03-06", exception: "" },
  signatory: { name: "Sam Signer", role: "Signatory" },
  authenticity: { address: "https://lab.example.test/authenticity/abc" },
};
const content = demand(composeBundle(bundle, issue));

type Question = {
  readonly asks: (of: CertificateContent) => boolean;
  /** The same content without the thing. */
  readonly without: (of: CertificateContent) => CertificateContent;
};
const has = (text: string | undefined): boolean => text !== undefined && /\S/.test(text);
const measured = ({ rows }: CertificateContent) => rows.filter(({ state }) => state === "measured");
const day = /^\d{4}-\d{2}-\d{2}$/;
const rowsWith =
  (more: Partial<CertificateContent["rows"][number]>) =>
  (of: CertificateContent): CertificateContent => ({
    ...of,
    rows: of.rows.map((row) => ({ ...row, ...more })),
  });

const questions: Readonly<Record<string, Question>> = {
  "7.8.1.1 reviewed and authorised before release": {
    asks: (of) => of.authorisedBy.name !== unissued.authorisedBy.name && of.number !== unissued.number,
    without: () => demand(composeBundle(bundle, null)),
  },
  "7.8.2.1 a title": { asks: (of) => has(of.title), without: (of) => ({ ...of, title: "" }) },
  "7.8.2.1 b laboratory with address": {
    asks: ({ laboratory: { name, addressLines } }) =>
      has(name) && addressLines.every(has) && addressLines.length > 0,
    without: (of) => ({ ...of, laboratory: { ...of.laboratory, addressLines: [] } }),
  },
  "7.8.2.1 c place of performance": {
    asks: (of) => of.laboratory.placeOfPerformance.includes("7 Works Road"),
    without: (of) => ({ ...of, laboratory: { ...of.laboratory, placeOfPerformance: "" } }),
  },
  "7.8.2.1 d unique identification": {
    asks: (of) => of.number === "C-2026-0002",
    without: (of) => ({ ...of, number: "" }),
  },
  "7.8.2.1 e customer and contact": {
    asks: ({ customer }) => has(customer.name) && has(customer.contact) && customer.addressLines.every(has),
    without: (of) => ({ ...of, customer: { ...of.customer, contact: "" } }),
  },
  "7.8.2.1 f method": {
    asks: ({ method }) => has(method.name) && has(method.description),
    without: (of) => ({ ...of, method: { ...of.method, description: "" } }),
  },
  "7.8.2.1 g item, both identifications, condition": {
    asks: ({ item }) => has(item.tag) && has(item.serial) && has(item.construction) && has(item.condition),
    without: (of) => ({ ...of, item: { ...of.item, condition: "" } }),
  },
  "7.8.2.1 h receipt": {
    asks: (of) => day.test(of.receivedOn) && of.receivedOn <= of.performedFrom,
    without: (of) => ({ ...of, receivedOn: "2026-03-09" }),
  },
  "7.8.2.1 i performance, begun before it ended": {
    asks: (of) => day.test(of.performedFrom) && of.performedFrom <= of.performedTo,
    without: (of) => ({ ...of, performedFrom: "2026-03-09" }),
  },
  "7.8.2.1 j issue, after the performance": {
    asks: (of) => day.test(of.issuedOn) && of.performedTo <= of.issuedOn,
    without: (of) => ({ ...of, issuedOn: "2026-03-01" }),
  },
  "7.8.2.1 k and 7.8.4.2 sampling, or that there was none": {
    asks: (of) => of.sampling.startsWith("Not applicable"),
    without: (of) => ({ ...of, sampling: "" }),
  },
  "7.8.2.1 l only these items": {
    asks: (of) => of.statements.some((text) => text.includes("relate only to the item")),
    without: (of) => ({ ...of, statements: of.statements.slice(1) }),
  },
  "7.8.2.1 m results with units": {
    asks: (of) =>
      measured(of).length > 0 &&
      measured(of).every((row) => has(row.errorCelsius) && /°[CF]$/.test(row.setpoint)),
    without: rowsWith({ setpoint: "600" }),
  },
  "7.8.2.1 n deviations, set aside at the gate": {
    asks: (of) => of.deviations.some((text) => text.includes("Accepted: single channel")),
    without: (of) => ({ ...of, deviations: [] }),
  },
  "7.8.2.1 n exclusions": {
    asks: (of) => of.exclusions?.[0]?.includes("R-2026-0001 was set aside and is not reported") === true,
    without: ({ exclusions: _, ...of }) => of,
  },
  "7.8.2.1 o who authorised": {
    asks: ({ authorisedBy: { name, on } }) => name === "Sam Signer" && day.test(on),
    without: (of) => ({ ...of, authorisedBy: { ...of.authorisedBy, name: "" } }),
  },
  "7.8.2.1 p external results, named and marked row by row": {
    asks: (of) =>
      of.externalResults.includes("Invented Metrology") &&
      of.rows.every(({ isExternal }) => isExternal === true),
    without: rowsWith({ isExternal: undefined }),
  },
  "7.8.2.2 what the customer supplied, with its disclaimer": {
    asks: (of) => of.deviations.some((text) => text.startsWith("The customer stated")),
    without: (of) => ({ ...of, deviations: of.deviations.slice(0, 1) }),
  },
  "7.8.4.1 a uncertainty in the unit of the result, and what it is": {
    asks: (of) =>
      measured(of).every((row) => has(row.expandedCelsius) && has(row.coverageFactor)) &&
      of.uncertaintyStatement.includes("expanded uncertainty"),
    without: rowsWith({ expandedCelsius: "" }),
  },
  "7.8.4.1 b conditions": {
    asks: (of) =>
      ["Immersed", "Reference junction", "ITS-90"].every((word) => of.conditions.join().includes(word)),
    without: (of) => ({ ...of, conditions: of.conditions.slice(0, 2) }),
  },
  "7.8.4.1 c how traceable, each standard by its certificate": {
    asks: (of) =>
      of.traceabilityStatement.includes("traceable") &&
      of.standards.some(({ role }) => role === "reference") &&
      of.standards.every((one) => has(one.calibrationCertificate) && has(one.issuer)),
    without: (of) => ({ ...of, standards: of.standards.slice(2) }),
  },
  "7.8.4.1 d before and after, and the change": {
    asks: (of) =>
      of.sets?.map(({ kind }) => kind).join() === "as-received,after-anneal" &&
      of.changes?.length === 1 &&
      of.adjustment.includes("Annealed by this laboratory on 2026-03-03"),
    without: ({ changes: _, ...of }) => of,
  },
  "7.8.4.1 e conformity where asked for": {
    asks: (of) => measured(of).some(({ conformity }) => conformity.state === "pass"),
    without: rowsWith({ conformity: { state: "no-statement", tolerance: "", probability: "" } }),
  },
  "7.8.4.3 no interval": {
    asks: (of) =>
      of.statements.some((text) => text.includes("recommends no recalibration interval")) &&
      !/next calibration|recalibration (is )?due/i.test(JSON.stringify(of)),
    without: (of) => ({ ...of, statements: [...of.statements, "Next calibration in March 2027."] }),
  },
  "7.8.6.2 which results, which specification, which rule, which risk": {
    asks: ({ conformity: said }) =>
      said?.specification.includes("each row") === true &&
      has(said.rule) &&
      /\d %/.test(said.risk) &&
      has(said.agreed),
    without: (of) => ({ ...of, conformity: null }),
  },
  "7.8.4.1 f and 7.8.7 opinions, with basis and name": {
    asks: ({ opinions }) => opinions?.every((one) => has(one.text) && has(one.basis) && has(one.by)) === true,
    without: ({ opinions: _, ...of }) => of,
  },
  "7.8.8 what is replaced, by number and hash, and why": {
    asks: ({ amends, number }) =>
      amends !== undefined &&
      amends.number !== number &&
      has(amends.reason) &&
      amends.contentHash.length === 64,
    without: ({ amends: _, ...of }) => of,
  },
  "thermal history: before it came, and here": {
    asks: ({ thermalHistory = [] }) =>
      thermalHistory[0]?.includes("up to 1150 °C, for 300 h") === true &&
      thermalHistory[1]?.includes("at 1100 °C for 2 h") === true,
    without: ({ thermalHistory: _, ...of }) => of,
  },
};

describe("a composed content answers ISO/IEC 17025:2017, 7.8", () => {
  it.each(Object.keys(questions))("%s", (name) => {
    const { asks, without } = questions[name] as Question;
    expect(asks(content)).toBe(true);
    expect(asks(without(content))).toBe(false);
  });

  it("7.8.1.3 simplified only with its agreement, and it says so", () => {
    const simplified = demand(
      composeBundle(
        { ...bundle, asks: { ...bundle.asks, form: "simplified", formAgreement: "letter of 2026-02-20" } },
        issue,
      ),
    );
    expect(simplified.formStatement).toContain("letter of 2026-02-20");
    const kept = Object.entries(questions).filter(([name]) => !/7\.8\.4\.1 b|thermal history/.test(name));
    expect(kept.filter(([, { asks }]) => !asks(simplified)).map(([name]) => name)).toEqual([]);
    expect(content.formStatement).toBeUndefined();
  });
});
