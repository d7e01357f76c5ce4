import { mean } from "@/lib/metrology/number/mean";
import { firstAfter, firstAtOrAfter } from "@/lib/metrology/stability/bounds";
import type { Bench, Mounted, Reference, Sensor } from "./bench";
import {
  type ChannelInWindow,
  channelInWindow,
  correctedReadings,
  indicationCorrector,
  type Window,
} from "./channel-window";
import type { EvidenceProblem } from "./evaluation";
import { type EvidenceOutcome, got, missing } from "./evidence-outcome";
import { prepareReference } from "./prepare-reference";
import type { ReferenceInWindow } from "./reference-stage";
import type { Evidence } from "./schema";

export type SetpointInWindow = {
  readonly setpoint: Evidence["setpoints"][number];
  readonly setpointPath: string;
  readonly window: Evidence["windows"][number];
  readonly windowPath: string;
  readonly references: readonly ReferenceInWindow[];
  /** Each channel of a sensor or reference in this window, by the channel's name: read once, used by all. */
  readonly channels: ReadonlyMap<string, EvidenceOutcome<ChannelInWindow>>;
};

/** Each setpoint that has a window and a sensor measured in it, with every channel's mean in that window. */
export function setpointsInWindows(evidence: Evidence, bench: Bench): EvidenceOutcome<SetpointInWindow[]> {
  const setpoints: SetpointInWindow[] = [];
  const problems: EvidenceProblem[] = [];
  const prepareds = bench.references.flatMap((mounted) => {
    const prepared = prepareReference(mounted, evidence);
    if (prepared.ok) return [{ mounted, prepared: prepared.value }];
    problems.push(...prepared.problems);
    return [];
  });
  if (problems.length > 0) return { ok: false, problems };
  const all: Mounted<Sensor | Reference>[] = [...bench.references, ...bench.sensors];
  const mounteds = all.map((mounted) => ({
    mounted,
    corrected: correctedReadings(mounted.readings, evidence.voltmeter.corrections),
  }));
  for (const [i, setpoint] of evidence.setpoints.entries()) {
    const windowIndex = evidence.windows.findIndex((w) => w.setpoint === setpoint.id);
    const window = evidence.windows[windowIndex];
    const isMeasured = bench.sensors.some((s) => !stateOf(evidence, s.item.id, setpoint.id));
    if (!window || !isMeasured) continue;
    const zero = zeroInWindow(evidence, window);
    if (!zero.ok) {
      problems.push(...zero.problems);
      continue;
    }
    const channels = new Map(
      mounteds.map(({ mounted, corrected }) => [
        mounted.place.channel,
        channelInWindow(mounted, window, corrected, zero.value),
      ]),
    );
    const references: ReferenceInWindow[] = [];
    for (const { mounted, prepared } of prepareds) {
      const channel = channels.get(mounted.place.channel);
      if (channel?.ok) references.push({ mounted, prepared, channel: channel.value });
      else problems.push(...(channel?.problems ?? []));
    }
    setpoints.push({
      setpoint,
      setpointPath: `setpoints[${i}]`,
      window,
      windowPath: `windows[${windowIndex}]`,
      references,
      channels,
    });
  }
  return problems.length > 0 ? { ok: false, problems } : got(setpoints);
}

export function stateOf(evidence: Evidence, sensor: string, setpoint: string) {
  return evidence.states.find((s) => s.sensor === sensor && s.setpoint === setpoint);
}

/** The shorted channel's corrected mean in the window, µV: what every unreversed reading shows too much. */
function zeroInWindow(evidence: Evidence, window: Window): EvidenceOutcome<number> {
  const { zero } = evidence.comparison;
  if (zero.kind === "none") return got(0);
  const path = "comparison.zero.channel";
  const isShorted = evidence.load.some(
    ({ item, channel }) => item.kind === "shorted" && channel === zero.channel,
  );
  if (!isShorted) return missing(path, `Channel ${zero.channel} is not a shorted channel of the load.`);
  const readings = evidence.scans.channels.find(({ channel }) => channel === zero.channel);
  const from = readings ? firstAtOrAfter(readings.seconds, window.fromSeconds) : 0;
  const to = readings ? firstAfter(readings.seconds, window.toSeconds) : 0;
  if (!readings || to <= from) {
    return missing(
      path,
      `The shorted channel ${zero.channel} has no reading between ${window.fromSeconds} s and ${window.toSeconds} s: move the window, or take no zero off.`,
    );
  }
  const correct = indicationCorrector(evidence.voltmeter.corrections);
  return got(mean(readings.microvolts.slice(from, to).map(correct)));
}
