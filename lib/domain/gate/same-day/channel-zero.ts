import type { Found, GateCheck } from "../finding";
import { laboratoryPolicy } from "../finding";
import { isNoble } from "../metal-of";
import type { GatePlan } from "../plan";
import type { GatePolicy } from "../policy";
import { microvolt } from "../words";

/** Every channel of the load, shorted. A channel without a sensor, that gives the zero, is held to the tighter limit. */
const assess = (
  { bench, places }: Pick<GatePlan, "bench" | "places">,
  policy: GatePolicy,
): readonly Found[] =>
  places.flatMap(({ channel, type }): readonly Found[] => {
    const { value, source } =
      type === null || isNoble(type) ? policy.nobleChannelMicrovolt : policy.baseChannelMicrovolt;
    const seen = bench.channels.find((one) => one.channel === channel);
    if (seen && Math.abs(seen.microvolt) <= value) return [];
    return [
      {
        code: "channel-zero",
        outcome: "breach",
        subject: channel,
        reason: seen
          ? `this channel reads ${microvolt(seen.microvolt)} when shorted; at most ${microvolt(value)} either way.`
          : "this channel was not shorted and recorded today.",
        remedy: seen
          ? "Clean its terminals, let them come to one temperature, short it again; or use another channel."
          : "Short it and record what it reads.",
        source,
      },
    ];
  });

export const channelZero = {
  code: "channel-zero",
  heading: "same-day",
  fine: "Every channel reads nought when shorted.",
  source: laboratoryPolicy,
  assess,
} as const satisfies GateCheck;
