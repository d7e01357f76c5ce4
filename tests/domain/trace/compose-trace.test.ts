import { describe, expect, it } from "vitest";
import { keyOf } from "@/lib/domain/trace/chain";
import { composeTrace, mergeChains } from "@/lib/domain/trace/compose-trace";
import { calibration, parts, reference, voltmeter } from "./parts";

const titles = (chain: ReturnType<typeof composeTrace>, kind: string) =>
  chain.nodes.filter((node) => node.kind === kind).map(({ title }) => title);
const stepTo = (chain: ReturnType<typeof composeTrace>, start: string) =>
  chain.edges.filter(({ to }) => to.startsWith(start));

describe("the chain of a certificate", () => {
  it("leads from each result over the run at its setpoint to standards, calibrations and ends", () => {
    const chain = composeTrace(parts());
    expect(titles(chain, "result")).toEqual(["T-000001 at 600 °C", "T-000001 at 1000 °C"]);
    expect(titles(chain, "run")).toEqual(["R-2026-0001 at 600 °C", "R-2026-0001 at 1000 °C"]);
    expect(titles(chain, "standard")).toEqual(["REF-1", "VM-1"]);
    expect(titles(chain, "calibration")).toEqual(["CAL-REF-1", "CAL-VM-1"]);
    expect(titles(chain, "national-standard")).toEqual(["Invented Institute"]);
    expect(titles(chain, "si")).toEqual(["by way of Invented Electrical"]);
  });

  it("names each step once, and every one leads to something lower: no circle can come of it", () => {
    const chain = composeTrace(parts());
    const heights = new Map(chain.nodes.map((node) => [keyOf(node), node.height]));
    expect(new Set(chain.nodes.map(keyOf)).size).toBe(chain.nodes.length);
    for (const { from, to } of chain.edges) expect(heights.get(to)).toBeLessThan(heights.get(from)!);
  });

  it("states U at the temperature of the result, where the certificate gives it by point", () => {
    const findings = {
      kind: "reference",
      expanded: 0.5,
      unit: "celsius",
      coverageFactor: 2,
      points: [
        { celsius: 400, expanded: 0.2 },
        { celsius: 800, expanded: 0.3 },
        { celsius: 1000, expanded: 0.4 },
      ],
    };
    const chain = composeTrace(parts({ ofRun: [reference({ findings })] }));
    const uses = chain.edges.filter(({ role }) => role === "reference");
    // Between two points the larger; on a point its own; the step to the calibration states the largest of all.
    expect(uses.map(({ atCelsius, expanded }) => [atCelsius, expanded])).toEqual([
      [600, 0.3],
      [1000, 0.4],
    ]);
    expect(stepTo(chain, "calibration").map(({ expanded }) => expanded)).toEqual([0.5]);
  });

  it("keeps what each role adds to the result, and on the step to the run what the measuring itself adds", () => {
    const chain = composeTrace(parts());
    const [result] = chain.nodes;
    expect(result?.facts.shares).toMatchObject({
      reference: expect.closeTo(0.3, 12),
      voltmeter: 0.1,
      sensor: 0.4,
      furnace: 0.2,
    });
    expect(chain.edges[0]).toMatchObject({ role: "run", expanded: 1.2, coverageFactor: 2 });
    expect(chain.edges[0]?.sensitivity).toBeCloseTo(0.6, 12);
  });

  it("gives a sensor's own junction to its results only, not to the run others share", () => {
    const own = {
      ...voltmeter(),
      role: "junction" as const,
      equipment: { ...voltmeter().equipment, id: "j", tag: "ICE-2" },
    };
    const chain = composeTrace(parts({ ofSensor: [own] }));
    const uses = stepTo(chain, "standard j/");
    expect(uses.map(({ from, role }) => [from.split(" ")[0], role])).toEqual([
      ["result", "junction"],
      ["result", "junction"],
    ]);
  });
});

describe("behind a calibration", () => {
  const steps = [
    { position: 1, kind: "laboratory-standard" as const, title: "Standard thermocouple", below: null },
    { position: 2, kind: "national-standard" as const, title: "National scale", below: 1 },
    { position: 3, kind: "fixed-point" as const, title: "Copper point", below: 1 },
    { position: 4, kind: "si" as const, title: "ITS-90", below: 2 },
  ];
  const withParents = () => composeTrace(parts({ ofRun: [reference({ parents: steps.map(parent) })] }));
  const parent = (step: (typeof steps)[number]) => ({
    id: `p${step.position}`,
    identity: "",
    issuer: "Invented Institute",
    certificate: "",
    route: "realisation",
    performedOn: null,
    validUntil: null,
    expanded: 0.1,
    unit: "°C",
    coverageFactor: 2,
    ...step,
  });

  it("are the steps its certificate names, each above what it stands on", () => {
    const chain = withParents();
    const named = chain.edges
      .filter(({ role }) => role === "parent")
      .map(({ from, to }) => [from, to].map((key) => chain.nodes.find((node) => keyOf(node) === key)?.title));
    expect(named).toEqual([
      ["CAL-REF-1", "Standard thermocouple"],
      ["Standard thermocouple", "National scale"],
      ["National scale", "ITS-90"],
      ["Standard thermocouple", "Copper point"],
    ]);
  });

  it("are the same end for two calibrations that name the same, and each its own step between", () => {
    const one = composeTrace(parts({ ofRun: [reference({ parents: steps.map(parent) })] }));
    const other = composeTrace(
      parts({
        ofRun: [
          reference({
            id: "other",
            parents: steps.map((step) => ({ ...parent(step), id: `q${step.position}` })),
          }),
        ],
      }),
    );
    const both = mergeChains([one, other]);
    expect(titles(both, "si")).toEqual(["ITS-90"]);
    expect(titles(both, "fixed-point")).toEqual(["Copper point"]);
    expect(titles(both, "standard").filter((title) => title === "Standard thermocouple")).toHaveLength(2);
  });

  it("stand our own results where it was calibrated in house", () => {
    const inHouse = {
      certificate: "C-2026-0001",
      results: [{ recordId: "r1", height: 5, celsius: 600, expandedCelsius: 0.9, coverageFactor: 2 }],
    };
    const chain = composeTrace(parts({ ofRun: [reference({ route: "in-house", inHouse })] }));
    expect(stepTo(chain, "result r1")).toMatchObject([
      { role: "in-house", certificate: "C-2026-0001", expanded: 0.9, atCelsius: 600 },
    ]);
    // Higher than what it stands on, though that was frozen long ago.
    expect(chain.nodes.find(({ kind }) => kind === "calibration")?.height).toBe(6);
  });

  it.each([
    ["other", "Other route"],
    ["in-house", "Calibrated in this laboratory"],
    ["", "route not recorded"],
  ])("stands nothing by the route %j alone, and it says so", (route, words) => {
    const chain = composeTrace(parts({ ofRun: [reference({ route })] }));
    const last = chain.nodes.find(({ title }) => title === "Nothing recorded behind CAL-REF-1");
    expect(last).toMatchObject({ kind: "standard", height: 0 });
    expect(last?.detail).toContain(words);
  });
});

it("has a standard without a certificate as a node of its own, without a calibration", () => {
  const chain = composeTrace(parts({ ofRun: [{ ...voltmeter(), calibration: null }] }));
  expect(titles(chain, "calibration")).toEqual([]);
  expect(chain.nodes.find(({ kind }) => kind === "standard")?.recordId).toBe("vm/none");
  expect(calibration().certificate).toBe("CAL-REF-1");
});
