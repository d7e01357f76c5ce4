import { setpointsCharacterised } from "../furnace/setpoints-characterised";
import { ok, type Result, refuse } from "../refusal";
import type { BudgetInputs } from "./budget-inputs";
import { chosenSetpoints } from "./chosen-setpoints";
import { creationProblems } from "./creation-problems";
import { equipmentProblem } from "./equipment-problem";
import type { LoadCandidates, SensorCandidate } from "./load-candidates";
import type { CreateRunInput } from "./schema";

type Fields = Record<string, string>;

const say = (fields: Fields, field: string, message: string | null): void => {
  if (message !== null && !Object.hasOwn(fields, field)) fields[field] = message;
};

const sensorProblem = (sensor: SensorCandidate | undefined, tag: string): string | null => {
  if (!sensor) return `There is no sensor ${tag}. Take it in first, or correct the tag.`;
  // An order that is not accepted is said by the gate's own rule.
  return sensor.state === "received" || sensor.orderState !== "accepted"
    ? null
    : `${tag} is ${sensor.state}; only a received sensor can be loaded.`;
};

const sayPlaces = (fields: Fields, input: CreateRunInput, candidates: LoadCandidates, day: string): void => {
  for (const [index, { item, junctionId }] of input.places.entries()) {
    const at = `places.${index}`;
    const junction = candidates.junctions.find(({ id }) => id === junctionId) ?? null;
    say(fields, `${at}.junctionId`, equipmentProblem(junction, "junction", day));
    if (item.kind === "reference") {
      const reference = candidates.references.find(({ tag }) => tag === item.tag) ?? null;
      say(fields, `${at}.item`, equipmentProblem(reference, "reference", day));
    }
    if (item.kind === "sensor") {
      const sensor = candidates.sensors.find(({ tag }) => tag === item.tag);
      say(fields, `${at}.item`, sensorProblem(sensor, item.tag));
    }
  }
};

const sayProcedure = (fields: Fields, candidates: LoadCandidates, budget: BudgetInputs): void => {
  for (const { tag, type } of candidates.sensors)
    if (!budget.sensors[type])
      say(
        fields,
        "procedure",
        `${budget.procedure} has no budget for type ${type} (${tag}). Choose another procedure.`,
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
  const setpoints = chosenSetpoints(candidates.sensors, input.setpointsCelsius);
  if (!candidates.configuration)
    say(fields, "configurationId", "Choose a furnace configuration that is recorded.");
  say(fields, "voltmeterId", equipmentProblem(candidates.voltmeter, "voltmeter", day));
  say(fields, "scannerId", equipmentProblem(candidates.scanner, "scanner", day));
  if (setpoints.stray !== null)
    say(fields, "setpoints", `${setpoints.stray} °C is not ordered for any sensor of this load.`);
  if (setpoints.celsius.length === 0)
    say(fields, "setpoints", "Choose at least one of the setpoints the sensors are ordered at.");
  say(
    fields,
    "setpoints",
    setpointsCharacterised(candidates.configuration?.characterisation ?? null, setpoints.celsius),
  );
  const problems = creationProblems(input, candidates, setpoints.celsius, day);
  for (const { field, message } of problems) say(fields, field, message);
  sayPlaces(fields, input, candidates, day);
  sayProcedure(fields, candidates, budget);
  if (Object.keys(fields).length > 0)
    return refuse(
      "rule",
      "The run was not made: some of it is not allowed. What you entered is still here.",
      fields,
    );
  return ok({ setpointsCelsius: setpoints.celsius });
};
