import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import { ok, type Result, refuse } from "../refusal";
import type { BudgetInputs } from "./budget-inputs";
import { chosenSetpoints } from "./chosen-setpoints";
import { equipmentProblem } from "./equipment-problem";
import type { LoadCandidates, SensorCandidate } from "./load-candidates";
import { protectionProblem } from "./protection-problem";
import type { CreateRunInput } from "./schema";

type Fields = Record<string, string>;

const say = (fields: Fields, field: string, message: string | null): void => {
  if (message !== null && !Object.hasOwn(fields, field)) fields[field] = message;
};

const sayPlaces = (fields: Fields, input: CreateRunInput, candidates: LoadCandidates, day: string): void => {
  for (const [index, row] of input.places.entries()) {
    const at = `places.${index}`;
    const earlier = input.places.slice(0, index);
    const twin = earlier.find((other) => other.channel === row.channel);
    if (twin) say(fields, `${at}.channel`, `Channel ${row.channel} is taken by place ${twin.place}.`);
    if (earlier.some((other) => other.place === row.place))
      say(fields, `${at}.place`, `Place ${row.place} stands here twice.`);
    const junction = candidates.junctions.find(({ id }) => id === row.junctionId) ?? null;
    say(fields, `${at}.junctionId`, equipmentProblem(junction, "junction", day));
    const { item } = row;
    const warmer = earlier.find(
      (other) =>
        other.junctionId === row.junctionId &&
        (other.junctionCelsius ?? junction?.celsius) !== (row.junctionCelsius ?? junction?.celsius),
    );
    if (warmer)
      say(
        fields,
        `${at}.junctionCelsius`,
        `This junction stands at another temperature in place ${warmer.place}. A junction has one temperature in a run; choose another junction for this place.`,
      );
    if (item.kind === "shorted") continue;
    if (earlier.some(({ item: other }) => other.kind === item.kind && other.tag === item.tag))
      say(fields, `${at}.item`, `${item.tag} stands in the load twice.`);
    if (item.kind === "reference") {
      const reference = candidates.references.find(({ tag }) => tag === item.tag) ?? null;
      say(fields, `${at}.item`, equipmentProblem(reference, "reference", day));
    } else
      sayProblem(
        fields,
        `${at}.item`,
        candidates.sensors.find(({ tag }) => tag === item.tag),
        item.tag,
      );
  }
};

const sayProblem = (
  fields: Fields,
  field: string,
  sensor: SensorCandidate | undefined,
  tag: string,
): void => {
  if (!sensor) say(fields, field, `There is no sensor ${tag}. Take it in first, or correct the tag.`);
  else if (sensor.orderState !== "accepted")
    say(fields, field, `The order ${sensor.orderNumber} of ${tag} is not accepted. Accept it first.`);
  else if (sensor.state !== "received")
    say(fields, field, `${tag} is ${sensor.state}; only a received sensor can be loaded.`);
  else if (referenceFunctions[sensor.type].isOxidisingInAir)
    say(
      fields,
      field,
      `${tag} is of type ${sensor.type}, which oxidises in the furnace's air. It is not calibrated here.`,
    );
};

const sayConfiguration = (
  fields: Fields,
  input: CreateRunInput,
  candidates: LoadCandidates,
  day: string,
): void => {
  const { configuration } = candidates;
  if (!configuration) {
    say(fields, "configurationId", "Choose a furnace configuration that is recorded.");
    return;
  }
  const { characterisation, places } = configuration;
  if (!characterisation)
    say(
      fields,
      "configurationId",
      `${configuration.name} was not characterised by ${day}. Record its characterisation under Furnaces.`,
    );
  else if (characterisation.validUntil < day)
    say(
      fields,
      "configurationId",
      `The characterisation of ${configuration.name} was valid until ${characterisation.validUntil}. Characterise it anew.`,
    );
  const occupied = input.places.filter(({ item }) => item.kind !== "shorted").length;
  if (occupied > places)
    say(
      fields,
      "places",
      `${configuration.name} has ${places} places; ${occupied} are filled here. Take some out.`,
    );
};

const saySetpoints = (fields: Fields, setpoints: readonly number[], candidates: LoadCandidates): void => {
  const highest = setpoints.at(-1);
  const lowest = setpoints[0];
  if (highest === undefined || lowest === undefined) {
    say(fields, "setpoints", "Choose at least one of the setpoints the sensors are ordered at.");
    return;
  }
  for (const sensor of candidates.sensors) {
    const maximum = sensor.orderedCelsius.at(-1);
    if (maximum !== undefined && highest > maximum)
      say(
        fields,
        "setpoints",
        `${sensor.tag} is ordered up to ${maximum} °C and must not go to ${highest} °C with the others. Take it out of this load, or leave the higher setpoints to another run.`,
      );
  }
  const { configuration } = candidates;
  if (configuration && (lowest < configuration.minimumCelsius || highest > configuration.maximumCelsius))
    say(
      fields,
      "setpoints",
      `The furnace works from ${configuration.minimumCelsius} to ${configuration.maximumCelsius} °C. Choose another configuration or other setpoints.`,
    );
  for (const { tag, range } of candidates.references)
    if (range && (lowest < range.fromCelsius || highest > range.toCelsius))
      say(
        fields,
        "setpoints",
        `The certificate of ${tag} holds from ${range.fromCelsius} to ${range.toCelsius} °C. Choose another reference or other setpoints.`,
      );
};

/** Whether this run may be made as planned; all that is wrong with it at once, each at its field. */
export const decideCreate = (
  input: CreateRunInput,
  candidates: LoadCandidates,
  budget: BudgetInputs,
  day: string,
): Result<{ readonly setpointsCelsius: readonly number[] }> => {
  const fields: Fields = {};
  sayConfiguration(fields, input, candidates, day);
  say(fields, "voltmeterId", equipmentProblem(candidates.voltmeter, "voltmeter", day));
  say(fields, "scannerId", equipmentProblem(candidates.scanner, "scanner", day));
  sayPlaces(fields, input, candidates, day);
  if (!input.places.some(({ item }) => item.kind === "sensor"))
    say(fields, "places", "Load at least one sensor.");
  if (!input.places.some(({ item }) => item.kind === "reference"))
    say(fields, "places", "Load at least one reference: without it nothing says how hot the furnace is.");
  const loaded = [...candidates.references, ...candidates.sensors];
  const protection = protectionProblem(loaded, candidates.configuration?.kind ?? "bare-tube");
  if (protection)
    say(
      fields,
      `places.${input.places.findIndex(({ item }) => item.kind !== "shorted" && item.tag === protection.tag)}.item`,
      protection.message,
    );
  for (const { tag, type } of candidates.sensors)
    if (!budget.sensors[type])
      say(
        fields,
        "procedure",
        `${budget.procedure} has no budget for type ${type} (${tag}). Choose another procedure.`,
      );
  const setpoints = chosenSetpoints(candidates.sensors, input.setpointsCelsius);
  if (setpoints.stray !== null)
    say(fields, "setpoints", `${setpoints.stray} °C is not ordered for any sensor of this load.`);
  saySetpoints(fields, setpoints.celsius, candidates);
  if (Object.keys(fields).length > 0)
    return refuse(
      "rule",
      "The run was not made: some of it is not allowed. What you entered is still here.",
      fields,
    );
  return ok({ setpointsCelsius: setpoints.celsius });
};
