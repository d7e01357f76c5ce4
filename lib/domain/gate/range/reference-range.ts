import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";
import { list, span } from "../words";

type Facts = {
  readonly setpointsCelsius: readonly number[];
  readonly references: readonly Pick<GatePlan["references"][number], "tag" | "range">[];
};

const source = "ISO/IEC 17025:2017, 6.5; the reference's certificate";

/** A certificate holds between its lowest and highest temperature and is never carried beyond. */
const assess = ({ references, setpointsCelsius }: Facts): readonly Found[] =>
  references.flatMap(({ tag, range }) => {
    const beyond = range
      ? setpointsCelsius.filter((at) => at < range.fromCelsius || at > range.toCelsius)
      : [];
    return range === null || beyond.length === 0
      ? []
      : [
          {
            code: "reference-range",
            outcome: "breach",
            subject: tag,
            reason: `its certificate holds from ${span(range)}, not at ${list(beyond)}.`,
            remedy: "Choose another reference or other setpoints.",
            source,
          } as const,
        ];
  });

export const referenceRange = {
  code: "reference-range",
  heading: "range",
  fine: "Every reference is certified at every setpoint.",
  source,
  assess,
} as const satisfies GateCheck;
