import { blocksDigest } from "@/lib/data/evidence/blocks-digest";
import { demandUndisturbed } from "@/lib/data/order/demand-undisturbed";
import { demandEvaluable } from "@/lib/data/run/demand-evaluable";
import { demandRun, demandSetpoint } from "@/lib/data/run/demand-run";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { assessMovedWindow, proposeWindows } from "@/lib/domain/evidence/propose-windows";
import { referenceTemperatures } from "@/lib/domain/evidence/reference-temperatures";
import { demand, Refused, refuse } from "@/lib/domain/refusal";
import { decideWindow } from "@/lib/domain/run/decide-window";
import { runEvents } from "@/lib/domain/run/events";
import { AcceptWindowInput } from "@/lib/domain/run/schema";
import { setpointId } from "@/lib/domain/run/setpoint-id";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/** Accepts a stability window, as proposed or moved; what was seen then is stored with it. The last one counts. */
export const acceptWindow = defineOperation({
  name: "run/accept-window",
  permission: "run.perform",
  input: AcceptWindowInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await demandRun(tx, input.run);
    await demandEvaluable(tx, run);
    await demandUndisturbed(tx, run);
    const setpoint = demandSetpoint(run, input.setpoint);
    const digest = await blocksDigest(tx, run.id);
    if (input.blocksDigest !== undefined && input.blocksDigest !== Buffer.from(digest).toString("hex"))
      demand(
        refuse(
          "changed-meanwhile",
          "More readings came in since you opened the page. Nothing was stored; look at the window again.",
        ),
      );
    const references = run.places.flatMap(({ kind, channel }) => (kind === "reference" ? [channel] : []));
    const loaded = await loadEvidence(tx, run.number, { channels: references });
    if (!loaded) throw new Refused({ code: "not-found", message: `There is no run ${run.number}.` });
    const { evidence } = loaded;
    const series = referenceTemperatures(evidence);
    const assessed = assessMovedWindow(evidence, setpoint.celsius, input, series);
    if (!assessed.ok)
      throw new Refused({
        code: "invalid",
        message: `Nothing can be judged there: ${assessed.problem.message}.`,
        fields: { fromSeconds: "Set the window on readings of every reference." },
      });
    const id = setpointId(setpoint);
    const [proposed] = proposeWindows(
      { ...evidence, setpoints: evidence.setpoints.filter((one) => one.id === id) },
      series,
    );
    const { origin, assessment } = demand(
      decideWindow(assessed.value, proposed?.proposal ?? { kind: "none", reason: "" }, input.reason),
    );
    await tx.stabilityWindow.create({
      data: {
        runId: run.id,
        setpointId: setpoint.id,
        fromSeconds: input.fromSeconds,
        toSeconds: input.toSeconds,
        origin,
        assessment: canonical(assessment),
        blocksDigest: digest,
        acceptedById: personIdOf(actor),
        acceptedAt: now,
      },
    });
    return {
      value: { origin, assessment },
      events: [
        eventOf(runEvents.windowAccepted, run.id, {
          run: run.number,
          setpointCelsius: setpoint.celsius,
          fromSeconds: input.fromSeconds,
          toSeconds: input.toSeconds,
          origin,
          meets: assessment.meets,
          reason: assessment.reason,
        }),
      ],
    };
  },
});
