import type { ReferenceCorrection } from "../evidence/schema";
import type { FindingsOf } from "./findings";

/** What a reference's certificate says of its deviation, in the shape of the evidence. */
export const referenceCorrectionOf = (findings: FindingsOf<"reference">): ReferenceCorrection => {
  if (findings.equation) {
    const { terms, ...rest } = findings.equation;
    return { ...rest, coefficientsMicrovolt: terms.map(({ coefficient }) => coefficient) };
  }
  const { singlePointReachCelsius } = findings;
  return {
    kind: "points",
    points: findings.points.map((point) => ({ ...point })),
    ...(singlePointReachCelsius === undefined ? {} : { singlePointReachCelsius }),
  };
};
