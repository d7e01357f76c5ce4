"use server";
import { annealSensor } from "@/lib/operations/sensor/anneal";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const anneal = formAction(annealSensor, {
  parse: (data) => ({
    sensor: text(data, "sensor"),
    celsius: text(data, "celsius"),
    hours: text(data, "hours"),
    manner: text(data, "manner"),
    performedOn: text(data, "performedOn"),
  }),
  done: ({ tag }) => `The annealing of ${tag} is recorded; it can be loaded for its next set.`,
});
export const annealSensorAction = async (state: FormState, data: FormData) => anneal(state, data);
