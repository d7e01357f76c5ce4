import { loadCharacterisationRun } from "@/lib/data/furnace/characterisation-run-store";
import { loadCharacterisationsOf, loadMeasurers } from "@/lib/data/furnace/characterisation-store";
import { isoDay } from "@/lib/domain/calibration/due";
import { readBores } from "@/lib/domain/furnace/bores";
import { readPlan } from "@/lib/domain/furnace/characterisation-plan";
import { decisionState } from "@/lib/domain/furnace/decision-state";
import { missingSurveys } from "@/lib/domain/furnace/evaluate-characterisation";
import type { SurveyEvaluation } from "@/lib/domain/furnace/evaluate-survey";
import { type SurveyKind, surveyKinds } from "@/lib/domain/furnace/survey-kinds";
import { readSurveyReadings } from "@/lib/domain/furnace/survey-readings";
import type { ConfigurationKind } from "@/lib/domain/furnace/types";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

/** A characterisation from its plan to its acceptance: surveys with their evaluation, what is missing, who may go on. */
export const characterisationRunView = (actor: Actor, id: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const run = found(await loadCharacterisationRun(tx, id));
    const { configuration } = run;
    const plan = readPlan(run.plan);
    const stored = await loadCharacterisationsOf(tx, run.id);
    const measurers = await loadMeasurers(tx, { recordedById: null, characterisationRunId: run.id });
    const person = actor.kind === "system" ? null : actor;
    const surveys = run.surveys.map((survey) => ({
      id: survey.id,
      kind: survey.kind as SurveyKind,
      celsius: survey.celsius,
      measuredOn: isoDay(survey.measuredOn),
      isFromFile: survey.documentId !== null,
      readings: readSurveyReadings(survey.readings),
      evaluation: JSON.parse(survey.evaluation) as SurveyEvaluation,
    }));
    const isOpen = ["planned", "measuring", "returned"].includes(run.state);
    return {
      id: run.id,
      number: run.number,
      state: run.state,
      plan,
      furnace: configuration.furnace,
      configuration: {
        id: configuration.id,
        name: configuration.name,
        kind: configuration.kind as ConfigurationKind,
        bores: readBores(configuration.bores),
      },
      missing: missingSurveys(plan, surveys),
      /** Of each kind and temperature the one that counts, and how often it was measured. */
      table: plan.temperatures.map((celsius) => ({
        celsius,
        cells: surveyKinds.map((kind) => {
          const of = surveys.filter((one) => one.kind === kind && one.celsius === celsius);
          return { kind, times: of.length, survey: of.at(-1) ?? null };
        }),
      })),
      characterisations: stored.map(({ decisions, ...one }) => {
        const state = decisionState(decisions);
        return {
          id: one.id,
          performedOn: isoDay(one.performedOn),
          validUntil: isoDay(one.validUntil),
          statement: one.statement,
          state,
          reason: decisions.at(-1)?.reason ?? "",
          mayDecide:
            state === "waiting" &&
            person !== null &&
            may(person.roles, "furnace.accept") &&
            one.recordedById !== person.personId &&
            !measurers.has(person.personId),
        };
      }),
      mayMeasure: isOpen && person !== null && may(person.roles, "furnace.record"),
    };
  });

export type CharacterisationRunView = Awaited<ReturnType<typeof characterisationRunView>>;
export type SurveyView = NonNullable<CharacterisationRunView["table"][number]["cells"][number]["survey"]>;
