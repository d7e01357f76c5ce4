import { standardNormal } from "@/lib/metrology/number/normal-deviate";
import { createStream, uniform } from "@/lib/metrology/number/random";
import type { ReferenceSeries } from "@/lib/metrology/stability/stability-types";

const SCAN = 10;
const END = 14400;
const CORRELATION_SECONDS = 40;

/**
 * An invented furnace coming to rest, read every ten seconds by two references from its arrival at the setpoint on:
 * T = 900 + A·e^(−t/τ₁) + B·e^(−t/τ₂) + slow noise of the furnace (correlated over 40 s) + noise of each reading.
 * `disturbedAt`: a draught at that time, dying away with τ₂. Numbers invented: a tube furnace of a few minutes and a load of
 * seven to twenty.
 */
export function simulateSettling(seed: number, disturbedAt: number | null): ReferenceSeries[] {
  const stream = createStream(seed, 1);
  const between = (low: number, high: number): number => low + (high - low) * uniform(stream);
  const fast = { tau: between(60, 200), celsius: between(-3, 3) };
  const slow = { tau: between(400, 1200), celsius: between(1.5, 4) * (uniform(stream) < 0.5 ? -1 : 1) };
  const reading = between(0.005, 0.02);
  const wander = between(0.003, 0.01);
  const draught = between(0.2, 0.5) * (uniform(stream) < 0.5 ? -1 : 1);
  const kept = Math.exp(-SCAN / CORRELATION_SECONDS);
  let walk = wander * standardNormal(stream);
  const seconds: [number[], number[]] = [[], []];
  const celsius: [number[], number[]] = [[], []];
  for (let t = 0; t <= END; t += SCAN) {
    walk = kept * walk + wander * Math.sqrt(1 - kept * kept) * standardNormal(stream);
    for (const k of [0, 1] as const) {
      const at = t + 4 * k;
      const since = disturbedAt === null ? -1 : at - disturbedAt;
      const extra = since < 0 ? 0 : draught * Math.exp(-since / slow.tau);
      const truth = fast.celsius * Math.exp(-at / fast.tau) + slow.celsius * Math.exp(-at / slow.tau);
      seconds[k].push(at);
      celsius[k].push(900 + 0.05 * k + truth + extra + walk + reading * standardNormal(stream));
    }
  }
  return [0, 1].map((k) => ({
    id: `R${k + 1}`,
    seconds: seconds[k as 0 | 1],
    celsius: celsius[k as 0 | 1],
  }));
}
