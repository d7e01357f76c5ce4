import { Refused } from "@/lib/domain/refusal";

/** "answered", or the code of the refusal. */
export const codeOf = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => "answered",
    (error) => (error instanceof Refused ? error.refusal.code : String(error)),
  );
