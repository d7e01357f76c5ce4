import { describe, expect, it } from "vitest";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import { proposeWindows } from "@/lib/domain/evidence/propose-windows";
import { Evidence, type EvidenceInput } from "@/lib/domain/evidence/schema";
import { randomFrom } from "@/lib/station/simulation/random";
import { sensors } from "@/lib/station/simulation/scenario";
import { type SimulatedRun, simulateRun } from "@/lib/station/simulation/simulate-run";

/**
 * Known truth against stated uncertainty. Points of one run share the reference's error and are not independent, so one
 * sensor and one setpoint are drawn from each of 200 independent simulated furnaces. With a stated coverage of 95.45 %,
 * fewer than 181 of 200 has a probability of 0.1 %; mean |error|/U is 0.40 for a normal law with k = 2.
 */
const seeds = Array.from({ length: 200 }, (_, index) => index + 1);

/** As a technician would accept them: every proposal as it stands. */
const withWindows = (evidence: EvidenceInput): EvidenceInput => ({
  ...evidence,
  windows: proposeWindows(Evidence.parse(evidence)).map(({ setpoint, proposal }) => {
    if (proposal.kind === "none") throw new Error(`${evidence.title}, ${setpoint}: ${proposal.reason}`);
    return { setpoint, fromSeconds: proposal.window.fromSeconds, toSeconds: proposal.window.toSeconds };
  }),
});

const swapped = (evidence: EvidenceInput, one: string, other: string): EvidenceInput => {
  const channelOf = (id: string): string =>
    evidence.load.find((place) => place.item.kind === "sensor" && place.item.id === id)?.channel ?? "";
  const [first, second] = [channelOf(one), channelOf(other)];
  return {
    ...evidence,
    scans: {
      ...evidence.scans,
      channels: evidence.scans.channels.map((readings) => ({
        ...readings,
        channel: readings.channel === first ? second : readings.channel === second ? first : readings.channel,
      })),
    },
  };
};

const evaluated = (evidence: EvidenceInput) => {
  const outcome = evaluateEvidence(evidence);
  if (!outcome.ok) throw new Error(`${evidence.title}: ${JSON.stringify(outcome.problems)}`);
  return outcome.evaluation;
};

/** The seed draws which sensor, at which setpoint, stands for this furnace. */
const drawnPoint = (run: SimulatedRun, seed: number, points: readonly MeasuredPoint[]) => {
  const point = randomFrom(seed + 1_000_000).pick(points);
  const error = point.emfAtNominalMicrovolt - run.trueEmfMicrovolt(point.sensor, point.nominalCelsius);
  return { point, ratio: Math.abs(error) / point.expandedMicrovolt };
};

const differentTypes = sensors.flatMap((one, index) =>
  sensors.slice(index + 1).flatMap((other) => (one.type === other.type ? [] : [[one, other] as const])),
);

describe("two hundred simulated runs with known truth", () => {
  const ratios: number[] = [];
  const missed: number[] = [];
  const outOfOrder: number[] = [];

  for (const seed of seeds) {
    const run = simulateRun(seed);
    const evidence = withWindows(run.evidence);
    const evaluation = evaluated(evidence);
    const points = evaluation.points.filter((point) => point.state === "measured");
    if (evaluation.findings.some((finding) => finding.code === "swapped-channels")) outOfOrder.push(seed);
    ratios.push(drawnPoint(run, seed, points).ratio);

    const [one, other] = randomFrom(seed + 2_000_000).pick(differentTypes);
    const exchanged = evaluateEvidence(swapped(evidence, one.id, other.id));
    const named =
      exchanged.ok &&
      exchanged.evaluation.findings.some(
        (finding) =>
          finding.code === "swapped-channels" &&
          finding.message.includes(one.channel) &&
          finding.message.includes(other.channel),
      );
    if (!named) missed.push(seed);
  }

  it("holds the truth within U in at least 181 of them", () => {
    const within = ratios.filter((ratio) => ratio <= 1).length;
    console.log(`truth within U: ${within} of ${ratios.length}`);
    expect(within).toBeGreaterThanOrEqual(181);
  });

  it("states a U that is neither too small nor too large: mean |error|/U between 0.25 and 0.55", () => {
    const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
    console.log(`mean |error|/U: ${mean.toFixed(3)}`);
    expect(mean).toBeGreaterThan(0.25);
    expect(mean).toBeLessThan(0.55);
  });

  it("names both channels of every exchanged pair of different types", () => {
    expect(missed).toEqual([]);
  });

  it("raises no such alarm where nothing was exchanged", () => {
    expect(outOfOrder).toEqual([]);
  });
});
