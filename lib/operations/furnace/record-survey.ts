import { keepDocument } from "@/lib/data/evidence/keep-document";
import {
  insertSurvey,
  loadCharacterisationRun,
  moveCharacterisationRun,
} from "@/lib/data/furnace/characterisation-run-store";
import { sha256 } from "@/lib/data/sha256";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { readPlan } from "@/lib/domain/furnace/characterisation-plan";
import { evaluateSurvey } from "@/lib/domain/furnace/evaluate-survey";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { RecordSurveyInput } from "@/lib/domain/furnace/schema";
import { surveyKindLabels } from "@/lib/domain/furnace/survey-kinds";
import { SurveyReadings } from "@/lib/domain/furnace/survey-readings";
import { demand, Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { describeProblem } from "@/lib/files/readings-problem";
import { readSurveyCsv } from "@/lib/files/survey-csv";
import { engineVersion } from "@/lib/metrology/engine-version";
import { defineOperation } from "../operation";

const notStored = "Nothing was stored; what you typed is still here.";
const invalid = (fields: Record<string, string>): Refused =>
  new Refused({ code: "invalid", message: notStored, fields });

type FileInput = NonNullable<(typeof RecordSurveyInput)["_output"]["file"]>;

/** The rows of a file, judged by the same schema as typed ones; a refusal names line and column. */
const readingsOfFile = ({
  bytes,
  kind,
  junctionCelsius,
  centre,
  limitCelsius,
}: FileInput): SurveyReadings => {
  const read = readSurveyCsv(bytes, kind);
  if (!read.ok) throw invalid({ file: describeProblem(read.problem) });
  const parsed = SurveyReadings.safeParse({
    kind,
    unit: read.unit,
    junctionCelsius,
    rows: read.rows,
    ...(kind === "positions" ? { centre } : {}),
    ...(kind === "immersion" ? { limitCelsius } : {}),
  });
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  const [what, row, column] = issue?.path ?? [];
  if (what !== "rows") throw invalid({ [`readings.${String(what)}`]: issue?.message ?? "" });
  throw invalid({ file: `Row ${Number(row) + 1} of the readings, ${String(column)}: ${issue?.message}` });
};

/** One survey as measured, typed or from its file: evaluated at once, kept with its readings. Measured again is another row. */
export const recordSurvey = defineOperation({
  name: "furnace/record-survey",
  permission: "furnace.record",
  input: RecordSurveyInput,
  perform: async ({ actor, now, tx }, input) => {
    const run = await loadCharacterisationRun(tx, input.characterisationRunId);
    if (!run) throw new Refused({ code: "not-found", message: "This characterisation is not here." });
    if (input.measuredOn > isoDay(now)) throw invalid({ measuredOn: "This day has not come yet." });
    const readings = input.file ? readingsOfFile(input.file) : input.readings;
    if (!readings) throw invalid({ "readings.rows": "Type the readings, or choose a file." });
    const evaluation = demand(evaluateSurvey(readPlan(run.plan), input.celsius, readings));
    if (!(await moveCharacterisationRun(tx, run.id, ["planned", "measuring", "returned"], "measuring")))
      throw new Refused({
        code: "wrong-state",
        message: `${run.number} is ${run.state}: no survey is added to it. Plan another characterisation.`,
      });
    const personId = personIdOf(actor);
    const documentId = input.file
      ? await keepDocument(tx, {
          bytes: input.file.bytes,
          mediaType: "text/csv",
          fileName: input.file.fileName,
          receivedById: personId,
          receivedAt: now,
        })
      : null;
    const { id } = await insertSurvey(tx, {
      characterisationRunId: run.id,
      kind: readings.kind,
      celsius: input.celsius,
      measuredOn: input.measuredOn,
      readings: canonical(readings),
      documentId,
      evaluation: canonical(evaluation),
      engineVersion,
      recordedById: personId,
      recordedAt: now,
    });
    return {
      value: { id, runId: run.id, furnaceId: run.configuration.furnaceId },
      events: [
        eventOf(furnaceEvents.surveyRecorded, run.id, {
          run: run.number,
          kind: surveyKindLabels[readings.kind].toLowerCase(),
          celsius: input.celsius,
          rows: readings.rows.length,
          sha256: input.file ? Buffer.from(sha256(input.file.bytes)).toString("hex") : null,
        }),
      ],
    };
  },
});
