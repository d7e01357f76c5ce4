import { z } from "zod";

const anchor = z
  .string()
  .regex(/^[A-Z]-[\w-]{1,40}$/)
  .optional()
  .catch(undefined);
const Turn = z.object({ after: anchor, before: anchor });

/** Which page of a list an address asks for; anything else in it is the first. */
export const turnIn = (query: Readonly<Record<string, string | string[] | undefined>>) => {
  const { after, before } = Turn.parse(query);
  return { ...(after ? { after } : {}), ...(before && !after ? { before } : {}) };
};
