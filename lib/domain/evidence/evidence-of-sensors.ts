import type { Evidence } from "./schema";

/**
 * The part of a run's evidence that the results of these sensors rest on: themselves, the references, shorted channels,
 * and what is common to the run. Of other sensors, which may be other customers', nothing is left: neither identity nor
 * readings nor states nor what was agreed about them. It evaluates to the same results, bit for bit, since no sensor's
 * result depends on another sensor.
 */
export const evidenceOfSensors = (evidence: Evidence, ids: readonly string[]): Evidence => {
  const sensors = evidence.sensors.filter(({ id }) => ids.includes(id));
  const load = evidence.load.filter(({ item }) => item.kind !== "sensor" || ids.includes(item.id));
  const channels = new Set(load.map(({ channel }) => channel));
  const junctions = new Set(load.map(({ junction }) => junction));
  const [first] = sensors;
  const statesOwnRule = sensors.every(({ decisionRule }) => decisionRule !== undefined);
  const statesOwnDigits = sensors.every(({ uncertaintyDigits }) => uncertaintyDigits !== undefined);
  return {
    ...evidence,
    sensors,
    load,
    junctions: evidence.junctions.filter(({ id }) => junctions.has(id)),
    scans: {
      ...evidence.scans,
      channels: evidence.scans.channels.filter(({ channel }) => channels.has(channel)),
    },
    states: evidence.states.filter(({ sensor }) => ids.includes(sensor)),
    // What stands for the whole load may be what another customer agreed; needed only where a sensor says nothing itself.
    decisionRule: (statesOwnRule && first?.decisionRule) || evidence.decisionRule,
    rounding: {
      uncertaintyDigits: (statesOwnDigits && first?.uncertaintyDigits) || evidence.rounding.uncertaintyDigits,
    },
  };
};
