"use server";
import { countingRuleLabels } from "@/lib/domain/order/options";
import { tipCheckRemedy } from "@/lib/domain/run/tip-check";
import { abandonRun } from "@/lib/operations/run/abandon";
import { acceptWindow } from "@/lib/operations/run/accept-window";
import { authoriseRepeat } from "@/lib/operations/run/authorise-repeat";
import { createRun } from "@/lib/operations/run/create";
import { evaluateRun } from "@/lib/operations/run/evaluate";
import { recordRoom } from "@/lib/operations/run/record-room";
import { recordTipCheck } from "@/lib/operations/run/record-tip-check";
import { stateSensorSetpoint } from "@/lib/operations/run/state-sensor-setpoint";
import { submitRun } from "@/lib/operations/run/submit";
import { typeReadings } from "@/lib/operations/run/type-readings";
import { formAction } from "@/lib/web/form-action";
import {
  flag,
  list,
  number,
  optionalNumber,
  optionalText,
  parseDecimal,
  rows,
  text,
} from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const placeFields = [
  "place",
  "kind",
  "tag",
  "channel",
  "junctionId",
  "junctionCelsius",
  "immersionMillimetre",
  "leadId",
];
const optionalFigure = (typed: string | undefined) => (typed ? parseDecimal(typed) : undefined);

const places = (data: FormData) =>
  rows(data, "places", placeFields).map((row) => ({
    place: row.place,
    item: row.kind === "shorted" ? { kind: "shorted" } : { kind: row.kind, tag: row.tag },
    channel: row.channel,
    junctionId: row.junctionId,
    junctionCelsius: optionalFigure(row.junctionCelsius),
    immersionMillimetre: optionalFigure(row.immersionMillimetre),
    leadId: row.leadId || undefined,
  }));

const create = formAction(createRun, {
  parse: (data) => ({
    configurationId: text(data, "configurationId"),
    voltmeterId: text(data, "voltmeterId"),
    scannerId: text(data, "scannerId"),
    procedure: text(data, "procedure"),
    setpointsCelsius: list(data, "setpoints").map(Number),
    places: places(data),
    note: text(data, "note"),
  }),
  done: (run) => ({ redirect: `/runs/${run.number}/load` }),
});
export const createRunAction = async (state: FormState, data: FormData) => create(state, data);

const tip = formAction(recordTipCheck, {
  parse: (data) => ({
    run: text(data, "run"),
    place: text(data, "place"),
    riseMicrovolt: number(data, "riseMicrovolt"),
    onlyThisChannel: flag(data, "onlyThisChannel"),
  }),
  done: ({ place, state }) => {
    const remedy = tipCheckRemedy(state);
    return remedy === null
      ? `Place ${place}: passed.`
      : { caution: "Not passed", message: `Place ${place}. ${remedy}` };
  },
});
export const tipCheckAction = async (state: FormState, data: FormData) => tip(state, data);

const room = formAction(recordRoom, {
  parse: (data) => ({
    run: text(data, "run"),
    moment: text(data, "moment"),
    instrument: text(data, "instrument"),
    celsius: number(data, "celsius"),
    percent: optionalNumber(data, "percent"),
    reason: optionalText(data, "reason"),
  }),
  done: ({ celsius, moment, outside }) =>
    outside === null
      ? `Room at the ${moment}: ${celsius} °C, corrected.`
      : { caution: "Outside the procedure’s limits", message: `${outside}. It is stored as it was.` },
});
export const recordRoomAction = async (state: FormState, data: FormData) => room(state, data);

const entry = (data: FormData, name: string) =>
  rows(data, name, ["seconds", "channel", "microvolts", "polarity"])
    // The channel and the sign have a choice from the start; a row is one once a number stands in it.
    .filter((row) => row.seconds || row.microvolts)
    .map((row) => ({
      seconds: parseDecimal(row.seconds ?? ""),
      channel: row.channel,
      microvolts: parseDecimal(row.microvolts ?? ""),
      polarity: row.polarity === "-" ? -1 : 1,
    }));

const typed = formAction(typeReadings, {
  parse: (data) => ({
    run: text(data, "run"),
    startedAt: optionalText(data, "startedAt"),
    first: entry(data, "first"),
    second: entry(data, "second"),
  }),
  done: ({ readings }) => `${readings} readings stored, marked as typed.`,
});
export const typeReadingsAction = async (state: FormState, data: FormData) => typed(state, data);

const accept = formAction(acceptWindow, {
  parse: (data) => ({
    run: text(data, "run"),
    setpoint: number(data, "setpoint"),
    fromSeconds: number(data, "fromSeconds"),
    toSeconds: number(data, "toSeconds"),
    reason: text(data, "reason"),
    blocksDigest: optionalText(data, "blocksDigest"),
  }),
  done: ({ origin }) =>
    origin === "proposed" ? "Window accepted as proposed." : "Window moved and accepted.",
});
export const acceptWindowAction = async (state: FormState, data: FormData) => accept(state, data);

const said = formAction(stateSensorSetpoint, {
  parse: (data) => ({
    run: text(data, "run"),
    sensor: text(data, "sensor"),
    setpoint: number(data, "setpoint"),
    state: text(data, "state"),
    reason: text(data, "reason"),
  }),
  done: ({ sensor, state }) => `${sensor}: ${state.replace("-", " ")}.`,
});
export const stateSensorAction = async (state: FormState, data: FormData) => said(state, data);

const repeat = formAction(authoriseRepeat, {
  parse: (data) => ({ run: text(data, "run"), sensor: text(data, "sensor"), reason: text(data, "reason") }),
  done: ({ sensor, earlierRun, countingRule }) =>
    `${sensor} may be measured again after run ${earlierRun}. ${countingRuleLabels[countingRule]}.`,
});
export const authoriseRepeatAction = async (state: FormState, data: FormData) => repeat(state, data);

const abandon = formAction(abandonRun, {
  parse: (data) => ({ run: text(data, "run"), version: text(data, "version"), reason: text(data, "reason") }),
  done: (run) => ({ redirect: `/runs/${run.number}` }),
});
export const abandonRunAction = async (state: FormState, data: FormData) => abandon(state, data);

const evaluate = formAction(evaluateRun, {
  parse: (data) => ({ run: text(data, "run") }),
  done: ({ sequence, evaluation }) =>
    `Evaluation ${sequence}: ${evaluation.points.length} result${evaluation.points.length === 1 ? "" : "s"}.`,
});
export const evaluateRunAction = async (state: FormState, data: FormData) => evaluate(state, data);

const submit = formAction(submitRun, {
  parse: (data) => ({
    run: text(data, "run"),
    version: text(data, "version"),
    tipCheckReason: text(data, "tipCheckReason"),
  }),
  done: (run) => ({ redirect: `/runs/${run.number}` }),
});
export const submitRunAction = async (state: FormState, data: FormData) => submit(state, data);
