import { surveyKinds } from "@/lib/domain/furnace/survey-kinds";
import type { SurveyReadings } from "@/lib/domain/furnace/survey-readings";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { planCharacterisation } from "@/lib/operations/furnace/plan-characterisation";
import { recordSurvey } from "@/lib/operations/furnace/record-survey";
import { submitCharacterisation } from "@/lib/operations/furnace/submit-characterisation";
import { simulateSurvey } from "@/lib/station/simulation/simulate-survey";
import { furnaceAt, plan } from "../../domain/furnace/plan";
import { benchClock, type RunBench } from "../../support/run-bench";

/** A technician at the furnace: plans, surveys, submits; everything through the operations people use. */
export const measuredOn = "2026-10-10";

export const measuring = (bench: () => RunBench) => {
  const planned = (change: Partial<typeof plan> = {}, actor: Actor = bench().technician) =>
    execute(
      planCharacterisation,
      actor,
      { configurationId: bench().configurationId, plan: { ...plan, ...change } },
      benchClock,
    );
  const surveyed = (
    characterisationRunId: string,
    celsius: number,
    readings: SurveyReadings,
    actor: Actor = bench().technician,
  ) =>
    execute(
      recordSurvey,
      actor,
      { characterisationRunId, celsius, measuredOn, readings, file: null },
      benchClock,
    );
  const submitted = (characterisationRunId: string, validUntil = "2027-10-10") =>
    execute(submitCharacterisation, bench().technician, { characterisationRunId, validUntil }, benchClock);
  const measuredWhole = async () => {
    const { id } = await planned();
    for (const celsius of plan.temperatures)
      for (const [seed, kind] of surveyKinds.entries())
        await surveyed(id, celsius, simulateSurvey(kind, furnaceAt(celsius), seed + 1));
    return id;
  };
  return { planned, surveyed, submitted, measuredWhole };
};
