import { z } from "zod";

/** RFC 9457, application/problem+json: what went wrong, and where to mend it. */
export const Problem = z.strictObject({
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  /** Field of the request → what is wrong there and the remedy. */
  fields: z.record(z.string(), z.string()).optional(),
});
export type Problem = z.output<typeof Problem>;
