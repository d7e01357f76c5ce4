import { loadTypeOf } from "@/lib/data/furnace/load-tested";
import { inScope } from "@/lib/data/in-scope";
import { canonical } from "@/lib/domain/audit/canonical";
import { isoDay } from "@/lib/domain/calibration/due";
import { readPlan } from "@/lib/domain/furnace/characterisation-plan";
import { evaluateCharacterisation } from "@/lib/domain/furnace/evaluate-characterisation";
import { evaluateSurvey } from "@/lib/domain/furnace/evaluate-survey";
import { evaluateInhomogeneity, readInhomogeneityReadings } from "@/lib/domain/furnace/inhomogeneity-test";
import { readSurveyReadings } from "@/lib/domain/furnace/survey-readings";
import { engineVersion } from "@/lib/metrology/engine-version";
import { Broken, counted, laboratory } from "./step";

const loadRuns = () =>
  inScope(laboratory, async (tx) => {
    const runs = await tx.characterisationRun.findMany({
      orderBy: { number: "asc" },
      include: { surveys: { orderBy: [{ recordedAt: "asc" }, { id: "asc" }] } },
    });
    const characterisations = await tx.characterisation.findMany({
      where: { source: "measured" },
      orderBy: { recordedAt: "asc" },
    });
    return { runs, characterisations };
  });

type Stored = Awaited<ReturnType<typeof loadRuns>>;
type Run = Stored["runs"][number];

/** Evaluates every survey anew from its readings; those of another engine are counted only. */
const demandSurveys = (run: Run) => {
  const plan = readPlan(run.plan);
  return run.surveys.map((survey) => {
    const record = `survey ${survey.kind} at ${survey.celsius} °C of ${run.number}`;
    const found = evaluateSurvey(plan, survey.celsius, readSurveyReadings(survey.readings));
    if (!found.ok) throw new Broken(record, `its readings are refused now: ${found.refusal.message}`);
    if (survey.engineVersion === engineVersion && canonical(found.value) !== survey.evaluation)
      throw new Broken(record, "evaluated anew from its readings, it is another");
    return { celsius: survey.celsius, evaluation: found.value, recordedAt: survey.recordedAt };
  });
};

const demandCharacterisation = (run: Run, one: Stored["characterisations"][number]): void => {
  const record = `characterisation of ${isoDay(one.performedOn)} from ${run.number}`;
  // What was measured after it was submitted belongs to the next one.
  const surveys = demandSurveys(run).filter(({ recordedAt }) => recordedAt <= one.recordedAt);
  const found = evaluateCharacterisation(run.number, readPlan(run.plan), surveys);
  if (!found.ok) throw new Broken(record, found.refusal.message);
  if (one.engineVersion !== engineVersion) return;
  const { figures, statement, uniformityHalfWidthCelsius } = found.value;
  if (canonical(figures) !== one.figures)
    throw new Broken(record, "its figures are not those of its surveys");
  if (statement !== one.statement || uniformityHalfWidthCelsius !== one.uniformityHalfWidthCelsius)
    throw new Broken(record, "its statement is not that of its figures");
};

const demandTests = async (): Promise<number> => {
  const tests = await inScope(laboratory, async (tx) => {
    const rows = await tx.inhomogeneityTest.findMany({ orderBy: { recordedAt: "asc" } });
    return Promise.all(rows.map(async (row) => ({ ...row, type: await loadTypeOf(tx, row) })));
  });
  for (const test of tests) {
    const record = `inhomogeneity test of ${isoDay(test.performedOn)} at ${test.celsius} °C`;
    const found = evaluateInhomogeneity(test.type, readInhomogeneityReadings(test.readings));
    if (!found.ok) throw new Broken(record, `its readings are refused now: ${found.refusal.message}`);
    if (test.engineVersion === engineVersion && canonical(found.value) !== test.evaluation)
      throw new Broken(record, "evaluated anew from its readings, it is another");
  }
  return tests.length;
};

/** Surveys, the characterisations made of them, and tests of inhomogeneity: from their readings to the last digit. */
export const rederiveCharacterisations = async (): Promise<string> => {
  const { runs, characterisations } = await loadRuns();
  let surveys = 0;
  for (const run of runs) surveys += demandSurveys(run).length;
  for (const one of characterisations) {
    const run = runs.find(({ id }) => id === one.characterisationRunId);
    if (!run) throw new Broken(`characterisation of ${isoDay(one.performedOn)}`, "its surveys are gone");
    demandCharacterisation(run, one);
  }
  const tests = await demandTests();
  return `${counted(surveys, "survey")} evaluated anew, ${counted(characterisations.length, "measured characterisation")} and ${counted(tests, "inhomogeneity test")} compared`;
};
