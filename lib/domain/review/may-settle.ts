import { type Actor, actorIdOf } from "../staff/actor";
import { may } from "../staff/permissions";

/** Not whoever measured, unless they made the remark: they answer it. */
export const maySettle = (actor: Actor, writtenById: string): boolean =>
  actorIdOf(actor) === writtenById || (actor.kind === "staff" && may(actor.roles, "review.decide"));
