import type { z } from "zod";
import { seenWhole } from "../../typed-text";
import { unprintableMessage } from "./unprintable";

/** For what stands on a certificate as it is typed: refuses there what the document could not print, and what cannot be seen. */
export const printedText = (text: string, context: z.RefinementCtx<string>): void => {
  seenWhole(text, context);
  const message = unprintableMessage(text);
  if (message !== null) context.addIssue({ code: "custom", message });
};
