import { performance } from "node:perf_hooks";
import { connect } from "@/lib/commands/postgres/connect";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope, type Tx } from "@/lib/data/in-scope";
import { chainBeneathSql } from "@/lib/data/sql/chain-beneath";
import { chainEdgesSql } from "@/lib/data/sql/chain-edges";
import { explain, type Plan } from "@/lib/data/sql/explain";
import { resultsStandingOnSql } from "@/lib/data/sql/results-standing-on";
import { readChain } from "@/lib/data/trace/read-chain";
import { countStatements } from "./count-statements";
import { fixed } from "./print-figure";
import { benchResult, growGraph } from "./trace-graph";

const sizes = [10_000, 100_000, 1_000_000] as const;
/** Depth six: result, run, standards, calibrations, what is behind them, national standards, SI. */
const depth = 6;
const asked = 40;
const laboratory = { kind: "laboratory" } as const;

type Measured = {
  readonly results: number;
  readonly statements: number;
  readonly buffers: number;
  readonly milliseconds: number;
};

const everyPlan = (plan: Plan): readonly Plan[] => [plan, ...(plan.Plans ?? []).flatMap(everyPlan)];

/** What a statement read, in buffers of 8 KiB; refused where it walked a whole table instead of going by key. */
const buffersOf = async (tx: Tx, statement: Parameters<typeof explain>[1]): Promise<number> => {
  const plan = await explain(tx, statement);
  const whole = everyPlan(plan).find(
    (step) => step["Node Type"] === "Seq Scan" && step["Relation Name"]?.startsWith("trace_"),
  );
  if (whole) throw new Error(`the chain of a result walks the whole of ${whole["Relation Name"]}`);
  return plan["Shared Hit Blocks"] + plan["Shared Read Blocks"];
};

const chainOf = (number: number) =>
  inScope(laboratory, (tx) => readChain(tx, "result", [benchResult(number)]));

const medianOf = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

const measure = async (results: number): Promise<Measured> => {
  const numbers = Array.from({ length: asked }, (_, at) => 1 + Math.floor(((at + 0.5) * results) / asked));
  const times: number[] = [];
  const buffers: number[] = [];
  for (const number of numbers) {
    await chainOf(number);
    const begun = performance.now();
    const chain = await chainOf(number);
    times.push(performance.now() - begun);
    const heights = new Set(chain.nodes.map(({ height }) => height));
    if (heights.size !== depth + 1) throw new Error(`the chain of result ${number} is not of depth ${depth}`);
    buffers.push(
      await inScope(laboratory, async (tx) => {
        const ids = await tx.$queryRaw<{ id: string }[]>(chainBeneathSql("result", [benchResult(number)]));
        return (
          (await buffersOf(tx, chainBeneathSql("result", [benchResult(number)]))) +
          (await buffersOf(tx, chainEdgesSql(ids.map(({ id }) => id))))
        );
      }),
    );
  }
  return {
    results,
    statements: await countStatements(() => chainOf(numbers[7]!)),
    buffers: medianOf(buffers),
    milliseconds: medianOf(times),
  };
};

/** The other way: the first page of what stands on one standard, and how many there are. As long as the answer. */
const printStanding = async (): Promise<void> => {
  const page = resultsStandingOnSql("standard", ["standard 5"], { limit: 50, offset: 0 });
  const begun = performance.now();
  const [first] = await inScope(laboratory, (tx) => tx.$queryRaw<{ count: number }[]>(page));
  const spent = performance.now() - begun;
  const buffers = await inScope(laboratory, (tx) => buffersOf(tx, page));
  console.log(
    `  from one standard, ${first?.count ?? 0} results: 1 statement, ${buffers} buffers, ${fixed(spent)} ms`,
  );
};

const print = (one: Measured, first: Measured, seeded: number): void => {
  const ratio = (name: "statements" | "buffers" | "milliseconds") => fixed(one[name] / first[name]);
  console.log(
    [
      `  ${String(one.results).padStart(9)} results`,
      `${one.statements} statements (${ratio("statements")} ×)`,
      `${one.buffers} buffers (${ratio("buffers")} ×)`,
      `${fixed(one.milliseconds)} ms (${ratio("milliseconds")} ×)`,
      `seeded in ${fixed(seeded)} s`,
    ].join("   "),
  );
};

/**
 * The chain of any result, by key: the same statements however many results there are. Medians over results spread over
 * the whole graph; each ratio is to the smallest graph of the same run.
 */
export const benchTrace = async (adminUrl: string, runtimeUrl: string): Promise<void> => {
  console.log(`\nThe chain of one result, depth ${depth}, all of it by key`);
  const admin = await connect(adminUrl);
  configureDatabase(runtimeUrl);
  try {
    let done = 0;
    let first: Measured | undefined;
    for (const results of sizes) {
      const begun = performance.now();
      await growGraph(admin, done, results);
      const seeded = (performance.now() - begun) / 1000;
      done = results;
      const measured = await measure(results);
      first ??= measured;
      print(measured, first, seeded);
      if (measured.statements !== first.statements || measured.statements > 10)
        throw new Error(`${measured.statements} statements at ${results} results`);
    }
    await printStanding();
  } finally {
    await closeDatabase();
    await admin.end();
  }
};
