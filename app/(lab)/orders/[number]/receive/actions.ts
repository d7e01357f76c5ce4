"use server";
import { BuildDraft } from "@/lib/domain/sensor/build-draft";
import { receiveSensors } from "@/lib/operations/sensor/receive";
import { formAction, refusedState } from "@/lib/web/form-action";
import { rows, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { checkFields } from "./check-draft";

const buildFields = Object.keys(BuildDraft.shape);

const receive = formAction(receiveSensors, {
  parse: (data) => ({
    orderNumber: text(data, "orderNumber"),
    position: text(data, "position"),
    receivedOn: text(data, "receivedOn"),
    serials: String(data.get("serials") ?? ""),
    ...Object.fromEntries(buildFields.map((name) => [name, text(data, name)])),
    ...Object.fromEntries(
      checkFields.filter((name) => name !== "end").map((name) => [name, text(data, name)]),
    ),
    each: rows(data, "each", checkFields),
  }),
  // The next kind of sensor comes out of the same box: the form again, until all are here. A serial that is in the
  // house twice is named there.
  done: ({ orderNumber, tags, deviating, twice, toCome }) => ({
    redirect:
      toCome > 0 || twice.length > 0
        ? `/orders/${orderNumber}/receive?taken=${tags.length}&deviating=${deviating.length}`
        : `/orders/${orderNumber}#sensors`,
  }),
});

export const receiveSensorsAction = async (state: FormState, data: FormData) =>
  data.has("listSensors")
    ? refusedState(data, "Nothing is stored yet: the sensors are listed below.")
    : receive(state, data);
