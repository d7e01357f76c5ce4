"use server";
import { changeFurnace } from "@/lib/operations/furnace/change";
import { recordFurnace } from "@/lib/operations/furnace/record";
import { recordCharacterisation } from "@/lib/operations/furnace/record-characterisation";
import { recordConfiguration } from "@/lib/operations/furnace/record-configuration";
import { formAction } from "@/lib/web/form-action";
import { number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const fields = (data: FormData) => ({
  name: text(data, "name"),
  maker: text(data, "maker"),
  serial: text(data, "serial"),
  minimumCelsius: number(data, "minimumCelsius"),
  maximumCelsius: number(data, "maximumCelsius"),
  boreMillimetre: number(data, "boreMillimetre"),
  lengthMillimetre: number(data, "lengthMillimetre"),
});

const record = formAction(recordFurnace, {
  parse: (data) => ({ tag: text(data, "tag"), ...fields(data) }),
  done: ({ id }) => ({ redirect: `/furnaces/${id}` }),
});

const change = formAction(changeFurnace, {
  parse: (data) => ({ id: text(data, "id"), version: number(data, "version"), ...fields(data) }),
  done: ({ id }) => ({ redirect: `/furnaces/${id}` }),
});

const configure = formAction(recordConfiguration, {
  parse: (data) => ({
    furnaceId: text(data, "furnaceId"),
    name: text(data, "name"),
    kind: text(data, "kind"),
    places: number(data, "places"),
    immersionMillimetre: number(data, "immersionMillimetre"),
  }),
  done: ({ furnaceId }) => ({ redirect: `/furnaces/${furnaceId}` }),
});

const characterise = formAction(recordCharacterisation, {
  parse: (data) => ({
    configurationId: text(data, "configurationId"),
    performedOn: text(data, "performedOn"),
    validUntil: text(data, "validUntil"),
    uniformityHalfWidthCelsius: number(data, "uniformityHalfWidthCelsius"),
    statement: text(data, "statement"),
  }),
  done: () => "The characterisation is recorded and holds for runs from now on.",
});

export const recordFurnaceAction = async (state: FormState, data: FormData) => record(state, data);
export const changeFurnaceAction = async (state: FormState, data: FormData) => change(state, data);
export const recordConfigurationAction = async (state: FormState, data: FormData) => configure(state, data);
export const recordCharacterisationAction = async (state: FormState, data: FormData) =>
  characterise(state, data);
