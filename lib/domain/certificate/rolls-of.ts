import type { BundleMember } from "./bundle";
import { type Said, say, sayAll } from "./catalogue/message";
import { lastSets } from "./last-sets";

/** A roll with the pieces cut from each of its ends, by their labels. */
export type RollEnds = {
  readonly roll: Said;
  readonly firstEnd: readonly string[];
  readonly secondEnd: readonly string[];
};

type OfRoll = Pick<BundleMember, "kind" | "sensorId"> & {
  readonly parts: Pick<BundleMember["parts"], "build"> & { readonly sensor: { readonly tag: string } };
};

/** Rolls of which both ends are among the members, as intake says it, in the order of their first piece. */
export const rollsOf = (members: readonly OfRoll[]): readonly RollEnds[] => {
  const pieces = lastSets(members).flatMap(({ parts: { build, sensor } }) =>
    build?.lot && build.roll && build.end
      ? [{ lot: build.lot, roll: build.roll, end: build.end, tag: sensor.tag }]
      : [],
  );
  const names = [...new Set(pieces.map(({ lot, roll }) => JSON.stringify([lot, roll])))];
  return names.flatMap((name) => {
    const [lot, roll] = JSON.parse(name) as [string, string];
    const from = (end: "first" | "second") => [
      ...new Set(
        pieces.flatMap((one) => (one.lot === lot && one.roll === roll && one.end === end ? [one.tag] : [])),
      ),
    ];
    const [firstEnd, secondEnd] = [from("first"), from("second")];
    return firstEnd.length > 0 && secondEnd.length > 0
      ? [{ roll: sayAll([say("item.lot", { lot }), say("item.roll", { roll })], ", "), firstEnd, secondEnd }]
      : [];
  });
};
