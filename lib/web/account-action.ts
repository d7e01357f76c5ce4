import "server-only";
import { cookies, headers } from "next/headers";
import { redirect } from "next/navigation";
import type { z } from "zod";
import { ownAccountOf } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import type { Operation } from "@/lib/operations/operation";
import { currentActor } from "./auth";
import { env } from "./env";
import { type FormAction, foreignOriginMessage, refusedState, stateOfError } from "./form-action";
import { isOwnOrigin } from "./origin";
import { cookieNames } from "./session-cookie";

const dropSession = async (): Promise<void> => {
  const { isHttps } = env();
  (await cookies()).delete({ name: cookieNames(isHttps).session, path: "/", secure: isHttps });
};

type Options<O> = {
  readonly parse: (data: FormData) => unknown;
  readonly redirect: string;
  /** Stays signed in. Without it the session ends, and its cookie goes. */
  readonly keepsSession?: boolean;
  /** What the browser is to carry on: shown once, on the next page. */
  readonly carryOn?: (value: O) => Promise<void>;
};

/** A person's own account, staff or customer: in the laboratory's scope, without any role. */
export const accountAction =
  <S extends z.ZodType, O>(operation: Operation<S, O>, options: Options<O>): FormAction =>
  async (_state, data) => {
    try {
      if (!isOwnOrigin((await headers()).get("origin"), env().publicOrigin))
        return refusedState(data, foreignOriginMessage(env().publicOrigin));
      const actor = await currentActor();
      if (!actor && options.keepsSession)
        return refusedState(data, "Your session has ended. Sign in again, then send this once more.");
      if (actor && actor.kind !== "system") {
        const input = options.parse(data) as z.input<S>;
        // On a line of its own: as the argument of an optional call it would not be done where nothing is carried on.
        const value = await execute(operation, ownAccountOf(actor), input, () => new Date());
        await options.carryOn?.(value);
      }
      if (!options.keepsSession) await dropSession();
    } catch (error) {
      return stateOfError(error, data, operation.name);
    }
    redirect(options.redirect);
  };
