import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";

const source = "a scanner's channel carries one signal";

const assess = ({ places }: Pick<GatePlan, "places">): readonly Found[] =>
  places.flatMap(({ channel }, at) => {
    const twin = places.slice(0, at).find((earlier) => earlier.channel === channel);
    return twin
      ? [
          {
            code: "channel-twice",
            outcome: "breach",
            subject: channel,
            at,
            reason: `Channel ${channel} is taken by place ${twin.place}.`,
            remedy: "Choose a free channel.",
            source,
          } as const,
        ]
      : [];
  });

export const channelTwice = {
  code: "channel-twice",
  heading: "load",
  fine: "Every channel is used once.",
  source,
  assess,
} as const satisfies GateCheck;
