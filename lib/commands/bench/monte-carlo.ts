import { spawnSync } from "node:child_process";
import { standardNormal } from "@/lib/metrology/number/normal-deviate";
import { createStream, uniform } from "@/lib/metrology/number/random";
import { linearSampler } from "@/lib/metrology/uncertainty/monte-carlo/linear-sampler";
import {
  type MonteCarloOptions,
  type MonteCarloResult,
  monteCarlo,
} from "@/lib/metrology/uncertainty/monte-carlo/monte-carlo";
import type { Sampler } from "@/lib/metrology/uncertainty/monte-carlo/sampler";
import { compare, type Figure } from "./measure";

const TRIALS = 1_000_000;
const POINTS = 200;

/** Twenty lines as a point's budget has them: invented effects in µV, half of them rectangular. */
const effects = [
  24.6, -7.3, 5.8, 4.4, -3.9, 2.9, 2.3, -1.6, 1.5, 1.2, 1.1, -1.0, 0.9, 0.8, -0.6, 0.5, 0.3, 0.3, -0.2, 0.1,
] as const;
const isRectangular = (line: number): boolean => line % 2 === 1;
const SQRT_3 = Math.sqrt(3);

const samplerOfBudget = (): Sampler => {
  const outcome = linearSampler(
    0,
    effects.map((effect, line) => ({
      sensitivity: effect,
      distribution: isRectangular(line)
        ? ({ kind: "rectangular", halfWidth: SQRT_3 } as const)
        : ({ kind: "normal", standardDeviation: 1 } as const),
    })),
  );
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
};

const run = (
  sampler: Sampler,
  workspace: Float64Array,
  stream: number,
  trials: MonteCarloOptions["trials"],
): MonteCarloResult => {
  const outcome = monteCarlo(sampler, { seed: 1, stream, probability: 0.95, trials }, workspace);
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
};

/** Draws the same numbers by the same generator and adds them; keeps no result but a sum. */
const bareLoop = (): number => {
  const stream = createStream(1);
  let all = 0;
  for (let trial = 0; trial < TRIALS; trial += 1) {
    let y = 0;
    for (let line = 0; line < effects.length; line += 2) {
      y += (effects[line] as number) * standardNormal(stream);
      y += (effects[line + 1] as number) * SQRT_3 * (2 * uniform(stream) - 1);
    }
    all += y;
  }
  return all;
};

/** numpy draws and adds the same kinds of numbers in blocks of 4096, as fast as it can; null where it is not found. */
const numpyMilliseconds = (): number | null => {
  const program = `
import time, numpy as np
rng = np.random.Generator(np.random.SFC64(1))
n, block, normals, rectangles = ${TRIALS}, 4096, [${effects.filter((_, line) => !isRectangular(line))}], [${effects.filter((_, line) => isRectangular(line))}]
def once():
    begun = time.perf_counter()
    y = np.empty(n)
    for at in range(0, n, block):
        part = y[at:at + block]
        part[:] = 0
        for c in normals: part += c * rng.standard_normal(len(part))
        for c in rectangles: part += (c * 3 ** 0.5) * (2 * rng.random(len(part)) - 1)
    return (time.perf_counter() - begun) * 1000
once()
print(sorted(once() for _ in range(5))[2])`;
  const python = spawnSync("python3", ["-c", program], { encoding: "utf8", timeout: 60_000 });
  const milliseconds = Number.parseFloat(python.stdout ?? "");
  return python.status === 0 && Number.isFinite(milliseconds) ? milliseconds : null;
};

export type MonteCarloFigure = {
  readonly figure: Figure;
  readonly trials: number;
  readonly notes: readonly string[];
};

/** A million trials of a whole budget against a bare loop; beside numpy; and 200 points in one workspace. */
export const benchMonteCarlo = async (): Promise<MonteCarloFigure> => {
  const sampler = samplerOfBudget();
  const workspace = new Float64Array(TRIALS);
  const figure = await compare(
    {
      name: `Monte Carlo of a budget of ${effects.length} lines, ${TRIALS} trials`,
      ours: "monteCarlo: trials, mean, u, symmetric and shortest interval",
      baseline: "a bare loop that draws and adds the same numbers by the same generator",
    },
    () => {
      run(sampler, workspace, 0, { kind: "fixed", count: TRIALS });
    },
    () => {
      bareLoop();
    },
  );
  const numpy = numpyMilliseconds();
  const bare = `${figure.baselineMilliseconds.toFixed(0)} ms`;
  return {
    figure,
    trials: TRIALS,
    notes: [
      numpy === null
        ? `bare loop ${bare}; numpy not found`
        : `bare loop ${bare}, numpy ${numpy.toFixed(0)} ms for the same lines and trials`,
      manyPoints(sampler, workspace),
    ],
  };
};

/** Points one after the other, each with its own stream: what is kept of each is its result alone. */
const manyPoints = (sampler: Sampler, workspace: Float64Array): string => {
  const mebibytes = (): number => {
    const { heapUsed, arrayBuffers } = process.memoryUsage();
    return (heapUsed + arrayBuffers) / 1024 / 1024;
  };
  const before = mebibytes();
  let highest = before;
  let trials = 0;
  for (let point = 0; point < POINTS; point += 1) {
    trials += run(sampler, workspace, point, { kind: "adaptive", digits: 2, divisor: 1 }).trials;
    highest = Math.max(highest, mebibytes());
  }
  return `${POINTS} points, ${trials} trials until settled, one workspace of ${workspace.length}: memory ${before.toFixed(1)} MiB before, ${highest.toFixed(1)} MiB at most, ${mebibytes().toFixed(1)} MiB after`;
};
