import { z } from "zod";

/** The answers offered with a question, as stored: a JSON array of texts. */
export const readChoices = (stored: string): readonly string[] =>
  z.array(z.string()).parse(JSON.parse(stored));
