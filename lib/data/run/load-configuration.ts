import { isoDay } from "@/lib/domain/calibration/due";
import { calibrationInForce } from "@/lib/domain/calibration/in-force";
import { readFigures } from "@/lib/domain/furnace/characterisation-figures";
import { decisionState } from "@/lib/domain/furnace/decision-state";
import type { Characterisation, ConfigurationKind } from "@/lib/domain/furnace/types";
import type { Tx } from "../in-scope";

/**
 * A furnace configuration with the characterisation that counted on a day: accepted by then, so that what is accepted or
 * returned later changes no run that was made before.
 */
export const loadConfigurationOn = async (tx: Tx, id: string, day: string, moment: Date) => {
  const row = await tx.furnaceConfiguration.findUnique({
    where: { id },
    include: {
      furnace: true,
      characterisations: {
        orderBy: [{ performedOn: "asc" }, { recordedAt: "asc" }],
        include: { decisions: { where: { decidedAt: { lte: moment } }, orderBy: { id: "asc" } } },
      },
    },
  });
  if (!row) return null;
  const { characterisations, ...configuration } = row;
  const accepted = characterisations.filter(({ decisions }) => decisionState(decisions) === "accepted");
  const read = accepted.map(
    (one): Characterisation => ({
      id: one.id,
      configurationId: one.configurationId,
      performedOn: isoDay(one.performedOn),
      validUntil: isoDay(one.validUntil),
      uniformityHalfWidthCelsius: one.uniformityHalfWidthCelsius,
      statement: one.statement,
      figures: one.figures === null ? null : readFigures(one.figures),
    }),
  );
  return {
    ...configuration,
    kind: configuration.kind as ConfigurationKind,
    characterisation: calibrationInForce(read, day),
  };
};
