import { sheathMaterialLabels } from "../../sensor/build";
import type { Found, GateCheck } from "../finding";
import type { GatePlan, GateSensor } from "../plan";
import type { GatePolicy } from "../policy";
import { celsius } from "../words";
import { diameterFound, spoilt } from "./diameter-found";

const ofMaterial = ({ tag, build }: GateSensor, highest: number, policy: GatePolicy): readonly Found[] => {
  const { sheathMaterial } = build;
  const limit = sheathMaterial && policy.sheathMaterials[sheathMaterial];
  if (!sheathMaterial || !limit || highest <= limit.maximumCelsius) return [];
  const holds = `a sheath of ${sheathMaterialLabels[sheathMaterial]} holds ${celsius(limit.maximumCelsius)}, not ${celsius(highest)}`;
  return [
    limit.fumes === ""
      ? {
          code: "sheath-limit",
          outcome: "breach",
          subject: tag,
          reason: `${holds}.`,
          remedy: spoilt,
          source: limit.source,
        }
      : {
          code: "sheath-fumes",
          outcome: "breach",
          subject: tag,
          reason: `${holds}; above it gives off ${limit.fumes}.`,
          remedy: "It must not go into this furnace: calibrate it in a bath.",
          source: limit.source,
        },
  ];
};

const ofDiameter = (sensor: GateSensor, highest: number, policy: GatePolicy): readonly Found[] => {
  const { tag, type, build } = sensor;
  if (build.sheath !== "mineral-insulated") return [];
  if (build.sheathMillimetre === undefined)
    return [
      {
        code: "sheath-not-stated",
        outcome: "warning",
        subject: tag,
        reason: "the diameter of its sheath is not stated.",
        remedy: "Measure it, and write it into the sensor's record.",
        source: policy.mineralInsulated.source,
      },
    ];
  const what = `mineral-insulated type ${type} of`;
  const { sheathMillimetre } = build;
  return diameterFound("sheath-limit", sensor, what, sheathMillimetre, highest, policy.mineralInsulated);
};

const assess = ({ sensors, setpointsCelsius }: GatePlan, policy: GatePolicy): readonly Found[] => {
  const highest = Math.max(...setpointsCelsius);
  return sensors.flatMap((sensor): readonly Found[] => {
    if (sensor.build.sheath === undefined && sensor.protection === "metal-sheath")
      return [
        {
          code: "sheath-not-stated",
          outcome: "warning",
          subject: sensor.tag,
          reason: "how it is sheathed is not stated.",
          remedy: "Say whether it is mineral-insulated or wires in a tube, and its diameter.",
          source: policy.mineralInsulated.source,
        },
      ];
    const byMaterial = ofMaterial(sensor, highest, policy);
    return byMaterial.length > 0 ? byMaterial : ofDiameter(sensor, highest, policy);
  });
};

export const sheathLimit = {
  code: "sheath-limit",
  heading: "materials",
  fine: "Every sheath bears the highest setpoint.",
  source: "limits by material and by diameter, in the laboratory's policy",
  assess,
} as const satisfies GateCheck;
