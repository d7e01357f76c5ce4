import { describe, expect, it } from "vitest";
import type { Chain } from "@/lib/domain/trace/chain";
import { composeStandard, composeTrace } from "@/lib/domain/trace/compose-trace";
import { findBreaks } from "@/lib/domain/trace/find-breaks";
import { largestStep } from "@/lib/domain/trace/largest-step";
import type { TraceParent, TraceParts } from "@/lib/domain/trace/trace-parts";
import { parts, reference, voltmeter } from "./parts";

const top = "result result-600";
const breaksOf = (change: Partial<TraceParts>) => findBreaks(composeTrace(parts(change)), [top]);
const codes = (change: Partial<TraceParts>) => breaksOf(change).map(({ code, title }) => `${code} ${title}`);
const parent = (change: Partial<TraceParent>): TraceParent => ({
  id: "p1",
  position: 1,
  kind: "national-standard",
  title: "National scale",
  identity: "",
  issuer: "Invented Institute",
  certificate: "",
  route: "realisation",
  performedOn: null,
  validUntil: null,
  expanded: 0.1,
  unit: "°C",
  coverageFactor: 2,
  below: null,
  ...change,
});

it("finds nothing wrong with a chain that holds", () => {
  expect(codes({})).toEqual([]);
  expect(codes({ ofRun: [reference({ parents: [parent({})] })] })).toEqual([]);
});

describe("finds, and names where,", () => {
  it.each([
    ["2026-03-02", "2026-03-03", []],
    ["2026-03-03", "2027-01-01", ["not-in-date REF-1"]],
    ["2026-01-01", "2026-03-02", ["not-in-date REF-1"]],
  ])("a calibration of %s to %s used on 2 and 3 March", (performedOn, dueOn, found) => {
    expect(codes({ ofRun: [reference({ performedOn, dueOn })] })).toEqual(found);
  });

  it("no certificate, and says what holds instead", () => {
    expect(breaksOf({ ofRun: [{ ...voltmeter(), calibration: null }] })).toMatchObject([
      { code: "no-certificate", title: "VM-1", text: expect.stringContaining("bounded by limits") },
    ]);
  });

  it("a certificate that states no uncertainty", () => {
    expect(codes({ ofRun: [reference({ findings: { kind: "reference" } })] })).toEqual([
      "no-uncertainty REF-1",
    ]);
  });

  it("a chain that ends before the SI", () => {
    expect(codes({ ofRun: [reference({ route: "other" })] })).toEqual([
      "end-not-reached Nothing recorded behind CAL-REF-1",
    ]);
    expect(
      codes({
        ofRun: [reference({ parents: [parent({ kind: "laboratory-standard", title: "Bath probe" })] })],
      }),
    ).toEqual(["end-not-reached Bath probe"]);
  });

  it("a gap in time behind a calibration, before it or after it", () => {
    expect(codes({ ofRun: [reference({ parents: [parent({ validUntil: "2026-01-09" })] })] })).toEqual([
      "gap-in-time National scale",
    ]);
    expect(codes({ ofRun: [reference({ parents: [parent({ performedOn: "2026-01-11" })] })] })).toEqual([
      "gap-in-time National scale",
    ]);
    expect(
      codes({
        ofRun: [reference({ parents: [parent({ performedOn: "2026-01-10", validUntil: "2026-01-10" })] })],
      }),
    ).toEqual([]);
  });

  it("a step behind our own calibration without uncertainty, but not the unit itself, nor what an accredited U covers", () => {
    const stepOf = (route: string, change: Partial<TraceParent>) =>
      codes({ ofRun: [reference({ route, parents: [parent({ expanded: null, ...change })] })] });
    expect(stepOf("in-house", {})).toEqual(["no-uncertainty National scale"]);
    expect(stepOf("other", {})).toEqual(["no-uncertainty National scale"]);
    expect(stepOf("in-house", { kind: "si" })).toEqual([]);
    expect(stepOf("accredited", {})).toEqual([]);
    expect(stepOf("nmi", {})).toEqual([]);
  });

  it("a calibration surer than what it stands on", () => {
    expect(codes({ ofRun: [reference({ parents: [parent({ expanded: 0.31 })] })] })).toEqual([
      "smaller-than-parent CAL-REF-1",
    ]);
    // As standard uncertainties: 0.45 at k = 3 is less than 0.3 at k = 2.
    expect(
      codes({ ofRun: [reference({ parents: [parent({ expanded: 0.45, coverageFactor: 3 })] })] }),
    ).toEqual([]);
  });

  it("a furnace not characterised on the days of the run", () => {
    const run = { ...parts().run, characterisedUntil: "2026-03-02" };
    expect(codes({ run })).toEqual(["not-characterised R-2026-0001 at 600 °C"]);
  });

  it("a circle, should one ever be given", () => {
    const chain = composeTrace(parts());
    const back = {
      ...chain.edges[0]!,
      from: "calibration cal-ref",
      to: "run run/evaluation/setpoint-600",
      role: "parent",
    };
    const circle: Chain = { nodes: chain.nodes, edges: [...chain.edges, back] };
    expect(findBreaks(circle, [top]).map(({ code }) => code)).toContain("circle");
  });
});

it("holds a standard asked about against the day asked about", () => {
  const chain = composeStandard(reference());
  const codesOn = (on: string) => findBreaks(chain, ["standard ref/cal-ref"], on).map(({ code }) => code);
  expect(codesOn("2026-06-01")).toEqual([]);
  expect(codesOn("2027-01-11")).toEqual(["not-in-date"]);
});

describe("the largest step", () => {
  it("is whoever adds most to u², by name", () => {
    expect(largestStep(composeTrace(parts()), top)).toMatchObject({ role: "run" });
    const quiet = parts();
    const [first] = quiet.results;
    const chain = composeTrace(quiet);
    const nodes = chain.nodes.map((node) =>
      node.recordId === first?.id
        ? { ...node, facts: { ...node.facts, shares: { reference: 0.7, voltmeter: 0.1, sensor: 0.2 } } }
        : node,
    );
    const edges = chain.edges.map((edge) => (edge.from === top ? { ...edge, sensitivity: 0.2 } : edge));
    expect(largestStep({ nodes, edges }, top)).toEqual({
      key: "standard ref/cal-ref",
      role: "reference",
      share: 0.7,
    });
  });

  it("is not made up where the budget is not known", () => {
    expect(largestStep(composeStandard(reference()), "standard ref/cal-ref")).toBeNull();
  });
});
