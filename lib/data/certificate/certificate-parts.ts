import { say, sayAll } from "@/lib/domain/certificate/catalogue/message";
import type { CertificateParts, StandardPart } from "@/lib/domain/certificate/parts";
import type { EvaluatedPoint } from "@/lib/domain/evidence/evaluation";
import { defaultFunctionChoice } from "@/lib/domain/evidence/function-choice";
import { TypeLetter } from "@/lib/domain/evidence/schema";
import { defaultTable, sensorFunction } from "@/lib/domain/evidence/sensor-function";
import { sensorScope } from "@/lib/domain/evidence/sensor-scope";
import { certificateLines } from "@/lib/domain/gate/certificate-lines";
import { readLineOptions } from "@/lib/domain/order/options";
import { asSetKind } from "@/lib/domain/parts/decide-set";
import { ok, type Result, refuse } from "@/lib/domain/refusal";
import { decisionRuleOf } from "@/lib/domain/run/decision-rule-of";
import { readBuild } from "@/lib/domain/sensor/build";
import type { ReviewRun, ReviewSensor } from "../review/load-review-run";
import { certificateStandards } from "./certificate-standards";

/** Days are days in UTC everywhere. */
const day = (moment: Date): string => moment.toISOString().slice(0, 10);

const lines = (text: string): string[] =>
  text
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");

const orderPart = ({ line }: ReviewSensor): CertificateParts["order"] => ({
  number: line.order.number,
  purchaseOrder: line.order.purchaseOrder ?? "",
  decisionRule: decisionRuleOf(line.order),
  agreedBy: line.order.decisionRuleAgreedBy ?? "",
  agreedOn: line.order.decisionRuleAgreedOn ? day(line.order.decisionRuleAgreedOn) : "",
  uncertaintyDigits: line.order.uncertaintyDigits,
  toleranceStandard: line.toleranceStandard ?? "",
  toleranceClass: line.toleranceClass ?? "",
  temperatureUnit: line.temperatureUnit === "F" ? "F" : "C",
  setpoints: line.setpoints.map(({ typed, celsius }) => ({ typed, celsius })),
});

const intakePart = (intake: NonNullable<ReviewSensor["intake"]>): CertificateParts["intake"] => ({
  receivedOn: day(intake.receivedOn),
  condition: intake.condition,
  conditionNote: intake.conditionNote,
  loopResistanceOhm: intake.loopResistanceOhm,
  insulationMegaohm: intake.insulationMegaohm,
  polarity: intake.polarity,
  typeCheck: intake.typeCheck,
});

/** First reading to the end of the last accepted window. */
const performed = ({ run, windows }: ReviewRun): { performedFrom: string; performedTo: string } => {
  const start = run.startedAt ?? run.createdAt;
  const seconds = Math.max(0, ...windows.map((window) => window.toSeconds));
  return { performedFrom: day(start), performedTo: day(new Date(start.getTime() + seconds * 1000)) };
};

/** Of a sensor; what else stands in a place is nobody's secret and needs no tag here. */
const tagOf = (review: ReviewRun, place: ReviewRun["run"]["places"][number]): string | null =>
  review.sensors.find(({ id }) => id === place.sensorId)?.tag ?? null;

const runPart = (review: ReviewRun, place: ReviewRun["run"]["places"][number]): CertificateParts["run"] => {
  const { run, configuration } = review;
  const characterisation = review.evaluation?.head.configuration.characterisation;
  return {
    number: run.number,
    furnace: `${configuration.furnace.tag} ${configuration.furnace.name}`.trim(),
    configuration: configuration.name,
    characterisation: characterisation?.statement ?? "",
    place: place.place,
    immersionMillimetre: place.immersionMillimetre,
    junctionCelsius: place.junctionCelsius,
    ...performed(review),
    performedBy: review.names.get(run.performerId) ?? "",
    hasTypedReadings: review.blocks.some((block) => block.source === "typed"),
    gateDeviations: certificateLines(
      review.gateRows,
      run.places.map((one) => ({ ...one, tag: tagOf(review, one) })),
      tagOf(review, place) ?? "",
    ),
    tipCheckRiseMicrovolt:
      review.tipChecks.find((check) => check.loadPlaceId === place.id)?.riseMicrovolt ?? null,
    ...(review.room.length > 0 ? { room: review.room } : {}),
  };
};

const standardsOf = (
  review: ReviewRun,
  place: ReviewRun["run"]["places"][number],
): readonly StandardPart[] => {
  const tagOf = (id: string) => review.standards.find((equipment) => equipment.id === id)?.tag;
  const junctions = review.run.places
    .filter((other) => other.id === place.id || other.kind === "reference")
    .flatMap((other) => tagOf(other.junctionId) ?? []);
  return review.evaluation
    ? certificateStandards(review.evaluation.head, review.standards, new Set(junctions))
    : [];
};

/** Computed again from the stored points, as the evaluation did: only points are stored. */
const functionOf = (
  head: NonNullable<ReviewRun["evaluation"]>["head"],
  sensor: ReviewSensor,
  points: readonly EvaluatedPoint[],
): CertificateParts["deviationFunction"] => {
  const evaluated = head.sensors.find(({ id }) => id === sensor.tag);
  const options = readLineOptions(sensor.line.options);
  const asked = options.correctionTable !== undefined || options.coefficients;
  // What the line asks for never leaves the calibrated setpoints, whatever the procedure allows below them.
  const choice = evaluated?.deviationFunction
    ? { ...evaluated.deviationFunction, ...(asked ? { allowBelow: null } : {}) }
    : asked
      ? defaultFunctionChoice
      : null;
  if (!choice) return null;
  const unit = sensor.line.temperatureUnit === "F" ? "fahrenheit" : "celsius";
  return sensorFunction({
    sensor: sensor.tag,
    type: TypeLetter.parse(sensor.typeLetter),
    points: points
      .flatMap((point) => (point.state === "measured" ? [point] : []))
      .sort((a, b) => a.nominalCelsius - b.nominalCelsius),
    choice,
    table: options.correctionTable
      ? { unit, step: options.correctionTable.step }
      : (evaluated?.deviationFunction?.table ?? { ...defaultTable, unit }),
    digits: evaluated?.uncertaintyDigits ?? head.rounding.uncertaintyDigits,
    scope: sensorScope(head.scope, evaluated),
  });
};

/** Lot, roll and end as the customer is audited by them. */
const materialOf = ({ build }: ReviewSensor): Pick<CertificateParts["sensor"], "material"> => {
  const { lot, roll, end } = readBuild(build);
  const said = [
    ...(lot ? [say("item.lot", { lot })] : []),
    ...(roll ? [say("item.roll", { roll })] : []),
    ...(end ? [say(`item.end-${end}`)] : []),
  ];
  return said.length > 0 ? { material: sayAll(said, ", ") } : {};
};

/** 7.8.2.1 c: as the line says. */
const siteOf = ({ line }: ReviewSensor): Pick<CertificateParts, "site"> =>
  line.performedAt === "customer-site" ? { site: line.siteAddress } : {};

/** 7.8.2.1 p: what our own run measured is no provider's result, and is not ours to report while the order says it is theirs. */
const notOurs = (review: ReviewRun, { tag, line }: ReviewSensor): string | null => {
  const provider = review.providers.get(line.providerId ?? "");
  return provider
    ? `Line ${line.position} of order ${line.order.number} is subcontracted to ${provider}, and run ${review.run.number} measured ${tag} here. Change the order to have the line done here, or put ${tag} back and record ${provider}'s certificate on its page.`
    : null;
};

/** 7.8.7 */
const opinionsPart = (review: ReviewRun, sensorId: string): Pick<CertificateParts, "opinions"> => {
  const standing = review.opinions.get(sensorId);
  if (!standing) return {};
  const { text, basis, by, writtenAt } = standing;
  return { opinions: [{ text, basis, by, on: day(writtenAt) }] };
};

/** What the certificate of one sensor of a run is composed from. */
export const certificateParts = (review: ReviewRun, sensorId: string): Result<CertificateParts> => {
  const { evaluation, laboratory } = review;
  const sensor = review.sensors.find((candidate) => candidate.id === sensorId);
  const place = review.run.places.find((candidate) => candidate.sensorId === sensorId);
  if (!sensor || !place) return refuse("not-found", "This sensor is not in this run.");
  if (!evaluation) return refuse("wrong-state", "This run has not been evaluated.");
  if (!sensor.intake) return refuse("rule", `${sensor.tag} was never taken in.`);
  const why = notOurs(review, sensor);
  if (why) return refuse("rule", why);
  const { customer } = sensor.line.order;
  const evaluated = evaluation.head.sensors.find(({ id }) => id === sensor.tag);
  const position = new Map(review.run.setpoints.map((setpoint) => [setpoint.id, setpoint.position]));
  const points = evaluation.results
    .filter((result) => result.sensorId === sensorId)
    .sort((left, right) => (position.get(left.setpointId) ?? 0) - (position.get(right.setpointId) ?? 0))
    .map((result) => result.point);
  return ok({
    laboratory: {
      name: laboratory.name,
      addressLines: lines(laboratory.addressLines),
      countryCode: laboratory.countryCode,
      contact: laboratory.contact,
      accreditation: laboratory.accreditationText,
      accreditationNumber: laboratory.accreditationNumber,
      accreditationMark: review.accreditationMark,
      demonstration: laboratory.isDemo,
    },
    customer: {
      name: customer.name,
      addressLines: lines(customer.addressLines),
      contact: `${customer.contactName}, ${customer.email}`,
    },
    order: orderPart(sensor),
    sensor: {
      tag: sensor.tag,
      serial: sensor.serial,
      typeLetter: sensor.typeLetter,
      construction: sensor.construction,
      protection: sensor.protection,
      ...materialOf(sensor),
    },
    intake: intakePart(sensor.intake),
    build: readBuild(sensor.build),
    disclaimers: review.disclaimers.get(sensorId) ?? [],
    anneals: review.anneals.get(sensorId) ?? [],
    ...opinionsPart(review, sensorId),
    set: asSetKind(place.setKind),
    ...siteOf(sensor),
    run: runPart(review, place),
    evaluation: {
      sequence: evaluation.sequence,
      engineVersion: evaluation.engineVersion,
      inputsDigest: Buffer.from(evaluation.inputsDigest).toString("hex"),
      decisionRule: evaluated?.decisionRule ?? evaluation.head.decisionRule,
      uncertaintyDigits: evaluated?.uncertaintyDigits ?? evaluation.head.rounding.uncertaintyDigits,
    },
    points,
    deviationFunction: functionOf(evaluation.head, sensor, points),
    standards: standardsOf(review, place),
  });
};
