import { setpointsCharacterised } from "../furnace/setpoints-characterised";
import { ok, type Result } from "../refusal";
import type { BudgetInputs } from "./budget-inputs";
import { chosenSetpoints } from "./chosen-setpoints";
import { creationProblems } from "./creation-problems";
import { problemOfUse } from "./equipment-problem";
import type { LoadCandidates, SensorCandidate } from "./load-candidates";
import type { CreateRunInput } from "./schema";

type Fault = { readonly message: string; readonly ground?: string };
type Faults = Map<string, Fault>;

/** The first fault of a field is the one that is said. */
const say = (faults: Faults, field: string, fault: Fault | null): void => {
  if (fault !== null && !faults.has(field)) faults.set(field, fault);
};

const inWords = (message: string | null): Fault | null => (message === null ? null : { message });

const sensorProblem = (sensor: SensorCandidate | undefined, tag: string): string | null => {
  if (!sensor) return `There is no sensor ${tag}. Take it in first, or correct the tag.`;
  // An order that is not accepted is said by the gate's own rule.
  if (sensor.state !== "received" && sensor.orderState === "accepted")
    return `${tag} is ${sensor.state}; only a received sensor can be loaded.`;
  return sensor.nextSet === null
    ? `${tag} is ordered to be annealed before this measurement, and no annealing is recorded. Anneal it and record it on its page, then load it.`
    : null;
};

const leadProblem = (
  { item, leadId }: CreateRunInput["places"][number],
  candidates: LoadCandidates,
  day: string,
): Fault | null => {
  if (leadId === undefined) return null;
  if (item.kind !== "sensor")
    return { message: "Only a sensor is joined by a lead of ours. Choose none.", ground: "lead-of-sensor" };
  const lead = candidates.leads.find(({ id }) => id === leadId) ?? null;
  const problem = problemOfUse(lead, "lead", day);
  if (problem) return problem;
  const sensor = candidates.sensors.find(({ tag }) => tag === item.tag);
  return lead && sensor && lead.type !== sensor.type
    ? {
        message: `${lead.tag} is for type ${lead.type}, ${sensor.tag} is type ${sensor.type}. Choose a lead of its type, or none.`,
        ground: "lead-type",
      }
    : null;
};

const sayPlaces = (faults: Faults, input: CreateRunInput, candidates: LoadCandidates, day: string): void => {
  for (const [index, place] of input.places.entries()) {
    const { item, junctionId } = place;
    const at = `places.${index}`;
    say(faults, `${at}.leadId`, leadProblem(place, candidates, day));
    const junction = candidates.junctions.find(({ id }) => id === junctionId) ?? null;
    say(faults, `${at}.junctionId`, problemOfUse(junction, "junction", day));
    if (item.kind === "reference") {
      const reference = candidates.references.find(({ tag }) => tag === item.tag) ?? null;
      say(faults, `${at}.item`, problemOfUse(reference, "reference", day));
    }
    if (item.kind === "sensor") {
      const sensor = candidates.sensors.find(({ tag }) => tag === item.tag);
      say(faults, `${at}.item`, inWords(sensorProblem(sensor, item.tag)));
    }
  }
};

const sayProcedure = (faults: Faults, candidates: LoadCandidates, budget: BudgetInputs): void => {
  for (const { tag, type } of candidates.sensors)
    if (!budget.sensors[type])
      say(faults, "procedure", {
        message: `${budget.procedure} has no budget for type ${type} (${tag}). Choose another procedure.`,
      });
};

const refused = (faults: Faults): Result<never> => ({
  ok: false,
  refusal: {
    code: "rule",
    message: "The run was not made: some of it is not allowed. What you entered is still here.",
    fields: Object.fromEntries([...faults].map(([field, { message }]) => [field, message])),
    grounds: Object.fromEntries(
      [...faults].flatMap(([field, { ground }]) => (ground ? [[field, ground]] : [])),
    ),
  },
});

/** Whether this run may be made as planned; all that is wrong with it at once, each at its field. */
export const decideCreate = (
  input: CreateRunInput,
  candidates: LoadCandidates,
  budget: BudgetInputs,
  day: string,
): Result<{ readonly setpointsCelsius: readonly number[] }> => {
  const faults: Faults = new Map();
  const setpoints = chosenSetpoints(candidates.sensors, input.setpointsCelsius);
  if (!candidates.configuration)
    say(faults, "configurationId", { message: "Choose a furnace configuration that is recorded." });
  const furnaceProblem = candidates.configuration?.furnaceProblem;
  if (furnaceProblem) say(faults, "configurationId", furnaceProblem);
  say(faults, "voltmeterId", problemOfUse(candidates.voltmeter, "voltmeter", day));
  say(faults, "scannerId", problemOfUse(candidates.scanner, "scanner", day));
  if (setpoints.stray !== null)
    say(faults, "setpoints", {
      message: `${setpoints.stray} °C is not ordered for any sensor of this load.`,
    });
  if (setpoints.celsius.length === 0)
    say(faults, "setpoints", { message: "Choose at least one of the setpoints the sensors are ordered at." });
  const characterised = candidates.configuration?.characterisation ?? null;
  say(faults, "setpoints", inWords(setpointsCharacterised(characterised, setpoints.celsius)));
  const problems = creationProblems(input, candidates, setpoints.celsius, day);
  for (const { field, code, message } of problems) say(faults, field, { message, ground: code });
  sayPlaces(faults, input, candidates, day);
  sayProcedure(faults, candidates, budget);
  return faults.size === 0 ? ok({ setpointsCelsius: setpoints.celsius }) : refused(faults);
};
