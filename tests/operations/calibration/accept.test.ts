import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { checkKeys } from "@/lib/domain/calibration/acceptance-check";
import { decideCalibration } from "@/lib/operations/calibration/decide";
import { recordCalibration } from "@/lib/operations/calibration/record";
import { execute } from "@/lib/operations/execute";
import { approveProvider } from "@/lib/operations/provider/approve";
import { recordProvider } from "@/lib/operations/provider/record";
import { suspendProvider } from "@/lib/operations/provider/suspend";
import { calibrationView } from "@/lib/views/calibration";
import { evidenceDocumentView } from "@/lib/views/evidence-document";
import { providersView, providerView } from "@/lib/views/providers";
import { acceptCalibration, certificateFile, certificateOf } from "../../support/calibrate";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

const findings = { kind: "voltmeter" as const, corrections: [], expandedMicrovolt: 2, coverageFactor: 2 };
const input = (certificate: string, more: object = {}) =>
  certificateOf(bench.voltmeterId, {
    certificate,
    itemSerial: "SN-VM-01",
    performedOn: "2026-09-01",
    dueOn: "2027-09-01",
    findings,
    ...more,
  });
const record = async (certificate: string, more: object = {}) =>
  (await execute(recordCalibration, bench.manager, input(certificate, more), benchClock)).id;
const refusedRecord = (more: object) =>
  refusalOf(execute(recordCalibration, bench.manager, input("C-REFUSED", more), benchClock));
const counts = () =>
  inLaboratory(async (tx) => [
    await tx.calibration.count(),
    await tx.evidenceDocument.count(),
    await tx.calibrationDecision.count(),
  ]);
const decide = (id: string, more: object = {}, actor = bench.signatory) =>
  execute(
    decideCalibration,
    actor,
    { id, decision: "accepted", confirmed: [...checkKeys], ...more },
    benchClock,
  );

describe("a certificate coming in is refused, each reason at its field, and nothing is stored", () => {
  it.each<[string, object]>([
    ["issuer", { issuer: "Nobody's Institute" }],
    ["route", { route: "accredited" }],
    ["document", { document: null }],
    ["document", { document: { kind: "file", fileName: "a.exe", bytes: new TextEncoder().encode("MZ") } }],
    ["document.bytes", { document: { kind: "file", fileName: "a.pdf", bytes: new Uint8Array() } }],
    ["document.bytes", { document: { ...certificateFile(), bytes: new Uint8Array(4 * 1024 * 1024 + 1) } }],
    ["itemSerial", { itemSerial: " " }],
    ["performedOn", { performedOn: "2026-10-16" }],
    ["dueOn", { dueOn: "2026-09-01" }],
    ["certificate", { certificate: "C-VM-01" }],
    ["parents.0.below", { parents: [{ kind: "si", title: "Kelvin", route: "realisation", below: 1 }] }],
  ])("%s", async (field, more) => {
    const before = await counts();
    const refusal = await refusedRecord(more);
    expect(Object.keys(refusal.fields ?? {})).toContain(field);
    expect(await counts()).toEqual(before);
  });

  it("another route without its justification, an accredited one without its number", async () => {
    const provider = { name: "Workshop", route: "other" as const };
    await execute(recordProvider, bench.manager, provider, benchClock);
    const other = await refusedRecord({ issuer: "Workshop", route: "other" });
    expect(Object.keys(other.fields ?? {})).toEqual(["justification"]);
    const nameless = { name: "Accredited", route: "accredited" as const, accreditation: "" };
    expect(
      (await refusalOf(execute(recordProvider, bench.manager, nameless, benchClock))).fields,
    ).toHaveProperty("accreditation");
  });

  it("by anybody but a quality manager", async () => {
    expect(
      (await refusalOf(execute(recordCalibration, bench.technician, input("C-X"), benchClock))).code,
    ).toBe("not-permitted");
  });
});

describe("a certificate", () => {
  it("is kept with its file by hash and with what it stands on; an equal file is kept once", async () => {
    const document = certificateFile("one and the same");
    const parents = [
      { kind: "national-standard" as const, title: "Josephson voltage standard", route: "nmi" as const },
      {
        kind: "si" as const,
        title: "Volt",
        route: "realisation" as const,
        below: 1,
        expanded: 0.1,
        unit: "µV",
        coverageFactor: 2,
      },
    ];
    const first = await record("C-1", { document, parents });
    const second = await record("C-2", { document });
    const view = await calibrationView(bench.signatory, bench.voltmeterId, first);
    expect(view.parents).toMatchObject([
      { position: 1, title: "Josephson voltage standard", below: null },
      { position: 2, title: "Volt", below: 1, expanded: 0.1, coverageFactor: 2 },
    ]);
    expect(view).toMatchObject({
      calibration: { source: "typed", itemSerial: "SN-VM-01", acceptance: "waiting" },
      document: { mediaType: "application/pdf", fileName: "certificate.pdf" },
      mayDecide: true,
      isOwn: false,
    });
    const other = await calibrationView(bench.manager, bench.voltmeterId, second);
    expect(other.document?.id).toBe(view.document?.id);
    expect(other.isOwn).toBe(true);
    const kept = await evidenceDocumentView(bench.technician, view.document!.id);
    expect(kept.bytes).toEqual(document.bytes);
    const outside = await refusalOf(evidenceDocumentView(bench.northern.actor, view.document!.id));
    expect(outside.code).toBe("not-permitted");
  });

  it("is accepted by another person, once, with every answer confirmed and kept", async () => {
    const id = await record("C-3");
    expect((await refusalOf(decide(id, {}, bench.technician))).code).toBe("not-permitted");
    expect((await refusalOf(decide(id, {}, bench.manager))).message).toMatch(
      /recorded this calibration yourself/,
    );
    const some = await refusalOf(decide(id, { confirmed: ["identity"] }));
    expect(some.fields).toHaveProperty(["confirmed.traceability"]);
    await decide(id);
    expect((await refusalOf(decide(id))).code).toBe("wrong-state");
    const { decisions, calibration } = await calibrationView(bench.signatory, bench.voltmeterId, id);
    expect(calibration.acceptance).toBe("accepted");
    expect(decisions[0]).toMatchObject({ decision: "accepted", by: bench.signatory.name });
    expect(decisions[0]?.checks.map(({ key }) => key)).toEqual([...checkKeys]);
  });

  it("of another serial number, or without a statement of traceability, cannot be accepted", async () => {
    const other = await record("C-4", { itemSerial: "SN-OTHER" });
    expect((await refusalOf(decide(other, { reason: "looks alike" }))).fields).toEqual({
      "confirmed.identity": expect.stringContaining("SN-OTHER"),
    });
    const silent = await record("C-5", { traceabilityStatement: "" });
    expect((await refusalOf(decide(silent))).fields).toEqual({
      "confirmed.traceability": expect.any(String),
    });
    await decide(other, { decision: "rejected", reason: "of another voltmeter" });
    expect((await refusalOf(decide(other))).code).toBe("wrong-state");
  });

  it("that was rejected can be recorded anew under its number", async () => {
    const id = await record("C-6");
    expect((await refusedRecord({ certificate: "C-6" })).fields).toHaveProperty("certificate");
    await decide(id, { decision: "rejected", reason: "typed wrongly" });
    await record("C-6");
    const all = await inLaboratory((tx) => tx.calibration.count({ where: { certificate: "C-6" } }));
    expect(all).toBe(2);
  });

  it("leaves its traces in the log, without names", async () => {
    const sentences = await auditSentences();
    expect(sentences).toEqual(
      expect.arrayContaining([
        "equipment.calibration-accepted: accepted certificate C-3 for VM-01",
        "equipment.calibration-rejected: rejected certificate C-6 for VM-01, because: typed wrongly",
      ]),
    );
  });
});

describe("a provider", () => {
  it("counts from its approval, for its kinds and days, until it is suspended", async () => {
    const { id } = await execute(recordProvider, bench.manager, { name: "Second", route: "nmi" }, benchClock);
    const calibration = await record("C-7", { issuer: "Second" });
    expect((await refusalOf(decide(calibration))).fields).toHaveProperty(["confirmed.issuer"]);
    const approve = (more: object) =>
      execute(
        approveProvider,
        bench.manager,
        {
          id,
          version: 1,
          approvedFrom: "2026-01-01",
          approvedUntil: "2026-12-31",
          scope: [{ kind: "reference" }],
          note: "audit of 2026",
          ...more,
        },
        benchClock,
      );
    expect((await refusalOf(approve({ scope: [] }))).fields).toHaveProperty("scope");
    expect((await refusalOf(approve({ approvedUntil: "2025-12-31" }))).fields).toHaveProperty(
      "approvedUntil",
    );
    await approve({});
    expect((await refusalOf(approve({}))).code).toBe("changed-meanwhile");
    // Approved, and not for voltmeters.
    expect((await refusalOf(decide(calibration))).fields).toHaveProperty(["confirmed.issuer"]);
    await approve({ version: 2, scope: [{ kind: "voltmeter", range: "100 mV" }] });
    await acceptCalibration(bench.signatory, calibration, benchClock);
    const suspend = (actor = bench.manager) =>
      execute(suspendProvider, actor, { id, version: 3, reason: "accreditation withdrawn" }, benchClock);
    expect((await refusalOf(suspend(bench.signatory))).code).toBe("not-permitted");
    await suspend();
    expect((await refusalOf(suspend())).code).toBe("wrong-state");
    const { provider, certificates } = await providerView(bench.technician, id);
    expect(provider).toMatchObject({ state: "suspended", scope: [{ kind: "voltmeter", range: "100 mV" }] });
    expect(certificates.map(({ certificate }) => certificate)).toEqual(["C-7"]);
    const { providers, mayRecord } = await providersView(bench.technician);
    expect([providers.map(({ name }) => name), mayRecord]).toEqual([
      ["Invented Institute", "Second", "Workshop"],
      false,
    ]);
  });
});
