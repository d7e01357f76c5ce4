import { averagePolarity } from "@/lib/metrology/comparison/average-polarity";
import { roundHalfEven } from "@/lib/metrology/number/decimal";
import { standardUncertainty } from "@/lib/metrology/uncertainty/standard-uncertainty";
import type { EvidenceFinding } from "../evaluation";
import type { FindingInput } from "./finding-input";

/**
 * A shorted channel shows the scanner's parasitic emf together with the voltmeter's own offset at zero. More than twice
 * their combined standard uncertainty in the budget is said.
 */
export function findShortedChannels({ evidence, setpoints }: FindingInput): EvidenceFinding[] {
  const { voltmeter, scanner } = evidence;
  const parts = [scanner.parasitic, voltmeter.calibrationUncertainty, voltmeter.drift].map(
    standardUncertainty,
  );
  const allowed = 2 * Math.sqrt(parts.reduce((sum, u) => sum + u * u, 0));
  return evidence.load.flatMap((place, i) => {
    const readings = evidence.scans.channels.find(({ channel }) => channel === place.channel);
    if (place.item.kind !== "shorted" || !readings) return [];
    return setpoints.flatMap(({ setpoint, window }) => {
      const inWindow = readings.seconds.flatMap((t, n) =>
        t >= window.fromSeconds && t <= window.toSeconds ? [n] : [],
      );
      const mean = averagePolarity({
        seconds: inWindow.map((n) => readings.seconds[n] as number),
        microvolts: inWindow.map((n) => readings.microvolts[n] as number),
        polarity: inWindow.map(() => 1),
      });
      if (!mean.ok || Math.abs(mean.value.microvolt) <= allowed) return [];
      return [
        {
          code: "shorted-channel-high",
          path: `load[${i}].channel`,
          message: `At setpoint ${setpoint.id} the shorted channel ${place.channel} reads ${roundHalfEven(mean.value.microvolt, 2)} µV; the budget allows for ${roundHalfEven(allowed, 2)} µV of parasitic emf and offset.`,
        },
      ];
    });
  });
}
