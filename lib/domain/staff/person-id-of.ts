import type { Actor } from "./actor";

/** Records say which person acted. The platform itself may not stand in for one. */
export const personIdOf = (actor: Actor): string => {
  if (actor.kind === "system") throw new Error(`A person is needed here, not the platform (${actor.name})`);
  return actor.personId;
};
