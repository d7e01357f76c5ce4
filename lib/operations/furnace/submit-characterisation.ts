import {
  loadCharacterisationRun,
  moveCharacterisationRun,
} from "@/lib/data/furnace/characterisation-run-store";
import { insertCharacterisation } from "@/lib/data/furnace/characterisation-store";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { readPlan } from "@/lib/domain/furnace/characterisation-plan";
import { evaluateCharacterisation } from "@/lib/domain/furnace/evaluate-characterisation";
import { evaluateSurvey } from "@/lib/domain/furnace/evaluate-survey";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { SubmitCharacterisationInput } from "@/lib/domain/furnace/schema";
import { readSurveyReadings } from "@/lib/domain/furnace/survey-readings";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { engineVersion } from "@/lib/metrology/engine-version";
import { defineOperation } from "../operation";

/** All surveys evaluated anew from their readings, together: a characterisation that waits for another person. */
export const submitCharacterisation = defineOperation({
  name: "furnace/submit-characterisation",
  permission: "furnace.record",
  input: SubmitCharacterisationInput,
  perform: async ({ actor, now, tx }, { characterisationRunId, validUntil }) => {
    const run = await loadCharacterisationRun(tx, characterisationRunId);
    if (!run) throw new Refused({ code: "not-found", message: "This characterisation is not here." });
    const plan = readPlan(run.plan);
    const surveys = run.surveys.map(({ celsius, readings }) => ({
      celsius,
      evaluation: demand(evaluateSurvey(plan, celsius, readSurveyReadings(readings))),
    }));
    const evaluated = demand(evaluateCharacterisation(run.number, plan, surveys));
    // It is as old as its last survey.
    const days = run.surveys.map(({ measuredOn }) => isoDay(measuredOn));
    const performedOn = days.toSorted().at(-1) ?? isoDay(now);
    if (validUntil <= performedOn)
      throw new Refused({
        code: "invalid",
        message: "Nothing was submitted; what you typed is still here.",
        fields: { validUntil: `It holds until a day after ${performedOn}, when it was measured.` },
      });
    if (!(await moveCharacterisationRun(tx, run.id, ["measuring", "returned"], "submitted")))
      throw new Refused({
        code: "wrong-state",
        message: `${run.number} is ${run.state}: there is nothing to submit.`,
      });
    const { configuration } = run;
    const { id } = await insertCharacterisation(tx, {
      configurationId: configuration.id,
      performedOn,
      validUntil,
      uniformityHalfWidthCelsius: evaluated.uniformityHalfWidthCelsius,
      statement: evaluated.statement,
      recordedAt: now,
      recordedById: personIdOf(actor),
      measured: { figures: canonical(evaluated.figures), characterisationRunId: run.id, engineVersion },
    });
    return {
      value: { id, runId: run.id, furnaceId: configuration.furnaceId },
      events: [
        eventOf(furnaceEvents.characterisationSubmitted, id, {
          run: run.number,
          tag: configuration.furnace.tag,
          name: configuration.name,
          engineVersion,
          validUntil,
          statement: evaluated.statement,
        }),
      ],
    };
  },
});
