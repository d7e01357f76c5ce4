import type { z } from "zod";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import type { Operation } from "@/lib/operations/operation";

const dayMilliseconds = 86_400_000;

/**
 * Tells the story through the same operations people use, each at its own moment before `now`. The audit log keeps the
 * database's own time: it says truthfully that all of it was told when the demonstration was made.
 */
export type Teller = {
  /** `days` before today, at hh:mm UTC. */
  readonly at: (days: number, time?: string) => Date;
  /** The day, `days` before today, as YYYY-MM-DD; negative days lie ahead. */
  readonly day: (days: number) => string;
  readonly tell: <S extends z.ZodType, O>(
    operation: Operation<S, O>,
    actor: Actor,
    when: Date,
    input: z.input<S>,
  ) => Promise<O>;
};

export const tellerAt = (now: Date): Teller => {
  const midnight = Math.floor(now.getTime() / dayMilliseconds) * dayMilliseconds;
  return {
    at: (days, time = "09:00") => {
      const [hours = 0, minutes = 0] = time.split(":").map(Number);
      return new Date(midnight - days * dayMilliseconds + (hours * 60 + minutes) * 60_000);
    },
    day: (days) => new Date(midnight - days * dayMilliseconds).toISOString().slice(0, 10),
    tell: (operation, actor, when, input) => execute(operation, actor, input, () => when),
  };
};
