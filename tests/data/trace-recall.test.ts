import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { freezeNodes } from "@/lib/data/sql/freeze-nodes";
import { resultsStandingOn } from "@/lib/data/sql/results-standing-on";
import { traceNodesByKey } from "@/lib/data/sql/trace-nodes-by-key";
import { readChain } from "@/lib/data/trace/read-chain";
import { type ChainKind, type ChainNode, keyOf } from "@/lib/domain/trace/chain";
import { type TestDatabase, testDatabase } from "@/tests/support/database";

/**
 * Recall on a seeded graph of 2 000 results: branching, recalibrations, working standards calibrated in house out of
 * results further up, to three generations. From any standard exactly its results are found, and from any result exactly
 * what it stands on; what is right is worked out here over plain maps.
 */

const laboratory = { kind: "laboratory" } as const;
const results = 2_000;
let database: TestDatabase;

/** Whole numbers below a bound, the same every time (a linear congruential generator, MINSTD). */
const numbers = (seed: number) => {
  let state = seed;
  return (bound: number): number => {
    state = (state * 48_271) % 2_147_483_647;
    return state % bound;
  };
};

type Graph = { readonly nodes: ChainNode[]; readonly beneath: Map<string, string[]> };

const makeGraph = (): Graph => {
  const next = numbers(20_261_125);
  const nodes: ChainNode[] = [];
  const beneath = new Map<string, string[]>();
  const heights = new Map<string, number>();
  const add = (kind: ChainKind, recordId: string, on: readonly string[]): string => {
    const height = 1 + Math.max(-1, ...on.map((key) => heights.get(key) ?? 0));
    const node = { kind, recordId, title: recordId, detail: "", facts: {}, height };
    const key = keyOf(node);
    nodes.push(node);
    heights.set(key, height);
    beneath.set(key, [...new Set(on)]);
    return key;
  };
  const pick = <T>(from: readonly T[]): T => from[next(from.length)]!;
  const ends = [add("si", "si", []), add("fixed-point", "zinc", []), add("national-standard", "nmi", [])];
  const standards = Array.from({ length: 12 }, (_, at) => [
    add("standard", `s${at}/0`, [add("calibration", `c${at}/0`, [pick(ends)])]),
  ]);
  const made: string[] = [];
  for (let run = 0; made.length < results; run += 1) {
    // Now and then a standard is calibrated again, outside or out of results of our own.
    if (run % 7 === 6) {
      const at = next(standards.length);
      const again = standards[at]!.length;
      const on = made.length > 40 && run % 2 === 0 ? [pick(made), pick(made)] : [pick(ends)];
      standards[at]!.push(add("standard", `s${at}/${again}`, [add("calibration", `c${at}/${again}`, on)]));
    }
    const used = Array.from({ length: 1 + next(4) }, () => standards[next(standards.length)]!.at(-1)!);
    const key = add("run", `run ${run}`, used);
    const sensors = 1 + next(9);
    for (let sensor = 0; sensor < sensors && made.length < results; sensor += 1) {
      const own = next(5) === 0 ? [pick(pick(standards))] : [];
      made.push(add("result", `r${made.length}`, [key, ...own]));
    }
  }
  return { nodes, beneath };
};

const graph = makeGraph();

/** All that a node stands on, itself included, over the maps. */
const under = (key: string, seen = new Set<string>()): Set<string> => {
  if (seen.has(key)) return seen;
  seen.add(key);
  for (const lower of graph.beneath.get(key) ?? []) under(lower, seen);
  return seen;
};
const resultKeys = graph.nodes.filter(({ kind }) => kind === "result").map(keyOf);

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  const frozenAt = new Date("2026-03-01T00:00:00Z");
  await inScope(laboratory, async (tx) => {
    await freezeNodes(tx, graph.nodes, frozenAt);
    const ids = new Map(
      (await traceNodesByKey(tx, graph.nodes)).map((row) => [`${row.kind} ${row.recordId}`, row.id]),
    );
    const data = [...graph.beneath].flatMap(([from, to]) =>
      to.map((lower) => ({ fromId: ids.get(from)!, toId: ids.get(lower)!, role: "test", frozenAt })),
    );
    await tx.traceEdge.createMany({ data });
  });
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

it("is a graph worth asking: thousands of nodes, working standards of working standards", () => {
  expect(resultKeys).toHaveLength(results);
  expect(graph.nodes.length).toBeGreaterThan(2_300);
  const deepest = Math.max(...graph.nodes.map(({ height }) => height));
  // Three generations: each in-house calibration puts result, run, standard and calibration on top of another.
  expect(deepest).toBeGreaterThanOrEqual(3 * 4);
});

it("finds from every standard exactly the results that stand on it, none missing and none too many", async () => {
  const above = new Map<string, string[]>();
  for (const key of resultKeys)
    for (const lower of under(key))
      above.set(lower, [...(above.get(lower) ?? []), key.slice("result ".length)]);
  const standards = graph.nodes.filter(({ kind }) => kind !== "result" && kind !== "run");
  expect(standards.length).toBeGreaterThan(60);
  let members = 0;
  for (const { kind, recordId } of standards) {
    const rows = await inScope(laboratory, (tx) =>
      resultsStandingOn(tx, kind, [recordId], { limit: results, offset: 0 }),
    );
    const right = above.get(`${kind} ${recordId}`) ?? [];
    expect(rows.map((row) => row.recordId).sort()).toEqual([...right].sort());
    expect(rows[0]?.count ?? 0).toBe(right.length);
    members += right.length;
  }
  expect(members).toBeGreaterThan(results);
});

it("turns its pages through all of them, each once", async () => {
  const page = (offset: number) =>
    inScope(laboratory, (tx) => resultsStandingOn(tx, "si", ["si"], { limit: 100, offset }));
  const first = await page(0);
  const all = [...first];
  for (let offset = 100; offset < first[0]!.count; offset += 100) all.push(...(await page(offset)));
  expect(new Set(all.map(({ recordId }) => recordId)).size).toBe(first[0]!.count);
  expect(all).toHaveLength(first[0]!.count);
});

it("finds from a result exactly what it stands on", async () => {
  for (const key of resultKeys.filter((_, at) => at % 97 === 0)) {
    const chain = await inScope(laboratory, (tx) => readChain(tx, "result", [key.slice("result ".length)]));
    expect(chain.nodes.map(keyOf).sort()).toEqual([...under(key)].sort());
    const steps = [...under(key)].reduce((count, one) => count + (graph.beneath.get(one)?.length ?? 0), 0);
    expect(chain.edges).toHaveLength(steps);
  }
});
