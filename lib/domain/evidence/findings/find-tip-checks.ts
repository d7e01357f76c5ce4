import type { EvidenceFinding } from "../evaluation";
import type { FindingInput } from "./finding-input";

/** A tip warmed alone must raise its own channel by this much (laboratory policy). */
const LEAST_RISE_MICROVOLT = 20;

/** Two channels of one type cannot be told apart by emf: each tip is warmed alone before the run. */
export function findTipChecks({ evidence }: FindingInput): EvidenceFinding[] {
  return evidence.load.flatMap(({ item, channel, tipCheckRiseMicrovolt: rise }, i) => {
    if (item.kind === "shorted") return [];
    const path = `load[${i}].tipCheckRiseMicrovolt`;
    if (rise === null) {
      return [
        {
          code: "tip-check-missing",
          path,
          message: `No tip check is recorded for ${item.kind} ${item.id} on channel ${channel}: a swap with a channel of the same type would not be seen.`,
        },
      ];
    }
    if (rise >= LEAST_RISE_MICROVOLT) return [];
    return [
      {
        code: "tip-check-low",
        path,
        message: `Warming the tip of ${item.kind} ${item.id} raised channel ${channel} by ${rise} µV; at least ${LEAST_RISE_MICROVOLT} µV shows that it is connected there.`,
      },
    ];
  });
}
