"use server";
import { changePlace } from "@/lib/operations/custody/change-place";
import { disposeSensor } from "@/lib/operations/custody/dispose";
import { moveSensors } from "@/lib/operations/custody/move";
import { recordPlace } from "@/lib/operations/custody/record-place";
import { setRetention } from "@/lib/operations/custody/set-retention";
import { formAction } from "@/lib/web/form-action";
import { flag, number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const move = formAction(moveSensors, {
  parse: (data) => ({
    tags: text(data, "tags"),
    kind: text(data, "kind"),
    placeCode: text(data, "placeCode"),
    whom: text(data, "whom"),
    condition: text(data, "condition"),
  }),
  done: ({ moved }) => `Recorded for ${moved} ${moved === 1 ? "sensor" : "sensors"}.`,
});

const record = formAction(recordPlace, {
  parse: (data) => ({
    code: text(data, "code"),
    name: text(data, "name"),
    conditions: text(data, "conditions"),
  }),
  done: ({ code }) => `${code} is recorded.`,
});

const change = formAction(changePlace, {
  parse: (data) => ({
    id: text(data, "id"),
    version: number(data, "version"),
    name: text(data, "name"),
    conditions: text(data, "conditions"),
    active: flag(data, "active"),
  }),
  done: ({ code }) => `${code} is changed.`,
});

const retention = formAction(setRetention, {
  parse: (data) => ({ version: number(data, "version"), days: number(data, "days") }),
  done: ({ days }) => `Sensors are listed ${days} days after they could go back.`,
});

const dispose = formAction(disposeSensor, {
  parse: (data) => ({ tag: text(data, "tag"), instruction: text(data, "instruction") }),
  done: ({ tag }) => `${tag} is disposed of.`,
});

export const moveSensorsAction = async (state: FormState, data: FormData) => move(state, data);
export const recordPlaceAction = async (state: FormState, data: FormData) => record(state, data);
export const changePlaceAction = async (state: FormState, data: FormData) => change(state, data);
export const setRetentionAction = async (state: FormState, data: FormData) => retention(state, data);
export const disposeSensorAction = async (state: FormState, data: FormData) => dispose(state, data);
