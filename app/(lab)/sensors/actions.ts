"use server";
import { collectSensor } from "@/lib/operations/sensor/collect";
import { formAction } from "@/lib/web/form-action";
import { text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const collect = formAction(collectSensor, {
  parse: (data) => ({
    tag: text(data, "tag"),
    handedOver: text(data, "handedOver"),
    reason: text(data, "reason"),
  }),
  done: ({ tag }) => `Sensor ${tag} is handed back.`,
});

export const collectSensorAction = async (state: FormState, data: FormData) => collect(state, data);
