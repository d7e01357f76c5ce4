import { expect, it } from "vitest";
import { chainTree, treeLines } from "@/lib/domain/trace/chain-tree";
import { daysWord, nameOf, roleWord, shareWord, uncertaintyWord } from "@/lib/domain/trace/chain-words";
import { composeTrace } from "@/lib/domain/trace/compose-trace";
import { largestStep } from "@/lib/domain/trace/largest-step";
import { laterFlags } from "@/lib/domain/trace/later-flags";
import { statedUncertaintyAt } from "@/lib/domain/trace/stated-uncertainty";
import { parts, reference } from "./parts";

const top = "result result-600";
const chain = composeTrace(parts());
const lines = treeLines(chainTree(chain, top, [], largestStep(chain, top))!);
const line = (title: string) => lines.find(({ node }) => node.title.startsWith(title))!;

it("says of each step what it is, how sure, when, and what it adds", () => {
  expect(lines.map(roleWord)).toEqual([
    "Result",
    "Run",
    "Reference",
    "Calibration",
    "National standard",
    "Voltmeter",
    "Calibration",
    "SI",
  ]);
  expect(uncertaintyWord(line("REF-1"))).toBe("U = 0.3 °C (k = 2) at 600 °C");
  expect(uncertaintyWord(line("VM-1"))).toBe("U = 2 µV (k = 2) at 600 °C");
  expect(uncertaintyWord(line("by way of"))).toBe("");
  expect(daysWord(line("REF-1"))).toBe("2026-01-10 to 2027-01-10");
  expect(shareWord(line("REF-1"))).toBe("30 % of u², all references together");
  expect(shareWord(line("R-2026"))).toBe("largest step: 60 % of u², furnace and sensor");
  expect(shareWord(line("CAL-REF-1"))).toBe("");
  expect(shareWord({ ...line("VM-1"), share: 0.004 })).toBe("< 1 % of u²");
});

it("says what a thing is once, where its name says it already", () => {
  const named = (title: string) =>
    nameOf({ ...line("by way of"), node: { ...line("by way of").node, title } });
  expect(nameOf(line("REF-1"))).toBe("Reference REF-1");
  expect(named("Kelvin")).toBe("SI Kelvin");
  expect(named("by way of Physics House")).toBe("SI by way of Physics House");
  expect(named("SI unit of temperature")).toBe("SI unit of temperature");
});

it("draws what is stood on twice once in full, and says that it stands above", () => {
  const twice = composeTrace(parts({ ofRun: [reference(), { ...reference(), role: "thermometer" }] }));
  const drawn = treeLines(chainTree(twice, top, [], null)!).filter(({ node }) => node.title === "REF-1");
  expect(drawn.map(({ isAgain, children }) => [isAgain, children.length])).toEqual([
    [false, 1],
    [true, 0],
  ]);
});

it.each([
  [[500], 600, [500]],
  [[300, 500, 700, 900], 600, [500, 700]],
  [[300, 600, 900], 600, [600]],
  [[700, 900], 600, [700]],
])("of an in-house certificate with points at %j, used at %i °C, draws %j", (points, _used, kept) => {
  const inHouse = {
    certificate: "C-1",
    results: points.map((celsius) => ({
      recordId: `r${celsius}`,
      height: 4,
      celsius,
      expandedCelsius: 0.9,
      coverageFactor: 2,
    })),
  };
  const own = composeTrace(parts({ ofRun: [reference({ inHouse })] }));
  const nodes = points.map((celsius) => ({
    kind: "result" as const,
    recordId: `r${celsius}`,
    title: `r${celsius}`,
    detail: "",
    facts: { celsius },
    height: 4,
  }));
  const tree = chainTree({ nodes: [...own.nodes, ...nodes], edges: own.edges }, top, [], null)!;
  const calibration = treeLines(tree).find(({ node }) => node.kind === "calibration")!;
  expect(calibration.children.map(({ edge }) => edge?.atCelsius)).toEqual(kept);
  expect(calibration.left).toBe(points.length - kept.length);
});

it("reads U from every kind of findings that states one, a half-width with k = √3", () => {
  expect(statedUncertaintyAt({ parasiticHalfWidthMicrovolt: 0.2 }, 600)).toEqual({
    expanded: 0.2,
    unit: "µV",
    coverageFactor: Math.sqrt(3),
  });
  expect(statedUncertaintyAt({ expandedCelsius: 0.04, coverageFactor: 2 }, null)).toMatchObject({
    unit: "°C",
  });
  expect(statedUncertaintyAt({ kind: "lead" }, 600)).toBeNull();
  const byPoint = {
    expanded: 0.5,
    unit: "celsius",
    coverageFactor: 2,
    points: [{ celsius: 500, expanded: 0.2 }],
  };
  // Beyond its points, the nearest.
  expect(statedUncertaintyAt(byPoint, 1100)).toMatchObject({ expanded: 0.2 });
});

it("says what came later in a sentence each", () => {
  expect(
    laterFlags([
      { kind: "equipment-state", tag: "A", state: "under-repair" },
      { kind: "calibrated-again", tag: "B", certificate: "X", on: "2026-05-01", standing: "accepted" },
      { kind: "calibrated-again", tag: "B", certificate: "Y", on: "2026-06-01", standing: "rejected" },
      { kind: "rejected", tag: "C", certificate: "Z", on: "2026-06-02" },
      { kind: "provider-suspended", tag: "D", certificate: "W", provider: "Invented Works" },
    ]).map(({ tag, text }) => `${tag} ${text}`),
  ).toEqual([
    "A is under repair now",
    "B was calibrated again on 2026-05-01 (X): compare the two",
    "B was calibrated again on 2026-06-01 (Y, rejected): compare the two",
    "C its calibration Z was rejected on 2026-06-02: see what stands on it",
    "D Invented Works, who issued W, is suspended as a provider now",
  ]);
});
