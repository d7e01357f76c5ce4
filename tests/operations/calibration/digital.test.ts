import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Said } from "@/lib/domain/calibration/dcc-says";
import { receiveDigital } from "@/lib/operations/calibration/receive-digital";
import { recordCalibration } from "@/lib/operations/calibration/record";
import { recordEquipment } from "@/lib/operations/equipment/record";
import { execute } from "@/lib/operations/execute";
import { calibrationView } from "@/lib/views/calibration";
import { calibrationFormView } from "@/lib/views/calibration-form";
import { approveIssuer, certificateOf } from "../../support/calibrate";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

const file = readFileSync(
  new URL("../../../prisma/seed/reference-certificate.dcc.xml", import.meta.url),
  "utf8",
);
const issuer = "Northfell Thermometry Laboratory (invented)";
const bytesOf = (text: string) => new TextEncoder().encode(text);

let bench: RunBench;
let equipmentId: string;
beforeAll(async () => {
  bench = await openRunBench();
  await approveIssuer(bench.manager, benchClock, issuer);
  const reference = {
    kind: "reference" as const,
    type: "R" as const,
    protection: "alumina-sheath" as const,
    driftHalfWidthCelsius: 0.3,
    inhomogeneityRelativeHalfWidth: 0.0002,
    basis: "invented",
  };
  const named = {
    tag: "REF-R-01",
    maker: "Invented",
    model: "",
    serial: "EM-R-1107",
    particulars: reference,
  };
  equipmentId = (await execute(recordEquipment, bench.manager, named, benchClock)).id;
});
afterAll(() => bench.close());

const receive = (text: string, actor = bench.manager) =>
  execute(
    receiveDigital,
    actor,
    { equipmentId, file: { fileName: "r.dcc.xml", bytes: bytesOf(text) }, schemaFolder: null },
    benchClock,
  );
const counts = () =>
  inLaboratory(async (tx) => [
    await tx.evidenceDocument.count(),
    await tx.calibration.count(),
    await tx.auditEvent.count(),
  ]);
const viewOf = (document: string) =>
  calibrationFormView(bench.manager, equipmentId, { document, offer: 0, schemaFolder: null });

/** What a person sends who confirms everything the file says. */
const confirmed = (documentId: string, says: readonly Said[]) => {
  const value = (field: string) => says.find((one) => one.field === field)?.value;
  const points = says.filter(({ field }) => field.endsWith(".celsius")).length;
  return certificateOf(equipmentId, {
    certificate: String(value("certificate")),
    itemSerial: String(value("itemSerial")),
    issuer: String(value("issuer")),
    accreditation: String(value("accreditation")),
    performedOn: String(value("performedOn")),
    dueOn: "2027-09-16",
    conditions: String(value("conditions")),
    traceabilityStatement: String(value("traceabilityStatement")),
    findings: {
      kind: "reference",
      points: Array.from({ length: points }, (_, index) => ({
        celsius: Number(value(`findings.points.${index}.celsius`)),
        deviationMicrovolt: Number(value(`findings.points.${index}.deviationMicrovolt`)),
      })),
      expanded: Number(value("findings.expanded")),
      coverageFactor: Number(value("findings.coverageFactor")),
      unit: value("findings.unit") as "microvolt",
    },
    document: { kind: "digital", documentId },
  });
};

describe("a digital certificate that does not hold", () => {
  it.each([
    ["a list of another length", file.replace("-1.1 -2.0 -3.2", "-1.1 -2.0"), /valueXMLList.*|length/s],
    [
      "a date after another",
      file.replace("2026-09-14</dcc:begin", "2026-09-24</dcc:begin"),
      /PerformanceDate/,
    ],
    [
      "an entity",
      `<!DOCTYPE a [<!ENTITY e SYSTEM "file:///etc/passwd">]>${file.slice(file.indexOf("?>") + 2)}`,
      /forbidden/,
    ],
    ["something else", "<html/>", /not-a-dcc/],
  ])("is refused with every place, and nothing is stored: %s", async (_, text, place) => {
    expect(text).not.toBe(file);
    const before = await counts();
    const { code, fields, message } = await refusalOf(receive(text));
    expect(code).toBe("invalid");
    expect(message).toMatch(/Nothing was stored/);
    expect(Object.keys(fields ?? {})[0]).toBe("problems.0");
    expect(Object.values(fields ?? {}).join("\n")).toMatch(place);
    expect(await counts()).toEqual(before);
  });

  it("nor is one read for a person who records no certificates, or without a file", async () => {
    expect((await refusalOf(receive(file, bench.technician))).code).toBe("not-permitted");
    const nothing = { equipmentId, file: null, schemaFolder: null };
    expect(
      (await refusalOf(execute(receiveDigital, bench.manager, nothing, benchClock))).fields,
    ).toHaveProperty("file");
  });
});

describe("a digital certificate that holds", () => {
  let documentId: string;

  it("is kept by its hash and laid beside the form, each value with its place", async () => {
    documentId = (await receive(file)).documentId;
    expect((await receive(file)).documentId).toBe(documentId);
    const { digital } = await viewOf(documentId);
    const says = digital?.says ?? [];
    const said = (field: string) => says.find((one) => one.field === field);
    expect(said("certificate")).toMatchObject({ value: "NTL-26-11207" });
    expect(said("itemSerial")).toMatchObject({ value: "EM-R-1107" });
    expect(said("findings.points.0.celsius")).toMatchObject({ value: 250, written: "250.00 °C" });
    expect(said("performedOn")).toMatchObject({ value: "2026-09-16" });
    expect(said("findings.points.0.deviationMicrovolt")).toMatchObject({
      value: -1.1,
      place: { path: expect.stringContaining("/list/quantity[3]") },
    });
    expect(said("findings.expanded")?.value).toBe(6.2);
    expect(digital?.isCheckedBySchema).toBe(false);
    expect(digital?.parents[0]).toMatchObject({ kind: "laboratory-standard", certificate: "NIM-2026-3302" });
    expect(digital?.parents[1]).toMatchObject({
      kind: "fixed-point",
      certificate: "NIM-FP-Cu-0092",
      below: 1,
    });
  });

  it("asks a reason at the field of each value that differs, and keeps both", async () => {
    const { digital } = await viewOf(documentId);
    const input = confirmed(documentId, digital?.says ?? []);
    const [first, ...rest] = input.findings.kind === "reference" ? input.findings.points : [];
    const findings = {
      ...input.findings,
      points: [{ ...first, deviationMicrovolt: -1.3 }, ...rest],
    } as typeof input.findings;
    const differing = { ...input, findings, itemSerial: "EM-R-1108" };
    const record = (more: object) =>
      execute(recordCalibration, bench.manager, { ...differing, ...more }, benchClock);
    const before = await counts();
    const refusal = await refusalOf(record({}));
    expect(Object.keys(refusal.fields ?? {})).toEqual(["reasons.itemSerial", "reasons.findings.points"]);
    expect(refusal.fields?.["reasons.findings.points"]).toMatch(
      /the file says .*-1\.1.*\(line \d+\), you confirm -1\.3/,
    );
    expect(await counts()).toEqual(before);
    const reasons = { itemSerial: "engraved differently", "findings.points": "letter of the issuer" };
    const { id } = await record({ reasons });
    const view = await calibrationView(bench.signatory, equipmentId, id);
    expect(view).toMatchObject({
      calibration: { source: "dcc" },
      document: { id: documentId, mediaType: "application/xml" },
      differences: [
        { field: "itemSerial", said: "EM-R-1107", confirmed: "EM-R-1108", reason: "engraved differently" },
        { field: "findings.points.0.deviationMicrovolt", confirmed: "-1.3", reason: "letter of the issuer" },
      ],
    });
    expect((await auditSentences()).at(-1)).toBe(
      "equipment.digital-certificate-confirmed: confirmed the digital certificate NTL-26-11207 for REF-R-01, differing in itemSerial, findings.points.0.deviationMicrovolt",
    );
  });

  it("is confirmed as it stands without a word; a table of other lines needs one", async () => {
    const { digital } = await viewOf(documentId);
    const input = confirmed(documentId, digital?.says ?? []);
    const points = input.findings.kind === "reference" ? input.findings.points : [];
    const longer = {
      ...input,
      certificate: "NTL-26-11207-B",
      findings: { ...input.findings, points: [...points, { celsius: 1200, deviationMicrovolt: 0 }] },
      reasons: { certificate: "second copy" },
    } as typeof input;
    const refusal = await refusalOf(execute(recordCalibration, bench.manager, longer, benchClock));
    expect(Object.keys(refusal.fields ?? {})).toEqual(["reasons.findings.points"]);
    const other = { ...input, certificate: "NTL-26-11207-C", reasons: { certificate: "second copy" } };
    const { id } = await execute(recordCalibration, bench.manager, other, benchClock);
    const view = await calibrationView(bench.signatory, equipmentId, id);
    expect(view.differences.map(({ field }) => field)).toEqual(["certificate"]);
  });

  it("of a document that is no digital certificate, or is not here, nothing is confirmed", async () => {
    const { digital } = await viewOf(documentId);
    const input = confirmed("00000000-0000-4000-8000-000000000000", digital?.says ?? []);
    const missing = { ...input, certificate: "X-1" };
    expect((await refusalOf(execute(recordCalibration, bench.manager, missing, benchClock))).code).toBe(
      "not-found",
    );
    expect((await refusalOf(viewOf("nonsense"))).code).toBe("not-found");
  });
});
