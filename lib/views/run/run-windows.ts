import { blocksDigest } from "@/lib/data/evidence/blocks-digest";
import type { Tx } from "@/lib/data/in-scope";
import type { RunEvidence } from "@/lib/data/run/load-evidence";
import { awaitStability, type StabilityWait } from "@/lib/domain/evidence/await-stability";
import { proposeWindows } from "@/lib/domain/evidence/propose-windows";
import {
  type ReferenceTemperatures,
  referenceTemperatures,
} from "@/lib/domain/evidence/reference-temperatures";
import { stabilityCriterion } from "@/lib/domain/evidence/stability-criterion";
import { currentSetpoint, lastTemperature, readAssessment } from "@/lib/domain/run/reference-summary";
import { setpointId } from "@/lib/domain/run/setpoint-id";
import type { Actor } from "@/lib/domain/staff/actor";
import type { WindowAssessment } from "@/lib/metrology/stability/stability-types";
import { answer, found } from "@/lib/views/view";
import { loadHead, runHead } from "./run-head";

const loadWithReferences = async (tx: Tx, number: string): Promise<RunEvidence> => {
  const run = found(await tx.run.findUnique({ where: { number }, include: { places: true } }));
  return loadHead(
    tx,
    number,
    run.places.flatMap(({ kind, channel }) => (kind === "reference" ? [channel] : [])),
  );
};

/** Only where neither a person nor the search has a window: at any other setpoint there is nothing to wait for. */
const waitAt = (
  { evidence }: RunEvidence,
  series: readonly ReferenceTemperatures[],
  nominalCelsius: number,
  isOpen: boolean,
): StabilityWait | null =>
  isOpen ? awaitStability(series, nominalCelsius, stabilityCriterion(evidence, nominalCelsius)) : null;

const setpointsOf = (
  loaded: RunEvidence,
  series: readonly ReferenceTemperatures[],
  proposals: ReturnType<typeof proposeWindows>,
) => {
  const { run, standing, sensors } = loaded;
  return run.setpoints.map((setpoint) => {
    const id = setpointId(setpoint);
    const accepted = standing.windows.find((one) => one.setpointId === setpoint.id);
    const proposal = proposals.find((one) => one.setpoint === id)?.proposal ?? {
      kind: "none" as const,
      reason: "",
    };
    return {
      id,
      position: setpoint.position,
      celsius: setpoint.celsius,
      proposal,
      wait: waitAt(loaded, series, setpoint.celsius, !accepted && proposal.kind === "none"),
      accepted: accepted
        ? {
            fromSeconds: accepted.fromSeconds,
            toSeconds: accepted.toSeconds,
            origin: accepted.origin as "proposed" | "moved",
            assessment: readAssessment(accepted.assessment),
          }
        : null,
      sensors: sensors.map((sensor) => {
        const said = standing.states.find(
          (one) => one.setpointId === setpoint.id && one.sensorId === sensor.id,
        );
        return {
          tag: sensor.tag,
          type: sensor.typeLetter,
          state: (said?.state ?? "measured") as "measured" | "invalid" | "not-reached",
          reason: said?.reason ?? "",
        };
      }),
    };
  });
};

/** The temperature strip with a proposed or accepted window for each setpoint, and every sensor's state there. */
export const runWindowsView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const loaded = await loadWithReferences(tx, number);
    const { evidence, run } = loaded;
    const series = referenceTemperatures(evidence);
    const proposals = series.some(({ seconds }) => seconds.length > 0)
      ? proposeWindows(evidence, series)
      : [];
    const now = lastTemperature(series);
    const head = await runHead(tx, actor, loaded);
    return {
      head,
      blocksDigest: Buffer.from(await blocksDigest(tx, run.id)).toString("hex"),
      traces: series.map(({ id, seconds, celsius }) => ({ label: id, seconds, celsius })),
      refused: series.flatMap(({ id, refused }) =>
        refused.length > 0 ? [{ id, count: refused.length }] : [],
      ),
      now,
      current: currentSetpoint(head.setpoints, now?.celsius ?? null),
      setpoints: setpointsOf(loaded, series, proposals),
    };
  });

/** A window with the numbers it is judged by. */
export type JudgedWindow = WindowAssessment;
export type RunWindowsView = Awaited<ReturnType<typeof runWindowsView>>;
