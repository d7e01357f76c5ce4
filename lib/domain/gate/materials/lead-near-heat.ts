import { leadInsulationLabels } from "../../sensor/build";
import type { Found, GateCheck } from "../finding";
import { immersionOf } from "../place-of";
import type { GatePlan, GateSensor } from "../plan";
import type { GatePolicy } from "../policy";
import { celsius, millimetre } from "../words";

const source = "insulation limits as published; the distance is laboratory policy";

const breach = (subject: string, reason: string, source: string): Found => ({
  code: "lead-near-heat",
  outcome: "breach",
  subject,
  reason,
  remedy:
    "Keep it out of the heat: another lead or a longer sensor. Correct the sensor's record only if that is wrong.",
  source,
});

const ofSensor = (sensor: GateSensor, plan: GatePlan, policy: GatePolicy): readonly Found[] => {
  const { leadInsulation, lengthMillimetre } = sensor.build;
  if (leadInsulation === undefined)
    return [
      {
        code: "lead-not-stated",
        outcome: "warning",
        subject: sensor.tag,
        reason: "the insulation of its lead is not stated.",
        remedy: "Look at it before it goes in: PTFE, PFA or PVC near heat gives off toxic fumes.",
        source,
      },
    ];
  const limit = policy.leadInsulations[leadInsulation];
  const highest = Math.max(...plan.setpointsCelsius);
  if (!limit || highest <= limit.maximumCelsius) return [];
  const name = leadInsulationLabels[leadInsulation];
  const holds = `a lead covered with ${name} holds ${celsius(limit.maximumCelsius)}`;
  const harm = limit.fumes === "" ? "it fails above" : `above it gives off ${limit.fumes}`;
  if (lengthMillimetre === undefined)
    return [
      breach(
        sensor.tag,
        `${holds}; ${harm}. The sensor's length is not stated, so nobody can say that the lead stays out of the heat.`,
        limit.source,
      ),
    ];
  const outside = lengthMillimetre - immersionOf(plan, sensor.tag);
  if (outside >= policy.leadClearMillimetre.value) return [];
  const where =
    outside > 0
      ? `would begin ${millimetre(outside)} outside the furnace (at least ${millimetre(policy.leadClearMillimetre.value)})`
      : `would begin ${millimetre(-outside)} inside the furnace`;
  return [breach(sensor.tag, `${holds}; ${harm}. It ${where} at ${celsius(highest)}.`, limit.source)];
};

export const leadNearHeat = {
  code: "lead-near-heat",
  heading: "materials",
  fine: "Every lead stays out of the heat, or bears it.",
  source,
  assess: (plan: GatePlan, policy: GatePolicy) =>
    plan.sensors.flatMap((sensor) => ofSensor(sensor, plan, policy)),
} as const satisfies GateCheck;
