import type { Evidence } from "./schema";
import type { EvidenceV1 } from "./schema-v1";
import { unstated } from "./unstated";

const { line, ...rest } = unstated("not stated in an evidence file of version 1");

/**
 * Version 1 as version 2: what it did not know stands as zero with that reason, correlations between the
 * stages are neglected, and k is Student's, so that every result stays what it was.
 */
export function upgradeEvidence(evidence: EvidenceV1): Evidence {
  const { configuration } = evidence;
  return {
    ...evidence,
    ...rest,
    version: 2,
    sensors: evidence.sensors.map((sensor) => ({
      ...sensor,
      immersion: line,
      shunting: line,
      hysteresis: line,
    })),
    configuration: {
      ...configuration,
      characterisation: {
        ...configuration.characterisation,
        axial: line,
        radial: line,
        gradient: line,
      },
    },
    references: evidence.references.map(({ deviations, singlePointReachCelsius, ...reference }) => ({
      ...reference,
      correction: {
        kind: "points",
        points: deviations,
        ...(singlePointReachCelsius === undefined ? {} : { singlePointReachCelsius }),
      },
      interpolation: line,
    })),
    junctions: evidence.junctions.map((junction) => ({ ...junction, spread: line })),
  };
}
