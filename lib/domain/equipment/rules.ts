import { ok, type Result, refuse } from "../refusal";
import type { Particulars } from "./particulars";

/** What a thing is never changes; a reference of another type is another reference. */
export const decideParticulars = (before: Particulars, after: Particulars): Result<Particulars> => {
  if (before.kind !== after.kind)
    return refuse("rule", "Equipment keeps its kind. Record the other thing with its own tag.");
  if (before.kind === "reference" && after.kind === "reference" && before.type !== after.type)
    return refuse("rule", "A reference keeps its type. Nothing was stored.", {
      "particulars.type": `It was recorded as type ${before.type}; record another reference with its own tag.`,
    });
  return ok(after);
};

/** A furnace is recorded with its tube and its range, under Furnaces; its row here comes with it. */
export const decideRecorded = ({ kind }: Particulars): Result<null> =>
  kind === "furnace"
    ? refuse("rule", "A furnace is recorded under Furnaces; its equipment record comes with it.")
    : ok(null);

type Identity = { readonly maker: string; readonly model: string; readonly serial: string };

/** Maker, name and serial number of a furnace stand in its furnace record, and are changed there. */
export const decideIdentity = (kind: Particulars["kind"], before: Identity, after: Identity): Result<null> =>
  kind === "furnace" &&
  (before.maker !== after.maker || before.model !== after.model || before.serial !== after.serial)
    ? refuse("rule", "Maker, name and serial number of a furnace are changed in its furnace record.")
    : ok(null);
