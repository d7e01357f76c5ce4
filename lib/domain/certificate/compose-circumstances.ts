import { given, givenWhole, type Message, type Said, say } from "./catalogue/message";
import { conditionNote } from "./compose-item";
import { roomCondition, roomDeviation } from "./compose-room";
import { missingSetpoints } from "./compose-rows";
import type { CertificateParts } from "./parts";
import * as texts from "./texts";

/** 7.8.4.1 b. A simplified report keeps only what the figures mean: the scale and the reference function. */
export const composeConditions = (
  parts: CertificateParts,
  source: Said,
  isSimplified: boolean,
): Message[] => {
  const { run } = parts;
  const meaning = [texts.scale, texts.referenceFunction(source)];
  if (isSimplified) return meaning;
  return [
    ...meaning,
    run.immersionMillimetre === null
      ? say("condition.immersion-not-stated")
      : say("condition.immersion", { millimetre: String(run.immersionMillimetre) }),
    say("condition.junction", { celsius: String(run.junctionCelsius) }),
    ...(run.characterisation
      ? [say("condition.characterisation", { statement: given(run.characterisation) })]
      : []),
    run.tipCheckRiseMicrovolt === null
      ? say("condition.tip-not-recorded")
      : say("condition.tip-warmed", { microvolt: String(run.tipCheckRiseMicrovolt) }),
    ...(run.hasTypedReadings ? [say("condition.typed")] : []),
    ...roomCondition(run.room ?? []),
  ];
};

/** 7.8.2.1 n: additions to, deviations from and exclusions from the method and the order. */
export const composeDeviations = (parts: CertificateParts): Message[] => [
  ...(parts.intake.condition === "deviates"
    ? [say("deviation.condition", { note: conditionNote(parts.intake) })]
    : []),
  ...(parts.disclaimers ?? []).map(givenWhole),
  ...(parts.oneEndAgreed === undefined
    ? []
    : [say("deviation.one-end", { tag: parts.sensor.tag, agreement: given(parts.oneEndAgreed) })]),
  ...parts.run.gateDeviations.map(givenWhole),
  ...roomDeviation(parts.run.room ?? []),
  ...missingSetpoints(parts).map((setpoint) => say("deviation.not-in-run", { setpoint })),
  ...parts.points.flatMap((point) =>
    point.state === "measured"
      ? []
      : [
          say(point.state === "invalid" ? "deviation.invalid" : "deviation.not-reached", {
            celsius: String(Number(point.nominalCelsius.toFixed(2))),
            reason: given(point.reason),
          }),
        ],
  ),
  ...(parts.deviationFunction && !parts.deviationFunction.ok
    ? [say("deviation.no-function", { why: given(parts.deviationFunction.problem.message) })]
    : []),
];

/** What was measured of the item and is not reported. */
export const composeExclusions = ({ sensor, setAside = [] }: CertificateParts): Message[] =>
  setAside.map(({ run, reason }) =>
    say("exclusion.set-aside", { tag: sensor.tag, run, reason: given(reason) }),
  );
