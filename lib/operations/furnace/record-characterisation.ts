import { insertCharacterisation } from "@/lib/data/furnace/characterisation-store";
import { loadConfiguration } from "@/lib/data/furnace/configuration-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { isoDay } from "@/lib/domain/calibration/due";
import { furnaceEvents } from "@/lib/domain/furnace/events";
import { CharacterisationInput } from "@/lib/domain/furnace/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

export const recordCharacterisation = defineOperation({
  name: "furnace/record-characterisation",
  permission: "furnace.record",
  input: CharacterisationInput,
  perform: async ({ actor, now, tx }, input) => {
    const configuration = await loadConfiguration(tx, input.configurationId);
    if (!configuration) throw new Refused({ code: "not-found", message: "This configuration is not here." });
    if (input.performedOn > isoDay(now))
      throw new Refused({
        code: "invalid",
        message: "Nothing was stored; what you typed is still here.",
        fields: { performedOn: "This day has not come yet." },
      });
    const { id } = await insertCharacterisation(tx, {
      ...input,
      recordedAt: now,
      recordedById: personIdOf(actor),
      measured: null,
    });
    const { furnace, name } = configuration;
    const { uniformityHalfWidthCelsius, validUntil } = input;
    return {
      value: { id, furnaceId: furnace.id },
      events: [
        eventOf(furnaceEvents.characterised, furnace.id, {
          tag: furnace.tag,
          configurationId: configuration.id,
          name,
          uniformityHalfWidthCelsius,
          validUntil,
        }),
      ],
    };
  },
});
