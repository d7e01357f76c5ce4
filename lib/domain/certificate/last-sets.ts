import type { DerivedMember } from "./derived-member";

/** Of each sensor its last set alone: a lot, or a roll, is described as it leaves. */
export const lastSets = <M extends Pick<DerivedMember, "kind" | "sensorId">>(
  members: readonly M[],
): readonly M[] => {
  const annealed = new Set(
    members.filter(({ kind }) => kind === "after-anneal").map(({ sensorId }) => sensorId),
  );
  return members.filter(({ kind, sensorId }) => kind === "after-anneal" || !annealed.has(sensorId));
};
